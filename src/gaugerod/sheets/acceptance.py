"""Which findings were accepted, by whom; and what was accepted that no finding speaks of."""

from collections.abc import Sequence
from dataclasses import dataclass

from gaugerod.basis.finding import Finding
from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.record_wished import Deviation
from gaugerod.sheets.told_once import Told, told_once

NOT_YET = "accepted by: ____________ not yet"


@dataclass(frozen=True, slots=True, kw_only=True)
class Answered:
    """A finding with every place it is true of, and the deviations that answer it there. None: it is not accepted."""

    told: Told
    deviations: tuple[Deviation, ...]

    @property
    def accepted(self) -> bool:
        """Is anyone named who accepted it?"""
        return any(each.accepted_by.strip() for each in self.deviations)

    @property
    def said(self) -> str:
        """By whom it was accepted."""
        return "; ".join(accepted_said(each) for each in self.deviations) or NOT_YET


def accepted_said(deviation: Deviation) -> str:
    """Who accepted it, and when.

    >>> accepted_said(Deviation(what="Old gutter kept.", accepted_by="the owner", on="1 May"))
    'accepted by the owner, 1 May'
    >>> accepted_said(Deviation(what="Old gutter kept.", accepted_by=" "))
    'accepted by: ____________ not yet'
    """
    if not deviation.accepted_by.strip():
        return NOT_YET
    day = f", {deviation.on.strip()}" if deviation.on.strip() else ""
    return f"accepted by {deviation.accepted_by.strip()}{day}"


def answers(deviation: Deviation, finding: Finding) -> bool:
    """Is this deviation of this finding? By its rule and place, both as the finding names them; no place: the rule everywhere."""
    rule, where = _plain(deviation.rule), _plain(deviation.where)
    return bool(rule) and rule == _plain(finding.rule) and where in {"", _plain(finding.where)}


def _plain(text: str) -> str:
    return " ".join(text.split()).casefold()


def answered(findings: Sequence[Finding], deviations: Sequence[Deviation], *, unit: LengthUnit) -> tuple[Answered, ...]:
    """Each finding told once, with what answers it; places that are answered differently are kept apart."""
    groups: dict[tuple[Deviation, ...], list[Finding]] = {}
    for finding in findings:
        groups.setdefault(tuple(each for each in deviations if answers(each, finding)), []).append(finding)
    return tuple(
        Answered(told=told, deviations=of)
        for of, group in groups.items()
        for told in told_once(group, name="", unit=unit)
    )
