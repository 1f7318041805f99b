"""How wide must the ventilation openings of a roof be, at each eaves and at high level?

Source: BS 5250:2021 as summarised in public ventilation guides (published, row by row; some rows memory); NHBC 7.2 for
low-resistance underlay with no flow from eaves to eaves (published). Where guides put a boundary value on either side, the
safer side is read. Scope: pitched roofs with a continuous opening along each eaves, insulation at the ceiling (cold) or along
the slope under a vented void (warm).
"""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from gaugerod.basis.finding import TOUCH, Finding, Sense, not_covered
from gaugerod.basis.limit import Limit
from gaugerod.coverings.underlay import Resistance
from gaugerod.rules.real_figures import refuse_unless_above_nothing
from gaugerod.standards.edition import Edition
from gaugerod.standards.ventilation import OpeningsStated, VentCase, VentFigure, openings_stated, vent_figure

RULE = "ventilation"


class Insulated(StrEnum):
    """Where the insulation lies: at the ceiling (a cold roof), or along the slope under a vented void (a warm one)."""

    AT_CEILING = "at-ceiling"
    ALONG_SLOPE = "along-slope"


class Ceiling(StrEnum):
    """Well sealed: every hole through it and its hatch sealed, no open cavity under it. Else normal."""

    WELL_SEALED = "well-sealed"
    NORMAL = "normal"


class BuildingSize(StrEnum):
    """A dwelling, or a larger building."""

    DWELLING = "dwelling"
    LARGER = "larger"


@dataclass(frozen=True, slots=True, kw_only=True)
class VentConditions:
    """What the openings depend on.

    ``underlay``         its resistance as it counts where it lies (low on boards counts as high)
    ``air_permeable``    is it assessed as air-permeable, by every source?
    ``covering_air_open``  does air pass between the units? Close slates let none
    ``span_mm``          on plan, eaves to eaves; None: not known
    ``mono``             mono-pitch or lean-to; ``through_flow`` can air pass from one eaves to the other?
    """

    pitch_deg: float
    underlay: Resistance
    air_permeable: bool
    insulated: Insulated
    ceiling: Ceiling
    building: BuildingSize
    covering_air_open: bool
    span_mm: float | None
    mono: bool
    through_flow: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningsNeeded:
    """Continuous openings, as the width of a slot in mm, net of mesh. None: none is asked for there.

    ``instead_high``   an opening at high level that may stand in place of those at the eaves
    ``batten_low``, ``batten_high``  to the space between counter-battens, above the underlay
    """

    eaves: Limit | None
    high: Limit | None
    instead_high: Limit | None
    batten_low: Limit | None
    batten_high: Limit | None
    clear_void: Limit | None
    findings: tuple[Finding, ...]


def openings_needed(*, where: str, conditions: VentConditions, edition: Edition) -> OpeningsNeeded:
    """The openings this roof needs. Raises NothingToSetOut for a pitch or a span that is no measurement.

    Source and scope: see the head of this page.

    >>> def slots(pitch_deg: float, span_mm: float) -> tuple[float | None, float | None]:
    ...     roof = VentConditions(pitch_deg=pitch_deg, underlay=Resistance.HIGH, air_permeable=False, mono=False,
    ...         insulated=Insulated.AT_CEILING, ceiling=Ceiling.NORMAL, building=BuildingSize.DWELLING,
    ...         covering_air_open=True, span_mm=span_mm, through_flow=True)
    ...     needed = openings_needed(where="roof", conditions=roof, edition=Edition.GB)
    ...     return needed.eaves and needed.eaves.value, needed.high and needed.high.value
    >>> slots(15.0, 8000.0), slots(15.1, 8000.0), slots(30.0, 10000.0)
    ((25.0, None), (10.0, None), (10.0, 5.0))
    """
    refuse_unless_above_nothing(rule=RULE, where=where, value=conditions.pitch_deg, unit="degrees")
    if conditions.span_mm is not None:
        refuse_unless_above_nothing(rule=RULE, where=where, value=conditions.span_mm, unit="mm")
    low = openings_stated(edition, _low_case(conditions, edition))
    high_from = _high_case(conditions, edition)
    high = None if high_from is None else _high(openings_stated(edition, high_from))
    warm = conditions.insulated is Insulated.ALONG_SLOPE
    space = _batten_space(conditions, edition)
    return OpeningsNeeded(
        eaves=_eaves(low),
        high=_high(low) or high,
        instead_high=_instead(conditions, edition) if high is None else None,
        batten_low=None if space is None else _eaves(space),
        batten_high=None if space is None else _high(space),
        clear_void=vent_figure(edition, VentFigure.CLEAR_VOID) if warm else None,
        findings=tuple(_findings(where, conditions, edition)),
    )


def _low_case(conditions: VentConditions, edition: Edition) -> VentCase:
    """The row for the eaves."""
    if conditions.insulated is Insulated.ALONG_SLOPE:
        return VentCase.WARM
    if conditions.underlay is Resistance.HIGH:
        flat = conditions.pitch_deg <= vent_figure(edition, VentFigure.LOW_PITCH_TO).value + TOUCH
        return VentCase.HIGH_RESISTANCE_LOW_PITCH if flat else VentCase.HIGH_RESISTANCE
    return {
        (BuildingSize.DWELLING, Ceiling.WELL_SEALED): VentCase.LOW_RESISTANCE_DWELLING_SEALED,
        (BuildingSize.DWELLING, Ceiling.NORMAL): VentCase.LOW_RESISTANCE_DWELLING_NORMAL,
        (BuildingSize.LARGER, Ceiling.WELL_SEALED): VentCase.LOW_RESISTANCE_LARGER_SEALED,
        (BuildingSize.LARGER, Ceiling.NORMAL): VentCase.LOW_RESISTANCE_LARGER_NORMAL,
    }[conditions.building, conditions.ceiling]


def _high_case(conditions: VentConditions, edition: Edition) -> VentCase | None:
    """The row for the high level of a cold roof, where one asks for it. A span that is not known is taken as wide."""
    if conditions.underlay is Resistance.LOW:
        still = conditions.mono or not conditions.through_flow
        return VentCase.NO_THROUGH_FLOW if still and not conditions.air_permeable else None
    steep = conditions.pitch_deg >= vent_figure(edition, VentFigure.STEEP_FROM).value - TOUCH
    span_from_mm = vent_figure(edition, VentFigure.SPAN_FROM).value
    wide = conditions.span_mm is None or conditions.span_mm >= span_from_mm - TOUCH
    needed = steep or wide or conditions.mono or not conditions.through_flow
    return VentCase.HIGH_RESISTANCE_HIGH_LEVEL if needed else None


def _instead(conditions: VentConditions, edition: Edition) -> Limit | None:
    """The 5 mm at the ridge that one guide allows in place of the 3 mm at the eaves."""
    if _low_case(conditions, edition) is not VentCase.LOW_RESISTANCE_DWELLING_SEALED:
        return None
    return _high(openings_stated(edition, VentCase.LOW_RESISTANCE_DWELLING_SEALED_INSTEAD))


def _batten_space(conditions: VentConditions, edition: Edition) -> OpeningsStated | None:
    low_and_close = conditions.underlay is Resistance.LOW and not conditions.covering_air_open
    return openings_stated(edition, VentCase.BATTEN_SPACE) if low_and_close else None


def _eaves(stated: OpeningsStated) -> Limit | None:
    return None if stated.eaves_mm is None else Limit(value=stated.eaves_mm, unit="mm", citation=stated.citation)


def _high(stated: OpeningsStated) -> Limit | None:
    return None if stated.high_mm is None else Limit(value=stated.high_mm, unit="mm", citation=stated.citation)


def _findings(where: str, conditions: VentConditions, edition: Edition) -> Iterator[Finding]:
    low_pitch = vent_figure(edition, VentFigure.LOW_PITCH_TO)
    steep = vent_figure(edition, VentFigure.STEEP_FROM)
    span = vent_figure(edition, VentFigure.SPAN_FROM)
    cold_high = conditions.insulated is Insulated.AT_CEILING and conditions.underlay is Resistance.HIGH
    if cold_high:
        yield from _on_boundary(where, conditions.pitch_deg, low_pitch, Sense.AT_MOST, "25 mm at the eaves")
        yield from _on_boundary(where, conditions.pitch_deg, steep, Sense.AT_LEAST, "5 mm at high level")
    if cold_high and conditions.span_mm is not None:
        yield from _on_boundary(where, conditions.span_mm, span, Sense.AT_LEAST, "5 mm at high level")
    if cold_high and conditions.span_mm is None:
        yield not_covered(
            rule=RULE, where=where, proposed=None, unit=span.unit, citation=span.citation,
            says=f"The span is not known, so it is taken as {span.value / 1000:g} m or more: openings at high level as well.",
        )  # fmt: skip
    flat = conditions.pitch_deg <= low_pitch.value + TOUCH
    if conditions.insulated is Insulated.AT_CEILING and conditions.underlay is Resistance.LOW and flat:
        full = openings_stated(edition, VentCase.HIGH_RESISTANCE_LOW_PITCH)
        yield not_covered(
            rule=RULE, where=where, proposed=conditions.pitch_deg, unit="deg", citation=full.citation,
            says=(
                f"The openings for low-resistance underlay are stated without a pitch. At {low_pitch.value:g}° and less "
                f"high resistance asks for {full.eaves_mm:g} mm at the eaves: ask the underlay's maker which holds."
            ),
        )  # fmt: skip
    if conditions.insulated is Insulated.ALONG_SLOPE and conditions.underlay is Resistance.LOW:
        stated = openings_stated(edition, VentCase.WARM)
        yield not_covered(
            rule=RULE, where=where, proposed=None, unit="mm", citation=stated.citation,
            says=(
                "The vented void is taken here. Some low-resistance underlays may lie on the insulation without one: no "
                "source held here covers that; it takes the maker's assessment and a sealed vapour layer below."
            ),
        )  # fmt: skip
    if conditions.covering_air_open is False and conditions.underlay is Resistance.LOW:
        space = openings_stated(edition, VentCase.BATTEN_SPACE)
        yield not_covered(
            rule=RULE, where=where, proposed=None, unit="mm", citation=space.citation,
            says=(
                "A covering that lets no air through closes the roof above a low-resistance underlay: counter-battens, and "
                "openings to the space between them, as recalled. Check with the maker."
            ),
        )  # fmt: skip


def _on_boundary(where: str, value: float, limit: Limit, sense: Sense, asks: str) -> Iterator[Finding]:
    """A value on the boundary itself, where the guides part: the safer is taken, and both are said."""
    if limit.value - TOUCH <= value <= limit.value + TOUCH:
        yield Finding(
            rule=f"{RULE}, boundary",
            where=where,
            proposed=value,
            limit=limit.value,
            unit=limit.unit,
            sense=sense,
            citation=limit.citation,
            says=f"On the boundary itself the guides differ. The safer is taken: {asks}.",
        )
