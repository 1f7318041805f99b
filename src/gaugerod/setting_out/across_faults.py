"""What can be wrong with the measurements the perps depend on, all of it reported at once."""

from collections.abc import Iterator
from itertools import combinations
from math import isfinite

from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.basis.finding import TOUCH
from gaugerod.setting_out.across import AcrossAsk
from gaugerod.setting_out.stations import Opening

LONGEST_MM = 200_000.0
HALF_RATIO = 0.5
MEASURE = "Measure it again, and check its unit."


def refuse_faults(ask: AcrossAsk) -> None:
    """Raises InputRefused with every fault of the ask.

    Scope: eaves up to 200 m (house: beyond it a unit has been mistaken).
    """
    faults = [*_widths(ask), *_reaches(ask), *_openings(ask), *_minimum_cut(ask)]
    if faults:
        raise InputRefused(faults)


def _is_length(length_mm: float) -> bool:
    return isfinite(length_mm) and 0 < length_mm <= LONGEST_MM


def _widths(ask: AcrossAsk) -> Iterator[Fault]:
    for field, length_mm in (
        ("eaves_width_mm", ask.eaves_width_mm),
        ("unit_width_mm", ask.unit_width_mm),
        ("cover_closed_mm", ask.cover_closed_mm),
        ("cover_open_mm", ask.cover_open_mm),
    ):
        if not _is_length(length_mm):
            yield Fault(field, f"{length_mm:g} mm", f"above 0 and at most {LONGEST_MM:.0f} mm", MEASURE)
    if ask.cover_closed_mm > ask.cover_open_mm:
        yield Fault(
            "cover_closed_mm",
            f"{ask.cover_closed_mm:g} mm",
            f"at most the open cover, {ask.cover_open_mm:g} mm",
            "Ten pushed up cannot be wider than ten pulled open: measure both again.",
        )
    if ask.cover_open_mm > ask.unit_width_mm:
        yield Fault(
            "cover_open_mm",
            f"{ask.cover_open_mm:g} mm",
            f"at most the width of the unit, {ask.unit_width_mm:g} mm",
            "A unit cannot cover more than it is wide.",
        )
    if not (isfinite(ask.top_left_mm) and isfinite(ask.top_right_mm) and ask.top_right_mm >= ask.top_left_mm - TOUCH):
        yield Fault(
            "top line",
            f"{ask.top_left_mm:g} to {ask.top_right_mm:g} mm",
            "the right end not left of the left end",
            "Check the ridge length and the diagonals: the sides of the slope cross.",
        )
    if ask.perps_every_count < 1:
        yield Fault("perps_every_count", str(ask.perps_every_count), "1 or more", "Give how many units between perps.")
    for index, crown_mm in enumerate(ask.high_points_mm):
        if not (isfinite(crown_mm) and 0 <= crown_mm <= ask.unit_width_mm):
            yield Fault(
                f"high_points_mm[{index}]",
                f"{crown_mm:g} mm",
                f"0 to {ask.unit_width_mm:g} mm",
                "Measure from the left edge.",
            )


def _reaches(ask: AcrossAsk) -> Iterator[Fault]:
    for name, side in (("left", ask.left), ("right", ask.right)):
        if not (isfinite(side.reach.least_mm) and isfinite(side.reach.greatest_mm)):
            given = f"{side.reach.least_mm:g} to {side.reach.greatest_mm:g} mm"
            yield Fault(f"{name}.reach", given, "two lengths", MEASURE)


def _openings(ask: AcrossAsk) -> Iterator[Fault]:
    from_mm, to_mm = ask.reaches_mm or (0.0, ask.eaves_width_mm)
    sound: list[tuple[int, Opening]] = []
    for index, opening in enumerate(ask.openings):
        if not (_is_length(opening.width_mm) and isfinite(opening.from_left_mm)):
            given = f"{opening.width_mm:g} mm wide, {opening.from_left_mm:g} mm from the left"
            yield Fault(f"openings[{index}]", given, "a width above 0 and a place", MEASURE)
        elif not (_is_length(opening.height_mm) and isfinite(opening.up_slope_mm)):
            given = f"{opening.height_mm:g} mm high, {opening.up_slope_mm:g} mm up the slope"
            yield Fault(f"openings[{index}]", given, "a height above 0 and a place", MEASURE)
        elif opening.from_left_mm < from_mm - TOUCH or opening.right_mm > to_mm + TOUCH:
            yield Fault(
                f"openings[{index}]",
                f"{opening.from_left_mm:g} to {opening.right_mm:g} mm",
                f"inside {from_mm:g} to {to_mm:g} mm",
                "Measure its left side from the left end of the roof structure.",
            )
        else:
            sound.append((index, opening))
    for (_, one), (index, other) in combinations(sound, 2):
        if _overlap(one, other):
            yield Fault(
                f"openings[{index}]",
                f"{other.name} at {other.from_left_mm:g} mm, {other.up_slope_mm:g} mm up",
                f"clear of {one.name}",
                "Two openings cannot lie over each other: measure both again.",
            )


def _overlap(one: Opening, other: Opening) -> bool:
    across = one.from_left_mm < other.right_mm - TOUCH and other.from_left_mm < one.right_mm - TOUCH
    return across and one.up_slope_mm < other.head_mm - TOUCH and other.up_slope_mm < one.head_mm - TOUCH


def _minimum_cut(ask: AcrossAsk) -> Iterator[Fault]:
    """The search knows one break point inside a unit: its half."""
    if ask.minimum_cut.value != HALF_RATIO:
        given = f"{ask.minimum_cut.value:g}"
        yield Fault("minimum_cut", given, f"{HALF_RATIO:g} of a unit", "Only half a unit is known as the least piece.")
