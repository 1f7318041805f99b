"""The method in steps, with the figures of this very slope, as one roofer would tell another."""

from gaugerod.basis.lengths import LengthUnit, write_greatest, write_length
from gaugerod.coverings.single_lap import Bond
from gaugerod.job.model import Covering, Slope
from gaugerod.setting_out.across import Across, Fit, SideKind
from gaugerod.setting_out.courses import Courses, Strategy


def method_steps(
    slope: Slope, covering: Covering, courses: Courses, across: Across | None, *, unit: LengthUnit
) -> tuple[str, ...]:
    """The steps from hooking the tape to laying the first course, in order."""
    steps = [
        _measure_again(slope, unit),
        *_up_the_slope(covering, courses, unit),
        *_openings(courses),
    ]
    if across is not None:
        steps.extend(_across(slope, across, unit))
    steps.append(_check_as_nailed(courses, unit))
    return tuple(steps)


def _measure_again(slope: Slope, unit: LengthUnit) -> str:
    rafters = ", ".join(
        f"{write_length(length_mm, unit)} at {write_length(at_mm, unit)}" for at_mm, length_mm in slope.taped.rafters
    )
    return (
        f"Before marking, check the tape figures on the roof: eaves {write_length(slope.taped.eaves_mm, unit)}; "
        f"rafters, outer fascia face to apex, {rafters} from the left. If one is out, stop and set out again."
    )


def _up_the_slope(covering: Covering, courses: Courses, unit: LengthUnit) -> list[str]:
    first = courses.rods[0]
    steps = []
    if first.kept_count:
        steps.append(
            f"Leave the {first.kept_count} battens already nailed where they are; the last of them is at "
            f"{write_length(first.marks_mm[first.kept_count - 1], unit)} on the left-hand rod."
        )
    elif covering.hanging_length_mm is not None:
        steps.append(
            f"First batten: hook the tape on the outer face of the fascia and mark {_marks(courses, 0, unit)} up the "
            f"slope, top edge of the batten. That is the hanging length "
            f"{write_length(covering.hanging_length_mm, unit)} less the overhang "
            f"{write_length(first.overhang_mm, unit)}."
        )
    steps.append(_other_marks(courses, unit))
    steps.append(
        f"Top batten: top edge at {_marks(courses, -1, unit)}, {write_length(first.below_apex_mm, unit)} below the "
        f"apex."
    )
    steps.append(
        "Strike a line through the same number on every rod and nail the battens with their top edge to the line."
        if len(courses.rods) > 1
        else "Mark the same rod at both ends and strike the lines; nail the battens with their top edge to the line."
    )
    if courses.top_course_cut_mm is not None:
        least_mm, most_mm = courses.top_course_cut_mm
        steps.append(
            f"Cut the top course at its head by {write_length(least_mm, unit)} to {write_length(most_mm, unit)}. Where "
            f"the nib goes, nail or clip every unit."
        )
    return steps


def _other_marks(courses: Courses, unit: LengthUnit) -> str:
    gauge = _gauges(courses, unit)
    if courses.strategy is Strategy.PARALLEL:
        shape = "All rods carry the same marks but the last."
    elif len({rod.gauge_mm for rod in courses.rods}) > 1:
        shape = "Each rod has its own gauge, so the lines fan out evenly and the last is parallel to the ridge."
    else:
        shape = "All rods are alike."
    return (
        f"Mark the other battens from the same hook, reading each mark off the rod table (gauge {gauge}). Do not step "
        f"from batten to batten: small slips add up. {shape}"
    )


def _gauges(courses: Courses, unit: LengthUnit) -> str:
    gauges = [fine_length(rod.gauge_mm, unit) for rod in courses.rods]
    return gauges[0] if len(set(gauges)) == 1 else ", ".join(gauges)


def fine_length(length_mm: float, unit: LengthUnit) -> str:
    """A gauge or cover to a tenth of a millimetre; in feet and inches to a sixteenth."""
    return write_length(length_mm, unit) if unit is LengthUnit.FT_IN else f"{length_mm:.1f} mm"


def _marks(courses: Courses, index: int, unit: LengthUnit) -> str:
    marks = [write_length(rod.marks_mm[index], unit) for rod in courses.rods]
    return marks[0] if len(set(marks)) == 1 else " / ".join(marks) + " (rods left to right)"


def _openings(courses: Courses) -> list[str]:
    return [f"At {opening.name}: {opening.says}" for opening in courses.openings]


def _across(slope: Slope, across: Across, unit: LengthUnit) -> list[str]:
    eaves = across.perp_lines[0]
    marks = ", ".join(write_length(mark_mm, unit) for mark_mm in eaves.marks_mm[:3])
    steps = [
        (
            f"Perps: along the eaves, from the left end of the roof structure, mark {marks} and on as the perp table "
            f"says, every {across.perps_every_count} units. Mark the top line the same way and strike the perps up the "
            f"slope."
        ),
        (
            f"Lay {across.units_count} units to the course at {fine_length(eaves.cover_mm, unit)} cover, "
            f"{_reach(slope.left, across.left_overhang_mm, unit)} on the left, "
            f"{_reach(slope.right, across.right_overhang_mm, unit)} on the right."
        ),
    ]
    if across.bond is Bond.BROKEN:
        steps.append("Broken bond: start every other course half a unit over.")
    cuts = [piece for piece in across.pieces if piece.fit in {Fit.CUT, Fit.HIGH_POINT}]
    if cuts:
        steps.append(
            "Cut: "
            + "; ".join(
                f"{piece.at}, {_course_word(across, piece.bond_row)}, {write_length(piece.width_mm, unit)} wide"
                for piece in cuts
            )
            + ". Cut wet or with extraction, off the slope where you can."
        )
    return steps


def _reach(kind: SideKind, reach_mm: float, unit: LengthUnit) -> str:
    match kind:
        case SideKind.VERGE:
            return f"{write_length(reach_mm, unit)} past the verge"
        case SideKind.ABUTMENT:
            return f"{write_length(-reach_mm, unit)} clear of the wall"
        case SideKind.HIP | SideKind.VALLEY:
            return f"cut to the {kind.value}"


def _course_word(across: Across, bond_row: int) -> str:
    if across.bond is Bond.STRAIGHT:
        return "every course"
    return "odd courses" if bond_row == 0 else "even courses"


def _check_as_nailed(courses: Courses, unit: LengthUnit) -> str:
    widest_mm = max(max(rod.gaps_mm, default=0.0) for rod in courses.rods)
    return (
        f"Check as you go: no gap between battens may exceed {write_greatest(courses.gauge_max_mm, unit)} (the "
        f"marks give at most {write_length(widest_mm, unit)}). If a batten goes in wrong, measure where it is and "
        f"set out the rest from there."
    )
