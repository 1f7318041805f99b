"""What a rule answers: within, outside, or not covered."""

from dataclasses import dataclass
from enum import StrEnum
from typing import assert_never

from gaugerod.basis.citation import Citation


class Verdict(StrEnum):
    """The three answers of a rule."""

    WITHIN = "within"
    OUTSIDE = "outside"
    NOT_COVERED = "not-covered"


class Sense(StrEnum):
    """Which side of its limit a proposed value must lie on. The limit itself is always allowed."""

    AT_LEAST = "at-least"
    AT_MOST = "at-most"


@dataclass(frozen=True, slots=True)
class Finding:
    """One rule applied to one place.

    ``proposed`` and ``limit`` are in ``unit``. ``limit`` is None where the rule does not reach this
    case: then the verdict is *not covered* and ``says`` names the scope that was left.
    ``says`` tells in one or two plain sentences what it means for the roof and what to do.
    ``leaves_out``: something of this place is in no quantity because of it, so an order has to name it.

    >>> from gaugerod.basis.citation import house
    >>> finding = Finding(rule="headlap", where="rear", proposed=74.0, limit=75.0, unit="mm",
    ...                   sense=Sense.AT_LEAST, citation=house("example"), says="Lap short by 1 mm.")
    >>> finding.verdict
    <Verdict.OUTSIDE: 'outside'>
    """

    rule: str
    where: str
    proposed: float | None
    limit: float | None
    unit: str
    sense: Sense
    citation: Citation
    says: str
    leaves_out: bool = False

    @property
    def verdict(self) -> Verdict:
        """Within when the proposed value is on the allowed side of the limit, the limit included."""
        if self.limit is None or self.proposed is None:
            return Verdict.NOT_COVERED
        match self.sense:
            case Sense.AT_LEAST:
                inside = self.proposed >= self.limit - TOUCH
            case Sense.AT_MOST:
                inside = self.proposed <= self.limit + TOUCH
            case _ as unreachable:
                assert_never(unreachable)
        return Verdict.WITHIN if inside else Verdict.OUTSIDE


TOUCH = 1e-6
"""Two lengths in mm nearer than this are the same length: a millionth of a millimetre is float noise."""


def not_covered(
    *,
    rule: str,
    where: str,
    proposed: float | None,
    unit: str,
    citation: Citation,
    says: str,
    leaves_out: bool = False,
) -> Finding:
    """The third verdict: no rule reaches this case, and ``says`` names what would."""
    return Finding(
        rule=rule,
        where=where,
        proposed=proposed,
        limit=None,
        unit=unit,
        sense=Sense.AT_LEAST,
        citation=citation,
        says=says,
        leaves_out=leaves_out,
    )
