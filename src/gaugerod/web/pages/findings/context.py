"""What the page of the findings shows."""

from dataclasses import dataclass

from gaugerod.web.job_answer import Lack


@dataclass(frozen=True, slots=True, kw_only=True)
class FindingRow:
    """One rule at one place, or at several that read the same: the figure, its limit, what it means, where it is from.

    ``part`` is the part of the job it is of; empty where there is only one.
    """

    verdict: str
    rule: str
    where: str
    here: str
    limit: str
    says: str
    source: str
    basis: str
    part: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class FindingsContext:
    """Outside first, then what no rule covers, then what is within."""

    parts_of_job: tuple[str, ...]
    outside: tuple[FindingRow, ...]
    not_covered: tuple[FindingRow, ...]
    within: tuple[FindingRow, ...]
    lacks: tuple[Lack, ...]
