"""What is added to each quantity: no more than one share, and none to what is cut by its own plan."""

import pytest

from gaugerod.basis.citation import Basis
from gaugerod.basis.limit import Limit
from gaugerod.standards.edition import Edition
from gaugerod.standards.waste import WasteFigure, waste_figure
from gaugerod.take_off.allowances import allowances, breakage
from gaugerod.take_off.answer import Trade
from gaugerod.take_off.take_off import take_off
from gaugerod.take_off.wished import OrderWished
from tests.scenario.random_slates import STACK
from tests.scenario.take_off_asks import EXAMPLE, ask, measured


@pytest.mark.parametrize(
    ("item", "unit", "trade", "amount"),
    [
        ("tile", "pieces", Trade.COVERING, 2.0),
        ("eaves-tile", "pieces", Trade.COVERING, 2.0),
        ("ridge-unit", "pieces", Trade.EDGES, 2.0),
        ("mono-ridge-unit", "pieces", Trade.EDGES, 2.0),
        ("bonnet", "pieces", Trade.EDGES, 2.0),
        ("valley-tile", "pieces", Trade.EDGES, 2.0),
        ("line-unit-fixing", "pieces", Trade.EDGES, 5.0),
        ("tile-nails", "pieces", Trade.FIXINGS, 5.0),
        ("slate-hooks", "pieces", Trade.FIXINGS, 5.0),
        ("batten-nails-65x3.35", "pieces", Trade.BATTENS, 5.0),
        ("counter-batten", "m", Trade.BATTENS, 10.0),
        ("lap-batten", "m", Trade.BATTENS, 10.0),
        ("ridge-batten", "m", Trade.EDGES, 10.0),
        ("valley-board", "m", Trade.EDGES, 10.0),
        ("dry-line-roll", "m", Trade.EDGES, 5.0),
        ("comb-filler", "m", Trade.EDGES, 5.0),
        ("lap-tape", "m", Trade.UNDERLAY, 5.0),
        ("mortar", "litres", Trade.EDGES, 10.0),
    ],
)
def test_one_share_is_added(item: str, unit: str, trade: Trade, amount: float) -> None:
    (added,) = allowances(ask(), measured(item, 100.0, unit=unit, trade=trade))
    assert amount == added.amount
    assert f"{amount:g} per cent" in added.name


@pytest.mark.parametrize(
    ("item", "unit", "trade"),
    [
        ("batten-4200", "pieces", Trade.BATTENS),
        ("underlay-roll", "rolls", Trade.UNDERLAY),
        ("lead-code-4-300", "kg", Trade.LEAD),
        ("bonds", "pieces", Trade.FIXINGS),
        ("hip-iron", "pieces", Trade.EDGES),
        ("undercloak", "pieces", Trade.EDGES),
        ("eaves-tray", "pieces", Trade.EDGES),
        ("air-unit-low", "pieces", Trade.AIR),
    ],
)
def test_nothing_is_added_to_what_is_cut_by_its_plan_or_comes_whole(item: str, unit: str, trade: Trade) -> None:
    assert () == tuple(allowances(ask(), measured(item, 100.0, unit=unit, trade=trade)))


def test_the_breakage_stated_comes_before_the_usual_one_none_at_all_too() -> None:
    assert 2.0 == breakage(ask()).value
    stated = Limit(value=0.0, unit="percent", citation=EXAMPLE)
    assert stated == breakage(ask(wished=OrderWished(breakage=stated)))


def test_random_slates_lose_what_is_cut_off_at_the_sides_and_are_not_broken_twice() -> None:
    stated = OrderWished(
        breakage=Limit(value=5.0, unit="percent", citation=EXAMPLE),
        flat_waste=Limit(value=5.0, unit="percent", citation=EXAMPLE),
    )
    answer = take_off(ask(covering=STACK, wished=stated))
    assert () == answer.lines
    assert [
        "The breakage stated is not added: random slates are broken already in their own record.",
        "No flat percentage is compared: random slates are counted by the run of every length.",
    ] == [said for said in answer.not_counted if "stated" in said or "flat" in said]


@pytest.mark.parametrize("which", list(WasteFigure))
def test_every_share_names_its_source(which: WasteFigure) -> None:
    figure = waste_figure(Edition.GB, which)
    assert "percent" == figure.unit
    assert (Basis.PUBLISHED if which.value in PUBLISHED else figure.citation.basis) == figure.citation.basis
    assert 0 < figure.value <= 10


PUBLISHED = {"flat-sized-slates", "flat-random-slates"}
