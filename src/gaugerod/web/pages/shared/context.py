"""What a shared job shows."""

from dataclasses import dataclass

from gaugerod.web.pages.findings.context import FindingRow
from gaugerod.web.pages.setting_out.context import SlopeShown
from gaugerod.web.pages.sheets.context import Download


@dataclass(frozen=True, slots=True, kw_only=True)
class SharedContext:
    """The job as it is saved: slopes, findings outside or open, and the files."""

    title: str
    rev: int
    slopes: tuple[SlopeShown, ...]
    findings: tuple[FindingRow, ...]
    downloads: tuple[Download, ...]
    says: str
    """Why there is no answer; empty when there is one."""
