"""Plain tiles, sized slates and random slates from a job file: the generic record with figures put right."""

from collections.abc import Iterator, Mapping
from dataclasses import fields, replace
from typing import Any

from gaugerod.basis.citation import Citation
from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.coverings.double_lap import Heap, MadeTo, Nailing, PlainTile, RandomSlates, SizedSlate
from gaugerod.coverings.double_lap_catalogue import plain_tiles, random_slates, sized_slates
from gaugerod.coverings.single_lap import Material
from gaugerod.standards.double_lap import DoubleLapFigure, double_lap_figure
from gaugerod.standards.edition import Edition

RANDOM = "random-slates"
"""The name to start from for slates counted on the ground."""
DOUBLE_LAP_KEYS = ("eaves_length", "nailing", "broken", "joint", "made_to")
_CHOICES = {"nailing": Nailing, "material": Material, "made_to": MadeTo}
"""Fields that hold one of a few words."""
_FIELD_OF = {"eaves_length": "eaves_length_mm", "unit_and_a_half": "slate_and_a_half"}


def double_lap_names() -> tuple[str, ...]:
    """Every name a double-lap covering can start from."""
    return (*plain_tiles(), *sized_slates(), RANDOM)


def double_lap_record(
    name: str | None, values: Mapping[str, Any], *, heaps: tuple[Heap, ...], measured: frozenset[str]
) -> PlainTile | SizedSlate | RandomSlates:
    """The record with the figures stated in the file. Raises InputRefused with every fault."""
    if name == RANDOM:
        return _random(values, heaps)
    record = plain_tiles().get(name or "") or sized_slates().get(name or "")
    if record is None:
        raise InputRefused([Fault("from", str(name), ", ".join(double_lap_names()), "Take one of these.")])
    faults = [_not_of_this(key, record) for key in values if _field(key, record) is None]
    if heaps:
        faults.append(Fault("heap", "heaps", f'from = "{RANDOM}"', "Heaps belong to random slates."))
    changes: dict[str, Any] = {
        field: _CHOICES[field](value) if field in _CHOICES else value
        for key, value in values.items()
        if (field := _field(key, record)) is not None
    }
    given = ", ".join(_as_written(key) for key in values)
    citation = Citation(source=f"{record.citation.source}; given in the job: {given}", basis=record.citation.basis)
    changed = record if not changes else replace(record, **changes, citation=citation)
    changed = replace(changed, measured=record.measured | measured)
    faults.extend(_contradictions(changed))
    if faults:
        raise InputRefused(faults)
    return changed


def refuse_double_lap_keys(stated: Mapping[str, Any], *, heaps: bool) -> None:
    """Raises InputRefused for keys that a single-lap tile has no use for."""
    wrong = [key for key in DOUBLE_LAP_KEYS if key in stated]
    if heaps:
        wrong.append("heap")
    if wrong:
        allowed = "a key of single-lap tiles, or a plain tile or slate in from"
        raise InputRefused(
            [Fault(key, key, allowed, "Take it out, or start from a plain tile or slate.") for key in wrong]
        )


def _field(key: str, record: PlainTile | SizedSlate) -> str | None:
    names = {field.name for field in fields(record)} - {"name", "citation", "measured"}
    if key in names:
        return key
    mapped = _FIELD_OF.get(key)
    return mapped if mapped in names else None


def _as_written(key: str) -> str:
    """The key of the file: it names no unit."""
    return key.removesuffix("_mm").removesuffix("_deg").removesuffix("_kg")


def _not_of_this(key: str, record: PlainTile | SizedSlate) -> Fault:
    written = _as_written(key)
    kind = "plain tile" if isinstance(record, PlainTile) else "slate"
    return Fault(written, written, f"a key of a {kind}", "This covering has no such figure. Take it out.")


def _contradictions(record: PlainTile | SizedSlate) -> Iterator[Fault]:
    if not isinstance(record, PlainTile):
        return
    if record.made_to is not None and record.material is not Material.CLAY:
        yield Fault(
            "made_to",
            record.made_to.value,
            "a key of clay plain tiles",
            "The standard is one of clay tiles; others are even as made. Take it out.",
        )
    if record.hanging_length_mm is not None and record.hanging_length_mm >= record.length_mm:
        yield Fault(
            "hanging_length",
            f"{record.hanging_length_mm:g} mm",
            f"less than the length, {record.length_mm:g} mm",
            "Measure from the face of the nibs to the tail.",
        )
    if record.headlap_max_mm is not None and record.headlap_max_mm < record.headlap_min_mm:
        yield Fault(
            "headlap_max",
            f"{record.headlap_max_mm:g} mm",
            f"at least the least lap, {record.headlap_min_mm:g} mm",
            "Were the two swapped?",
        )
    if record.headlap_min_mm * 2 >= record.length_mm:
        yield Fault(
            "headlap_min",
            f"{record.headlap_min_mm:g} mm",
            f"less than half the length, {record.length_mm / 2:g} mm",
            "A plain tile laps the second course below: check lap and length.",
        )


def _random(values: Mapping[str, Any], heaps: tuple[Heap, ...]) -> RandomSlates:
    faults = [
        Fault(key, key, "heap, nailing, broken, joint, title", "Random slates are given by their heaps. Take it out.")
        for key in values
        if key not in {"title", "nailing", "broken", "joint"}
    ]
    if not heaps:
        faults.append(Fault("heap", "none", "one heap for each length", "Sort by length and count each heap."))
    if faults:
        raise InputRefused(faults)
    broken = values.get("broken")
    if broken is None:
        broken = double_lap_figure(Edition.GB, DoubleLapFigure.RANDOM_SLATE_BROKEN).value
    record = random_slates(
        name=RANDOM,
        heaps=heaps,
        nailing=Nailing(values.get("nailing", Nailing.HEAD.value)),
        broken_ratio=float(broken),
        joint_mm=float(values.get("joint", 5.0)),
    )
    return replace(record, title=str(values.get("title", record.title)))
