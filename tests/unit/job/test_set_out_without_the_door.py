"""The one call on a job made of plain engine values: what a browser without the job file's checker would call."""

import pytest

from gaugerod.basis.finding import Verdict
from gaugerod.basis.lengths import LengthUnit
from gaugerod.coverings.catalogue import covering
from gaugerod.coverings.double_lap_catalogue import plain_tile, sized_slate
from gaugerod.geometry.plan_outline import PitchedWall, PlanOutline
from gaugerod.geometry.taped_slope import TapedSlope
from gaugerod.job.model import BottomKind, Building, Covering, Job, Slope, TopKind, Wishes
from gaugerod.job.set_out import set_out
from gaugerod.setting_out.across import SideKind
from gaugerod.sheets.setting_out_sheet import setting_out_sheet
from gaugerod.sheets.sheet import PaperSize
from gaugerod.standards.edition import Edition, Exposure

FLAT = covering("flat-interlocking-420x330")


def job(record: Covering, *, slopes: tuple[Slope, ...] = (), buildings: tuple[Building, ...] = ()) -> Job:
    return Job(
        title="Byre",
        edition=Edition.GB,
        exposure=Exposure.MODERATE,
        show_lengths_in=LengthUnit.MM,
        covering=record,
        slopes=slopes,
        buildings=buildings,
        wishes=Wishes(ridge_cover_mm=125.0),
    )


def rear(*, pitch_deg: float = 40.0) -> Slope:
    return Slope(
        name="rear",
        pitch_deg=pitch_deg,
        taped=TapedSlope(eaves_mm=6000.0, rafters=((0.0, 4200.0), (6000.0, 4212.0))),
        left=SideKind.VERGE,
        right=SideKind.VERGE,
        bottom=BottomKind.EAVES,
        top=TopKind.RIDGE,
        rafter_spacing_mm=400.0,
    )


@pytest.mark.parametrize(
    "record",
    [FLAT, plain_tile("clay-plain-265x165"), sized_slate("slate-500x250")],
    ids=["flat", "plain", "slate"],
)
def test_a_taped_slope_is_set_out_and_laid(record: Covering) -> None:
    found = set_out(job(record, slopes=(rear(),)))
    (slope,) = found.slopes
    for rod in slope.courses.rods:
        gaps = [upper - lower for lower, upper in zip(rod.marks_mm, rod.marks_mm[1:], strict=False)]
        assert max(gaps) <= slope.courses.gauge_max_mm
    assert slope.laid is not None
    assert slope.laid.laying.bare_mm2 == pytest.approx(0.0, abs=10.0)
    assert setting_out_sheet(found, slope, size=PaperSize.A4).blocks


def test_a_hipped_building_is_set_out_with_the_same_marks_on_every_slope() -> None:
    corners = ((0.0, 0.0), (9000.0, 0.0), (9000.0, 6000.0), (0.0, 6000.0))
    plan = PlanOutline(outer_mm=corners, walls=(PitchedWall(pitch_deg=35.0, overhang_mm=300.0),) * 4)
    found = set_out(job(FLAT, buildings=(Building(name="byre", plan=plan, rafter_spacing_mm=400.0),)))
    assert len({slope.courses.rods[0].marks_mm for slope in found.slopes}) == 1
    assert len(found.slopes) == 4
    assert found.offcuts is not None
    # A roof of one pitch has the plan's area over the cosine of the pitch: 9.6 × 6.6 / cos 35°.
    assert found.roofs[0].form.area_mm2 / 1e6 == pytest.approx(77.349, abs=0.001)


def test_a_slope_too_flat_is_outside_its_rule_and_still_set_out() -> None:
    found = set_out(job(FLAT, slopes=(rear(pitch_deg=20.0),)))
    assert found.anything_outside
    assert {"pitch", "pitch default"} <= {each.rule for each in found.findings if each.verdict is Verdict.OUTSIDE}
    assert found.slopes
