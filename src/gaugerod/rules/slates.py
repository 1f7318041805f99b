"""Lap, pitch, rafter length, joint and verge slates of double-lap natural slates.

Source: each figure's own; the two reproductions of the headlap table that disagree are both shown.
Scope: natural slates of one size, nailed, on battens.
"""

from collections.abc import Iterator

from gaugerod.basis.finding import TOUCH, Finding, Sense
from gaugerod.basis.limit import Limit
from gaugerod.coverings.double_lap import SizedSlate
from gaugerod.coverings.single_lap import Material
from gaugerod.rules.misfit import misfit
from gaugerod.rules.plain_tile import greatest_headlap
from gaugerod.rules.real_figures import refuse_unreal
from gaugerod.rules.slate_lap_missing import not_for_made_slate, not_recommended, size_off_table
from gaugerod.standards.double_lap import DoubleLapFigure, double_lap_figure
from gaugerod.standards.edition import Edition, Exposure
from gaugerod.standards.slate_headlap import (
    BetweenPitches,
    PrintedLap,
    Reading,
    printed_laps,
    slate_headlap,
)
from gaugerod.standards.table import OffTable

SEVERE = (Exposure.SEVERE, Exposure.VERY_SEVERE)


def slate_headlap_least(
    *,
    slate: SizedSlate,
    pitch_deg: float,
    exposure: Exposure,
    edition: Edition,
    reading: Reading = Reading.SAFER,
    between: BetweenPitches = BetweenPitches.NEXT_LOWER,
) -> Limit | None:
    """The least headlap to set out with: the table's, or the 54 mm floor where that is more. mm.

    None when the table does not recommend the size at this pitch, or does not cover it: then only the maker can say.
    Source and scope: see the head of this page.

    >>> from gaugerod.coverings.double_lap_catalogue import sized_slate
    >>> slate = sized_slate("slate-500x250")
    >>> [slate_headlap_least(slate=slate, pitch_deg=pitch, exposure=Exposure.MODERATE, edition=Edition.GB).value
    ...  for pitch in (25.0, 30.0, 45.0, 85.0)]
    [100.0, 80.0, 55.0, 54.0]
    >>> slate_headlap_least(slate=slate, pitch_deg=24.9, exposure=Exposure.MODERATE, edition=Edition.GB) is None
    True
    """
    refuse_unreal(rule="headlap", where=slate.title, value=pitch_deg, unit="degrees")
    if slate.material is not Material.NATURAL_SLATE:
        return None
    lap = slate_headlap(
        length_mm=slate.length_mm,
        width_mm=slate.width_mm,
        pitch_deg=pitch_deg,
        exposure=exposure,
        edition=edition,
        reading=reading,
        between=between,
    )
    if isinstance(lap, OffTable) or lap.headlap_mm is None:
        return None
    floor = double_lap_figure(edition, DoubleLapFigure.SLATE_HEADLAP_FLOOR)
    return floor if floor.value > lap.headlap_mm else Limit(value=lap.headlap_mm, unit="mm", citation=lap.citation)


def slate_laps(
    *,
    where: str,
    least_lap_mm: float,
    greatest_lap_mm: float,
    slate: SizedSlate,
    pitch_deg: float,
    exposure: Exposure,
    edition: Edition,
    between: BetweenPitches = BetweenPitches.NEXT_LOWER,
) -> tuple[Finding, ...]:
    """The laps as laid, against every reproduction of the table that has the size, the floor, and the greatest lap.

    Raises NothingToSetOut for a figure that is no measurement. Source and scope: see the head of this page.

    >>> from gaugerod.coverings.double_lap_catalogue import sized_slate
    >>> found = slate_laps(where="rear", least_lap_mm=100.0, greatest_lap_mm=101.0, slate=sized_slate("slate-600x300"),
    ...                    pitch_deg=30.0, exposure=Exposure.SEVERE, edition=Edition.GB)
    >>> [(f.rule, f.limit, f.verdict.value) for f in found]  # doctest: +NORMALIZE_WHITESPACE
    [('headlap', 100.0, 'within'), ('headlap', 120.0, 'outside'), ('greatest headlap', 200.0, 'within')]
    """
    refuse_unreal(rule="headlap", where=where, value=least_lap_mm, unit="mm")
    refuse_unreal(rule="headlap", where=where, value=pitch_deg, unit="degrees")
    floor = double_lap_figure(edition, DoubleLapFigure.SLATE_HEADLAP_FLOOR)
    return (
        *_against_tables(
            where=where,
            lap_mm=least_lap_mm,
            slate=slate,
            pitch_deg=pitch_deg,
            exposure=exposure,
            edition=edition,
            between=between,
        ),
        *_floor(where, least_lap_mm, pitch_deg, exposure, floor),
        greatest_headlap(where=where, headlap_mm=greatest_lap_mm, length_mm=slate.length_mm, edition=edition),
    )


def _against_tables(
    *,
    where: str,
    lap_mm: float,
    slate: SizedSlate,
    pitch_deg: float,
    exposure: Exposure,
    edition: Edition,
    between: BetweenPitches,
) -> Iterator[Finding]:
    if slate.material is not Material.NATURAL_SLATE:
        yield not_for_made_slate(where=where, lap_mm=lap_mm)
        return
    length_mm, width_mm = slate.length_mm, slate.width_mm
    printed = printed_laps(
        length_mm=length_mm, width_mm=width_mm, pitch_deg=pitch_deg, exposure=exposure, edition=edition, between=between
    )
    if not printed:
        yield size_off_table(
            where=where, lap_mm=lap_mm, slate=slate, pitch_deg=pitch_deg, exposure=exposure, edition=edition
        )
    for lap in printed:
        yield _against_printed(where, lap_mm, pitch_deg, lap)


def _against_printed(where: str, lap_mm: float, pitch_deg: float, lap: PrintedLap) -> Finding:
    if lap.headlap_mm is None:
        return not_recommended(where=where, pitch_deg=pitch_deg, lap=lap)
    return _at_least("headlap", where, lap_mm, Limit(value=lap.headlap_mm, unit="mm", citation=lap.citation))


FLOOR_PITCHES_DEG = (45.0, 75.0)
"""The floor is printed for these pitches, in sheltered and moderate exposure (see its citation)."""


def _floor(where: str, lap_mm: float, pitch_deg: float, exposure: Exposure, floor: Limit) -> Iterator[Finding]:
    """The least lap of any slate. Outside its scope it allows nothing; but a lap under it is short anywhere."""
    least_deg, greatest_deg = FLOOR_PITCHES_DEG
    in_scope = least_deg - TOUCH <= pitch_deg <= greatest_deg + TOUCH and exposure not in SEVERE
    if in_scope or lap_mm < floor.value - TOUCH:
        yield _at_least("headlap floor", where, lap_mm, floor)


def _at_least(rule: str, where: str, lap_mm: float, limit: Limit) -> Finding:
    return Finding(
        rule=rule,
        where=where,
        proposed=lap_mm,
        limit=limit.value,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=limit.citation,
        says=(
            f"Every slate laps the one two courses below by {limit.value:g} mm or more."
            if lap_mm >= limit.value - TOUCH
            else f"The lap is {misfit(limit.value - lap_mm)} short by this source. Close the gauge up."
        ),
    )


def slate_pitch(*, where: str, pitch_deg: float, edition: Edition) -> Finding:
    """The slope's pitch against the least for slates of any size. Degrees.

    >>> [slate_pitch(where="rear", pitch_deg=pitch, edition=Edition.GB).verdict.value for pitch in (19.9, 20.0)]
    ['outside', 'within']
    """
    refuse_unreal(rule="pitch", where=where, value=pitch_deg, unit="degrees")
    limit = double_lap_figure(edition, DoubleLapFigure.SLATE_PITCH_LEAST)
    return Finding(
        rule="pitch",
        where=where,
        proposed=pitch_deg,
        limit=limit.value,
        unit="deg",
        sense=Sense.AT_LEAST,
        citation=limit.citation,
        says=f"Slates from {limit.value:g}°, subject to their lap."
        if pitch_deg >= limit.value - TOUCH
        else f"{misfit(limit.value - pitch_deg, unit='°')} too flat for slates.",
    )


def slate_rafter(
    *, where: str, rafter_mm: float, pitch_deg: float, exposure: Exposure, edition: Edition
) -> tuple[Finding, ...]:
    """The longest rafter on which the laps will do. mm. Nothing to say above 30 degrees.

    >>> [slate_rafter(where="rear", rafter_mm=rafter, pitch_deg=30.0, exposure=Exposure.SEVERE,
    ...               edition=Edition.GB)[0].verdict.value for rafter in (6000.0, 6000.1)]
    ['within', 'outside']
    >>> slate_rafter(where="rear", rafter_mm=9999.0, pitch_deg=30.1, exposure=Exposure.SEVERE, edition=Edition.GB)
    ()
    """
    refuse_unreal(rule="rafter length", where=where, value=rafter_mm, unit="mm")
    refuse_unreal(rule="rafter length", where=where, value=pitch_deg, unit="degrees")
    matters = double_lap_figure(edition, DoubleLapFigure.SLATE_RAFTER_PITCH)
    if pitch_deg > matters.value + TOUCH:
        return ()
    limit = double_lap_figure(
        edition,
        DoubleLapFigure.SLATE_RAFTER_LONGEST_SEVERE
        if exposure in SEVERE
        else DoubleLapFigure.SLATE_RAFTER_LONGEST_MODERATE,
    )
    return (
        Finding(
            rule="rafter length",
            where=where,
            proposed=rafter_mm,
            limit=limit.value,
            unit="mm",
            sense=Sense.AT_MOST,
            citation=limit.citation,
            says="The rafter is short enough for the lap of the table."
            if rafter_mm <= limit.value + TOUCH
            else "So long a rafter gathers more water than the lap of the table is for: have the lap confirmed in writing.",
        ),
    )


def slate_joint(*, where: str, joint_mm: float, edition: Edition) -> Finding:
    """The gap between neighbours of a course against the greatest. mm.

    >>> [slate_joint(where="rear", joint_mm=joint, edition=Edition.GB).verdict.value for joint in (5.0, 5.1)]
    ['within', 'outside']
    """
    refuse_unreal(rule="joint", where=where, value=joint_mm, unit="mm")
    limit = double_lap_figure(edition, DoubleLapFigure.SLATE_JOINT_GREATEST)
    return Finding(
        rule="joint",
        where=where,
        proposed=joint_mm,
        limit=limit.value,
        unit="mm",
        sense=Sense.AT_MOST,
        citation=limit.citation,
        says="Slightly open joints let the roof dry."
        if joint_mm <= limit.value + TOUCH
        else f"{misfit(joint_mm - limit.value)} too wide: water is driven between the slates.",
    )


def verge_slate(*, where: str, width_mm: float, edition: Edition) -> Finding:
    """The narrowest slate at a verge against the least. mm.

    >>> [verge_slate(where="left", width_mm=width, edition=Edition.GB).verdict.value for width in (149.9, 150.0)]
    ['outside', 'within']
    """
    refuse_unreal(rule="verge slate", where=where, value=width_mm, unit="mm")
    limit = double_lap_figure(edition, DoubleLapFigure.VERGE_SLATE_LEAST_WIDTH)
    return Finding(
        rule="verge slate",
        where=where,
        proposed=width_mm,
        limit=limit.value,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=limit.citation,
        says="Wide enough to hold its two nails."
        if width_mm >= limit.value - TOUCH
        else "Too narrow to hold: cut the verge from a slate and a half.",
    )
