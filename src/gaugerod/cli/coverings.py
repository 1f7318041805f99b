"""``gaugerod coverings [NAME]``: the generic coverings."""

import argparse
import dataclasses
from collections.abc import Iterator
from difflib import get_close_matches

from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.coverings.catalogue import catalogue, covering
from gaugerod.coverings.double_lap import PlainTile, SizedSlate
from gaugerod.coverings.double_lap_catalogue import plain_tiles, sized_slates
from gaugerod.coverings.single_lap import SingleLapTile

RANDOM = "random-slates"


def run(given: argparse.Namespace) -> int:
    """List the records, or show one whole."""
    print("\n".join(_one(given.name) if given.name is not None else _all()))
    return 0


def _all() -> Iterator[str]:
    yield "Single lap"
    yield f"  {'name':34} {'gauge mm':>11} {'cover mm':>11}  what it is"
    for tile in catalogue():
        least = "…" if tile.gauge_min_mm is None else f"{tile.gauge_min_mm:.0f}"
        cover = "…" if tile.cover_closed_mm is None else f"{tile.cover_closed_mm:.0f}–{tile.cover_open_mm:.0f}"
        yield f"  {tile.name:34} {f'{least}–{tile.gauge_max_mm:.0f}':>11} {cover:>11}  {tile.title}"
    yield ""
    yield "Double lap: the headlap comes from the rules, by pitch and exposure"
    yield f"  {'name':34} {'size mm':>11}  what it is"
    units: list[PlainTile | SizedSlate] = [*plain_tiles().values(), *sized_slates().values()]
    for unit in units:
        yield f"  {unit.name:34} {f'{unit.length_mm:.0f} × {unit.width_mm:.0f}':>11}  {unit.title}"
    yield f"  {RANDOM:34} {'by heaps':>11}  Random slates in diminishing courses, as counted on the ground"
    yield ""
    yield "Generic records, not any maker's: check every figure against the tile in your hand (gaugerod measure)."


def _one(name: str) -> Iterator[str]:
    record: SingleLapTile | PlainTile | SizedSlate
    if name == RANDOM:
        yield f"{'name':20} {RANDOM}"
        yield f"{'what it is':20} slates as they lie on the ground: a job file lists them in heaps, one for each length"
        return
    if name in plain_tiles():
        record = plain_tiles()[name]
    elif name in sized_slates():
        record = sized_slates()[name]
    elif name in (names := [tile.name for tile in catalogue()]):
        record = covering(name)
    else:
        every = [*names, *plain_tiles(), *sized_slates(), RANDOM]
        near = get_close_matches(name, every, n=1, cutoff=0.0)[0]
        raise InputRefused([Fault("NAME", name, ", ".join(every), f"Did you mean {near}?")])
    for field in dataclasses.fields(record):
        yield f"{field.name:20} {_words(getattr(record, field.name))}"


def _words(value: object) -> str:
    if isinstance(value, tuple | frozenset):
        return ", ".join(str(item) for item in value) or "none"
    return "not known" if value is None else str(value)
