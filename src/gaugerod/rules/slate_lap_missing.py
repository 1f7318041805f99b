"""A slate size for which no lap can be taken: what every source of the laps says of it at this pitch.

Source: the reproductions of the headlap table, each with its own citation. Scope: slates of one size.
"""

from collections.abc import Iterator

from gaugerod.basis.citation import house
from gaugerod.basis.finding import Finding, Sense, not_covered
from gaugerod.coverings.double_lap import SizedSlate
from gaugerod.coverings.single_lap import Material
from gaugerod.rules.real_figures import refuse_unreal
from gaugerod.standards.edition import Edition, Exposure
from gaugerod.standards.slate_headlap import BetweenPitches, PrintedLap, printed_laps, slate_headlap
from gaugerod.standards.table import OffTable

NATURAL_ONLY = house("the headlap tables held here are for natural slate")


def slate_lap_missing(
    *,
    where: str,
    slate: SizedSlate,
    pitch_deg: float,
    exposure: Exposure,
    edition: Edition,
    between: BetweenPitches = BetweenPitches.NEXT_LOWER,
) -> tuple[Finding, ...]:
    """Every source that prints a dash for this size at this pitch, as a pitch outside its limit; or that none has the size.

    Raises NothingToSetOut for a pitch that is no measurement. Source and scope: see the head of this page.

    >>> from gaugerod.coverings.double_lap_catalogue import sized_slate
    >>> found = slate_lap_missing(where="rear", slate=sized_slate("slate-500x250"), pitch_deg=27.5,
    ...                           exposure=Exposure.SEVERE, edition=Edition.GB)
    >>> [(f.rule, f.limit, f.verdict.value) for f in found]
    [('slate size at this pitch', 30.0, 'outside')]
    """
    refuse_unreal(rule="headlap", where=where, value=pitch_deg, unit="degrees")
    if slate.material is not Material.NATURAL_SLATE:
        return (not_for_made_slate(where=where, lap_mm=None),)
    printed = printed_laps(
        length_mm=slate.length_mm,
        width_mm=slate.width_mm,
        pitch_deg=pitch_deg,
        exposure=exposure,
        edition=edition,
        between=between,
    )
    if not printed:
        return (
            size_off_table(
                where=where, lap_mm=None, slate=slate, pitch_deg=pitch_deg, exposure=exposure, edition=edition
            ),
        )
    return tuple(_dashes(where, pitch_deg, printed))


def _dashes(where: str, pitch_deg: float, printed: tuple[PrintedLap, ...]) -> Iterator[Finding]:
    for lap in printed:
        if lap.headlap_mm is None:
            yield not_recommended(where=where, pitch_deg=pitch_deg, lap=lap)


def not_recommended(*, where: str, pitch_deg: float, lap: PrintedLap) -> Finding:
    """A dash in the table: no lap will do. Said as a pitch outside its limit, which it is."""
    return Finding(
        rule="slate size at this pitch",
        where=where,
        proposed=pitch_deg,
        limit=lap.recommended_from_deg,
        unit="deg",
        sense=Sense.AT_LEAST,
        citation=lap.citation,
        says=f"Slates of {lap.size.replace('x', ' × ')} mm are not recommended at {pitch_deg:g}°. Choose a larger slate or "
        "another covering.",
    )


def not_for_made_slate(*, where: str, lap_mm: float | None) -> Finding:
    """The tables are for natural slate only."""
    return not_covered(
        rule="headlap",
        where=where,
        proposed=lap_mm,
        unit="mm",
        citation=NATURAL_ONLY,
        says="The headlap table is for natural slate; laps of fibre-cement slates are tested by their maker. Ask him.",
    )


def size_off_table(
    *, where: str, lap_mm: float | None, slate: SizedSlate, pitch_deg: float, exposure: Exposure, edition: Edition
) -> Finding:
    """No table has this size at this pitch."""
    off = slate_headlap(
        length_mm=slate.length_mm, width_mm=slate.width_mm, pitch_deg=pitch_deg, exposure=exposure, edition=edition
    )
    return not_covered(
        rule="headlap",
        where=where,
        proposed=lap_mm,
        unit="mm",
        citation=off.citation,
        says=f"{off.says if isinstance(off, OffTable) else ''}. Ask the maker for the lap of this size.",
    )
