"""What the material or shape of a tile asks beside its record: cautions, and one recalled figure.

Source: sanded faces (common practice, little evidence); pantiles without a side lock 30 to 35 degrees (memory, little
evidence); laps of made slates are found by test for each product (memory).
Scope: single-lap records. Said only where the record and the slope come near it.
"""

from typing import assert_never

from gaugerod.basis.citation import Basis, Citation, common_practice
from gaugerod.basis.finding import TOUCH, Finding, Sense, not_covered
from gaugerod.coverings.single_lap import Form, Material, SingleLapTile
from gaugerod.rules.real_figures import refuse_unless_above_nothing

SANDED_FACE_DEG = 5.0
"""A sanded face may want a pitch about this much steeper than a smooth one."""
PANTILE_LEAST_DEG = 30.0
PANTILE_SURE_DEG = 35.0
"""Pantiles without a side lock: recalled as 30 to 35 degrees at least, so sure from 35, not allowed under 30."""

_SANDED = common_practice("a sanded face spreads the water: about 5 degrees more pitch, or a lap of 100 mm")
_PANTILE = Citation(source="clay pantiles without a side lock: least pitch 30 to 35 degrees", basis=Basis.MEMORY)
_MADE_SLATE = Citation(source="laps of fibre-cement slates are found by test for each product", basis=Basis.MEMORY)


def material_cautions(*, where: str, pitch_deg: float, tile: SingleLapTile) -> tuple[Finding, ...]:
    """What to ask or look at for this material at this pitch (degrees); empty where there is nothing to add.

    Raises NothingToSetOut for a pitch that is not above nothing. Source and scope: see the head of this page.

    >>> from gaugerod.coverings.catalogue import covering
    >>> material_cautions(where="rear", pitch_deg=35.0, tile=covering("clay-pantile-340x240"))
    ()
    >>> [f.verdict.value for f in material_cautions(where="rear", pitch_deg=34.9, tile=covering("clay-pantile-340x240"))]
    ['not-covered']
    """
    refuse_unless_above_nothing(rule="material", where=where, value=pitch_deg, unit="degrees")
    return (*_of_form(where=where, pitch_deg=pitch_deg, tile=tile), *_of_material(where, pitch_deg, tile))


def _of_form(*, where: str, pitch_deg: float, tile: SingleLapTile) -> tuple[Finding, ...]:
    if tile.form is not Form.PANTILE or pitch_deg >= PANTILE_SURE_DEG - TOUCH:
        return ()
    return (
        Finding(
            rule="pantile pitch",
            where=where,
            proposed=pitch_deg,
            limit=PANTILE_LEAST_DEG if pitch_deg < PANTILE_LEAST_DEG - TOUCH else None,
            unit="deg",
            sense=Sense.AT_LEAST,
            citation=_PANTILE,
            says=(
                f"Pantiles without a side lock are recalled as needing {PANTILE_LEAST_DEG:g}° to {PANTILE_SURE_DEG:g}°. "
                "Ask the maker for the figure of this tile."
            ),
        ),
    )


def _of_material(where: str, pitch_deg: float, tile: SingleLapTile) -> tuple[Finding, ...]:
    match tile.material:
        case Material.CONCRETE:
            if tile.pitch_min_deg is None or pitch_deg >= tile.pitch_min_deg + SANDED_FACE_DEG - TOUCH:
                return ()
            says = (
                f"Within {SANDED_FACE_DEG:g}° of the tile's least pitch: if its face is sanded, ask the maker whether "
                "it wants a steeper slope or a larger lap than a smooth one."
            )
            citation = _SANDED
        case Material.NATURAL_SLATE | Material.FIBRE_CEMENT:
            says = "A slate laid in a single lap has its lap from its maker's tests, not from any table held here. Ask him."
            citation = _MADE_SLATE
        case Material.CLAY:
            return ()
        case _ as unreachable:
            assert_never(unreachable)
    return (not_covered(rule="material", where=where, proposed=pitch_deg, unit="deg", citation=citation, says=says),)
