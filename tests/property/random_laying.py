"""Random slopes to lay: any simple outline, reflex corners and openings, level or fanned courses, any unit."""

from math import ceil, cos, pi, sin

from hypothesis import reject
from hypothesis import strategies as st

from gaugerod.basis.errors import InputRefused
from gaugerod.geometry.outline_faults import outline_faults
from gaugerod.geometry.polygon import Point
from gaugerod.laying.ask import Course, CourseLine, LapSide, LayingAsk, OffcutRule, Perps, Unit
from tests.scenario.laid_slopes import ring


def _star(draw: st.DrawFn, *, reach_mm: float, middle: Point, corners: st.SearchStrategy[int]) -> list[Point]:
    """A star-shaped outline with corners in and out, counter-clockwise, to a tenth of a mm or to whole decimetres."""
    count = draw(corners)
    turns = sorted(draw(st.lists(st.integers(0, 359), min_size=count, max_size=count, unique=True)))
    parts = draw(st.lists(st.integers(30, 100), min_size=count, max_size=count))
    digits = draw(st.sampled_from([1, 1, -2])) if reach_mm > 800 else 1
    return [
        (
            round(middle[0] + reach_mm * part / 100 * cos(turn * pi / 180), digits),
            round(middle[1] + reach_mm * part / 100 * sin(turn * pi / 180), digits),
        )
        for turn, part in zip(turns, parts, strict=True)
    ]


@st.composite
def random_slopes(draw: st.DrawFn) -> LayingAsk:
    """Slopes of up to some 8 × 8 m. Half of them on a grid of decimetres, so that edges fall on course lines and joints."""
    outline = _star(draw, reach_mm=draw(st.integers(500, 4000)), middle=(0.0, 0.0), corners=st.integers(3, 14))
    holes: list[list[Point]] = []
    for _ in range(draw(st.integers(0, 3))):
        middle = (float(draw(st.integers(-2000, 2000))), float(draw(st.integers(-2000, 2000))))
        hole = _star(draw, reach_mm=draw(st.integers(30, 700)), middle=middle, corners=st.integers(3, 6))[::-1]
        if not outline_faults(outline, holes=[*holes, hole]):
            holes.append(hole)
    on_grid = draw(st.booleans())
    cover_mm = float(draw(st.sampled_from([100, 200, 300])) if on_grid else draw(st.integers(1000, 4000)) / 10)
    gauge_mm = float(draw(st.sampled_from([100, 200])) if on_grid else draw(st.integers(800, 3500)) / 10)
    fanned = not on_grid and draw(st.booleans())
    first_lean_ratio = draw(st.integers(-100, 100)) / 10_000 if fanned else 0.0
    cover_lean_ratio = draw(st.integers(-20, 20)) / 10_000 if fanned else 0.0
    lowest, highest = min(y for _, y in outline), max(y for _, y in outline)
    first_mm = -gauge_mm * ceil(-lowest / gauge_mm) if on_grid else lowest - (gauge_mm if fanned else 0.0)
    count = ceil((highest - first_mm) / gauge_mm) + (1 if fanned else 0)
    lines = [
        CourseLine(at_mm=first_mm + at * gauge_mm, rise_ratio=draw(st.integers(-20, 20)) / 10_000 if fanned else 0.0)
        for at in range(count + 1)
    ]
    courses = tuple(
        Course(
            tail=line,
            unit_length_mm=2 * gauge_mm + 65.0,
            perps=Perps(
                first_mm=(at % 2) * cover_mm / 2,
                cover_mm=cover_mm,
                first_lean_ratio=first_lean_ratio,
                cover_lean_ratio=cover_lean_ratio,
            ),
        )
        for at, line in enumerate(lines[:-1])
    )
    unit = Unit(
        width_mm=cover_mm,
        lap_side=LapSide.LEFT,
        offcut_rule=draw(st.sampled_from(OffcutRule)),
    )
    try:
        return LayingAsk(where="random", outline=ring(outline), openings=tuple(map(ring, holes)), courses=courses,
                         head=lines[-1], unit=unit)  # fmt: skip
    except InputRefused:
        return reject()
