"""What the page of the findings shows."""

from dataclasses import dataclass

from gaugerod.web.job_answer import Lack


@dataclass(frozen=True, slots=True, kw_only=True)
class FindingRow:
    """One rule at one place: the figure, its limit, what it means, and where it is from."""

    verdict: str
    rule: str
    where: str
    here: str
    limit: str
    says: str
    source: str
    basis: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FindingsContext:
    """Outside first, then what no rule covers, then what is within."""

    outside: tuple[FindingRow, ...]
    not_covered: tuple[FindingRow, ...]
    within: tuple[FindingRow, ...]
    lacks: tuple[Lack, ...]
