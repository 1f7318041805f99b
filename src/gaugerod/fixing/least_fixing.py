"""The one call: the least fixing of one slope, by rule."""

from typing import assert_never

from gaugerod.coverings.double_lap import PlainTile, RandomSlates, SizedSlate
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.fixing.ask import FixingAsk
from gaugerod.fixing.counts import kinds_of, total_of
from gaugerod.fixing.field_areas import field_areas_mm
from gaugerod.fixing.findings import findings_of
from gaugerod.fixing.nails import nail_chosen
from gaugerod.fixing.plan import FixingPlan
from gaugerod.fixing.told import method_of, working_of
from gaugerod.fixing.walk import held_courses
from gaugerod.rules.fixings import FieldRule, perimeter_rule, plain_tile_field, single_lap_field, slate_field
from gaugerod.standards.fixings import FixingFigure, fixing_figure


def least_fixing(ask: FixingAsk) -> FixingPlan:
    """What holds every unit of one slope at the least: by pitch in the field, by its edges at the perimeter.

    Each unit gets the stronger of the rules that reach it. Wind may add to ``least`` of any run, never take from it.

    Source: see ``rules.fixings`` and ``rules.nails``. Scope: the least by rule; the maker's fixing specification for the
    site and the wind calculation go before it.
    """
    field, perimeter = field_rule(ask), perimeter_rule(covering=ask.covering, edition=ask.edition)
    holes_count = nail_holes_count(ask)
    courses = tuple(held_courses(ask, ask.full, field=field, perimeter=perimeter, holes_count=holes_count))
    extra = tuple(
        course
        for units in ask.extra
        for course in held_courses(ask, units, field=field, perimeter=perimeter, holes_count=holes_count)
    )
    kinds = kinds_of((*courses, *extra))
    total = total_of(kinds)
    nail = nail_chosen(ask, count=total.nails_count)
    nailed_courses = tuple(course.number for course in courses if course.nailed)
    return FixingPlan(
        where=ask.where,
        field_rule=field,
        perimeter_rule=perimeter,
        courses=courses,
        extra=extra,
        nailed_courses=nailed_courses,
        field_mm=field_areas_mm(ask.full.ask, courses),
        kinds=kinds,
        total=total,
        nail=nail,
        findings=tuple(
            findings_of(ask, field=field, perimeter=perimeter, courses=(*courses, *extra), kinds=kinds, nail=nail)
        ),
        method=tuple(method_of(ask, field=field, perimeter=perimeter, nailed_courses=nailed_courses, nail=nail)),
        working=working_of(ask, field=field, perimeter=perimeter, kinds=kinds, total=total, nail=nail),
    )


def field_rule(ask: FixingAsk) -> FieldRule:
    """The rule of the field for this covering and pitch."""
    covering = ask.covering
    match covering:
        case PlainTile():
            return plain_tile_field(pitch_deg=ask.pitch_deg, tile=covering, edition=ask.edition)
        case SingleLapTile():
            return single_lap_field(pitch_deg=ask.pitch_deg, edition=ask.edition, nail_holes_count=ask.nail_holes_count)
        case SizedSlate() | RandomSlates():
            return slate_field(pitch_deg=ask.pitch_deg, edition=ask.edition, held_by=ask.slates_held_by)
        case _ as unreachable:
            assert_never(unreachable)


def nail_holes_count(ask: FixingAsk) -> int | None:
    """Nail holes of a whole unit: as stated; two in a plain tile (common practice); else not known."""
    if ask.nail_holes_count is None and isinstance(ask.covering, PlainTile):
        return int(fixing_figure(ask.edition, FixingFigure.PLAIN_TILE_NAIL_HOLES).value)
    return ask.nail_holes_count
