"""A roof to check as built, and its check with every sentence in the unit the person chose."""

from dataclasses import dataclass, replace

from gaugerod.as_built.ask import RoofAsk
from gaugerod.as_built.check_roof import check_roof
from gaugerod.as_built.roof_check import RoofCheck
from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.in_words import sentence_in_unit


@dataclass(frozen=True, slots=True, kw_only=True)
class RoofToCheck:
    """The slope to check, what the check is called, and the unit it is shown in."""

    title: str
    show_lengths_in: LengthUnit
    ask: RoofAsk


def checked_roof(roof: RoofToCheck) -> RoofCheck:
    """The check of this roof, said in its unit. Raises what ``check_roof`` raises."""
    check, unit = check_roof(roof.ask), roof.show_lengths_in
    cure = check.strip_back
    return replace(
        check,
        findings=tuple(replace(finding, says=sentence_in_unit(finding.says, unit)) for finding in check.findings),
        strip_back=None if cure is None else replace(cure, says=sentence_in_unit(cure.says, unit)),
    )
