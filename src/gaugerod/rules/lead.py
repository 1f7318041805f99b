"""By how much do pieces of lead lap, how long may one be, and is its code heavy enough?

Source: leadwork detail sheets; NHBC Standards 7.2.20 table 22 and 7.2.21 (published). The lap on a slope is that of a
consultant's case study on valleys (290 mm at 15 degrees), its rise of 75 mm taken at every slope (house). Each figure
carries its own.
Scope: soakers of code 3; flashings, saddles and valleys of codes 4 and 5. Heavier lead goes by its product's rules.
"""

from collections.abc import Iterator
from fractions import Fraction

from gaugerod.basis.citation import Citation
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import TOUCH, Finding, Sense, not_covered
from gaugerod.basis.limit import Limit
from gaugerod.basis.rounding import Division, count_above
from gaugerod.geometry.pitch import sin_deg
from gaugerod.rules.misfit import misfit
from gaugerod.rules.real_figures import refuse_unless_above_nothing
from gaugerod.standards.edition import Edition
from gaugerod.standards.lead import LeadFigure, LeadPlace, lead_code, lead_figure, longest_piece
from gaugerod.standards.table import OffTable

LAP_RULE = "lead lap"
PIECE_RULE = "lead piece"
CODE_RULE = "lead code"
_PLUMB_DEG = 90.0


def lap_on_slope(*, where: str, rise_deg: float, edition: Edition) -> Limit | Finding:
    """The lap of one piece of lead over the next down a line of this rise: 75 mm of rise, so 75 / sin(rise). Whole mm, up.

    A *not covered* finding below 10 degrees, where lead is not lapped. Raises NothingToSetOut for a rise that is no
    measurement. Source and scope: see the head of this page.

    >>> [lap_on_slope(where="valley", rise_deg=rise_deg, edition=Edition.GB).value for rise_deg in (15.0, 30.0)]
    [290.0, 150.0]
    >>> lap_on_slope(where="valley", rise_deg=9.9, edition=Edition.GB).verdict.value
    'not-covered'
    """
    refuse_unless_above_nothing(rule=LAP_RULE, where=where, value=rise_deg, unit="degrees")
    if rise_deg >= _PLUMB_DEG:
        raise NothingToSetOut(f"{LAP_RULE}, {where}: {rise_deg:g} degrees is plumb or past it")
    flattest = lead_figure(edition, LeadFigure.LAPPED_SLOPE_LEAST)
    if rise_deg < flattest.value - TOUCH:
        return not_covered(
            rule=LAP_RULE,
            where=where,
            proposed=rise_deg,
            unit="deg",
            citation=flattest.citation,
            says=(
                f"This line rises at {rise_deg:.1f}°. Lead laid flatter than {flattest.value:g}° is not lapped but has drips "
                "or is welded, and no rule here covers that. No pieces are counted: ask a lead worker."
            ),
            leaves_out=True,
        )
    rise = lead_figure(edition, LeadFigure.RISE_BETWEEN_PIECES)
    lap_mm = Fraction(rise.value) / Fraction(sin_deg(rise_deg))
    return Limit(value=float(count_above(lap_mm, Division.MILLIMETRE)), unit="mm", citation=rise.citation)


def lead_lap(*, where: str, lap_mm: float, least: Limit) -> Finding:
    """The lap of pieces of lead as laid, against the least (mm).

    >>> from gaugerod.standards.lead import LeadFigure, lead_figure
    >>> least = lead_figure(Edition.GB, LeadFigure.LAP_LEVEL_LEAST)
    >>> [lead_lap(where="apron", lap_mm=lap_mm, least=least).verdict.value for lap_mm in (100.0, 99.9)]
    ['within', 'outside']
    """
    refuse_unless_above_nothing(rule=LAP_RULE, where=where, value=lap_mm, unit="mm")
    short_mm = least.value - lap_mm
    return Finding(
        rule=LAP_RULE,
        where=where,
        proposed=lap_mm,
        limit=least.value,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=least.citation,
        says=(
            f"Pieces lap by {lap_mm:g} mm."
            if short_mm <= TOUCH
            else f"The lap is {misfit(short_mm)} short: water blown up between the pieces gets in. Lap them by more."
        ),
    )


def piece_length(*, where: str, length_mm: float, longest: Limit) -> Finding:
    """The length of one piece of lead against the greatest (mm): a longer one tears as it warms and cools.

    >>> longest = longest_piece(Edition.GB, place=LeadPlace.FLASHING, code=4)
    >>> [piece_length(where="apron", length_mm=length_mm, longest=longest).verdict.value for length_mm in (1500.0, 1500.1)]
    ['within', 'outside']
    """
    refuse_unless_above_nothing(rule=PIECE_RULE, where=where, value=length_mm, unit="mm")
    over_mm = length_mm - longest.value
    return Finding(
        rule=PIECE_RULE,
        where=where,
        proposed=length_mm,
        limit=longest.value,
        unit="mm",
        sense=Sense.AT_MOST,
        citation=longest.citation,
        says=(
            f"The longest piece is {length_mm:g} mm."
            if over_mm <= TOUCH
            else f"The piece is {misfit(over_mm)} too long: lead fixed in longer pieces tears as it warms and cools. Cut it."
        ),
    )


def soaker_length(*, where: str, length_mm: float, edition: Edition) -> tuple[Finding, ...]:
    """The length of a soaker against both figures there are for code 3: 1500 mm as printed, 1000 mm as recalled.

    >>> [f.verdict.value for f in soaker_length(where="wall", length_mm=1000.0, edition=Edition.GB)]
    ['within', 'within']
    >>> [f.verdict.value for f in soaker_length(where="wall", length_mm=1000.1, edition=Edition.GB)]
    ['within', 'outside']
    """
    printed = longest_piece(
        edition, place=LeadPlace.SOAKER, code=int(lead_figure(edition, LeadFigure.SOAKER_CODE).value)
    )
    recalled = lead_figure(edition, LeadFigure.SOAKER_LONGEST_RECALLED)
    stated = (recalled,) if isinstance(printed, OffTable) else (printed, recalled)
    return tuple(piece_length(where=where, length_mm=length_mm, longest=longest) for longest in stated)


def lead_allowed(*, where: str, place: LeadPlace, code: int, edition: Edition) -> tuple[Finding, ...]:
    """Is lead of this code allowed here, as a flashing or in a valley? Lighter is outside, heavier not covered.

    Raises NothingToSetOut for soakers: they have the edition's own code. Source and scope: see the head of this page.

    >>> def verdicts(code: int) -> list[str]:
    ...     found = lead_allowed(where="apron", place=LeadPlace.FLASHING, code=code, edition=Edition.GB)
    ...     return [finding.verdict.value for finding in found]
    >>> verdicts(3), verdicts(4), verdicts(5), verdicts(6)
    (['outside'], ['within'], ['within'], ['not-covered'])
    """
    if place is LeadPlace.SOAKER:
        raise NothingToSetOut(f"{CODE_RULE}, {where}: soakers have the edition's own code")
    return tuple(_code_findings(where, place, code, edition))


def _code_findings(where: str, place: LeadPlace, code: int, edition: Edition) -> Iterator[Finding]:
    least = lead_figure(edition, LeadFigure.FLASHING_CODE_LEAST)
    known = lead_code(edition, code)
    longest = longest_piece(edition, place=place, code=code)
    if isinstance(known, OffTable):
        yield _no_rule(
            where,
            code,
            known.citation,
            f"There is no sheet lead of code {code} in the table, so no pieces are counted. Choose code 4 or 5.",
        )
    elif code >= least.value and isinstance(longest, OffTable):
        says = (
            f"Code {code} lead goes by the rules of its product; none read here says how long a piece may be. No pieces are "
            "counted: ask the lead's maker, or choose code 4 or 5."
        )
        yield _no_rule(where, code, longest.citation, says)
    else:
        yield Finding(
            rule=CODE_RULE,
            where=where,
            proposed=float(code),
            limit=least.value,
            unit="count",
            sense=Sense.AT_LEAST,
            citation=least.citation,
            says=(
                f"Code {code} lead will do here."
                if code >= least.value
                else f"Code {code} lead is for soakers only: in the open it splits. None is counted. Use code "
                f"{least.value:g} or heavier."
            ),
            leaves_out=code < least.value,
        )


def _no_rule(where: str, code: int, citation: Citation, says: str) -> Finding:
    return not_covered(
        rule=CODE_RULE,
        where=where,
        proposed=float(code),
        unit="count",
        citation=citation,
        says=says,
        leaves_out=True,
    )
