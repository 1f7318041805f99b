"""Units for the ventilation openings: strips along an edge, or single vents spread along it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from gaugerod.basis.citation import house
from gaugerod.basis.finding import TOUCH, Finding, Sense, not_covered
from gaugerod.basis.working import Step
from gaugerod.edges.air_openings import AirOpening, Level, air_openings
from gaugerod.edges.answer import EdgePart
from gaugerod.edges.ask import EdgesAsk
from gaugerod.edges.parts import mm, pieces
from gaugerod.edges.wished import AirUnit
from gaugerod.rules.misfit import misfit
from gaugerod.rules.real_figures import refuse_unless_above_nothing

RULE = "air units"
_BY_AREA = house("as many as give the opening asked for: the net free area of each is its maker's")


@dataclass(frozen=True, slots=True, kw_only=True)
class AirAtLine:
    """The units along one line."""

    parts: tuple[EdgePart, ...]
    says: tuple[str, ...]
    findings: tuple[Finding, ...]
    working: tuple[Step, ...]


def air_units_count(*, where: str, unit: AirUnit, slot_mm: float, length_mm: float) -> int:
    """Units for an opening (mm of continuous slot, over mm of edge): whole strips end to end, or single vents by their area.

    Source: arithmetic. Scope: net free areas as the maker states them. Raises NothingToSetOut for figures that are none.

    >>> strip = AirUnit(title="strip", area_mm2=10000.0, length_mm=1000.0)
    >>> vent = AirUnit(title="vent", area_mm2=20000.0)
    >>> [air_units_count(where="eaves", unit=unit, slot_mm=10.0, length_mm=length_mm)
    ...  for unit in (strip, vent) for length_mm in (9000.0, 9000.1, 10000.0)]
    [9, 10, 10, 5, 5, 5]
    """
    for value, said_in in ((slot_mm, "mm"), (length_mm, "mm"), (unit.area_mm2, "mm²")):
        refuse_unless_above_nothing(rule=RULE, where=where, value=value, unit=said_in)
    if unit.length_mm is None:
        return ceil((Fraction(slot_mm) * Fraction(length_mm) - Fraction(TOUCH)) / Fraction(unit.area_mm2))
    refuse_unless_above_nothing(rule=RULE, where=where, value=unit.length_mm, unit="mm")
    return ceil((Fraction(length_mm) - Fraction(TOUCH)) / Fraction(unit.length_mm))


def air_units(ask: EdgesAsk) -> tuple[dict[str, AirAtLine], tuple[Finding, ...]]:
    """The units of every line by its name, and what could not be counted. Openings with no unit given are told elsewhere."""
    openings = air_openings(ask)
    at_lines: dict[str, AirAtLine] = {}
    for line in ask.lines:
        here = [opening for opening in openings if opening.line is not None and opening.name == line.name]
        found = [_at_line(ask, opening) for opening in here]
        told = [each for each in found if each is not None]
        if told:
            at_lines[line.name] = _together(told)
    return at_lines, (*_nowhere(ask, openings), *_not_used(ask, openings))


def _unit(ask: EdgesAsk, opening: AirOpening) -> AirUnit | None:
    return ask.wished.air.low if opening.level is Level.LOW else ask.wished.air.high


def _at_line(ask: EdgesAsk, opening: AirOpening) -> AirAtLine | None:
    unit = _unit(ask, opening)
    if unit is None:
        return None
    if opening.only_instead and ask.wished.air.low is not None:
        return AirAtLine(parts=(), says=(_instead_not_counted(opening),), findings=(), working=())
    count = air_units_count(where=opening.name, unit=unit, slot_mm=opening.slot_mm, length_mm=opening.length_mm)
    part = pieces(
        item=f"air-unit-{opening.level.value}",
        what=unit.title,
        count=count,
        how=f"{_how(unit, opening)}, into {opening.serves}",
        citation=opening.citation if unit.length_mm is None else _BY_AREA,
    )
    return AirAtLine(
        parts=(part,),
        says=tuple(_says(opening, unit, count)),
        findings=tuple(_findings(opening, unit)),
        working=(_working(opening, unit, count),),
    )


def _together(told: Sequence[AirAtLine]) -> AirAtLine:
    return AirAtLine(
        parts=tuple(part for each in told for part in each.parts),
        says=tuple(line for each in told for line in each.says),
        findings=tuple(finding for each in told for finding in each.findings),
        working=tuple(step for each in told for step in each.working),
    )


def _how(unit: AirUnit, opening: AirOpening) -> str:
    if unit.length_mm is None:
        return f"for {opening.total_mm2:.0f} mm², {unit.area_mm2:.0f} mm² each"
    return f"whole strips of {mm(unit.length_mm)} along {mm(opening.length_mm)}"


def _says(opening: AirOpening, unit: AirUnit, count: int) -> Iterator[str]:
    every = "" if unit.length_mm is not None else f", one about every {opening.length_mm / count:.0f} mm"
    yield f"Air into {opening.serves}: {count} of {unit.title} along {mm(opening.length_mm)}{every}."
    if len(opening.slopes) > 1:
        yield f"Both slopes ask for air along this line; one opening of {opening.slot_mm:g} mm serves both."
    if opening.only_instead:
        yield "These stand in place of openings at the eaves, since no unit for the eaves is given."


def _instead_not_counted(opening: AirOpening) -> str:
    return (
        f"Openings of {opening.slot_mm:g} mm here might stand in place of those at the eaves. Units are counted at the eaves, so "
        "none are counted here."
    )


def _findings(opening: AirOpening, unit: AirUnit) -> Iterator[Finding]:
    """A strip against the slot: what it gives is its net free area spread over its length, the same in mm² to each mm."""
    if unit.length_mm is None:
        return
    given_mm = unit.area_mm2 / unit.length_mm
    enough = given_mm >= opening.slot_mm - TOUCH
    yield Finding(
        rule=RULE,
        where=opening.name,
        proposed=given_mm,
        limit=opening.slot_mm,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=opening.citation,
        says=(
            f"The strip gives {given_mm * 1000:.0f} mm² in each metre, {opening.slot_mm * 1000:.0f} mm² are asked for."
            if enough
            else f"The strip gives {given_mm * 1000:.0f} mm² in each metre where {opening.slot_mm * 1000:.0f} mm² are asked for: "
            f"as a slot it is {misfit(opening.slot_mm - given_mm)} too narrow. Use a strip with more net free area."
        ),
    )


def _working(opening: AirOpening, unit: AirUnit, count: int) -> Step:
    inputs: dict[str, float | str] = {"slot (mm)": opening.slot_mm, "length (mm)": opening.length_mm}
    if unit.length_mm is None:
        formula = "slot × length ÷ net free area of one, up to whole units"
        inputs["net free area of one (mm²)"] = unit.area_mm2
    else:
        formula = "length ÷ strip, up to whole strips"
        inputs["strip (mm)"] = unit.length_mm
    return Step(
        name=f"{opening.name}: air units",
        formula=formula,
        inputs=inputs,
        value=float(count),
        unit="count",
        citation=opening.citation,
    )


def _nowhere(ask: EdgesAsk, openings: Sequence[AirOpening]) -> Iterator[Finding]:
    for opening in openings:
        if opening.line is None and _unit(ask, opening) is not None:
            yield not_covered(
                rule=RULE,
                where=opening.name,
                proposed=opening.slot_mm,
                unit="mm",
                citation=opening.citation,
                says="Air is asked for along an edge that is no line of this roof, so no units are counted for it.",
                leaves_out=True,
            )


def _not_used(ask: EdgesAsk, openings: Sequence[AirOpening]) -> Iterator[Finding]:
    for level, unit in ((Level.LOW, ask.wished.air.low), (Level.HIGH, ask.wished.air.high)):
        if unit is not None and not any(opening.level is level for opening in openings):
            yield not_covered(
                rule=RULE,
                where=f"air at {level.value} level",
                proposed=None,
                unit="mm",
                citation=_BY_AREA,
                says=f"No opening at {level.value} level was worked out, so none of {unit.title} are counted.",
                leaves_out=True,
            )
