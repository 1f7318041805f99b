"""A verge or a wall above a hip or valley, or beside a step, is set out to as any other is: overhang, gap and pieces."""

from importlib.resources import files

import pytest

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.basis.finding import Verdict
from gaugerod.job.result import SlopeResult
from gaugerod.job.set_out import set_out
from gaugerod.job.upper_edges import MOST_UPPER_COUNT
from gaugerod.setting_out.across import Fit

JOB = """
[job]
title = "Front"
exposure = "moderate"

[covering]
from = "{covering}"

[[slope]]
name = "front"
pitch = "40°"
outline = {outline}
edges = {edges}

[set_out]
ridge_cover = "125 mm"
"""
PLAIN, FLAT, ROLL = "concrete-plain-265x165", "flat-interlocking-420x330", "profiled-two-roll-420x330"
GABLE_OVER_A_HIP = ((0.0, 0.0), (7.0, 0.0), (5.0, 2.5), (5.0, 4.2), (1.5, 4.2))
STEP = ((0.0, 0.0), (4.0, 0.0), (4.0, 1.5), (7.1, 1.5), (7.1, 5.0), (0.0, 5.0))
STEP_EDGES = ("eaves", "abutment", "eaves", "verge", "ridge", "verge")


def laid(outline: tuple[tuple[float, float], ...], edges: tuple[str, ...], covering: str = PLAIN) -> SlopeResult:
    points = str([[f"{x:.4f} m", f"{y:.4f} m"] for x, y in outline]).replace("'", '"')
    kinds = str(list(edges)).replace("'", '"')
    return set_out(read_job_text(JOB.format(covering=covering, outline=points, edges=kinds).encode())).slopes[0]


@pytest.mark.parametrize(("upper", "least_mm", "greatest_mm"), [("verge", 5038, 5050), ("abutment", 4985, 4995)])
@pytest.mark.parametrize("covering", [PLAIN, FLAT, "slate-500x250"])
def test_the_covering_ends_inside_the_band_past_an_upper_edge(
    upper: str, least_mm: float, greatest_mm: float, covering: str
) -> None:
    """38 to 50 mm past a verge; 5 to 15 mm clear of a wall."""
    slope = laid(GABLE_OVER_A_HIP, ("eaves", "hip", upper, "ridge", "valley"), covering)
    assert slope.laid is not None
    top_mm = max(y for _, y in slope.laid.ask.outline.points_mm)
    at_top_mm = max(x for x, y in slope.laid.ask.outline.points_mm if y == top_mm)
    assert least_mm - 1e-6 <= at_top_mm <= greatest_mm + 1e-6
    rule = "verge overhang" if upper == "verge" else "abutment set-back"
    told = [finding for finding in slope.findings if finding.rule == rule and finding.where == f"front, {upper}"]
    assert told
    assert {Verdict.WITHIN} == {finding.verdict for finding in told}


def test_the_perps_of_a_hipped_slope_are_chosen_so_that_its_upper_verge_ends_whole_and_half() -> None:
    slope = laid(GABLE_OVER_A_HIP, ("eaves", "hip", "verge", "ridge", "valley"), FLAT)
    assert slope.across is not None
    assert {Fit.WHOLE, Fit.HALF} == {piece.fit for piece in slope.across.pieces if piece.at == "verge"}
    assert any("Higher up, where the courses end at another line: verge" in step for step in slope.method)


def test_an_upper_verge_finishes_on_a_crown_where_it_can() -> None:
    slope = laid(GABLE_OVER_A_HIP, ("eaves", "hip", "verge", "ridge", "valley"), ROLL)
    (told,) = [finding for finding in slope.findings if finding.rule == "high point at the verge"]
    assert (told.where, told.verdict) == ("front, verge", Verdict.WITHIN)


def test_every_line_of_a_stepped_slope_has_its_pieces() -> None:
    slope = laid(STEP, STEP_EDGES, FLAT)
    assert slope.across is not None
    assert {"left", "right", "right verge"} == {piece.at for piece in slope.across.pieces}
    assert [7100.0] == [each.edge.at_mm for each in slope.across.upper]


def test_a_side_in_two_parts_is_one_line() -> None:
    outline = ((0.0, 0.0), (4.0, 0.0), (4.0, 2.0), (4.0, 5.0), (0.0, 5.0))
    slope = laid(outline, ("eaves", "verge", "verge", "ridge", "verge"))
    assert slope.across is not None
    assert () == slope.across.upper
    assert slope.laid is not None
    ends_mm = {round(x, 6) for x, _ in slope.laid.ask.outline.points_mm if x > 3000}
    assert {round(4000 + slope.across.right_overhang_mm, 6)} == ends_mm


def test_a_raking_verge_is_left_to_the_laying_and_said_so() -> None:
    outline = ((0.0, 0.0), (4.0, 0.0), (4.5, 5.0), (0.0, 5.0))
    slope = laid(outline, ("eaves", "verge", "ridge", "verge"))
    (told,) = [finding for finding in slope.findings if finding.where == "front, right verge"]
    assert Verdict.NOT_COVERED is told.verdict
    assert "rakes by 500 mm" in told.says


def test_of_very_many_steps_the_lowest_are_left_to_the_laying_and_said_so() -> None:
    points, kinds = [(0.0, 0.0), (12.0, 0.0)], ["eaves"]
    for step in range(MOST_UPPER_COUNT + 2):
        x, y = points[-1]
        points += [(x - 0.4, y + 0.4), (x - 0.4, y + 0.6 + 0.01 * step)]
        kinds += ["hip", "verge"]
    points.append((0.0, points[-1][1]))
    slope = laid(tuple(points), (*kinds, "ridge", "verge"))
    assert slope.across is not None
    assert MOST_UPPER_COUNT == len(slope.across.upper)
    left = [finding.where for finding in slope.findings if finding.says.startswith("This slope has so many steps")]
    assert ["front, right verge 2", "front, right verge 1"] == left


def test_random_slates_reach_past_their_verges_too() -> None:
    text = files("gaugerod.adapters.job_file").joinpath("examples", "random-slates.toml").read_bytes()
    slope = set_out(read_job_text(text)).slopes[0]
    assert slope.laid is not None
    ends = [x for x, _ in slope.laid.ask.outline.points_mm]
    assert (-44.0, 7244.0) == pytest.approx((min(ends), max(ends)))


def with_opening(from_left: str, up_slope: str) -> SlopeResult:
    points = str([[f"{x:.4f} m", f"{y:.4f} m"] for x, y in STEP]).replace("'", '"')
    kinds = str(list(STEP_EDGES)).replace("'", '"')
    opening = (
        f'[[slope.opening]]\nname = "dormer"\nfrom_left = "{from_left}"\nup_slope = "{up_slope}"\n'
        'width = "1.2 m"\nheight = "1.4 m"\n'
    )
    text = JOB.format(covering=FLAT, outline=points, edges=kinds).replace("[set_out]", f"{opening}\n[set_out]")
    return set_out(read_job_text(text.encode())).slopes[0]


def test_an_opening_above_a_step_is_set_out_beside_what_stands_at_its_height() -> None:
    across = with_opening("5.7 m", "2.2 m").across
    assert across is not None
    # 200 mm are left between the dormer, which ends at 6900, and the verge at 7100: one unit, cut.
    (beside,) = {piece.cover_mm for piece in across.pieces if piece.at.startswith("dormer right to")}
    assert beside == pytest.approx(200 + across.upper[0].overhang_mm)


def test_the_wall_of_a_step_does_not_stop_the_courses_above_it() -> None:
    across = with_opening("2.7 m", "2.2 m").across
    assert across is not None
    assert {"dormer left", "dormer right"} <= {piece.at for piece in across.pieces}


@pytest.mark.parametrize(
    ("step_m", "verdicts"),
    [(1.5, {Verdict.OUTSIDE, Verdict.WITHIN}), (1.648, {Verdict.WITHIN})],
)
def test_eaves_that_the_courses_do_not_start_from_are_told_with_their_overhang(
    step_m: float, verdicts: set[Verdict]
) -> None:
    """Tails are 50 mm past the lower fascia and every 329.6 mm from there; at 1648 mm up the sixth course is 50 mm past."""
    outline = ((0.0, 0.0), (4.0, 0.0), (4.0, step_m), (7.1, step_m), (7.1, 5.0), (0.0, 5.0))
    slope = laid(outline, STEP_EDGES, FLAT)
    told = [finding for finding in slope.findings if finding.rule == "upper eaves overhang"]
    assert {"front, eaves 2"} == {finding.where for finding in told}
    assert verdicts == {finding.verdict for finding in told}
