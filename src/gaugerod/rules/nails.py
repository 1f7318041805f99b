r"""The nails and hooks of tiles and slates: how far a nail reaches into the batten, how thick it is, where its hole stands.

Source: trade body page on wind uplift calculations, supplier-hosted slate pages, trade articles (published); densities
from memory. The two sources on penetration disagree, and so do the two on the holes: both are shown.
Scope: nails through one tile or slate into a timber batten; hooks of stainless wire.
"""

from collections.abc import Iterator
from enum import StrEnum
from math import ceil, pi
from typing import assert_never

from gaugerod.basis.band import Band
from gaugerod.basis.citation import house
from gaugerod.basis.finding import TOUCH, Finding, Sense, not_covered
from gaugerod.basis.limit import Limit
from gaugerod.rules.band_findings import within_band
from gaugerod.rules.misfit import misfit
from gaugerod.rules.real_figures import refuse_unless_above_nothing, refuse_unreal
from gaugerod.standards.edition import Edition
from gaugerod.standards.fixings import FixingFigure, fixing_figure

HOOK_NOT_THICKER = house("the hook's wire is measured against the slate; the thickness of this slate is not known")


class NailMetal(StrEnum):
    """What a nail is made of. Plain galvanised nails are none of them: they are eaten, through concrete tiles soonest."""

    ALUMINIUM = "aluminium"
    COPPER = "copper"
    SILICON_BRONZE = "silicon-bronze"
    STAINLESS_STEEL = "stainless-steel"


class Nailed(StrEnum):
    """What the nail goes through: its least shank depends on it."""

    TILE = "tile"
    SLATE = "slate"


PENETRATIONS = (FixingFigure.NAIL_PENETRATION_TRADE_BODY, FixingFigure.NAIL_PENETRATION_SUPPLIER)
"""The sources on how far a nail reaches into the batten. They disagree; the larger is what nails are chosen by."""


def nail_penetration(edition: Edition) -> Limit:
    """How far a nail must reach into the batten: the larger of two sources that disagree. mm.

    >>> nail_penetration(Edition.GB).value
    20.0
    """
    return max((fixing_figure(edition, which) for which in PENETRATIONS), key=lambda limit: limit.value)


def least_nail_mm(*, passes_mm: float, edition: Edition) -> float:
    """The least length of a nail that passes so much before the batten, to the next 5 mm up. mm.

    >>> least_nail_mm(passes_mm=10.0, edition=Edition.GB), least_nail_mm(passes_mm=10.1, edition=Edition.GB)
    (30.0, 35.0)
    """
    refuse_unless_above_nothing(rule="nail length", where="unit", value=passes_mm, unit="mm")
    step_mm = fixing_figure(edition, FixingFigure.NAIL_LENGTH_STEP).value
    return ceil((passes_mm + nail_penetration(edition).value - TOUCH) / step_mm) * step_mm


def least_shank(*, nailed: Nailed, edition: Edition) -> Limit:
    """The least shank of a nail; for slates the common one, the larger of the two that are sold. mm.

    >>> [least_shank(nailed=nailed, edition=Edition.GB).value for nailed in Nailed]
    [2.65, 3.35]
    """
    match nailed:
        case Nailed.TILE:
            return fixing_figure(edition, FixingFigure.TILE_NAIL_SHANK_LEAST)
        case Nailed.SLATE:
            return fixing_figure(edition, FixingFigure.SLATE_NAIL_SHANK_COMMON)
        case _ as unreachable:
            assert_never(unreachable)


def nail_density(*, metal: NailMetal, edition: Edition) -> Limit:
    """Mass of a cubic metre of the metal, kg. From memory.

    >>> nail_density(metal=NailMetal.COPPER, edition=Edition.GB).value
    8940.0
    """
    return fixing_figure(edition, FixingFigure(f"{metal.value}-density"))


def nail_mass_kg(*, metal: NailMetal, shank_mm: float, length_mm: float, edition: Edition) -> float:
    """Mass of one clout nail, counted as a round shank with a plain disc for a head. kg.

    Scope: an estimate to order by, lighter or heavier by the shape of head and point.

    >>> round(1000 * nail_mass_kg(metal=NailMetal.COPPER, shank_mm=3.35, length_mm=35.0, edition=Edition.GB), 2)
    3.46
    """
    refuse_unless_above_nothing(rule="nail mass", where="nail", value=shank_mm, unit="mm")
    refuse_unless_above_nothing(rule="nail mass", where="nail", value=length_mm, unit="mm")
    head_mm = fixing_figure(edition, FixingFigure.SLATE_NAIL_HEAD_LEAST).value
    disc_mm = fixing_figure(edition, FixingFigure.NAIL_HEAD_THICKNESS).value
    volume_mm3 = pi / 4 * (shank_mm * shank_mm * length_mm + head_mm * head_mm * disc_mm)
    return volume_mm3 * 1e-9 * nail_density(metal=metal, edition=edition).value


def penetration_findings(*, where: str, penetration_mm: float, edition: Edition) -> Iterator[Finding]:
    """How far the nail reaches into the batten, against both sources. mm.

    >>> [f.verdict.value for f in penetration_findings(where="rear", penetration_mm=19.9, edition=Edition.GB)]
    ['within', 'outside']
    """
    refuse_unreal(rule="nail penetration", where=where, value=penetration_mm, unit="mm")
    for which in PENETRATIONS:
        limit = fixing_figure(edition, which)
        yield Finding(
            rule="nail penetration",
            where=where,
            proposed=penetration_mm,
            limit=limit.value,
            unit="mm",
            sense=Sense.AT_LEAST,
            citation=limit.citation,
            says=f"The nail reaches {limit.value:g} mm or more into the batten."
            if penetration_mm >= limit.value - TOUCH
            else f"The nail is {misfit(limit.value - penetration_mm)} short by this source. Take a longer nail.",
        )


def shank_findings(*, where: str, shank_mm: float, nailed: Nailed, edition: Edition) -> Iterator[Finding]:
    """The nail's shank against the least; for slates against the common size and the thinner one sold. mm.

    >>> [f.verdict.value for f in shank_findings(where="rear", shank_mm=3.0, nailed=Nailed.SLATE, edition=Edition.GB)]
    ['outside', 'within']
    """
    refuse_unless_above_nothing(rule="nail shank", where=where, value=shank_mm, unit="mm")
    limits = [least_shank(nailed=nailed, edition=edition)]
    if nailed is Nailed.SLATE:
        limits.append(fixing_figure(edition, FixingFigure.SLATE_NAIL_SHANK_SOLD))
    for limit in limits:
        yield Finding(
            rule="nail shank",
            where=where,
            proposed=shank_mm,
            limit=limit.value,
            unit="mm",
            sense=Sense.AT_LEAST,
            citation=limit.citation,
            says="Thick enough by this source."
            if shank_mm >= limit.value - TOUCH
            else f"The shank is under {limit.value:g} mm: take a thicker nail.",
        )


def slate_hole_from_side_mm(edition: Edition) -> float:
    """Hole to the side edge of a slate: the one figure inside both published ranges. mm.

    >>> slate_hole_from_side_mm(Edition.GB)
    25.0
    """
    return fixing_figure(edition, FixingFigure.SLATE_HOLE_FROM_SIDE_FIRST_GREATEST).value


def slate_hole_findings(*, where: str, from_side_mm: float, edition: Edition) -> Iterator[Finding]:
    """Hole to the side edge of a slate, against both sources. mm.

    >>> [f.verdict.value for f in slate_hole_findings(where="rear", from_side_mm=25.1, edition=Edition.GB)]
    ['within', 'outside', 'within', 'within']
    """
    for least, greatest in (
        (FixingFigure.SLATE_HOLE_FROM_SIDE_FIRST_LEAST, FixingFigure.SLATE_HOLE_FROM_SIDE_FIRST_GREATEST),
        (FixingFigure.SLATE_HOLE_FROM_SIDE_SECOND_LEAST, FixingFigure.SLATE_HOLE_FROM_SIDE_SECOND_GREATEST),
    ):
        low, high = fixing_figure(edition, least), fixing_figure(edition, greatest)
        yield from within_band(
            rule="slate hole from side",
            where=where,
            length_mm=from_side_mm,
            band=Band(least_mm=low.value, greatest_mm=high.value, citation=low.citation),
            too_little="The slate splits at the hole.",
            too_much="The hole comes too near the joint of the course below.",
        )


def hook_findings(
    *, where: str, pitch_deg: float, wire_mm: float, thickness_mm: float | None, edition: Edition
) -> Iterator[Finding]:
    """Hooks: the least pitch, the least wire, and wire not thicker than the slate. Degrees and mm.

    >>> [f.verdict.value for f in hook_findings(where="rear", pitch_deg=24.9, wire_mm=2.7, thickness_mm=2.6,
    ...                                         edition=Edition.GB)]
    ['outside', 'within', 'outside']
    """
    refuse_unreal(rule="hook pitch", where=where, value=pitch_deg, unit="degrees")
    refuse_unless_above_nothing(rule="hook wire", where=where, value=wire_mm, unit="mm")
    pitch = fixing_figure(edition, FixingFigure.SLATE_HOOK_PITCH_LEAST)
    wire = fixing_figure(edition, FixingFigure.SLATE_HOOK_WIRE_LEAST)
    yield Finding(
        rule="hook pitch",
        where=where,
        proposed=pitch_deg,
        limit=pitch.value,
        unit="deg",
        sense=Sense.AT_LEAST,
        citation=pitch.citation,
        says="Steep enough for hooks." if pitch_deg >= pitch.value - TOUCH else "Too flat for hooks: nail the slates.",
    )
    yield Finding(
        rule="hook wire",
        where=where,
        proposed=wire_mm,
        limit=wire.value,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=wire.citation,
        says="Wire thick enough." if wire_mm >= wire.value - TOUCH else "Take a hook of thicker wire.",
    )
    if thickness_mm is None:
        yield not_covered(
            rule="hook wire against slate",
            where=where,
            proposed=wire_mm,
            unit="mm",
            citation=HOOK_NOT_THICKER,
            says="A hook is not thicker than the slate it holds. Measure the slates: their thickness is not known here.",
        )
        return
    yield Finding(
        rule="hook wire against slate",
        where=where,
        proposed=wire_mm,
        limit=thickness_mm,
        unit="mm",
        sense=Sense.AT_MOST,
        citation=wire.citation,
        says="Not thicker than the slate."
        if wire_mm <= thickness_mm + TOUCH
        else "Thicker than the slate: it lifts the slate above.",
    )
