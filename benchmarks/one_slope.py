"""Courses and perps of a slope, one and ten thousand, beside a bare loop of the same arithmetic."""

from collections.abc import Iterator
from dataclasses import replace
from importlib.resources import files
from math import ceil
from time import perf_counter

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.geometry.taped_slope import TapedSlope
from gaugerod.geometry.true_shape import true_shape
from gaugerod.job.across_slope import across_slope
from gaugerod.job.model import Job, Slope
from gaugerod.job.up_slope import up_slope

MANY_COUNT = 10_000
ROUNDS = 50


def rows() -> Iterator[tuple[str, str, str]]:
    """One slope's best of many rounds, then ten thousand different ones; findings, reasons and working come with each."""
    text = files("gaugerod.adapters.job_file").joinpath("examples", "demo.toml").read_bytes()
    job = read_job_text(text)
    plain = replace(job.slopes[0], openings=())
    one = replace(plain, taped=TapedSlope(eaves_mm=7460.0, rafters=((0.0, 4905.0), (7460.0, 4918.0))))
    lengths_mm = [3000.0 + 0.4 * number for number in range(MANY_COUNT)]
    yield _row(
        "one slope, best of many", [_ms(job, one) for _ in range(ROUNDS)], [_bare_ms(4905.0) for _ in range(ROUNDS)]
    )
    many = [
        replace(plain, taped=TapedSlope(eaves_mm=7460.0, rafters=((0.0, up_mm), (7460.0, up_mm + 13.0))))
        for up_mm in lengths_mm
    ]
    start = perf_counter()
    for slope in many:
        _both(job, slope)
    taken_ms = (perf_counter() - start) * 1e3
    start = perf_counter()
    for up_mm in lengths_mm:
        _bare(up_mm)
    bare_ms = (perf_counter() - start) * 1e3
    yield (
        f"{MANY_COUNT} slopes / a bare loop",
        f"{taken_ms / bare_ms:.0f}×",
        f"{taken_ms / MANY_COUNT:.2f} ms each; {bare_ms / MANY_COUNT * 1e3:.0f} µs bare",
    )


def _row(what: str, taken_ms: list[float], bare_ms: list[float]) -> tuple[str, str, str]:
    taken, bare = min(taken_ms), min(bare_ms)
    return f"{what} / a bare loop", f"{taken / bare:.0f}×", f"{taken:.2f} ms; {bare * 1e3:.0f} µs bare; aim 1 ms"


def _ms(job: Job, slope: Slope) -> float:
    start = perf_counter()
    _both(job, slope)
    return (perf_counter() - start) * 1e3


def _both(job: Job, slope: Slope) -> None:
    up_slope(job, slope, shared=None)
    across_slope(job, slope, true_shape(slope.taped, where=slope.name))


def _bare_ms(up_mm: float) -> float:
    start = perf_counter()
    _bare(up_mm)
    return (perf_counter() - start) * 1e3


def _bare(up_mm: float) -> tuple[list[list[int]], list[int]]:
    """The arithmetic alone: two rods with equal gauges, and perps at one cover."""
    rods = []
    for length_mm in (up_mm, up_mm + 13.0):
        span_mm = length_mm - 37.5 - 348.0
        gauges = ceil(span_mm / 345.0)
        rods.append([round(348.0 + span_mm * number / gauges) for number in range(gauges + 1)])
    return rods, [round(-38.0 + 298.04 * number) for number in range(0, 26, 3)]


if __name__ == "__main__":
    for name, figure, note in rows():
        print(name, figure, note)
