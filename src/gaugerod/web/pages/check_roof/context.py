"""What the page of a roof check shows."""

from dataclasses import dataclass

from markupsafe import Markup

from gaugerod.sheets.sheet import Figure
from gaugerod.web.blocks import PartShown
from gaugerod.web.form import FaultShown, Field
from gaugerod.web.pages.findings.context import FindingRow
from gaugerod.web.pages.sheets.context import Download


@dataclass(frozen=True, slots=True, kw_only=True)
class RodFields:
    """The fields of one place measured; ``measured`` holds its marks or margins, many in one field."""

    number: int
    fields: tuple[Field, ...]
    measured: Field


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """The answer: the verdict first, then what leaks, what cures it, every lap, and what each rule says."""

    verdict: str
    """``outside`` a rule, ``within`` every rule, or ``open`` where only advice or open questions are left."""
    says: str
    covering: str
    leaks: tuple[str, ...]
    ranked_by: str
    figures: tuple[Figure, ...]
    wide: Markup
    pocket: Markup
    cure: tuple[PartShown, ...]
    courses: tuple[PartShown, ...]
    advice: tuple[str, ...]
    outside: tuple[FindingRow, ...]
    not_covered: tuple[FindingRow, ...]
    within: tuple[FindingRow, ...]
    downloads: tuple[Download, ...]
    """``href`` is the value that the form is sent with, for the files are made from what it holds."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SlopeToBegin:
    """A slope of the job that a check can be begun from; ``here`` is the one that is checked."""

    name: str
    href: str
    here: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckRoofContext:
    """The form by groups, and the answer as far as there is one."""

    slope: tuple[Field, ...]
    pitch: tuple[Field, ...]
    covering: tuple[Field, ...]
    figures: tuple[Field, ...]
    figures_open: bool
    ends: tuple[Field, ...]
    ends_open: bool
    rods: tuple[RodFields, ...]
    also: str
    """What the roof file holds besides, for the form to bring along."""
    begin_from: tuple[SlopeToBegin, ...]
    """The slopes of the job the check belongs to; of a check without a job: none."""
    faults: tuple[FaultShown, ...]
    lacking: tuple[str, ...]
    """What is still to be given, while a person types."""
    found: Found | None
    not_looked_at: tuple[str, ...]
    cautions: tuple[str, ...]
