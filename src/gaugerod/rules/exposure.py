"""Do the lap and pitch figures reach this driving rain?

Source: a supplier-hosted headlap table (published) for the classes: lap figures are for spells below 56.5 litres per
square metre, or for 56.5 and more. That a larger lap, often 100 mm, is called for at low pitch is common practice:
the pitch where it begins is the maker's, so it is no limit here.
Scope: single-lap tiles in the United Kingdom.
"""

from gaugerod.basis.citation import common_practice
from gaugerod.basis.finding import TOUCH, Finding, Sense, not_covered
from gaugerod.rules.real_figures import refuse_unless_above_nothing
from gaugerod.standards.defaults import single_lap_pitch_least
from gaugerod.standards.edition import Edition, Exposure
from gaugerod.standards.exposure import spell_band

LARGER_LAP = common_practice(
    "larger headlap at low pitch, often 100 mm, below a pitch that varies from 22.5 to 30 degrees with the product"
)


def exposure(*, where: str, exposure: Exposure, edition: Edition) -> Finding:
    """The driving rain of the site against the class the default lap and pitch are for.

    Source and scope: see the head of this page.

    >>> [exposure(where="rear", exposure=each, edition=Edition.GB).verdict.value for each in Exposure]
    ['within', 'within', 'not-covered', 'not-covered']
    """
    band = spell_band(edition, exposure)
    severe_from = spell_band(edition, Exposure.SEVERE).spell_from_l_m2
    if band.spell_to_l_m2 is not None and band.spell_to_l_m2 <= severe_from + TOUCH:
        return Finding(
            rule="exposure",
            where=where,
            proposed=band.spell_to_l_m2,
            limit=severe_from,
            unit="l/m2 per spell",
            sense=Sense.AT_MOST,
            citation=band.citation,
            says=f"{_title(exposure)} exposure: spells stay under {severe_from:g} l/m², the milder of two classes.",
        )
    return not_covered(
        rule="exposure",
        where=where,
        proposed=None,
        unit="l/m2 per spell",
        citation=band.citation,
        says=(
            f"{_title(exposure)} exposure: spells reach {band.spell_from_l_m2:g} l/m² and more. No published lap for "
            "single-lap tiles is held here for that; ask the maker for lap, pitch and fixing at this exposure."
        ),
    )


def low_pitch_lap(*, where: str, pitch_deg: float, headlap_mm: float, edition: Edition) -> tuple[Finding, ...]:
    """A caution at low pitch: makers commonly ask for a larger lap, by a figure that only they can give.

    Nothing to say at or above the default pitch. Raises NothingToSetOut for a pitch or lap that is not above nothing.
    Source and scope: see the head of this page.

    >>> low_pitch_lap(where="rear", pitch_deg=30.0, headlap_mm=75.0, edition=Edition.GB)
    ()
    >>> [f.verdict.value for f in low_pitch_lap(where="rear", pitch_deg=29.9, headlap_mm=75.0, edition=Edition.GB)]
    ['not-covered']
    """
    refuse_unless_above_nothing(rule="low pitch lap", where=where, value=pitch_deg, unit="degrees")
    refuse_unless_above_nothing(rule="low pitch lap", where=where, value=headlap_mm, unit="mm")
    least = single_lap_pitch_least(edition)
    if pitch_deg >= least.value - TOUCH:
        return ()
    return (
        not_covered(
            rule="low pitch lap",
            where=where,
            proposed=headlap_mm,
            unit="mm",
            citation=LARGER_LAP,
            says=(
                f"Below {least.value:g}° makers commonly ask for a larger lap, often 100 mm; this slope has "
                f"{headlap_mm:.0f} mm. The figure is the maker's: ask for it, and more for a sanded face."
            ),
        ),
    )


def _title(exposure: Exposure) -> str:
    return exposure.value.replace("-", " ").capitalize()
