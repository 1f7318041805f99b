"""Battens against print: length, supports and joints, nails, and the metres of batten to the square metre.

Rules: NHBC Standards 2021 7.2.17, read on its public page. Nails: NFRC competent person scheme, compliance tips, February
2026. Metres to the square metre: the rows of handbook tables for plain tiles (265 × 165 mm), single-lap tiles and metric
slates; they are arithmetic on the gauge (derived: they catch slips, and are no evidence of what the trade does).
"""

from dataclasses import replace

import pytest

from gaugerod.rules.batten_joints import most_joints_in_window_count, stagger_rule
from gaugerod.standards.battens import BattenFigure, abutment_gutter_stop_band, batten_figure, verge_stop_band
from gaugerod.standards.edition import Edition
from gaugerod.substrate.battens.ask import EvenRafters
from gaugerod.substrate.battens.nails import batten_nail_length
from gaugerod.substrate.battens.plan import plan_battens
from tests.scenario.battened_slopes import asked, gable, limit_mm

GB = Edition.GB

# NHBC Standards 2021 7.2.17: (which, printed value)
PRINTED = (
    (BattenFigure.LENGTH_LEAST, 1200.0),
    (BattenFigure.SUPPORTS_LEAST, 3.0),
    (BattenFigure.WIDE_GAUGE_OVER, 200.0),
    (BattenFigure.NAILS_EACH_JOINT, 2.0),
)

# NHBC Standards 2021 7.2.17: (gauge, not more than, in any so many consecutive)
JOINTS = ((100.0, 3, 12), (200.0, 3, 12), (201.0, 1, 4), (345.0, 1, 4))

# Handbook tables, derived: (gauge, metres of batten to the square metre as printed)
METRES = (
    # plain tiles 265 × 165
    (100.0, 10.0), (95.0, 10.526), (90.0, 11.111), (115.0, 8.696), (110.0, 9.091), (113.0, 8.85),
    # single-lap tiles
    (345.0, 2.899), (320.0, 3.125), (305.0, 3.279), (267.0, 3.745),
    # metric slates
    (278.0, 3.597), (255.0, 3.922), (250.0, 4.0), (245.0, 4.082), (223.0, 4.484), (200.0, 5.0), (175.0, 5.714),
    (150.0, 6.667), (125.0, 8.0), (115.0, 8.696),
)  # fmt: skip


@pytest.mark.parametrize(("which", "printed"), PRINTED)
def test_figures_as_printed(which: BattenFigure, printed: float) -> None:
    assert printed == batten_figure(GB, which).value


@pytest.mark.parametrize(("gauge_mm", "joints", "window"), JOINTS)
def test_joints_as_printed(gauge_mm: float, joints: int, window: int) -> None:
    rule = stagger_rule(gauge_mm=gauge_mm, edition=GB)
    assert (joints, window) == (rule.joints_count, rule.window_count)


def test_ends_as_printed() -> None:
    """Verge 25 to 50 mm (NHBC 7.2.17); beside a secret gutter 38 to 50 mm (consultant's article on side abutments)."""
    assert (25.0, 50.0) == (verge_stop_band(GB).least_mm, verge_stop_band(GB).greatest_mm)
    assert (38.0, 50.0) == (abutment_gutter_stop_band(GB).least_mm, abutment_gutter_stop_band(GB).greatest_mm)


@pytest.mark.parametrize(("gun", "length_mm"), [(False, 65.0), (True, 63.0)])
def test_nails_for_a_batten_of_25_mm_as_printed(gun: bool, length_mm: float) -> None:  # noqa: FBT001
    found, citation = batten_nail_length(depth_mm=25.0, counter_batten_depth_mm=0.0, gun=gun, edition=GB)
    assert (length_mm, "published") == (found, citation.basis.value)


@pytest.mark.parametrize(("gauge_mm", "printed"), METRES)
def test_metres_of_batten_to_the_square_metre(gauge_mm: float, printed: float) -> None:
    """A slope of whole gauges, its battens from verge to verge: what is laid over the area, to the printed places."""
    courses = 12
    each = gable(
        width_mm=7_200.0, courses=courses, gauge_mm=gauge_mm, rafters=EvenRafters(first_mm=0.0, spacing_mm=600.0)
    )
    ask = asked(each)
    battens = plan_battens(replace(ask, stops=replace(ask.stops, verge=limit_mm(0.0))))
    area_m2 = 7.2 * courses * gauge_mm / 1000
    places = len(str(printed).partition(".")[2])
    assert pytest.approx(printed, abs=0.5 * 10**-places) == battens.cutting.net_mm / 1000 / area_m2


def test_joints_in_line_are_the_common_failure() -> None:
    """NFRC competent person scheme, the five common failures: joints lining up. Every batten joined alike breaks either rule."""
    for gauge_mm in (100.0, 345.0):
        rule = stagger_rule(gauge_mm=gauge_mm, edition=GB)
        assert most_joints_in_window_count([True] * 12, window_count=rule.window_count) > rule.joints_count
