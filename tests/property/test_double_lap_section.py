"""Whatever the slope and the unit: no lap of the section short as marked, every place two deep below the ridge."""

from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given, reject, settings
from hypothesis import strategies as st

from gaugerod.basis.band import Band
from gaugerod.basis.citation import house
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.limit import Limit
from gaugerod.basis.rounding import Division
from gaugerod.coverings.double_lap import Nailing, PlainTile, SizedSlate
from gaugerod.coverings.double_lap_catalogue import plain_tiles, sized_slates
from gaugerod.rules.plain_tile import Hung
from gaugerod.setting_out.courses import Strategy
from gaugerod.setting_out.double_lap import set_out_double_lap
from gaugerod.setting_out.double_lap_ask import DoubleLapAsk, top_room
from gaugerod.setting_out.stations import Station
from gaugerod.standards.edition import Edition

EXAMPLE = house("example")


@st.composite
def units(draw: st.DrawFn) -> PlainTile | SizedSlate:
    if draw(st.integers(0, 3)) == 0:
        return draw(st.sampled_from(list(plain_tiles().values())))
    slate = draw(st.sampled_from(list(sized_slates().values())))
    return replace(
        slate,
        length_mm=draw(st.floats(slate.length_mm - 4, slate.length_mm + 4)),
        nailing=draw(st.sampled_from(Nailing)),
    )


@st.composite
def asks(draw: st.DrawFn) -> DoubleLapAsk:
    unit = draw(units())
    rafter_mm = draw(st.floats(1500.0, 9000.0))
    headlap_mm = draw(st.floats(65.0, min(unit.length_mm / 3, 120.0)))
    # Clear of the apex, and the lap: with so much the ridge just reaches.
    just_reaching_mm = headlap_mm + 25.0 + (unit.lost_at_head_mm if isinstance(unit, SizedSlate) else 0.0)
    return DoubleLapAsk(
        where="rear",
        unit=unit,
        hung=Hung.ROOF,
        stations=(
            Station(at_mm=0.0, length_mm=rafter_mm),
            Station(at_mm=7000.0, length_mm=rafter_mm + draw(st.floats(-25.0, 25.0))),
        ),
        headlap=Limit(value=headlap_mm, unit="mm", citation=EXAMPLE),
        overhang=Band(least_mm=45.0, greatest_mm=55.0, citation=EXAMPLE),
        ridge_cover_mm=just_reaching_mm + draw(st.floats(0.0, 100.0) | st.floats(0.0, 2.0)),
        edition=Edition.GB,
        division=draw(st.sampled_from(Division)),
    )


def check(ask: DoubleLapAsk) -> None:
    try:
        answer = set_out_double_lap(ask)
    except NothingToSetOut:  # a lap so near a third of the length that no gauge is left
        reject()
    if not top_room(ask).ridge_laps or answer.courses.strategy in {Strategy.NONE, Strategy.PARALLEL}:
        return  # said as outside: unit tests hold that
    courses, extras = answer.courses, answer.extras
    assert courses.headlap_mm >= ask.headlap.value - 1e-5
    usable_mm = ask.unit.length_mm - ask.lost_at_head_mm
    for rod, extra in zip(courses.rods, extras.rods, strict=True):
        edge_mm = rod.length_mm - (ask.ridge_cover_mm or 0.0)
        units = [(extra.tails_mm[0], extra.tails_mm[0] + extras.under_eaves_length_mm - ask.lost_at_head_mm)]
        units += [(tail, tail + usable_mm) for tail in extra.tails_mm]
        if extra.short is not None:
            units.append((extra.short.tail_mm, extra.short.tail_mm + extra.short.length_mm - ask.lost_at_head_mm))
        units.append((edge_mm, rod.length_mm))
        for lower, upper in pairwise([*extra.tails_mm, *([extra.short.tail_mm] if extra.short else []), edge_mm]):
            for at in (lower + 0.01, (lower + upper) / 2, upper - 0.01):
                assert sum(tail <= at < head for tail, head in units) >= (2 if at < edge_mm else 1)
        if ask.centre_nailed:
            assert extras.holing_mm is not None
            for below, mark in pairwise(
                [extra.tails_mm[0] + extras.under_eaves_length_mm - usable_mm, *extra.tails_mm]
            ):
                head_below, nail = below + usable_mm, mark + extras.holing_mm
                assert nail - head_below >= 3.0 - 1e-5


@settings(max_examples=100, deadline=None)
@given(asks())
def test_no_lap_of_a_section_is_short(ask: DoubleLapAsk) -> None:
    check(ask)


@pytest.mark.slow
@settings(max_examples=3000, deadline=None)
@given(asks())
def test_no_lap_of_a_section_is_short_over_many_slopes(ask: DoubleLapAsk) -> None:
    check(ask)
