"""Battens: the repeating pattern against HiGHS on the same model in the same run, and a hipped house by itself.

Pattern: 11.4 m on rafters at 600 mm, 30 courses, lengths of 3.6, 4.2, 4.8 and 5.1 m; no kerf, and 3 mm of kerf. House: some
200 m² of roof, four slopes in plain tiles at a gauge of 100 mm, 69 battens each.
"""

from time import perf_counter

from gaugerod.laying.ask import EdgeKind
from gaugerod.substrate.battens.lines import End, Span
from gaugerod.substrate.battens.plan import plan_battens
from gaugerod.substrate.battens.repeating import Repeating, best_repeating
from gaugerod.substrate.battens.ways import PieceRules, ways_of
from tests.scenario.batten_programme import Course, programme, solved
from tests.scenario.battened_slopes import asked, hipped_house

STOCK = (3600, 4200, 4800, 5100)
COURSES_COUNT, REPEAT_COUNT, MOST_PIECES = 30, 4, 4
HOUSE_TARGET_MS = 150.0
ROUNDS = 5


def rows() -> list[tuple[str, str, str]]:
    """The ratio for each kerf, then the house."""
    return [*(_against_highs(kerf_mm) for kerf_mm in (0.0, 3.0)), _house()]


def _against_highs(kerf_mm: float) -> tuple[str, str, str]:
    rafters = tuple(600.0 * at for at in range(20))
    course = Course(0.0, 11_400.0, rafters, 1200, STOCK, kerf_mm)
    taken = []
    for _ in range(ROUNDS):
        start = perf_counter()
        best = _searched(course)
        taken.append((perf_counter() - start) * 1000)
    model = programme(course, courses_count=COURSES_COUNT, repeat_count=REPEAT_COUNT, most_pieces=MOST_PIECES)
    start = perf_counter()
    optimum = solved(model)
    highs_ms = (perf_counter() - start) * 1000
    found = (sum(cut.stock_mm for cut in best.cuts), len(best.cuts))
    if optimum != found or not best.proved:
        raise AssertionError(f"the two ways disagree: {found} against {optimum}")
    return (
        f"19 bays, 30 courses, kerf {kerf_mm:g} mm, against HiGHS",
        f"{min(taken) / highs_ms:.3f}",
        f"{min(taken):.1f} ms against {highs_ms:.0f} ms, both {found[0] / 1000:.1f} m in {found[1]}; target 1.00",
    )


def _searched(course: Course) -> Repeating:
    """The whole search, from the ways of one batten on."""
    span = Span(End(course.left_mm, EdgeKind.VERGE, "verge"), End(course.right_mm, EdgeKind.VERGE, "verge"), 1.0)
    rules = PieceRules(least_mm=course.least_mm, greatest_mm=max(STOCK), supports_count=3, same_support_mm=50.0)
    best = best_repeating(
        ways_of(span, course.rafters_mm, rules),
        courses_count=COURSES_COUNT,
        repeat_count=REPEAT_COUNT,
        stock_mm=STOCK,
        kerf_mm=course.kerf_mm,
    )
    if best is None:
        raise AssertionError("no pattern found")
    return best


def _house() -> tuple[str, str, str]:
    ask = asked(*hipped_house(length_mm=14_000.0, width_mm=11_500.0, pitch_deg=35.0, gauge_mm=100.0))
    taken = []
    for _ in range(ROUNDS):
        start = perf_counter()
        battens = plan_battens(ask)
        taken.append((perf_counter() - start) * 1000)
    waste = battens.cutting.waste_ratio
    return (
        "hipped house, 276 battens, the whole answer",
        f"{min(taken):.1f} ms",
        f"{waste:.2%} of {battens.cutting.net_mm / 1000:.0f} m left over; target {HOUSE_TARGET_MS:g} ms",
    )
