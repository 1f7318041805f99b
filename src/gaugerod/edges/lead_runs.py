"""Sheet lead along a run: equal pieces, none longer than its code allows, each lapped over the next.

Source: pieces = (run − lap) ÷ (longest piece − lap), up to whole pieces (arithmetic; the figures are their own).
"""

from fractions import Fraction
from math import ceil

from gaugerod.basis.citation import Citation
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import Finding, Verdict
from gaugerod.basis.limit import Limit
from gaugerod.edges.answer import LeadPieces, LeadUse
from gaugerod.rules.lead import lead_allowed, piece_length
from gaugerod.rules.real_figures import refuse_unless_above_nothing
from gaugerod.standards.edition import Edition
from gaugerod.standards.lead import LeadCode, LeadPlace, lead_code, longest_piece


def pieces_count(*, run_mm: float, longest_mm: float, lap_mm: float) -> int:
    """The fewest pieces that cover a run, each no longer than the longest and lapping the next.

    Raises NothingToSetOut for figures that are none, or a lap as long as a piece.

    >>> pieces_count(run_mm=1500.0, longest_mm=1500.0, lap_mm=100.0)
    1
    >>> pieces_count(run_mm=1500.1, longest_mm=1500.0, lap_mm=100.0)
    2
    >>> pieces_count(run_mm=4300.0, longest_mm=1500.0, lap_mm=100.0)
    3
    """
    for name, value in (("run", run_mm), ("longest piece", longest_mm)):
        refuse_unless_above_nothing(rule="lead pieces", where=name, value=value, unit="mm")
    if not 0 <= lap_mm < longest_mm:
        raise NothingToSetOut(f"lead pieces: a lap of {lap_mm:g} mm leaves nothing of pieces {longest_mm:g} mm long")
    run, longest, lap = Fraction(run_mm), Fraction(longest_mm), Fraction(lap_mm)
    if run <= longest + _NOISE:
        return 1
    return ceil((run - lap - _NOISE) / (longest - lap))


_NOISE = Fraction(1, 10**6)
"""A millionth of a millimetre is float noise, and no reason for another piece or a longer one."""


def lead_along(
    *,
    use: LeadUse,
    lead: LeadCode,
    place: LeadPlace,
    run_mm: float,
    width_mm: float,
    lap: Limit,
    how: str,
    citations: tuple[Citation, ...],
    edition: Edition,
) -> LeadPieces | None:
    """Equal pieces along a run, whole millimetres up; None where no figure says how long a piece of this code may be.

    Raises NothingToSetOut for a run or a width that is none.
    """
    refuse_unless_above_nothing(rule="lead pieces", where=use.value, value=width_mm, unit="mm")
    longest = longest_piece(edition, place=place, code=lead.code)
    if not isinstance(longest, Limit):
        return None
    count = pieces_count(run_mm=run_mm, longest_mm=longest.value, lap_mm=lap.value)
    lap_mm = lap.value if count > 1 else 0.0
    return LeadPieces(
        use=use,
        code=lead.code,
        thickness_mm=lead.thickness_mm,
        kg_m2=lead.mass_kg_m2,
        count=count,
        length_mm=float(ceil((Fraction(run_mm) + (count - 1) * Fraction(lap_mm) - _NOISE) / count)),
        width_mm=width_mm,
        run_mm=run_mm,
        lap_mm=lap_mm,
        how=how,
        citations=(lead.citation, longest.citation, *((lap.citation,) if count > 1 else ()), *citations),
    )


def run_findings(where: str, pieces: LeadPieces, *, place: LeadPlace, edition: Edition) -> tuple[Finding, ...]:
    """The length of each piece of a run against the longest its code allows here."""
    longest = longest_piece(edition, place=place, code=pieces.code)
    if not isinstance(longest, Limit):
        return ()
    return (piece_length(where=where, length_mm=pieces.length_mm, longest=longest),)


def single_pieces(
    *,
    use: LeadUse,
    lead: LeadCode,
    count: int,
    length_mm: float,
    width_mm: float,
    how: str,
    citations: tuple[Citation, ...],
) -> LeadPieces:
    """Pieces that stand alone, all alike: soakers, saddles."""
    return LeadPieces(
        use=use,
        code=lead.code,
        thickness_mm=lead.thickness_mm,
        kg_m2=lead.mass_kg_m2,
        count=count,
        length_mm=length_mm,
        width_mm=width_mm,
        run_mm=count * length_mm,
        lap_mm=0.0,
        how=how,
        citations=(lead.citation, *citations),
    )


def lead_of(
    *, where: str, place: LeadPlace, code: int, edition: Edition
) -> tuple[LeadCode | None, tuple[Finding, ...]]:
    """Lead of this code where it may lie here; None, and the findings that say why, where it may not or no rule reaches."""
    found = lead_allowed(where=where, place=place, code=code, edition=edition)
    lead = lead_code(edition, code)
    allowed = all(finding.verdict is Verdict.WITHIN for finding in found)
    return (lead if allowed and isinstance(lead, LeadCode) else None), found


def lead_named(edition: Edition, code: int) -> LeadCode:
    """Lead of a code that the edition itself names. LookupError when its table has lost it."""
    lead = lead_code(edition, code)
    if isinstance(lead, LeadCode):
        return lead
    raise LookupError(lead.says)
