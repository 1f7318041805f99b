"""Diminishing courses: an 8 m rafter and a stack of 14 lengths; the whole answer, alternatives and working included."""

from time import perf_counter

from gaugerod.basis.rounding import Division
from gaugerod.coverings.double_lap import Heap
from gaugerod.setting_out.diminishing.plan import plan_diminishing
from tests.scenario.random_slates import ask

ROUNDS = 7
TARGET_MS = 50.0
CASES = {
    "lengths 25 mm apart, plenty": tuple(Heap(length_mm=600.0 - 25 * at, run_mm=38_000.0) for at in range(14)),
    "lengths 25 mm apart, just enough": tuple(Heap(length_mm=600.0 - 25 * at, run_mm=23_000.0) for at in range(14)),
    "lengths of no common measure": tuple(Heap(length_mm=611.0 - 26.9 * at, run_mm=38_000.0) for at in range(14)),
    "a stack that falls short": tuple(Heap(length_mm=600.0 - 25 * at, run_mm=8_000.0) for at in range(14)),
}


def rows() -> list[tuple[str, str, str]]:
    """The best of a few rounds for each stack, in ms."""
    return [
        (f"8 m, 14 {name}, {division.name.lower()}", f"{_best_ms(heaps, division):.1f} ms", f"target {TARGET_MS:g} ms")
        for name, heaps in CASES.items()
        for division in Division
    ]


def _best_ms(heaps: tuple[Heap, ...], division: Division) -> float:
    asked = ask(heaps=heaps, division=division)
    taken = []
    for _ in range(ROUNDS):
        start = perf_counter()
        plan_diminishing(asked)
        taken.append((perf_counter() - start) * 1000)
    return min(taken)
