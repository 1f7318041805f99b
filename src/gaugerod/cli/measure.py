"""``gaugerod measure``: a record of your own tile, from flags or by asking."""

import argparse
import json
import sys
from collections.abc import Mapping

from gaugerod.basis.errors import Fault, InputRefused, LengthUnclear, PitchUnclear
from gaugerod.basis.lengths import read_length_mm
from gaugerod.cli.measure_figures import FIGURES, Figure
from gaugerod.coverings.measured import Measured, TenMeasured, TestLay, measure
from gaugerod.coverings.single_lap import Bond, Form, Material, SingleLapTile
from gaugerod.geometry.read_pitch import read_pitch_deg

_STEPS = """\
Lay your own tiles out on the ground.
  1. Two on loose battens at the least lap: measure the lap, and the battens top edge to top edge.
  2. Push the battens as close as the tiles allow: measure again.
  3. Ten side by side, pushed up tight; then pulled fully open: measure each over all.
  4. With a rule: length, width, and from the bearing face of the nibs to the tail.
Press Enter where you have no figure.
"""


def run(given: argparse.Namespace) -> int:
    """Measure, say what was found, and print the table for the job file."""
    figures = {figure.field: getattr(given, figure.field) for figure in FIGURES}
    if given.ask or not any(figures.values()):
        figures = _asked(figures)
    lay = TestLay(
        form=Form(given.form),
        material=Material(given.material),
        ten_measured=TenMeasured(given.ten_measured),
        half_unit=given.half_unit,
        unit_and_a_half=given.unit_and_a_half,
        bonds=(Bond.BROKEN, Bond.STRAIGHT) if given.bond == Bond.BROKEN.value else (Bond.STRAIGHT,),
        **_read(figures),  # type: ignore[arg-type] # the keys are the fields of FIGURES, all of them numbers
    )
    found = measure(lay, name=given.name, title=given.title or "Own tile, measured")
    print("\n".join(_lines(found)))
    return 0 if found.record is not None else 2


def _asked(figures: Mapping[str, str | None]) -> dict[str, str | None]:
    print(_STEPS)
    answers: dict[str, str | None] = {}
    for figure in FIGURES:
        if figures[figure.field]:
            answers[figure.field] = figures[figure.field]
            continue
        answers[figure.field] = _one(figure)
    print()
    return answers


def _one(figure: Figure) -> str | None:
    """Ask until the answer can be read; an empty line is no figure."""
    while True:
        try:
            answer = input(f"{figure.help}: ").strip()
        except EOFError:
            return None
        if not answer:
            return None
        try:
            _number(figure, answer)
        except (LengthUnclear, PitchUnclear, ValueError) as unclear:
            print(f"  {unclear}", file=sys.stderr)
            continue
        return answer


def _read(figures: Mapping[str, str | None]) -> dict[str, float]:
    """The figures as numbers; every one that cannot be read is reported."""
    read, faults = {}, []
    for figure in FIGURES:
        text = figures[figure.field]
        if text is None:
            continue
        try:
            read[figure.field] = _number(figure, text)
        except (LengthUnclear, PitchUnclear, ValueError) as unclear:
            faults.append(Fault(figure.flag, text, figure.help, f"It cannot be read: {unclear}."))
    if faults:
        raise InputRefused(faults)
    return read


def _number(figure: Figure, text: str) -> float:
    match figure.metavar:
        case "LENGTH":
            return float(read_length_mm(text))
        case "PITCH":
            return read_pitch_deg(text)
        case _:
            return float(text.lower().removesuffix("kg").strip().replace(",", "."))


def _lines(found: Measured) -> list[str]:
    lines = []
    if found.record is None:
        lines.append("There is no record yet.")
    else:
        lines.extend(_record(found.record))
    if found.missing:
        lines.extend(["", "Not measured, and what that prevents:"])
        lines.extend(f"  {field}: {prevents}" for field, prevents in found.missing)
    return lines


def _record(tile: SingleLapTile) -> list[str]:
    """The record as the table of a job file."""
    least = "no least" if tile.gauge_min_mm is None else f"{tile.gauge_min_mm:g}"
    fields: list[tuple[str, float | None]] = [
        ("length", tile.length_mm),
        ("width", tile.width_mm),
        ("hanging_length", tile.hanging_length_mm),
        ("cover_closed", tile.cover_closed_mm),
        ("cover_open", tile.cover_open_mm),
        ("headlap_min", tile.headlap_min_mm),
        ("headlap_max", tile.headlap_max_mm),
        ("pitch_min", tile.pitch_min_deg),
        ("mass", tile.mass_kg),
    ]
    return [
        "Put this into your job file in place of its [covering] table:",
        "",
        "[covering]",
        f"# Gauge: {least} to {tile.gauge_max_mm:g} mm.",
        f"title = {json.dumps(tile.title, ensure_ascii=False)}",
        f'form = "{tile.form.value}"',
        f'material = "{tile.material.value}"',
        *(f"{key} = {round(value, 2):g}" for key, value in fields if value is not None),
        f"half_unit = {str(tile.half_unit).lower()}",
        f"unit_and_a_half = {str(tile.unit_and_a_half).lower()}",
        f"bonds = {_listed([bond.value for bond in tile.bonds])}",
        f"measured = {_listed(sorted(tile.measured))}",
    ]


def _listed(words: list[str]) -> str:
    return "[" + ", ".join(f'"{word}"' for word in words) + "]"
