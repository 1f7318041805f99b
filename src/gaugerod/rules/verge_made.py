"""The bed and the undercloak of a bedded verge.

Source: an independent consultant's trade article on verges; a page that quotes NHBC Standards on mortar (a weak source); published.
They disagree on the width of the bed: one beds the outer 50 to 75 mm of the undercloak, one asks for 100 mm or more. Each
is shown. Scope: verges bedded in mortar on an undercloak 150 mm wide; a dry verge goes by its maker.
"""

from gaugerod.basis.finding import TOUCH, Finding, Sense, not_covered
from gaugerod.rules.misfit import misfit
from gaugerod.rules.real_figures import refuse_unless_above_nothing
from gaugerod.standards.defaults import Statement
from gaugerod.standards.edges import EdgeFigure, edge_figure, verge_bed_statements
from gaugerod.standards.edition import Edition

BED_RULE = "verge bed"
UNDERCLOAK_RULE = "plain-tile undercloak"


def verge_bed(*, where: str, bed_mm: float, edition: Edition) -> tuple[Finding, ...]:
    """The width of the mortar bed (mm) against each published statement, and against the undercloak it lies on.

    A statement that is not met while another published one allows the bed is *not covered*: the sources differ, and whoever
    signs the roof off decides. Raises NothingToSetOut for a bed that is no measurement. Source and scope: see the head.

    >>> [[f.verdict.value for f in verge_bed(where="rear, left", bed_mm=bed_mm, edition=Edition.GB)]
    ...  for bed_mm in (75.0, 100.0)]
    [['within', 'not-covered', 'within'], ['not-covered', 'within', 'within']]
    >>> [f.verdict.value for f in verge_bed(where="rear, left", bed_mm=75.1, edition=Edition.GB)]
    ['outside', 'outside', 'within']
    """
    refuse_unless_above_nothing(rule=BED_RULE, where=where, value=bed_mm, unit="mm")
    statements = verge_bed_statements(edition)
    any_allows = any(_allows(statement, bed_mm) for statement in statements)
    return (
        *(_against(statement, where, bed_mm, another_allows=any_allows) for statement in statements),
        _on_undercloak(where, bed_mm, edition),
    )


def plain_tile_undercloak(
    *, where: str, gauge_mm: float, pitch_deg: float, edition: Edition
) -> tuple[Finding, Finding]:
    """May plain tiles be the undercloak: the gauge (mm) against its greatest, the pitch against its least.

    Raises NothingToSetOut for figures that are no measurements. Source and scope: see the head of this page.

    >>> [f.verdict.value for f in plain_tile_undercloak(where="left", gauge_mm=265.0, pitch_deg=30.0, edition=Edition.GB)]
    ['within', 'within']
    >>> [f.verdict.value for f in plain_tile_undercloak(where="left", gauge_mm=265.1, pitch_deg=29.9, edition=Edition.GB)]
    ['outside', 'outside']
    """
    refuse_unless_above_nothing(rule=UNDERCLOAK_RULE, where=where, value=gauge_mm, unit="mm")
    refuse_unless_above_nothing(rule=UNDERCLOAK_RULE, where=where, value=pitch_deg, unit="degrees")
    widest = edge_figure(edition, EdgeFigure.PLAIN_TILE_UNDERCLOAK_GAUGE_GREATEST)
    flattest = edge_figure(edition, EdgeFigure.PLAIN_TILE_UNDERCLOAK_PITCH_LEAST)
    gauge = Finding(
        rule=UNDERCLOAK_RULE,
        where=where,
        proposed=gauge_mm,
        limit=widest.value,
        unit="mm",
        sense=Sense.AT_MOST,
        citation=widest.citation,
        says=f"The gauge of {gauge_mm:.1f} mm is {'not ' if gauge_mm <= widest.value + TOUCH else ''}over {widest.value:g} mm.",
    )
    pitch = Finding(
        rule=UNDERCLOAK_RULE,
        where=where,
        proposed=pitch_deg,
        limit=flattest.value,
        unit="deg",
        sense=Sense.AT_LEAST,
        citation=flattest.citation,
        says=f"The pitch of {pitch_deg:.1f}° is {'not ' if pitch_deg >= flattest.value - TOUCH else ''}below {flattest.value:g}°.",
    )
    return gauge, pitch


def _allows(statement: Statement, bed_mm: float) -> bool:
    enough = statement.least_mm is None or bed_mm >= statement.least_mm - TOUCH
    few_enough = statement.greatest_mm is None or bed_mm <= statement.greatest_mm + TOUCH
    return enough and few_enough


def _against(statement: Statement, where: str, bed_mm: float, *, another_allows: bool) -> Finding:
    allowed = _allows(statement, bed_mm)
    if not allowed and another_allows:
        return not_covered(
            rule=BED_RULE,
            where=where,
            proposed=bed_mm,
            unit="mm",
            citation=statement.citation,
            says=f"Published sources differ. This one says {statement.says}; {bed_mm:g} mm is not that, but another allows it. "
            "Ask whoever signs the roof off.",
        )
    too_wide = statement.greatest_mm is not None and bed_mm > statement.greatest_mm + TOUCH
    at_most = too_wide or statement.least_mm is None
    return Finding(
        rule=BED_RULE,
        where=where,
        proposed=bed_mm,
        limit=statement.greatest_mm if at_most else statement.least_mm,
        unit="mm",
        sense=Sense.AT_MOST if at_most else Sense.AT_LEAST,
        citation=statement.citation,
        says=f"This source says {statement.says}."
        if allowed
        else f"This source says {statement.says}; {bed_mm:g} mm is not that.",
    )


def _on_undercloak(where: str, bed_mm: float, edition: Edition) -> Finding:
    width = edge_figure(edition, EdgeFigure.UNDERCLOAK_WIDTH)
    return Finding(
        rule="verge bed on the undercloak",
        where=where,
        proposed=bed_mm,
        limit=width.value,
        unit="mm",
        sense=Sense.AT_MOST,
        citation=width.citation,
        says=(
            f"The bed lies on the undercloak, which is {width.value:g} mm wide."
            if bed_mm <= width.value + TOUCH
            else f"The bed is {misfit(bed_mm - width.value)} wider than the undercloak it lies on. Make it narrower."
        ),
    )
