"""The catalogue of double-lap coverings: generic plain tiles, slates by metric and old sizes. No maker's."""

import tomllib
from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any

from gaugerod.basis.citation import Basis, Citation
from gaugerod.basis.errors import Fault, InputRefused, TableDamaged
from gaugerod.coverings.catalogue import GENERIC
from gaugerod.coverings.double_lap import Heap, Nailing, PlainTile, RandomSlates, SizedSlate
from gaugerod.coverings.single_lap import Material

HEAD_HOLE_MM = 25.0
"""Head to nail hole of a head-nailed slate: 1 in, as printed in Notes on Building Construction (19th century)."""


@cache
def plain_tiles() -> Mapping[str, PlainTile]:
    """Every generic plain tile by name. Raises TableDamaged when a shipped record is not sound.

    >>> list(plain_tiles())
    ['clay-plain-265x165', 'concrete-plain-265x165']
    """
    return MappingProxyType({record["name"]: _plain_tile(record) for record in _records("plain_tiles", "tile")})


@cache
def sized_slates() -> Mapping[str, SizedSlate]:
    """Every slate size by name, centre-nailed: metric sizes first, then the old names.

    >>> [name for name, slate in sized_slates().items() if (slate.length_mm, slate.width_mm) == (510.0, 255.0)]
    ['countess']
    """
    return MappingProxyType({record["name"]: _sized_slate(record) for record in _records("sized_slates", "slate")})


def plain_tile(name: str) -> PlainTile:
    """The generic plain tile of this name. Raises InputRefused with the names there are.

    >>> plain_tile("clay-plain-265x165").length_mm
    265.0
    """
    if name not in plain_tiles():
        raise InputRefused([_unknown(name, plain_tiles())])
    return plain_tiles()[name]


def sized_slate(name: str) -> SizedSlate:
    """The slate size of this name. Raises InputRefused with the names there are.

    >>> sized_slate("lady").width_mm, sized_slate("lady").citation.basis.value
    (205.0, 'published')
    """
    if name not in sized_slates():
        raise InputRefused([_unknown(name, sized_slates())])
    return sized_slates()[name]


def random_slates(
    *, name: str, heaps: tuple[Heap, ...], nailing: Nailing, broken_ratio: float, joint_mm: float
) -> RandomSlates:
    """Random natural slates as counted on the ground.

    >>> stack = random_slates(name="old-roof", heaps=(Heap(length_mm=400.0, run_mm=9000.0),), nailing=Nailing.HEAD,
    ...                       broken_ratio=0.05, joint_mm=5.0)
    >>> stack.lost_at_head_mm
    25.0
    """
    return RandomSlates(
        name=name,
        title="Random slates in diminishing courses",
        material=Material.NATURAL_SLATE,
        nailing=nailing,
        hole_below_mm=HEAD_HOLE_MM,
        heaps=heaps,
        broken_ratio=broken_ratio,
        joint_mm=joint_mm,
        citation=GENERIC,
    )


def _records(file: str, kind: str) -> list[dict[str, Any]]:
    text = files("gaugerod.coverings").joinpath("double_lap_records", f"{file}.toml").read_text(encoding="utf-8")
    return read_records(file, text, kind=kind)


def read_records(name: str, text: str, *, kind: str) -> list[dict[str, Any]]:
    r"""The records of one file, each name once. Raises TableDamaged.

    >>> read_records("example", "[[tile]]\nname = 'a'\n[[tile]]\nname = 'a'", kind="tile")
    Traceback (most recent call last):
    gaugerod.basis.errors.TableDamaged: table example: a is there twice
    """
    try:
        values = tomllib.loads(text)
    except tomllib.TOMLDecodeError as wrong:
        raise TableDamaged(name, f"the records cannot be read: {wrong}") from wrong
    records: list[dict[str, Any]] = values.get(kind, [])
    if not records or values.keys() != {kind}:
        raise TableDamaged(name, f"records of kind {kind!r}, and nothing else, are wanted")
    names = [record.get("name") for record in records]
    for each in names:
        if not isinstance(each, str) or names.count(each) > 1:
            raise TableDamaged(name, f"{each} is there twice" if each else "a record has no name")
    return records


def _plain_tile(record: dict[str, Any]) -> PlainTile:
    try:
        return PlainTile(
            name=record["name"],
            title=record["title"],
            material=Material(record["material"]),
            length_mm=_number(record, "length_mm"),
            width_mm=_number(record, "width_mm"),
            hanging_length_mm=_number(record, "hanging_length_mm"),
            headlap_min_mm=_number(record, "headlap_min_mm"),
            headlap_max_mm=None,
            pitch_min_deg=_number(record, "pitch_min_deg"),
            sidelap_min_mm=_number(record, "sidelap_min_mm"),
            nibs=record["nibs"],
            eaves_length_mm=_number(record, "eaves_length_mm"),
            half_unit=record["half_unit"],
            unit_and_a_half=record["unit_and_a_half"],
            mass_kg=_number(record, "mass_kg"),
            citation=GENERIC,
        )
    except (KeyError, ValueError, TypeError) as wrong:
        raise TableDamaged(str(record.get("name")), f"the record is not sound: {wrong}") from wrong


def _sized_slate(record: dict[str, Any]) -> SizedSlate:
    try:
        return SizedSlate(
            name=record["name"],
            title=record["title"],
            material=Material(record["material"]),
            length_mm=_number(record, "length_mm"),
            width_mm=_number(record, "width_mm"),
            nailing=Nailing.CENTRE,
            hole_below_mm=HEAD_HOLE_MM,
            thickness_mm=None,
            slate_and_a_half=True,
            mass_kg=None,
            citation=Citation(source=record["source"], basis=Basis(record["basis"])),
        )
    except (KeyError, ValueError, TypeError) as wrong:
        raise TableDamaged(str(record.get("name")), f"the record is not sound: {wrong}") from wrong


def _number(record: Mapping[str, Any], field: str) -> float:
    value = float(record[field])
    if not value > 0:
        raise ValueError(f"{field} must be above nothing")
    return value


def _unknown(name: str, names: Mapping[str, object]) -> Fault:
    return Fault(field="covering.from", given=name, allowed=", ".join(names), do="Choose one of these.")
