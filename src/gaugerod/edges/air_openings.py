"""Which line of the roof each ventilation opening runs along. An opening two slopes share at a ridge is one."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum

from gaugerod.basis.citation import Citation
from gaugerod.edges.ask import EdgeLine, EdgesAsk, LineKind
from gaugerod.substrate.ventilation.openings import Ventilation, VentOpening


class Level(StrEnum):
    """Where an opening is: along the eaves, or along the ridge or top edge."""

    LOW = "low"
    HIGH = "high"


@dataclass(frozen=True, slots=True, kw_only=True)
class AirOpening:
    """An opening along one line. ``line`` None: no line of this roof is its own.

    ``slopes``       that ask for it: two where they meet in the line, and the greater figure is then taken
    ``only_instead`` it may stand in place of those at the eaves, and is not asked for besides them
    """

    line: EdgeLine | None
    name: str
    level: Level
    slopes: tuple[str, ...]
    slot_mm: float
    length_mm: float
    serves: str
    only_instead: bool
    citation: Citation

    @property
    def total_mm2(self) -> float:
        """Net free area along the whole line."""
        return self.slot_mm * self.length_mm


def air_openings(ask: EdgesAsk) -> tuple[AirOpening, ...]:
    """Every opening that was asked for, at its line, once.

    Source: the guides state the opening of a ridge for the ridge, not for each slope that meets in it, so where both slopes ask
    for one the greater serves both (those of ``rules.ventilation``). Scope: openings into the same space.
    """
    once: dict[tuple[str, Level, str, bool], AirOpening] = {}
    for opening in _openings(ask):
        key = (opening.name, opening.level, opening.serves, opening.only_instead)
        met = once.get(key)
        once[key] = opening if met is None else _one(met, opening)
    return tuple(once.values())


def _openings(ask: EdgesAsk) -> Iterator[AirOpening]:
    for air in ask.air:
        yield from _at(ask, air, air.low, Level.LOW, only_instead=False)
        yield from _at(ask, air, air.high, Level.HIGH, only_instead=False)
        yield from _at(ask, air, air.instead, Level.HIGH, only_instead=True)


def _at(
    ask: EdgesAsk, air: Ventilation, openings: Sequence[VentOpening], level: Level, *, only_instead: bool
) -> Iterator[AirOpening]:
    lines = _lines_of(ask.lines, air.where, openings, level)
    for opening in openings:
        line = lines.get(opening.edge.name)
        yield AirOpening(
            line=line,
            name=f"{air.where}, {opening.edge.name}" if line is None else line.name,
            level=level,
            slopes=(air.where,),
            slot_mm=opening.slot_mm,
            length_mm=opening.edge.length_mm,
            serves=opening.serves,
            only_instead=only_instead,
            citation=opening.citation,
        )


def _lines_of(
    lines: Sequence[EdgeLine], slope: str, openings: Sequence[VentOpening], level: Level
) -> dict[str, EdgeLine]:
    """The line of each edge by its name; at high level, where none is called so, the shared ridge nearest in length."""
    by_name = {line.name: line for line in lines}
    shared = [line for line in lines if level is Level.HIGH and _shared_ridge(line, slope)]
    found: dict[str, EdgeLine] = {}
    for opening in openings:
        edge = opening.edge
        if edge.name in found:
            continue
        line = by_name.get(f"{slope}, {edge.name}")
        if line is None and shared:
            line = min(shared, key=lambda ridge: _apart_mm(ridge.length_mm, edge.length_mm))
            shared.remove(line)
        if line is not None:
            found[edge.name] = line
    return found


def _shared_ridge(line: EdgeLine, slope: str) -> bool:
    return line.of_two and line.kind is LineKind.RIDGE and slope in line.slopes


def _apart_mm(one_mm: float, other_mm: float) -> float:
    return max(one_mm, other_mm) - min(one_mm, other_mm)


def _one(met: AirOpening, other: AirOpening) -> AirOpening:
    """The opening that serves both slopes: the wider of the two, and the longer."""
    wider = other if other.slot_mm > met.slot_mm else met
    return replace(wider, slopes=(*met.slopes, *other.slopes), length_mm=max(met.length_mm, other.length_mm))
