"""The answer: the roof as it is, what leaks first, and what cures it."""

from dataclasses import dataclass

from gaugerod.as_built.advice import is_advice
from gaugerod.as_built.ask import RoofAsk
from gaugerod.as_built.evenness import CourseLine, Evenness
from gaugerod.as_built.laps import LapAsBuilt
from gaugerod.as_built.leaks import Leak
from gaugerod.as_built.needed import Needed
from gaugerod.as_built.strip_back import StripBack
from gaugerod.basis.finding import Finding, Verdict
from gaugerod.basis.working import Step


@dataclass(frozen=True, slots=True, kw_only=True)
class RodAsBuilt:
    """One place: its marks and tails, its laps, and how even its gaps are. mm up the slope from the fascia face.

    ``cover_mm``  how far the ridge covers the heads of the top course; None: not known, or the roof is not finished
    """

    at_mm: float
    length_mm: float
    marks_mm: tuple[float, ...]
    tails_mm: tuple[float, ...]
    laps: tuple[LapAsBuilt, ...]
    even: Evenness
    cover_mm: float | None

    @property
    def overhang_mm(self) -> float:
        """The first tail past the fascia face."""
        return -self.tails_mm[0]

    @property
    def below_apex_mm(self) -> float:
        """The last mark below the apex."""
        return self.length_mm - self.marks_mm[-1]


@dataclass(frozen=True, slots=True, kw_only=True)
class RoofCheck:
    """One slope checked. ``leaks``: short laps, what leaks first leading; ``strip_back`` None: nothing is to be stripped."""

    ask: RoofAsk
    needed: Needed
    rods: tuple[RodAsBuilt, ...]
    lines: tuple[CourseLine, ...]
    leaks: tuple[Leak, ...]
    strip_back: StripBack | None
    findings: tuple[Finding, ...]
    working: Step

    @property
    def courses_count(self) -> int:
        """How many courses were measured."""
        return len(self.rods[0].marks_mm)

    @property
    def least_lap(self) -> LapAsBuilt:
        """The smallest lap on the roof."""
        return min((lap for rod in self.rods for lap in rod.laps), key=lambda lap: lap.lap_mm)

    @property
    def advice(self) -> tuple[Finding, ...]:
        """What is outside a house tolerance only: it shows, it does not leak, and it is outside no rule."""
        return tuple(finding for finding in self.findings if is_advice(finding, edition=self.ask.edition))

    @property
    def by_rule(self) -> tuple[Finding, ...]:
        """Every finding but the advice."""
        return tuple(finding for finding in self.findings if not is_advice(finding, edition=self.ask.edition))

    @property
    def outside(self) -> tuple[Finding, ...]:
        """What is outside a rule: a limit of the record or of the edition, or one that was stated."""
        return tuple(finding for finding in self.by_rule if finding.verdict is Verdict.OUTSIDE)
