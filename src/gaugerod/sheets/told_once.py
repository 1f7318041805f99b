"""Findings that say the same of several places, told once with all their places."""

from collections.abc import Sequence
from dataclasses import dataclass

from gaugerod.basis.finding import Finding
from gaugerod.basis.lengths import LengthUnit
from gaugerod.sheets.figure_said import figure_said


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """A finding and every place it is true of."""

    finding: Finding
    places: tuple[str, ...]

    @property
    def rule(self) -> str:
        """The rule, with the places below the slope where there are any.

        >>> from gaugerod.basis.citation import house
        >>> from gaugerod.basis.finding import Sense
        >>> finding = Finding(rule="verge overhang", where="rear, left, eaves", proposed=45.0, limit=38.0, unit="mm",
        ...                   sense=Sense.AT_LEAST, citation=house("example"), says="Kept.")
        >>> Told(finding=finding, places=("left, eaves", "left, top")).rule
        'Verge overhang (left, eaves; left, top)'
        """
        named = [place for place in self.places if place]
        rule = f"{self.finding.rule[:1].upper()}{self.finding.rule[1:]}"
        return f"{rule} ({'; '.join(named)})" if named else rule


def told_once(findings: Sequence[Finding], *, name: str, unit: LengthUnit) -> tuple[Told, ...]:
    """The findings in their order, those gathered that read the same, figure for figure, in all but the place.

    ``name`` is that of the slope, left out of the places.
    """
    gathered: dict[tuple[str, ...], tuple[Finding, list[str]]] = {}
    for finding in findings:
        read = (
            finding.rule,
            finding.verdict.value,
            finding.says,
            str(finding.citation),
            figure_said(finding.proposed, finding=finding, unit=unit, of_limit=False),
            figure_said(finding.limit, finding=finding, unit=unit, of_limit=True),
        )
        place = finding.where.removeprefix(name).removeprefix(", ")
        _, places = gathered.setdefault(read, (finding, []))
        if place not in places:
            places.append(place)
    return tuple(Told(finding=finding, places=tuple(places)) for finding, places in gathered.values())
