"""The least fixing of one slope: what comes back."""

from dataclasses import dataclass
from enum import StrEnum

from gaugerod.basis.finding import Finding
from gaugerod.basis.working import Step
from gaugerod.fixing.held import Held
from gaugerod.fixing.nails import NailChosen
from gaugerod.fixing.why import Why
from gaugerod.laying.cut_unit import Remedy
from gaugerod.laying.laid import Rings
from gaugerod.rules.fixings import FieldRule, LeastFixing, PerimeterRule


class Region(StrEnum):
    """Where a unit lies: along an edge, or inside the slope."""

    PERIMETER = "perimeter"
    FIELD = "field"


@dataclass(frozen=True, slots=True)
class HeldRun:
    """Units side by side, all held alike: unit ``first`` and those after it. (Made by the thousand: positional.)

    ``least`` is what the rules ask of each, for a further rule to add to; ``held`` what is done.
    """

    first: int
    count: int
    why: Why
    least: LeastFixing
    held: Held

    @property
    def region(self) -> Region:
        """Perimeter or field."""
        return Region.PERIMETER if self.why else Region.FIELD


@dataclass(frozen=True, slots=True)
class HeldPiece:
    """One piece to saw, by its number on the cut list; with its neighbour where the two are cut from one wider unit.

    ``short_count``: nails it must have and keeps no hole for; it is drilled for them, clear of the cut.
    """

    number: int
    index: int
    remedy: Remedy
    why: Why
    least: LeastFixing
    held: Held
    short_count: int


@dataclass(frozen=True, slots=True, kw_only=True)
class HeldCourse:
    """One course. ``number`` from the eaves, 1 the lowest; 0 for a course under the eaves or a short one at the top.

    ``nailed`` is it one of the courses that the field rule nails throughout?
    """

    name: str
    number: int
    nailed: bool
    runs: tuple[HeldRun, ...]
    pieces: tuple[HeldPiece, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class KindCount:
    """How many units are held in one way for one reason."""

    region: Region
    why: Why
    held: Held
    units_count: int


@dataclass(frozen=True, slots=True, kw_only=True)
class FixingPlan:
    """The least fixing of one slope.

    ``nailed_courses``  courses that the field rule nails throughout, numbered from the eaves; every one of them where
                        ``field_rule.every_count`` is 1
    ``field_mm``        outlines of the field; the rest of the slope is perimeter
    ``kinds``           units by region, reason and way of holding
    ``total``           every fixing of the slope
    ``nail``            its size and mass; None where none is driven, or no size can be told
    ``method``          the job in steps
    """

    where: str
    field_rule: FieldRule
    perimeter_rule: PerimeterRule
    courses: tuple[HeldCourse, ...]
    extra: tuple[HeldCourse, ...]
    nailed_courses: tuple[int, ...]
    field_mm: Rings
    kinds: tuple[KindCount, ...]
    total: Held
    nail: NailChosen | None
    findings: tuple[Finding, ...]
    method: tuple[str, ...]
    working: Step

    def units_count(self, region: Region) -> int:
        """How many units lie in one region."""
        return sum(kind.units_count for kind in self.kinds if kind.region is region)
