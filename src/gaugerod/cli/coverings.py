"""``gaugerod coverings [NAME]``: the generic coverings."""

import argparse
import dataclasses

from gaugerod.coverings.catalogue import catalogue, covering


def run(given: argparse.Namespace) -> int:
    """List the records, or show one whole."""
    if given.name is not None:
        _show(given.name)
        return 0
    print(f"{'name':34} {'gauge mm':>11} {'cover mm':>11}  what it is")
    for record in catalogue():
        least = "…" if record.gauge_min_mm is None else f"{record.gauge_min_mm:.0f}"
        cover = "…" if record.cover_closed_mm is None else f"{record.cover_closed_mm:.0f}–{record.cover_open_mm:.0f}"
        print(f"{record.name:34} {f'{least}–{record.gauge_max_mm:.0f}':>11} {cover:>11}  {record.title}")
    print("\nGeneric records, not any maker's: check every figure against the tile in your hand (gaugerod measure).")
    return 0


def _show(name: str) -> None:
    record = covering(name)
    for field in dataclasses.fields(record):
        print(f"{field.name:20} {_words(getattr(record, field.name))}")


def _words(value: object) -> str:
    if isinstance(value, tuple | frozenset):
        return ", ".join(str(item) for item in value) or "none"
    return "not known" if value is None else str(value)
