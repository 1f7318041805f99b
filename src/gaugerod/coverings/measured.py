"""Measure your own: a record from tiles laid out loose on battens, with a tape and a rule."""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from math import isfinite
from typing import assert_never

from gaugerod.basis.citation import Citation, house
from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.coverings.single_lap import Bond, Form, Material, SingleLapTile
from gaugerod.coverings.single_lap_fields import single_lap_from, written_name

MISFIT_MM = 3.0
"""Figures of a test lay that should agree may miss by this much (house: the width of a pencil line at each end)."""
OWN_TILE: Citation = house("measured on the tiles to be laid")
TEN = 10


class TenMeasured(StrEnum):
    """How ten units were measured: over all, outer edge to outer edge; or from one left edge to the eleventh left edge."""

    OVER_ALL = "over-all"
    EDGE_TO_EDGE = "edge-to-edge"


@dataclass(frozen=True, slots=True, kw_only=True)
class TestLay:
    """What was measured. None: not measured. mm, kg and degrees.

    ``length_mm``, ``width_mm``  overall, of one unit
    ``hanging_length_mm``  bearing face of the nibs to the tail, by rule
    ``lap_mm``             the least lap wanted, at which two units were laid on loose battens
    ``gauge_at_lap_mm``    top edge to top edge of those two battens
    ``closest_gauge_mm``   the same with the battens pushed as close as the units allow
    ``ten_closed_mm``, ``ten_open_mm``  ten units pushed up tight, and pulled fully open, measured as ``ten_measured`` says
    """

    __test__ = False  # the name means a lay, not a test of ours

    form: Form
    material: Material
    length_mm: float | None = None
    width_mm: float | None = None
    hanging_length_mm: float | None = None
    lap_mm: float | None = None
    gauge_at_lap_mm: float | None = None
    closest_gauge_mm: float | None = None
    ten_closed_mm: float | None = None
    ten_open_mm: float | None = None
    ten_measured: TenMeasured = TenMeasured.OVER_ALL
    pitch_min_deg: float | None = None
    mass_kg: float | None = None
    high_points_mm: tuple[float, ...] = ()
    half_unit: bool = False
    unit_and_a_half: bool = False
    bonds: tuple[Bond, ...] = (Bond.STRAIGHT,)


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """The record, which of its fields were measured, and what each missing figure prevents.

    ``record`` is None while a figure is missing without which there is none.
    ``says`` tells what was done where two figures gave the same thing and did not quite agree.
    """

    record: SingleLapTile | None
    measured: tuple[str, ...]
    missing: tuple[tuple[str, str], ...]
    says: tuple[str, ...] = ()


def measure(lay: TestLay, *, name: str, title: str) -> Measured:
    """A record from a test lay.

    Raises InputRefused with every contradiction between the figures and the size of its misfit.

    >>> lay = TestLay(form=Form.FLAT, material=Material.CLAY, lap_mm=75.0, gauge_at_lap_mm=267.0, width_mm=230.0,
    ...               ten_closed_mm=1994.0, ten_open_mm=2048.0)
    >>> found = measure(lay, name="own", title="Own tile")
    >>> found.record.length_mm, found.record.cover_closed_mm, found.record.cover_open_mm
    (342.0, 196.0, 202.0)
    >>> [field for field, _ in found.missing]
    ['hanging_length', 'closest_gauge', 'pitch_min', 'mass']
    """
    if faults := [*_not_real(lay)] or [*_contradictions(lay), *_cover_contradictions(lay)]:
        raise InputRefused(faults)
    missing = tuple(_missing(lay))
    length_mm = _length_mm(lay)
    if length_mm is None or lay.lap_mm is None or lay.width_mm is None:
        return Measured(record=None, measured=(), missing=missing)
    closed_mm, open_mm = _cover_mm(lay, lay.ten_closed_mm), _cover_mm(lay, lay.ten_open_mm)
    fields = {
        "length_mm": length_mm,
        "width_mm": lay.width_mm,
        "hanging_length_mm": lay.hanging_length_mm,
        "cover_closed_mm": closed_mm,
        "cover_open_mm": open_mm,
        "headlap_min_mm": lay.lap_mm,
        "headlap_max_mm": None if lay.closest_gauge_mm is None else length_mm - lay.closest_gauge_mm,
        "pitch_min_deg": lay.pitch_min_deg,
        "mass_kg": lay.mass_kg,
        "high_points_mm": lay.high_points_mm,
    }
    measured = tuple(field for field, value in fields.items() if value not in (None, ()) and field != "pitch_min_deg")
    record = single_lap_from(
        {
            **fields,
            "name": name,
            "title": title,
            "form": lay.form.value,
            "material": lay.material.value,
            "half_unit": lay.half_unit,
            "unit_and_a_half": lay.unit_and_a_half,
            "bonds": [bond.value for bond in lay.bonds],
        },
        citation=OWN_TILE,
        measured=frozenset(measured),
    )
    return Measured(record=record, measured=measured, missing=missing, says=tuple(_says(lay)))


def _length_mm(lay: TestLay) -> float | None:
    """Measured with the rule, or what the test lay makes it (gauge + lap); the shorter of both, so no lap is short."""
    laid_mm = None if lay.lap_mm is None or lay.gauge_at_lap_mm is None else lay.gauge_at_lap_mm + lay.lap_mm
    if lay.length_mm is None or laid_mm is None:
        return laid_mm if lay.length_mm is None else lay.length_mm
    return min(lay.length_mm, laid_mm)


def _says(lay: TestLay) -> Iterator[str]:
    length_mm = _length_mm(lay)
    if lay.length_mm is not None and length_mm is not None and length_mm < lay.length_mm:
        yield (
            f"The rule makes the unit {lay.length_mm:g} mm long, gauge and lap make it {length_mm:g} mm. "
            "The shorter is used, so that no lap comes out short."
        )


def _cover_mm(lay: TestLay, ten_mm: float | None) -> float | None:
    """The cover of one unit: ten over all are nine covers and a full width; edge to edge they are ten covers."""
    if ten_mm is None or lay.width_mm is None:
        return None
    match lay.ten_measured:
        case TenMeasured.OVER_ALL:
            return (ten_mm - lay.width_mm) / (TEN - 1)
        case TenMeasured.EDGE_TO_EDGE:
            return ten_mm / TEN
        case _ as unreachable:
            assert_never(unreachable)


def _not_real(lay: TestLay) -> Iterator[Fault]:
    for field in ("length_mm", "width_mm", "hanging_length_mm", "lap_mm", "gauge_at_lap_mm", "closest_gauge_mm",
                  "ten_closed_mm", "ten_open_mm", "mass_kg", "pitch_min_deg"):  # fmt: skip
        value = getattr(lay, field)
        if value is not None and not (isfinite(value) and value > 0):
            yield Fault(written_name(field), f"{value:g}", "above nothing", "Measure it again, or leave it out.")


def _contradictions(lay: TestLay) -> Iterator[Fault]:
    """Figures that cannot all be right, each with the size of its misfit."""
    if lay.length_mm is not None and lay.lap_mm is not None and lay.gauge_at_lap_mm is not None:
        misfit_mm = lay.length_mm - lay.lap_mm - lay.gauge_at_lap_mm
        if not -MISFIT_MM <= misfit_mm <= MISFIT_MM:
            yield Fault(
                "gauge_at_lap",
                f"{lay.gauge_at_lap_mm:g} mm",
                f"length − lap, {lay.length_mm - lay.lap_mm:g} mm, to {MISFIT_MM:g} mm",
                f"They are {misfit_mm:+.1f} mm apart. Lay the two units again and measure lap, gauge and length.",
            )
    if lay.closest_gauge_mm is not None and (length_mm := _length_mm(lay)) is not None and lay.lap_mm is not None:
        greatest_mm = length_mm - lay.lap_mm
        if lay.closest_gauge_mm > greatest_mm:
            yield Fault(
                "closest_gauge",
                f"{lay.closest_gauge_mm:g} mm",
                f"at most the gauge at the lap, {greatest_mm:g} mm",
                f"It is {lay.closest_gauge_mm - greatest_mm:.1f} mm wider. Push the battens together, not apart.",
            )
    length_mm = _length_mm(lay)
    if lay.hanging_length_mm is not None and length_mm is not None and lay.hanging_length_mm >= length_mm:
        yield Fault(
            "hanging_length",
            f"{lay.hanging_length_mm:g} mm",
            f"less than the length, {length_mm:g} mm",
            f"It is {lay.hanging_length_mm - length_mm:.1f} mm too long. Measure from the face of the nibs to the tail.",
        )


def _cover_contradictions(lay: TestLay) -> Iterator[Fault]:
    """Ten units that cannot be as wide as they were measured, each with the size of its misfit."""
    if lay.ten_closed_mm is not None and lay.ten_open_mm is not None and lay.ten_closed_mm > lay.ten_open_mm:
        yield Fault(
            "ten_closed",
            f"{lay.ten_closed_mm:g} mm",
            f"at most ten pulled open, {lay.ten_open_mm:g} mm",
            f"It is {lay.ten_closed_mm - lay.ten_open_mm:.1f} mm wider. Were the two swapped?",
        )
    for field in ("ten_closed_mm", "ten_open_mm"):
        ten_mm = getattr(lay, field)
        if ten_mm is None or lay.width_mm is None:
            continue
        least_mm, most_mm = lay.width_mm, TEN * lay.width_mm
        over_mm, under_mm = ten_mm - most_mm, least_mm - ten_mm
        if over_mm > 0 or under_mm >= 0:
            yield Fault(
                written_name(field),
                f"{ten_mm:g} mm",
                f"over the width of one, {least_mm:g} mm, to the width of ten, {most_mm:g} mm",
                f"It is {over_mm:.1f} mm too wide: units cannot cover more than their width. Count the units again."
                if over_mm > 0
                else f"It is {under_mm:.1f} mm too narrow. Measure all ten.",
            )


def _missing(lay: TestLay) -> Iterator[tuple[str, str]]:
    """Every figure not measured, and what that prevents."""
    if _length_mm(lay) is None:
        yield "length", "no record: the length, or a lap with its gauge, is needed for the greatest gauge"
    if lay.lap_mm is None:
        yield "lap", "no record: without the least lap there is no greatest gauge"
    if lay.width_mm is None:
        yield "width", "no record: the last unit of a course counts with its full width"
    if lay.hanging_length_mm is None:
        yield "hanging_length", "the first batten cannot be placed"
    if lay.closest_gauge_mm is None:
        yield "closest_gauge", "there is no least gauge: the courses might close up further than the unit allows"
    if lay.ten_closed_mm is None or lay.ten_open_mm is None:
        yield "ten_closed and ten_open", "the perps cannot be set out"
    if lay.form is not Form.FLAT and not lay.high_points_mm:
        yield "high_points", "the verge cannot be made to finish on a crown of the profile"
    if lay.pitch_min_deg is None:
        yield "pitch_min", "the pitch is checked against the edition's threshold only: ask the maker"
    if lay.mass_kg is None:
        yield "mass", "the load on the roof cannot be reckoned"
