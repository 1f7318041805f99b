"""Sentences in the unit the person chose: rules speak in millimetres, a job may be shown in feet and inches."""

import re
from dataclasses import replace

from gaugerod.basis.finding import Finding
from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.job.result import NotSetOut, Result, SlopeResult

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
    )
