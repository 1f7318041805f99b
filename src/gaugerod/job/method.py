"""The method in steps, with the figures of this very slope, as one roofer would tell another."""

from collections.abc import Iterator
from typing import assert_never

from gaugerod.basis.fine_lengths import fine_length
from gaugerod.basis.lengths import LengthUnit, write_greatest, write_length
from gaugerod.coverings.double_lap import PlainTile, RandomSlates, SizedSlate
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.job.across_slope import AcrossSlope
from gaugerod.job.method_across import across_steps
from gaugerod.job.method_double_lap import double_lap_steps, random_slate_steps
from gaugerod.job.model import Job, Slope
from gaugerod.job.up_slope import UpSlope
from gaugerod.setting_out.courses import Courses, Strategy


def method_steps(job: Job, slope: Slope, up: UpSlope, over: AcrossSlope) -> tuple[str, ...]:
    """The steps from hooking the tape to laying the first course, in order."""
    unit = job.show_lengths_in
    return (
        _measure_again(slope, unit),
        *_up(job, up, unit),
        *(f"At {opening.name}: {opening.says}" for opening in up.courses.openings),
        *across_steps(slope, over, unit=unit),
        _check_as_nailed(up.courses, unit),
    )


def _measure_again(slope: Slope, unit: LengthUnit) -> str:
    if slope.outline is not None:
        rafter_mm = slope.taped.rafters[0][1]
        return (
            f"Before marking, measure on the roof: eaves {write_length(slope.taped.eaves_mm, unit)}, and "
            f"{write_length(rafter_mm, unit)} up the slope from the eaves line to the highest ridge. The outline was drawn, "
            f"not taped: if the roof differs, set out again."
        )
    rafters = ", ".join(
        f"{write_length(length_mm, unit)} at {write_length(at_mm, unit)}" for at_mm, length_mm in slope.taped.rafters
    )
    return (
        f"Before marking, check the tape figures on the roof: eaves {write_length(slope.taped.eaves_mm, unit)}; "
        f"rafters, outer fascia face to apex, {rafters} from the left. If one is out, stop and set out again."
    )


def _up(job: Job, up: UpSlope, unit: LengthUnit) -> Iterator[str]:
    covering = job.covering
    match covering:
        case SingleLapTile():
            yield from _first_batten(covering.hanging_length_mm, up.courses, unit)
            yield _other_marks(up.courses, unit, what="battens")
            yield from _top_batten(up.courses, unit)
        case PlainTile() | SizedSlate():
            yield from double_lap_steps(covering, up, unit=unit)
            yield _other_marks(up.courses, unit, what="battens" if isinstance(covering, PlainTile) else "nail lines")
        case RandomSlates():
            yield from random_slate_steps(covering, up, unit=unit)
            yield "Mark every nail line from the same hook, reading each mark off the rod table: no two gauges need be alike."
        case _ as unreachable:
            assert_never(unreachable)
    yield _strike(up.courses)


def _first_batten(hanging_mm: float | None, courses: Courses, unit: LengthUnit) -> Iterator[str]:
    first = courses.rods[0]
    if first.kept_count:
        yield (
            f"Leave the {first.kept_count} battens already nailed where they are; the last of them is at "
            f"{write_length(first.marks_mm[first.kept_count - 1], unit)} on the left-hand rod."
        )
    elif hanging_mm is not None:
        yield (
            f"First batten: hook the tape on the outer face of the fascia and mark {marks(courses, 0, unit)} up the "
            f"slope, top edge of the batten. That is the hanging length {write_length(hanging_mm, unit)} less the "
            f"overhang {write_length(first.overhang_mm, unit)}."
        )


def _other_marks(courses: Courses, unit: LengthUnit, *, what: str) -> str:
    gauges = [fine_length(rod.gauge_mm, unit) for rod in courses.rods]
    gauge = gauges[0] if len(set(gauges)) == 1 else ", ".join(gauges)
    if courses.strategy is Strategy.PARALLEL:
        shape = "All rods carry the same marks but the last."
    elif len({rod.gauge_mm for rod in courses.rods}) > 1:
        shape = "Each rod has its own gauge, so the lines fan out evenly and the last is parallel to the ridge."
    else:
        shape = "All rods are alike."
    return (
        f"Mark the other {what} from the same hook, reading each mark off the rod table (gauge {gauge}). Do not step "
        f"from one to the next: small slips add up. {shape}"
    )


def _top_batten(courses: Courses, unit: LengthUnit) -> Iterator[str]:
    first = courses.rods[0]
    yield (
        f"Top batten: top edge at {marks(courses, -1, unit)}, {write_length(first.below_apex_mm, unit)} below the apex."
    )
    if courses.top_course_cut_mm is not None:
        cut = " to ".join(dict.fromkeys(write_length(cut_mm, unit) for cut_mm in courses.top_course_cut_mm))
        yield f"Cut the top course at its head by {cut}. Where the nib goes, nail or clip every unit."


def _strike(courses: Courses) -> str:
    if len(courses.rods) > 1:
        return "Strike a line through the same number on every rod and nail the battens to the line."
    return (
        "Mark the rod on two rafters that start at the fascia, as far apart as they go; one beside a hip takes as many of the "
        "marks as it is long. Strike the lines level through both, and nail the battens to the line."
    )


def marks(courses: Courses, index: int, unit: LengthUnit) -> str:
    """The mark of one batten on every rod; once where all are alike."""
    written = [write_length(rod.marks_mm[index], unit) for rod in courses.rods]
    return written[0] if len(set(written)) == 1 else " / ".join(written) + " (rods left to right)"


def _check_as_nailed(courses: Courses, unit: LengthUnit) -> str:
    widest_mm = max(max(rod.gaps_mm, default=0.0) for rod in courses.rods)
    return (
        f"Check as you go: no gap may exceed {write_greatest(courses.gauge_max_mm, unit)} (the marks give at most "
        f"{write_length(widest_mm, unit)}). If a batten goes in wrong, measure where it is and set out the rest from there."
    )
