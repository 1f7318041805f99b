"""A length against both ends of its band."""

from gaugerod.basis.band import Band
from gaugerod.basis.finding import TOUCH, Finding, Sense
from gaugerod.rules.misfit import misfit
from gaugerod.rules.real_figures import refuse_unreal


def within_band(
    *, rule: str, where: str, length_mm: float, band: Band, too_little: str, too_much: str
) -> tuple[Finding, Finding]:
    """Two findings: at least the least, at most the greatest. Raises NothingToSetOut for no measurement.

    >>> from gaugerod.basis.citation import house
    >>> band = Band(least_mm=38.0, greatest_mm=50.0, citation=house("example"))
    >>> found = within_band(rule="verge", where="left", length_mm=51.0, band=band, too_little="Stains.",
    ...                     too_much="Wind.")
    >>> [finding.verdict.value for finding in found], found[1].says
    (['within', 'outside'], '1.0 mm too much. Wind.')
    """
    refuse_unreal(rule=rule, where=where, value=length_mm, unit="mm")
    enough = length_mm >= band.least_mm - TOUCH
    few_enough = length_mm <= band.greatest_mm + TOUCH
    least = (
        f"At least {band.least_mm:g} mm." if enough else f"{misfit(band.least_mm - length_mm)} too little. {too_little}"
    )
    most = (
        f"At most {band.greatest_mm:g} mm."
        if few_enough
        else f"{misfit(length_mm - band.greatest_mm)} too much. {too_much}"
    )

    def finding(limit_mm: float, sense: Sense, says: str) -> Finding:
        return Finding(
            rule=rule,
            where=where,
            proposed=length_mm,
            limit=limit_mm,
            unit="mm",
            sense=sense,
            citation=band.citation,
            says=says,
        )

    return finding(band.least_mm, Sense.AT_LEAST, least), finding(band.greatest_mm, Sense.AT_MOST, most)
