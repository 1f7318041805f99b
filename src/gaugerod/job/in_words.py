"""Sentences in the unit the person chose: rules speak in millimetres, a job may be shown in metres, or feet and inches."""

import re
from collections.abc import Callable
from dataclasses import replace
from typing import assert_never

from gaugerod.basis.finding import Finding
from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.edges.answer import MadeEdge, RoofEdges
from gaugerod.job.result import Beneath, NotSetOut, Result, RoofResult, SlopeResult
from gaugerod.setting_out.across import Across
from gaugerod.setting_out.courses import Alternative, Courses, OpeningCourses
from gaugerod.take_off.answer import OrderLine, TakeOff

Findings = tuple[Finding, ...]

_NUMBER = r"-?\d+(?:\.\d+)?"
_LENGTH = re.compile(rf"(?<![\w.×])(?<!× )(?:({_NUMBER})( to |–))?({_NUMBER}) mm(?![²\w])")


def sentence_in_unit(sentence: str, unit: LengthUnit) -> str:
    r"""The sentence with every length in it in ``unit``; millimetres lose an empty decimal, nothing else.

    Centimetres and metres are the same figure with its point moved. Feet and inches are rounded, so the millimetres
    stand beside them. A section or size (``38 × 25 mm``) keeps the name the trade gives it.

    >>> sentence_in_unit("The lap is 2.0 mm short of 76.2 mm.", LengthUnit.FT_IN)
    'The lap is 1/16" (2 mm) short of 3" (76.2 mm).'
    >>> sentence_in_unit("The lap is 2.0 mm short of 76.2 mm, on battens 38 × 25 mm.", LengthUnit.CM)
    'The lap is 0.2 cm short of 7.62 cm, on battens 38 × 25 mm.'
    >>> sentence_in_unit("Clear by 5 to 15 mm.", LengthUnit.M)
    'Clear by 0.005 to 0.015 m.'
    """
    return _LENGTH.sub(lambda found: _length(found[1], found[2], found[3], unit), sentence)


def _length(first: str | None, between: str | None, last: str, unit: LengthUnit) -> str:
    figures = [figure.removesuffix(".0") for figure in (first, last) if figure is not None]
    joint = between or ""
    match unit:
        case LengthUnit.MM:
            return f"{joint.join(figures)} mm"
        case LengthUnit.CM | LengthUnit.M:
            places = 1 if unit is LengthUnit.CM else 3
            return f"{joint.join(_point_moved(figure, places) for figure in figures)} {unit.value}"
        case LengthUnit.FT_IN:
            inches = joint.join(write_length(float(figure), unit) for figure in figures)
            return f"{inches} ({joint.join(figures)} mm)"
        case _ as unreachable:
            assert_never(unreachable)


def _point_moved(figure: str, places: int) -> str:
    """The figure divided by ten so many times, digit for digit."""
    sign = "-" if figure.startswith("-") else ""
    whole, _, decimals = figure.removeprefix("-").partition(".")
    whole = whole.zfill(places + 1)
    return f"{sign}{whole[:-places]}.{whole[-places:]}{decimals}"


def in_unit(result: Result, unit: LengthUnit) -> Result:
    """The result with every sentence in the unit of the job."""

    def said(sentence: str) -> str:
        return sentence_in_unit(sentence, unit)

    def findings(found: tuple[Finding, ...]) -> tuple[Finding, ...]:
        return tuple(replace(finding, says=said(finding.says)) for finding in found)

    def alternative(one: Alternative) -> Alternative:
        return replace(one, change=said(one.change), costs=said(one.costs))

    def alternatives(found: tuple[Alternative, ...]) -> tuple[Alternative, ...]:
        return tuple(alternative(one) for one in found)

    def opening(one: OpeningCourses) -> OpeningCourses:
        return replace(one, says=said(one.says), segments_say=said(one.segments_say))

    def courses(one: Courses) -> Courses:
        return replace(
            one,
            why=said(one.why),
            findings=findings(one.findings),
            alternatives=alternatives(one.alternatives),
            openings=tuple(opening(each) for each in one.openings),
        )

    def across(one: Across) -> Across:
        return replace(
            one, why=said(one.why), findings=findings(one.findings), alternatives=alternatives(one.alternatives)
        )

    def slope(one: SlopeResult) -> SlopeResult:
        return replace(
            one,
            findings=findings(one.findings),
            courses=courses(one.courses),
            across=None if one.across is None else across(one.across),
            method=tuple(said(step) for step in one.method),
        )

    def not_set_out(one: NotSetOut) -> NotSetOut:
        return replace(
            one, why=said(one.why), findings=findings(one.findings), alternatives=alternatives(one.alternatives)
        )

    def roof(one: RoofResult) -> RoofResult:
        return replace(one, corners=tuple(said(corner) for corner in one.corners))

    return replace(
        result,
        findings=findings(result.findings),
        alternatives=tuple((where, alternative(one)) for where, one in result.alternatives),
        slopes=tuple(slope(each) for each in result.slopes),
        not_set_out=tuple(not_set_out(each) for each in result.not_set_out),
        roofs=tuple(roof(each) for each in result.roofs),
        beneath=_beneath(result.beneath, findings, unit),
        edges=None if result.edges is None else _edges(result.edges, findings, said),
        take_off=None if result.take_off is None else _take_off(result.take_off, findings, said),
    )


def _beneath(under: Beneath, findings: Callable[[Findings], Findings], unit: LengthUnit) -> Beneath:
    def says(lines: tuple[str, ...]) -> tuple[str, ...]:
        return tuple(sentence_in_unit(line, unit) for line in lines)

    battens, rolls = under.battens, under.rolls
    return replace(
        under,
        battens=None
        if battens is None
        else replace(battens, findings=findings(battens.findings), method=says(battens.method)),
        underlay=tuple(
            replace(each, findings=findings(each.findings), says=says(each.says)) for each in under.underlay
        ),
        rolls=None if rolls is None else replace(rolls, says=says(rolls.says)),
        air=tuple(replace(each, findings=findings(each.findings), says=says(each.says)) for each in under.air),
        fixings=tuple(
            replace(each, findings=findings(each.findings), method=says(each.method)) for each in under.fixings
        ),
        loads=tuple(replace(each, findings=findings(each.findings), says=says(each.says)) for each in under.loads),
        findings=findings(under.findings),
    )


def _edges(edges: RoofEdges, findings: Callable[[Findings], Findings], said: Callable[[str], str]) -> RoofEdges:
    def made(one: MadeEdge) -> MadeEdge:
        return replace(
            one,
            made=said(one.made),
            parts=tuple(replace(part, what=said(part.what), how=said(part.how)) for part in one.parts),
            lead=tuple(replace(pieces, how=said(pieces.how)) for pieces in one.lead),
            says=tuple(said(line) for line in one.says),
            findings=findings(one.findings),
        )

    return replace(edges, edges=tuple(made(each) for each in edges.edges), findings=findings(edges.findings))


def _take_off(taken: TakeOff, findings: Callable[[Findings], Findings], said: Callable[[str], str]) -> TakeOff:
    def line(one: OrderLine) -> OrderLine:
        return replace(one, measured=replace(one.measured, what=said(one.measured.what), how=said(one.measured.how)))

    return replace(
        taken,
        lines=tuple(line(each) for each in taken.lines),
        compared=tuple(replace(each, says=said(each.says)) for each in taken.compared),
        not_counted=tuple(said(each) for each in taken.not_counted),
        findings=findings(taken.findings),
    )
