"""The steps up the slope of plain tiles, sized slates and random slates."""

from collections.abc import Iterator

from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.coverings.double_lap import PlainTile, RandomSlates, SizedSlate
from gaugerod.job.up_slope import UpSlope


def double_lap_steps(unit_laid: PlainTile | SizedSlate, up: UpSlope, *, unit: LengthUnit) -> Iterator[str]:
    """Under-eaves course, first full course, nail holes, and the short course under the ridge."""
    extras = up.double_lap
    if extras is None:
        return
    rod, extra = up.courses.rods[0], extras.rods[0]
    tile = isinstance(unit_laid, PlainTile)
    line = "top edge of its batten" if tile else "nail line"
    yield (
        f"Under-eaves course: units {write_length(extras.under_eaves_length_mm, unit)} long, {line} "
        f"{write_length(extra.under_eaves_mark_mm, unit)} up from the outer face of the fascia, tails "
        f"{write_length(rod.overhang_mm, unit)} past it."
    )
    yield (
        f"First full course: {line} at {write_length(rod.marks_mm[0], unit)}; its tails lie on those of the under-eaves course."
    )
    if extras.holing_mm is not None:
        yield (
            f"Hole the slates {write_length(extras.holing_mm, unit)} up from the tail, two holes each, "
            f"inside the middle third of the batten. Sort by thickness and lay the thickest at the eaves."
        )
    if extra.short is not None:
        yield (
            f"Top: a short course of units {write_length(extra.short.length_mm, unit)} long, {line} at "
            f"{write_length(extra.short.mark_mm, unit)} on the left-hand rod, so that the ridge covers a double thickness."
        )
    yield (
        f"Every course laps the second below it: the least lap is {write_length(up.courses.headlap_mm, unit)}. Check it on the "
        f"third course before going on."
    )


def random_slate_steps(slates: RandomSlates, up: UpSlope, *, unit: LengthUnit) -> Iterator[str]:
    """Sorting, the under-eaves course, the courses of each length with the drop course, and the top."""
    plan = up.diminishing
    if plan is None:
        return
    yield from plan.sorting
    rod = plan.rods[0]
    held = "peg or nail hole" if slates.lost_at_head_mm else "nail line"
    yield (
        f"Under-eaves course: slates cut to {write_length(plan.under_eaves_length_mm, unit)}, {held} at "
        f"{write_length(rod.under_eaves_mark_mm, unit)} up from the outer face of the fascia."
    )
    for group in plan.groups:
        drop = (
            ""
            if group.drop_gauge_mm is None
            else f" The first of them is a drop course: {write_length(group.drop_gauge_mm, unit)} from the line below."
        )
        yield (
            f"Courses {group.first_course} to {group.last_course}: slates {write_length(group.length_mm, unit)} long, margin "
            f"at most {write_length(group.gauge_mm, unit)}.{drop}"
        )
    yield from plan.top_notes
    yield f"The least lap anywhere is {write_length(plan.least_lap_mm, unit)}, over the slate two below."
