"""The flat percentage against the count from the cuts, in widths of a whole unit."""

import pytest

from gaugerod.basis.limit import Limit
from gaugerod.coverings.double_lap_catalogue import plain_tile, sized_slate
from gaugerod.laying.ask import EdgeKind
from gaugerod.laying.cut_unit import Remedy
from gaugerod.laying.offcuts import OffcutPlan, OffcutUse
from gaugerod.take_off.answer import WasteCompared
from gaugerod.take_off.ask import ExtraCourse, TakeOffAsk
from gaugerod.take_off.compared import laid_widths_count
from gaugerod.take_off.take_off import take_off
from gaugerod.take_off.wished import OrderWished
from tests.scenario.random_slates import STACK
from tests.scenario.take_off_asks import EXAMPLE, ask, laid, piece


def compared(asked: TakeOffAsk) -> WasteCompared:
    (one,) = take_off(asked).compared
    return one


def flat(value: float) -> OrderWished:
    return OrderWished(flat_waste=Limit(value=value, unit="percent", citation=EXAMPLE))


def test_the_same_roof_both_ways() -> None:
    """20 m² of tiles that show a tenth of a square metre: 200 by the area, 210 with 5 per cent; 200 laid, 204 with breakage."""
    one = compared(ask())
    assert 200.0 == pytest.approx(one.net_by_area_count)
    assert (210, 204, 6) == (one.flat_count, one.counted_count, one.difference_count)
    assert (
        "200 units by the area and 5 per cent make 210; counted from the cuts it is 204: the flat percentage orders 6 more "
        "than this roof takes."
    ) == one.says


@pytest.mark.parametrize(
    ("share", "difference", "says"),
    [
        (1.0, -2, "would leave you 2 short on this roof."),
        (1.5, -1, "would leave you 1 short on this roof."),
        (2.0, 0, "here both are the same."),
        (2.5, 1, "orders 1 more than this roof takes."),
    ],
)
def test_which_is_more_is_said(share: float, difference: int, says: str) -> None:
    one = compared(ask(wished=flat(share)))
    assert difference == one.difference_count
    assert one.says.endswith(says)
    assert (share / 100, EXAMPLE) == (one.flat_ratio, one.flat_citation)


def test_half_and_wide_units_count_by_their_width_and_the_course_under_the_eaves_covers_nothing() -> None:
    slope = laid(
        whole_count=100,
        half_count=3,
        pieces=(
            piece(0),
            piece(0, course=1, remedy=Remedy.UNIT_AND_A_HALF, neighbour=1),
            piece(0, course=2, remedy=Remedy.DOUBLE, neighbour=1),
        ),
        extra=(
            ExtraCourse(name="under the eaves", item="eaves-tile", units_count=30, length_mm=190.0),
            ExtraCourse(name="short course at the top", item="eaves-tile", units_count=10, length_mm=190.0),
        ),
    )
    assert 100 + 1.5 + 1 + 1.5 + 2 + 10 == laid_widths_count(slope)
    assert "(half and wide units by their width)" in compared(ask(slope)).says


def test_units_that_offcuts_save_are_not_counted() -> None:
    slope = laid(whole_count=190, pieces=tuple(piece(at) for at in range(10)))
    uses = tuple(OffcutUse(first=at, second=at + 1, first_shift_mm=0.0, second_shift_mm=0.0) for at in (0, 2, 4, 6, 8))
    plan = OffcutPlan(uses=uses, pieces_count=10, by_edges=(), kerf_mm=5.0)
    without, saving = compared(ask(slope)), compared(ask(slope, offcuts=plan))
    assert (204, 10, 0) == (without.counted_count, without.cuts_count, without.offcuts_saved_count)
    assert (199, 10, 5) == (
        saving.counted_count,
        saving.cuts_count,
        saving.offcuts_saved_count,
    )  # 195 and 2 per cent: 198.9


def test_the_percentage_is_that_of_the_covering() -> None:
    assert 5.0 == pytest.approx(100 * compared(ask()).flat_ratio)
    assert 5.0 == pytest.approx(100 * compared(ask(covering=plain_tile("clay-plain-265x165"))).flat_ratio)
    assert 2.5 == pytest.approx(100 * compared(ask(covering=sized_slate("slate-500x250"))).flat_ratio)


@pytest.mark.parametrize("kind", [EdgeKind.HIP, EdgeKind.VALLEY])
def test_where_hips_or_valleys_are_cut_the_other_usual_percentages_are_said_too(kind: EdgeKind) -> None:
    slope = laid(whole_count=199, pieces=(piece(0, kind=kind),))
    said = " On roofs with many hips and valleys 7.5 to 10 per cent is taken (common practice): 215 to 220."
    assert compared(ask(slope)).says.endswith(said)
    assert said not in compared(ask(slope, wished=flat(5.0))).says
    assert said not in compared(ask(laid(whole_count=199, pieces=(piece(0, kind=EdgeKind.VERGE),)))).says


def test_nothing_is_compared_for_random_slates_or_an_unknown_width() -> None:
    assert () == take_off(ask(covering=STACK)).compared
    assert () == take_off(ask(laid(cover_mm=None))).compared
