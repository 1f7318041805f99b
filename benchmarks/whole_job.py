"""A hipped house of 200 m² in plain tiles, from its file to every sheet, order and record, from cold; beside its parts."""

import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter

from benchmarks.plain_house import PLAIN_HOUSE

ROUNDS = 3
BENEATH_AND_EDGES = """
[battens]
[underlay]
resistance = "low"
lies_on = "rafters"
[ventilation]
insulated = "at-ceiling"
[fixings]
nail_metal = "stainless-steel"
[load]
[edges.ridge]
made = "bedded"
unit = { length = "300 mm" }
hips = "bonnet"
[edges.eaves]
tray_length = "1.5 m"
"""
HOUSE = PLAIN_HOUSE + BENEATH_AND_EDGES


def rows() -> Iterator[tuple[str, str, str]]:
    """The best of a few starts, over that of a bare start of Python and of the same job without its sheets."""
    command = str(Path(sys.executable).parent / "gaugerod")
    with TemporaryDirectory() as folder:
        job = Path(folder) / "house.toml"
        job.write_text(HOUSE, encoding="utf-8")
        bare_s = _best_s(["-c", "pass"])
        alone_s = _best_s([command, "set-out", str(job)])
        whole_s = _best_s([command, "set-out", str(job), "--out", str(Path(folder) / "sheets")])
        sheets = len(list((Path(folder) / "sheets").iterdir()))
    yield "set out, no sheets / a bare start of Python", f"{alone_s / bare_s:.1f}×", f"{alone_s:.2f} s"
    yield f"all {sheets} files / set out, no sheets", f"{whole_s / alone_s:.1f}×", f"{whole_s:.2f} s; aim 1.5 s"


def _best_s(words: list[str]) -> float:
    taken = []
    for _ in range(ROUNDS):
        start = perf_counter()
        subprocess.run([sys.executable, *words], check=False, capture_output=True)  # noqa: S603 - our own command
        taken.append(perf_counter() - start)
    return min(taken)


if __name__ == "__main__":
    for name, figure, note in rows():
        print(name, figure, note)
