"""What the page before the roof shows."""

from dataclasses import dataclass

from gaugerod.web.job_answer import Lack


@dataclass(frozen=True, slots=True, kw_only=True)
class OnRoofContext:
    """Where the page for the roof is opened and kept from; no places where the job is not set out."""

    open_href: str
    file_href: str
    rev: int
    outside_count: int
    """How many findings are outside their rule: not to be learnt on the roof first."""
    lacks: tuple[Lack, ...]
