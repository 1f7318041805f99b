"""Measurements the perps cannot be set out from are refused, all of them together."""

from dataclasses import replace
from math import inf, nan

import pytest

from gaugerod.basis.errors import InputRefused
from gaugerod.setting_out.across import AcrossAsk
from gaugerod.setting_out.set_across import set_out_across
from gaugerod.setting_out.stations import Opening
from tests.unit.setting_out.across_asked import asked, opening


def refused(ask: AcrossAsk) -> list[str]:
    with pytest.raises(InputRefused) as caught:
        set_out_across(ask)
    return [fault.field for fault in caught.value.faults]


@pytest.mark.parametrize("length_mm", [nan, inf, -inf, -1.0, 0.0, 200_000.1])
@pytest.mark.parametrize("field", ["eaves_width_mm", "unit_width_mm", "cover_closed_mm", "cover_open_mm"])
def test_a_length_that_is_no_length_is_refused(field: str, length_mm: float) -> None:
    ask = asked(7440.0)
    changed = {
        "eaves_width_mm": replace(ask, eaves_width_mm=length_mm),
        "unit_width_mm": replace(ask, unit_width_mm=length_mm),
        "cover_closed_mm": replace(ask, cover_closed_mm=length_mm),
        "cover_open_mm": replace(ask, cover_open_mm=length_mm),
    }
    assert field in refused(changed[field])


@pytest.mark.parametrize("place_mm", [nan, inf, -inf])
def test_a_top_line_that_is_no_length_is_refused(place_mm: float) -> None:
    assert refused(asked(7440.0, top=(place_mm, 7440.0))) == ["top line"]
    assert refused(asked(7440.0, top=(0.0, place_mm))) == ["top line"]


def test_a_top_narrower_than_nothing_is_refused_and_a_point_is_not() -> None:
    assert refused(asked(7440.0, top=(3720.1, 3720.0))) == ["top line"]
    assert len(set_out_across(asked(7440.0, top=(3720.0, 3720.0))).perp_lines) == 1


def test_a_shunt_that_runs_backwards_is_refused() -> None:
    assert refused(asked(7440.0, cover_mm=(300.1, 300.0))) == ["cover_closed_mm"]
    assert set_out_across(asked(7440.0, cover_mm=(300.0, 300.0))).cover_mm == 300.0


def test_a_cover_wider_than_the_unit_is_refused() -> None:
    assert refused(asked(7440.0, unit_width_mm=302.9)) == ["cover_open_mm"]
    assert set_out_across(asked(7440.0, unit_width_mm=303.0)).units_count > 0


@pytest.mark.parametrize(
    "wrong",
    [
        opening("a", -0.1),
        opening("a", 6660.1),
        opening("a", nan),
        opening("a", 100.0, width_mm=0.0),
        opening("a", 100.0, width_mm=-5.0),
        opening("a", 100.0, width_mm=inf),
        opening("a", 100.0, up_slope_mm=nan),
        replace(opening("a", 100.0), height_mm=0.0),
    ],
)
def test_an_opening_off_the_slope_or_without_size_is_refused(wrong: Opening) -> None:
    assert refused(asked(7440.0, openings=(wrong,))) == ["openings[0]"]


def test_openings_over_each_other_are_refused_and_one_above_the_other_is_not() -> None:
    one = opening("a", 2000.0)
    assert refused(asked(7440.0, openings=(one, opening("b", 2700.0)))) == ["openings[1]"]
    set_out_across(asked(7440.0, openings=(one, opening("b", 2780.0))))
    set_out_across(asked(7440.0, openings=(one, opening("b", 2700.0, up_slope_mm=2780.0))))


@pytest.mark.parametrize("crown_mm", [nan, -0.1, 330.1])
def test_a_crown_off_the_unit_is_refused(crown_mm: float) -> None:
    assert refused(asked(7440.0, high_points_mm=(60.0, crown_mm))) == ["high_points_mm[1]"]


def test_perps_every_nothing_are_refused() -> None:
    assert refused(asked(7440.0, every_count=0)) == ["perps_every_count"]


def test_a_least_piece_other_than_half_is_refused() -> None:
    assert refused(asked(7440.0, minimum_cut=0.4)) == ["minimum_cut"]


def test_all_faults_are_told_together() -> None:
    ask = asked(-1.0, top=(nan, 0.0), cover_mm=(310.0, 300.0), every_count=0, openings=(opening("a", 5.0),))
    assert refused(ask) == ["eaves_width_mm", "cover_closed_mm", "top line", "perps_every_count", "openings[0]"]
