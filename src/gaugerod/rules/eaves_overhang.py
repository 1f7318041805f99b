"""Do the tails reach far enough into the gutter, and not too far?

Source: the band is common practice (or the job's own); the published statements disagree with each other: one asks for
at least 50 mm over the gutter, one for 50 mm or the gutter's centre, whichever is less. Each is shown.
Scope: eaves over a gutter, overhang measured with the tape laid on the slope.
"""

from gaugerod.basis.band import Band
from gaugerod.basis.finding import TOUCH, Finding, Sense, not_covered
from gaugerod.rules.band_findings import within_band
from gaugerod.rules.real_figures import refuse_unreal
from gaugerod.standards.defaults import Statement, eaves_overhang_statements
from gaugerod.standards.edition import Edition


def eaves_overhang(*, where: str, overhang_mm: float, band: Band, edition: Edition) -> tuple[Finding, ...]:
    """The eaves overhang (mm on the slope) against its band, then against each published statement.

    A statement that is not met while another published one allows the overhang is *not covered*: the sources differ,
    and whoever signs the roof off decides. Raises NothingToSetOut for an overhang that is no measurement.
    Source and scope: see the head of this page.

    >>> from gaugerod.standards.defaults import eaves_overhang_band
    >>> band = eaves_overhang_band(Edition.GB)
    >>> [f.verdict.value for f in eaves_overhang(where="rear", overhang_mm=50.0, band=band, edition=Edition.GB)]
    ['within', 'within', 'within', 'within']
    >>> [f.verdict.value for f in eaves_overhang(where="rear", overhang_mm=55.0, band=band, edition=Edition.GB)]
    ['within', 'within', 'within', 'not-covered']
    """
    refuse_unreal(rule="eaves overhang", where=where, value=overhang_mm, unit="mm")
    statements = eaves_overhang_statements(edition)
    any_allows = any(_allows(statement, overhang_mm) for statement in statements)
    return (
        *within_band(
            rule="eaves overhang",
            where=where,
            length_mm=overhang_mm,
            band=band,
            too_little="Water runs back to the fascia.",
            too_much="Water may shoot past the gutter, and the tails are at risk from wind.",
        ),
        *(_against(statement, where, overhang_mm, another_allows=any_allows) for statement in statements),
    )


def _allows(statement: Statement, overhang_mm: float) -> bool:
    enough = statement.least_mm is None or overhang_mm >= statement.least_mm - TOUCH
    few_enough = statement.greatest_mm is None or overhang_mm <= statement.greatest_mm + TOUCH
    return enough and few_enough


def _against(statement: Statement, where: str, overhang_mm: float, *, another_allows: bool) -> Finding:
    allowed = _allows(statement, overhang_mm)
    if not allowed and another_allows:
        return not_covered(
            rule="eaves overhang, published",
            where=where,
            proposed=overhang_mm,
            unit="mm",
            citation=statement.citation,
            says=(
                f"Published sources differ. This one says {statement.says}; {overhang_mm:.1f} mm is not that, "
                "but another allows it. Ask whoever signs the roof off."
            ),
        )
    at_least = statement.least_mm is not None
    return Finding(
        rule="eaves overhang, published",
        where=where,
        proposed=overhang_mm,
        limit=statement.least_mm if at_least else statement.greatest_mm,
        unit="mm",
        sense=Sense.AT_LEAST if at_least else Sense.AT_MOST,
        citation=statement.citation,
        says=f"This source says {statement.says}.",
    )
