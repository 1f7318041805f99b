"""The command from cold: help, the result as JSON, the sheets as PDF; beside a bare start of Python."""

import resource
import subprocess
import sys
from collections.abc import Iterator
from importlib.resources import files
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter

ROUNDS = 5


def rows() -> Iterator[tuple[str, str, str]]:
    """The best of several starts each; then the most memory any of them held."""
    job = str(files("gaugerod.adapters.job_file").joinpath("examples", "demo.toml"))
    command = str(Path(sys.executable).parent / "gaugerod")
    bare_ms = _best_ms(["-c", "pass"])
    with TemporaryDirectory() as folder:
        commands = (
            ("gaugerod --help", ["--help"], ""),
            ("gaugerod set-out --json -", ["set-out", job, "--json", "-"], "; aim 250 ms"),
            ("gaugerod set-out --out, all sheets", ["set-out", job, "--out", folder], "; aim 1,000 ms"),
        )
        for what, words, aim in commands:
            taken_ms = _best_ms([command, *words])
            yield f"{what} / a bare start of Python", f"{taken_ms / bare_ms:.1f}×", f"{taken_ms:.0f} ms{aim}"
    most_mb = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024
    yield "most memory any of them held", f"{most_mb:.0f} MB", "aim 150 MB"


def _best_ms(words: list[str]) -> float:
    taken = []
    for _ in range(ROUNDS):
        start = perf_counter()
        subprocess.run([sys.executable, *words], check=True, capture_output=True)  # noqa: S603 - our own command
        taken.append((perf_counter() - start) * 1e3)
    return min(taken)


if __name__ == "__main__":
    for name, figure, note in rows():
        print(name, figure, note)
