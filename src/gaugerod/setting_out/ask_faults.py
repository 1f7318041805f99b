"""What can be wrong with the measurements the courses depend on, all of it reported at once."""

from collections.abc import Iterator, Sequence
from math import isfinite

from gaugerod.basis.band import Band
from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.setting_out.between_stations import height_at_mm, measured_lengths
from gaugerod.setting_out.courses import CoursesAsk
from gaugerod.setting_out.marked_limits import exact_length_mm
from gaugerod.setting_out.stations import NailedRod

LONGEST_MM = 100_000.0
SMALLEST_GAUGE_MM = 10.0
_LENGTHS = f"above 0 and at most {LONGEST_MM:.0f} mm"
_MEASURE = "Measure it again, and check its unit."


def refuse_faults(ask: CoursesAsk) -> None:
    """Raises InputRefused with every fault of the ask.

    Scope: slopes up to 100 m and gauges from 10 mm (house: beyond these a unit has been mistaken).
    """
    faults = [*_covering(ask), *_band("overhang", ask.overhang), *_band("top", ask.top), *_stations(ask)]
    if not faults:  # the rest is held against the slope's lengths, which must be sound first
        faults = [*_ends(ask), *_openings(ask), *_nailed(ask)]
    if faults:
        raise InputRefused(faults)


def _is_length(length_mm: float) -> bool:
    return isfinite(length_mm) and 0 < length_mm <= LONGEST_MM


def _length(field: str, length_mm: float) -> Iterator[Fault]:
    if not _is_length(length_mm):
        yield Fault(field=field, given=f"{length_mm:g} mm", allowed=_LENGTHS, do=_MEASURE)


def _covering(ask: CoursesAsk) -> Iterator[Fault]:
    yield from _length("unit_length_mm", ask.unit_length_mm)
    yield from _length("hanging_length_mm", ask.hanging_length_mm)
    yield from _length("gauge_max_mm", ask.gauge_max_mm)
    if ask.gauge_min_mm is not None:
        yield from _length("gauge_min_mm", ask.gauge_min_mm)
    if _is_length(ask.gauge_max_mm) and ask.gauge_max_mm < SMALLEST_GAUGE_MM:
        yield Fault(
            field="gauge_max_mm",
            given=f"{ask.gauge_max_mm:g} mm",
            allowed=f"{SMALLEST_GAUGE_MM:.0f} mm or more",
            do="Check the unit of the covering's length and lap.",
        )
    if ask.hanging_length_mm > ask.unit_length_mm:
        yield Fault(
            field="hanging_length_mm",
            given=f"{ask.hanging_length_mm:g} mm",
            allowed=f"at most the length of the unit, {ask.unit_length_mm:g} mm",
            do="Measure from the bearing face of the nibs to the tail.",
        )
    if ask.gauge_max_mm >= ask.unit_length_mm:
        yield Fault(
            field="gauge_max_mm",
            given=f"{ask.gauge_max_mm:g} mm",
            allowed=f"less than the length of the unit, {ask.unit_length_mm:g} mm",
            do="At this gauge the units would not lap: check the least headlap.",
        )
    if ask.gauge_min_mm is not None and ask.gauge_min_mm > ask.gauge_max_mm:
        yield Fault(
            field="gauge_min_mm",
            given=f"{ask.gauge_min_mm:g} mm",
            allowed=f"at most the greatest gauge, {ask.gauge_max_mm:g} mm",
            do="The greatest headlap must be no less than the least headlap.",
        )


def _band(field: str, band: Band) -> Iterator[Fault]:
    for end, length_mm in (("least_mm", band.least_mm), ("greatest_mm", band.greatest_mm)):
        if not (isfinite(length_mm) and 0 <= length_mm <= LONGEST_MM):
            yield Fault(
                field=f"{field}.{end}",
                given=f"{length_mm:g} mm",
                allowed=f"0 to {LONGEST_MM:.0f} mm",
                do="Give the band its least and greatest length.",
            )


def _stations(ask: CoursesAsk) -> Iterator[Fault]:
    if not ask.stations:
        yield Fault(
            field="stations", given="none", allowed="one or more", do="Measure fascia face to apex at both ends."
        )
    for index, station in enumerate(ask.stations):
        yield from _length(f"stations[{index}].length_mm", station.length_mm)
    yield from _left_to_right("stations", [station.at_mm for station in ask.stations])


def _left_to_right(field: str, ats_mm: Sequence[float]) -> Iterator[Fault]:
    for index, at_mm in enumerate(ats_mm):
        if not (isfinite(at_mm) and -LONGEST_MM <= at_mm <= LONGEST_MM):
            yield Fault(
                field=f"{field}[{index}].at_mm",
                given=f"{at_mm:g} mm",
                allowed=f"within {LONGEST_MM:.0f} mm of the left end",
                do=_MEASURE,
            )
        elif index and at_mm <= ats_mm[index - 1]:
            yield Fault(
                field=f"{field}[{index}].at_mm",
                given=f"{at_mm:g} mm",
                allowed=f"more than the one before it, {ats_mm[index - 1]:g} mm",
                do="Give the stations from left to right, each place once.",
            )


def _ends(ask: CoursesAsk) -> Iterator[Fault]:
    if ask.overhang.greatest_mm >= ask.hanging_length_mm:
        yield Fault(
            field="overhang.greatest_mm",
            given=f"{ask.overhang.greatest_mm:g} mm",
            allowed=f"less than the hanging length, {ask.hanging_length_mm:g} mm",
            do="The first batten must stand above the fascia: check the overhang and the hanging length.",
        )


def _openings(ask: CoursesAsk) -> Iterator[Fault]:
    points = measured_lengths(ask)
    for index, opening in enumerate(ask.openings):
        field = f"openings[{index}]"
        sizes = (opening.width_mm, opening.height_mm)
        sound = all(map(_is_length, sizes)) and isfinite(opening.from_left_mm) and isfinite(opening.up_slope_mm)
        yield from _length(f"{field}.width_mm", opening.width_mm)
        yield from _length(f"{field}.height_mm", opening.height_mm)
        if not isfinite(opening.from_left_mm):
            yield Fault(
                field=f"{field}.from_left_mm", given=f"{opening.from_left_mm:g} mm", allowed="a length", do=_MEASURE
            )
        if not (isfinite(opening.up_slope_mm) and opening.up_slope_mm >= 0):
            yield Fault(
                field=f"{field}.up_slope_mm", given=f"{opening.up_slope_mm:g} mm", allowed="0 or more", do=_MEASURE
            )
        elif sound:
            ends_mm = (exact_length_mm(opening.from_left_mm), exact_length_mm(opening.right_mm))
            apex_mm = float(min(height_at_mm(points=points, at_mm=at_mm) for at_mm in ends_mm))
            if opening.head_mm >= apex_mm:
                yield Fault(
                    field=f"{field}.height_mm",
                    given=f"head at {opening.head_mm:g} mm up the slope",
                    allowed=f"below the apex, {apex_mm:.1f} mm there",
                    do="Measure the sill from the fascia face, up the slope, and the height up the slope.",
                )


def _nailed(ask: CoursesAsk) -> Iterator[Fault]:
    yield from _left_to_right("nailed", [rod.at_mm for rod in ask.nailed])
    for index, rod in enumerate(ask.nailed):
        yield from _nailed_rod(ask, field=f"nailed[{index}]", rod=rod)
        if len(rod.marks_mm) != len(ask.nailed[0].marks_mm):
            yield Fault(
                field=f"nailed[{index}].marks_mm",
                given=f"{len(rod.marks_mm)} battens",
                allowed=f"{len(ask.nailed[0].marks_mm)} battens, as at the first place",
                do="Measure the same battens, from the first to the last nailed, at every place.",
            )


def _nailed_rod(ask: CoursesAsk, *, field: str, rod: NailedRod) -> Iterator[Fault]:
    if not rod.marks_mm:
        yield Fault(
            field=f"{field}.marks_mm",
            given="none",
            allowed="one mark or more",
            do="Leave the place out, or measure it.",
        )
        return
    for number, mark_mm in enumerate(rod.marks_mm):
        yield from _length(f"{field}.marks_mm[{number}]", mark_mm)
        if number and not mark_mm > rod.marks_mm[number - 1]:
            yield Fault(
                field=f"{field}.marks_mm[{number}]",
                given=f"{mark_mm:g} mm",
                allowed=f"above the batten before it, {rod.marks_mm[number - 1]:g} mm",
                do="Give the top edges from the eaves up, each measured from the fascia face.",
            )
    last_mm = rod.marks_mm[-1]
    if isfinite(rod.at_mm) and isfinite(last_mm):
        apex_mm = float(height_at_mm(points=measured_lengths(ask), at_mm=exact_length_mm(rod.at_mm)))
        if last_mm > apex_mm:
            yield Fault(
                field=f"{field}.marks_mm[{len(rod.marks_mm) - 1}]",
                given=f"{last_mm:g} mm",
                allowed=f"at or below the apex, {apex_mm:.1f} mm there",
                do="Measure up the slope from the outer face of the fascia, to the top edge of the batten.",
            )
