"""Whole buildings: the roof form, its slopes, and which of them are coursed together round their corners."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass

from gaugerod.basis.citation import common_practice
from gaugerod.basis.finding import Finding, Sense, not_covered
from gaugerod.geometry.roof_faces import RoofForm
from gaugerod.geometry.roof_form import roof_form
from gaugerod.job.model import Building, Slope
from gaugerod.job.outlined import slopes_of
from gaugerod.setting_out.courses import CoursesAsk
from gaugerod.setting_out.round_corners import CornerSlope, Shared, Together, set_together

ROUND_CORNERS = common_practice("courses run round hips and valleys at one height wherever pitches and gauges allow")


@dataclass(frozen=True, slots=True, kw_only=True)
class FormedBuilding:
    """A building with its roof form and the slopes to set out."""

    building: Building
    form: RoofForm
    slopes: tuple[Slope, ...]

    def groups(self, *, of: Collection[int]) -> tuple[tuple[int, ...], ...]:
        """The slopes of these numbers that hang together through the hips and valleys between them."""
        group_of = {slope.number: slope.number for slope in self.form.slopes if slope.number in of}
        for line in (*self.form.hips, *self.form.valleys):
            if line.left not in group_of or line.right not in group_of:
                continue
            old, new = group_of[line.left], group_of[line.right]
            group_of = {number: new if group == old else group for number, group in group_of.items()}
        groups: dict[int, list[int]] = {}
        for number, group in group_of.items():
            groups.setdefault(group, []).append(number)
        return tuple(tuple(sorted(numbers)) for numbers in groups.values())


def formed(building: Building) -> FormedBuilding:
    """Close the roof over a building. Raises what ``roof_form`` raises: faults, a roof that stays open, a question."""
    form = roof_form(building.plan, cheeks=building.cheeks)
    return FormedBuilding(building=building, form=form, slopes=slopes_of(building, form))


@dataclass(frozen=True, slots=True, kw_only=True)
class Corners:
    """How the slopes of a building share their courses: by slope name, with what is said; and the findings."""

    shared: dict[str, tuple[Shared, str]]
    says: tuple[str, ...]
    findings: tuple[Finding, ...]


def set_round_corners(building: FormedBuilding, asks: Sequence[CoursesAsk | None], *, diminishing: bool) -> Corners:
    """Set every group of slopes out together. ``asks`` in the order of the form's slopes; None: it has no courses to share.

    ``diminishing``: are the courses planned slope by slope, each from its share of one stack?
    """
    shared: dict[str, tuple[Shared, str]] = {}
    says: list[str] = []
    findings: list[Finding] = []
    set_out = [number for number, ask in enumerate(asks) if diminishing or ask is not None]
    for numbers in building.groups(of=set_out):
        if len(numbers) < 2:
            continue
        if diminishing:
            findings.append(_each_by_itself(building.building.name))
            continue
        slopes = [
            CornerSlope(name=ask.where, ask=ask, pitch_deg=building.form.slopes[number].pitch_deg)
            for number in numbers
            if (ask := asks[number]) is not None
        ]
        together = set_together(slopes)
        says.append(together.says)
        findings.append(_finding(building.building.name, together))
        shared.update({each.name: (each, together.says) for each in together.shared})
    return Corners(shared=shared, says=tuple(says), findings=tuple(findings))


def _each_by_itself(where: str) -> Finding:
    return not_covered(
        rule="courses round corners",
        where=where,
        proposed=None,
        unit="mm",
        citation=ROUND_CORNERS,
        says=(
            "Diminishing courses are planned slope by slope, so their lines may not meet at hips and valleys. Use one slope's "
            "plan all round where the rafters are alike."
        ),
    )


def _finding(where: str, together: Together) -> Finding:
    if together.meets:
        return Finding(
            rule="courses round corners",
            where=where,
            proposed=0.0,
            limit=0.0,
            unit="mm",
            sense=Sense.AT_MOST,
            citation=ROUND_CORNERS,
            says=together.says,
        )
    return not_covered(
        rule="courses round corners",
        where=where,
        proposed=together.step_mm,
        unit="mm",
        citation=ROUND_CORNERS,
        says=together.says,
    )
