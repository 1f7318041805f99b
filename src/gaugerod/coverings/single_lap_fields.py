"""The fields of a single-lap record: built from plain values and checked together, all faults collected."""

from collections.abc import Mapping, Sequence
from dataclasses import fields
from enum import StrEnum
from math import isfinite
from typing import TypeVar

from gaugerod.basis.citation import Citation
from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.coverings.single_lap import Bond, Form, Material, SingleLapTile

Plain = float | str | bool | Sequence[float] | Sequence[str] | None
"""A value as a record file or a job file gives it. Lengths are already in mm."""

LENGTHS = ("length_mm", "width_mm", "headlap_min_mm")
LENGTHS_OR_NONE = ("hanging_length_mm", "cover_closed_mm", "cover_open_mm", "headlap_max_mm", "mass_kg")
NUMBERS = (*LENGTHS, *LENGTHS_OR_NONE, "pitch_min_deg")
SINGLE_LAP_FIELDS = tuple(field.name for field in fields(SingleLapTile) if field.name not in {"measured", "citation"})
"""Every field that a record file gives and a job file may override."""

Chosen = TypeVar("Chosen", bound=StrEnum)


def written_name(field: str) -> str:
    """The field as it is written in a job file, where the value carries the unit: ``headlap_min``.

    >>> written_name("headlap_min_mm"), written_name("half_unit")
    ('headlap_min', 'half_unit')
    """
    for unit in ("_mm", "_deg", "_kg"):
        field = field.removesuffix(unit)
    return field


def single_lap_from(
    values: Mapping[str, Plain], *, citation: Citation, measured: frozenset[str] = frozenset()
) -> SingleLapTile:
    """A record from plain values, one for each of SINGLE_LAP_FIELDS. Fields not given are not known.

    Raises InputRefused with every fault: wrong kinds of value first, then values that contradict each other.
    """
    reading = _Reading(values)
    tile = SingleLapTile(
        name=reading.words("name"),
        title=reading.words("title"),
        form=reading.choice("form", Form),
        material=reading.choice("material", Material),
        length_mm=reading.number("length_mm"),
        width_mm=reading.number("width_mm"),
        hanging_length_mm=reading.number_or_none("hanging_length_mm"),
        cover_closed_mm=reading.number_or_none("cover_closed_mm"),
        cover_open_mm=reading.number_or_none("cover_open_mm"),
        headlap_min_mm=reading.number("headlap_min_mm"),
        headlap_max_mm=reading.number_or_none("headlap_max_mm"),
        pitch_min_deg=reading.number_or_none("pitch_min_deg"),
        mass_kg=reading.number_or_none("mass_kg"),
        high_points_mm=reading.lengths_mm("high_points_mm"),
        half_unit=reading.yes_or_no("half_unit"),
        unit_and_a_half=reading.yes_or_no("unit_and_a_half"),
        bonds=reading.bonds(),
        measured=measured,
        citation=citation,
    )
    if faults := reading.faults or contradictions(tile):
        raise InputRefused(faults)
    return tile


def contradictions(tile: SingleLapTile) -> list[Fault]:
    """Every pair of figures of one record that cannot both be true, with the size of the misfit."""
    faults: list[Fault] = []

    def at_most(small: str, large: str, why: str) -> None:
        small_mm, large_mm = getattr(tile, small), getattr(tile, large)
        if small_mm is not None and large_mm is not None and small_mm > large_mm:
            faults.append(
                Fault(
                    field=f"covering.{written_name(small)}",
                    given=f"{small_mm:g} mm",
                    allowed=f"at most {written_name(large)}, {large_mm:g} mm",
                    do=f"{why}: {small_mm - large_mm:g} mm too much. Measure both again.",
                )
            )

    at_most("hanging_length_mm", "length_mm", "The hanging length is part of the overall length")
    at_most("cover_closed_mm", "cover_open_mm", "Pushed up, a unit cannot cover more than pulled open")
    at_most("cover_open_mm", "width_mm", "A unit cannot cover more than its own width")
    at_most("cover_closed_mm", "width_mm", "A unit cannot cover more than its own width")
    at_most("headlap_min_mm", "headlap_max_mm", "The least lap cannot be over the greatest")
    for lap in ("headlap_min_mm", "headlap_max_mm"):
        lap_mm = getattr(tile, lap)
        if lap_mm is not None and lap_mm >= tile.length_mm:
            faults.append(
                _fault(lap, f"{lap_mm:g} mm", f"under the length, {tile.length_mm:g} mm", "No gauge is left.")
            )
    if tile.pitch_min_deg is not None and tile.pitch_min_deg >= 90:
        faults.append(
            _fault("pitch_min_deg", f"{tile.pitch_min_deg:g} degrees", "under 90 degrees", "Check the pitch.")
        )
    if any(not 0 <= point_mm <= tile.width_mm for point_mm in tile.high_points_mm):
        faults.append(
            _fault(
                "high_points_mm", _listed(tile.high_points_mm), f"0 to {tile.width_mm:g} mm", "Measure from the left."
            )
        )
    if list(tile.high_points_mm) != sorted(set(tile.high_points_mm)):
        faults.append(
            _fault("high_points_mm", _listed(tile.high_points_mm), "left to right, each once", "Put them in order.")
        )
    return faults


class _Reading:
    """Reads plain values into their kinds, noting each that will not do; what it gives for those is never used."""

    def __init__(self, values: Mapping[str, Plain]) -> None:
        self.values = values
        self.faults: list[Fault] = []

    def words(self, field: str) -> str:
        value = self.values.get(field)
        if isinstance(value, str) and value.strip():
            return value
        self._refuse(field, "words", "Write it in words.")
        return ""

    def choice(self, field: str, kind: type[Chosen]) -> Chosen:
        value = self.values.get(field)
        if isinstance(value, str) and value in set(kind):
            return kind(value)
        self._refuse(field, ", ".join(kind), "Choose one of these.")
        return next(iter(kind))

    def number(self, field: str) -> float:
        value = self.number_or_none(field)
        if self.values.get(field) is None:
            self._refuse(field, "a figure above nothing", "Give it: nothing can be set out without it.")
        return 1.0 if value is None else value

    def number_or_none(self, field: str) -> float | None:
        value = self.values.get(field)
        if value is None:
            return None
        if isinstance(value, (int, float)) and not isinstance(value, bool) and isfinite(value) and value > 0:
            return float(value)
        self._refuse(field, "a figure above nothing", "Measure it again.")
        return None

    def lengths_mm(self, field: str) -> tuple[float, ...]:
        value = self.values.get(field, ())
        if isinstance(value, (list, tuple)) and all(
            isinstance(each, (int, float)) and not isinstance(each, bool) and isfinite(each) for each in value
        ):
            return tuple(float(each) for each in value)
        self._refuse(field, "a list of figures", "Write them between [ and ].")
        return ()

    def yes_or_no(self, field: str) -> bool:
        value = self.values.get(field, False)
        if isinstance(value, bool):
            return value
        self._refuse(field, "true or false", "Say true if the maker has one.")
        return False

    def bonds(self) -> tuple[Bond, ...]:
        value = self.values.get("bonds", (Bond.STRAIGHT,))
        if isinstance(value, (list, tuple)) and value and len(set(map(str, value))) == len(value):
            words = [each for each in value if isinstance(each, str) and each in set(Bond)]
            if len(words) == len(value):
                return tuple(Bond(each) for each in words)
        self._refuse("bonds", f"a list of {', '.join(Bond)}", "Write the usual bond first, each once.")
        return (Bond.STRAIGHT,)

    def _refuse(self, field: str, allowed: str, do: str) -> None:
        value = self.values.get(field)
        self.faults.append(_fault(field, "nothing" if value is None else str(value), allowed, do))


def _fault(field: str, given: str, allowed: str, do: str) -> Fault:
    return Fault(field=f"covering.{written_name(field)}", given=given, allowed=allowed, do=do)


def _listed(lengths_mm: Sequence[float]) -> str:
    return ", ".join(f"{length_mm:g}" for length_mm in lengths_mm) + " mm"
