"""Sentences in the unit the person chose: rules speak in millimetres, a job may be shown in feet and inches."""

import re
from collections.abc import Callable
from dataclasses import replace

from gaugerod.basis.finding import Finding
from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.job.result import Beneath, NotSetOut, Result, SlopeResult

Findings = tuple[Finding, ...]

_LENGTH = re.compile(r"(?<![\w.×])(-?\d+(?:\.\d+)?) mm(?![²\w])")


def sentence_in_unit(sentence: str, unit: LengthUnit) -> str:
    r"""The sentence with every length in it in ``unit``; millimetres lose an empty decimal, nothing else.

    A batten section (``38 × 25 mm``) keeps the name the trade gives it.

    >>> sentence_in_unit("The lap is 2.0 mm short of 76.2 mm.", LengthUnit.FT_IN)
    'The lap is 1/16" (2 mm) short of 3" (76.2 mm).'
    >>> sentence_in_unit("The lap is 2.0 mm short of 76.2 mm.", LengthUnit.MM)
    'The lap is 2 mm short of 76.2 mm.'
    """
    return _LENGTH.sub(lambda found: _length(found[1], unit), sentence)


def _length(written: str, unit: LengthUnit) -> str:
    if unit is LengthUnit.MM:
        return f"{written.removesuffix('.0')} mm"
    return f"{write_length(float(written), unit)} ({written.removesuffix('.0')} mm)"


def in_unit(result: Result, unit: LengthUnit) -> Result:
    """The result with every sentence in the unit of the job."""

    def findings(found: tuple[Finding, ...]) -> tuple[Finding, ...]:
        return tuple(replace(finding, says=sentence_in_unit(finding.says, unit)) for finding in found)

    def slope(result: SlopeResult) -> SlopeResult:
        return replace(result, findings=findings(result.findings))

    def not_set_out(result: NotSetOut) -> NotSetOut:
        return replace(result, findings=findings(result.findings))

    return replace(
        result,
        findings=findings(result.findings),
        slopes=tuple(slope(each) for each in result.slopes),
        not_set_out=tuple(not_set_out(each) for each in result.not_set_out),
        beneath=_beneath(result.beneath, findings, unit),
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
