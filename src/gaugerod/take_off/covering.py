"""The covering as it was laid: whole units, pieces two to a unit where an offcut serves, and the units made otherwise.

Source: the laying itself, unit by unit. Scope: net, before breakage; pieces are counted as the offcut plan cuts them.
"""

from collections.abc import Iterator, Sequence

from gaugerod.coverings.double_lap import PlainTile, RandomSlates, SizedSlate
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.laying.cut_unit import Remedy
from gaugerod.laying.offcuts import from_wider_units, wider_units
from gaugerod.setting_out.said import counted
from gaugerod.take_off.answer import Measured, Trade
from gaugerod.take_off.ask import Covering, LaidSlope, TakeOffAsk

OFFCUTS = "served by offcuts"


def main_item(covering: Covering) -> str:
    """The item most of the slope is covered with."""
    return "tile" if isinstance(covering, SingleLapTile | PlainTile) else "slate"


def random_item(length_mm: float) -> str:
    """The name of random slates of one length.

    >>> random_item(400.0), random_item(406.4)
    ('random-slates-400', 'random-slates-406.4')
    """
    return f"random-slates-{length_mm:g}"


def covering_measured(ask: TakeOffAsk) -> Iterator[Measured]:
    """Every unit of the covering, item by item."""
    if isinstance(ask.covering, RandomSlates):
        yield from _random(ask)
        return
    yield from _units(ask, ask.covering)


def _units(ask: TakeOffAsk, covering: SingleLapTile | PlainTile | SizedSlate) -> Iterator[Measured]:
    item = main_item(covering)
    size = f"{covering.length_mm:g} × {covering.width_mm:g} mm"
    by_slope = [(slope.name, _own_units_count(slope, item)) for slope in ask.slopes]
    saved = 0 if ask.offcuts is None else ask.offcuts.saved_count
    if saved:
        by_slope.append((OFFCUTS, -saved))
    sawn = sum(sawn_count(slope) for slope in ask.slopes)
    yield _measured(
        item,
        covering.title if _sized(covering.title) else f"{covering.title}, {size}",
        by_slope,
        f"{_whole_and_sawn(ask, item, sawn_count=sawn, saved_count=saved)}{_cloaked(ask)}",
        covering.mass_kg,
    )
    half = [(slope.name, slope.half_count) for slope in ask.slopes]
    if any(count for _, count in half):
        yield _measured("half-tile", f"half unit of {covering.title}", half, "half units as made", None)
    for remedy, wide in ((Remedy.UNIT_AND_A_HALF, f"{item}-and-a-half"), (Remedy.DOUBLE, f"double-{item}")):
        made_wide = [(slope.name, wide_count(slope, remedy)) for slope in ask.slopes]
        if any(count for _, count in made_wide):
            yield _measured(
                wide,
                f"{wide} for {covering.title}",
                made_wide,
                "one for each small cut and its neighbour together",
                None,
            )
    short = [
        (slope.name, sum(extra.units_count for extra in slope.extra if extra.item == "eaves-tile"))
        for slope in ask.slopes
    ]
    if any(count for _, count in short):
        yield _measured(
            "eaves-tile",
            f"eaves and top tile for {covering.title}",
            short,
            "courses under the eaves and at the top",
            None,
        )


def _whole_and_sawn(ask: TakeOffAsk, item: str, *, sawn_count: int, saved_count: int) -> str:
    """What whole units are taken for."""
    parts = ["whole units laid"]
    if sawn_count:
        parts.append(f"{counted(sawn_count, 'piece')} to saw from {counted(sawn_count - saved_count, 'unit')}")
    extra = {extra.name: None for slope in ask.slopes for extra in slope.extra if extra.item == item}
    if extra:
        parts.append(f"units cut for: {', '.join(extra)}")
    return "; ".join(parts)


def _cloaked(ask: TakeOffAsk) -> str:
    """What is said where cloaked verge tiles take the place of end tiles."""
    edges = () if ask.edges is None else ask.edges.edges
    if not any(part.item.startswith("cloaked-verge-tile") for edge in edges for part in edge.parts):
        return ""
    return "; the end tiles that cloaked verge tiles take the place of are among them"


def _sized(title: str) -> bool:
    """Does the title say its size already?"""
    return "×" in title


def _own_units_count(slope: LaidSlope, item: str) -> int:
    """Whole units of one slope, if no offcut served: laid whole, sawn, or cut for an extra course."""
    extra = sum(extra.units_count for extra in slope.extra if extra.item == item)
    return slope.whole_count + sawn_count(slope) + extra


def sawn_count(slope: LaidSlope) -> int:
    """Pieces to saw from whole units: those that come from wider ones left out."""
    return len(slope.pieces) - len(from_wider_units(slope.pieces))


def wide_count(slope: LaidSlope, remedy: Remedy) -> int:
    """Wider units of one kind: one for each small cut and its neighbour together."""
    return sum(1 for piece in wider_units(slope.pieces) if piece.remedy is remedy)


def _measured(item: str, what: str, by_slope: Sequence[tuple[str, int]], how: str, mass_kg: float | None) -> Measured:
    return Measured(
        item=item,
        what=what,
        trade=Trade.COVERING,
        unit="pieces",
        net=float(sum(count for _, count in by_slope)),
        by_slope=tuple((name, float(count)) for name, count in by_slope),
        how=how,
        each_kg=mass_kg,
    )


def _random(ask: TakeOffAsk) -> Iterator[Measured]:
    """Metres run of each length, course by course; the slates under the eaves are cut from what the plan says is left."""
    by_slope: dict[float, list[tuple[str, float]]] = {}
    for slope in ask.slopes:
        if slope.diminishing is None:
            continue
        for group in slope.diminishing.groups:
            courses = slope.course_runs_mm[group.first_course - 1 : group.last_course]
            by_slope.setdefault(group.length_mm, []).append((slope.name, sum(courses) / 1000))
        for heap in slope.diminishing.heaps:
            if heap.under_eaves_run_mm:
                by_slope.setdefault(heap.length_mm, []).append(
                    (f"{slope.name}, under the eaves", heap.under_eaves_run_mm / 1000)
                )
    for length_mm in sorted(by_slope, reverse=True):
        yield Measured(
            item=random_item(length_mm),
            what=f"random slates {length_mm:g} mm long, laid edge to edge",
            trade=Trade.COVERING,
            unit="m",
            net=sum(metres for _, metres in by_slope[length_mm]),
            by_slope=tuple(by_slope[length_mm]),
            how="the run of every course of this length, and what is cut for the course under the eaves",
        )
