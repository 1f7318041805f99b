"""The order against print: units on an area, the weight of nails and tiles, and percentages for waste.

Sources beside each group. The figures go through the whole take-off, so that a square (100 sq ft) or a square metre of roof
comes out as it is printed; the formulas beneath it have printed cases of their own elsewhere.
"""

from dataclasses import replace
from math import ceil, floor

import pytest

from gaugerod.basis.citation import Basis, house
from gaugerod.basis.limit import Limit
from gaugerod.coverings.double_lap_catalogue import plain_tile
from gaugerod.fixing.held import Held
from gaugerod.standards.edition import Edition
from gaugerod.standards.waste import WasteFigure, waste_figure
from gaugerod.take_off.answer import WasteCompared
from gaugerod.take_off.take_off import take_off
from gaugerod.take_off.wished import OrderWished
from tests.scenario.take_off_asks import ask, laid, line
from tests.scenario.taken_off_jobs import ask_of, result_of, slope

INCH_MM = 25.4
SQUARE_MM2 = 100 * (12 * INCH_MM) ** 2
POUND_KG = 0.45359237
NOTHING = Limit(value=0.0, unit="percent", citation=house("nothing on top, as the tables print"))
NET = OrderWished(flat_waste=NOTHING, breakage=NOTHING)

# Slates to the square at a lap of 3 in: Architectural Review and American Builders' Journal, vol. 1 (1869), p. 451; the last
# Building Trades Pocketbook (Colliery vol. 4). Prints mix floor and nearest. (width in, length in, printed)
TO_THE_SQUARE = ((8, 12, 400), (6, 12, 533), (9, 12, 355), (7, 14, 374), (12, 20, 141), (14, 20, 121))

# British trade figures for plain tiles 165 mm wide, recalled from memory: no evidence by themselves, kept so that a slip
# shows. (gauge mm, printed to the m²)
PLAIN_TO_THE_M2 = ((100.0, 60), (95.0, 64), (115.0, 53))

# Single-lap tiles to the m²: derived, arithmetic on gauge and cover width. The gauge of 345 mm of a 420 mm tile at 75 mm of lap
# stands in general how-to text. (gauge mm, cover mm, to the m²)
SINGLE_LAP_TO_THE_M2 = (
    (345.0, 300.0, 9.662),
    (320.0, 300.0, 10.417),
    (345.0, 330.0, 8.783),
    (305.0, 200.0, 16.393),
    (305.0, 230.0, 14.255),
    (267.0, 204.0, 18.359),
)

# Colliery vol. 4, one square of slating at two nails to a slate: slates, pounds of nails; both make 144 nails to the pound.
NAILS_TO_THE_SQUARE = ((400, 5 + 9 / 16), (533, 7 + 6 / 16))
NAIL_KG = POUND_KG / 144


def on_an_area(*, area_mm2: float, gauge_mm: float, cover_mm: float) -> WasteCompared:
    """A roof of this area by the area alone, nothing on top."""
    (found,) = take_off(ask(laid(area_mm2=area_mm2, gauge_mm=gauge_mm, cover_mm=cover_mm), wished=NET)).compared
    return found


@pytest.mark.parametrize(("wide_in", "long_in", "printed"), TO_THE_SQUARE)
def test_a_square_of_slates(wide_in: float, long_in: float, printed: int) -> None:
    found = on_an_area(area_mm2=SQUARE_MM2, gauge_mm=(long_in - 3.0) / 2 * INCH_MM, cover_mm=wide_in * INCH_MM)
    assert printed in {floor(found.net_by_area_count + 1e-6), ceil(found.net_by_area_count - 1e-6)}
    assert found.flat_count in {printed, printed + 1}


@pytest.mark.parametrize(("gauge_mm", "printed"), PLAIN_TO_THE_M2)
def test_a_square_metre_of_plain_tiles(gauge_mm: float, printed: int) -> None:
    found = on_an_area(area_mm2=1e6, gauge_mm=gauge_mm, cover_mm=165.0)
    assert printed in {floor(found.net_by_area_count), ceil(found.net_by_area_count)}


@pytest.mark.parametrize(("gauge_mm", "cover_mm", "derived"), SINGLE_LAP_TO_THE_M2)
def test_a_square_metre_of_single_lap_tiles(gauge_mm: float, cover_mm: float, derived: float) -> None:
    found = on_an_area(area_mm2=1e6, gauge_mm=gauge_mm, cover_mm=cover_mm)
    assert derived == pytest.approx(found.net_by_area_count, abs=6e-4)


@pytest.mark.parametrize(("slates", "pounds"), NAILS_TO_THE_SQUARE)
def test_the_nails_of_a_square_weigh_what_is_printed(slates: int, pounds: float) -> None:
    """To half an ounce; what is dropped comes on top of that."""
    asked = ask_of(
        result_of("slate-500x250", slope("s", across_mm=5000, rafter_mm=4000), fixings={"nail_metal": "copper"})
    )
    (plan,) = asked.fixings
    assert plan.nail is not None
    plan = replace(plan, total=Held(nails_count=2 * slates), nail=replace(plan.nail, each_kg=NAIL_KG))
    nails = line(take_off(replace(asked, fixings=(plan,))), "slate-nails")
    assert nails.measured.each_kg is not None
    assert nails.mass_kg is not None
    assert pounds == pytest.approx(nails.measured.net * nails.measured.each_kg / POUND_KG, abs=0.5 / 16)
    assert nails.mass_kg / POUND_KG > pounds


def test_a_square_of_plain_tiles_weighs_what_the_handbooks_print() -> None:
    """A tile of 10 1/2 × 6 1/2 in weighs 2 1/4 lb (Encyclopaedia Britannica, 14th edition, "Roofs"); a roof of them, 11 to
    14 lb on a square foot (Kidder, Building Construction and Superintendence, table IV). At a gauge of 4 in.
    """
    by_area = on_an_area(area_mm2=SQUARE_MM2, gauge_mm=4.0 * INCH_MM, cover_mm=6.5 * INCH_MM)
    tile = replace(plain_tile("clay-plain-265x165"), mass_kg=2.25 * POUND_KG)
    roof = laid(area_mm2=SQUARE_MM2, gauge_mm=4.0 * INCH_MM, cover_mm=6.5 * INCH_MM, whole_count=by_area.flat_count)
    tiles = line(take_off(ask(roof, covering=tile, wished=NET)), "tile")
    assert tiles.mass_kg is not None
    assert 11.0 <= tiles.mass_kg / POUND_KG / 100 <= 14.0


@pytest.mark.parametrize(
    ("which", "printed"),
    [
        # A building technology handbook page on roof coverings.
        (WasteFigure.FLAT_SIZED_SLATES, 2.5),
        (WasteFigure.FLAT_RANDOM_SLATES, 5.0),
    ],
)
def test_flat_percentages(which: WasteFigure, printed: float) -> None:
    figure = waste_figure(Edition.GB, which)
    assert (printed, Basis.PUBLISHED) == (figure.value, figure.citation.basis)


def test_the_flat_percentage_of_slating_is_taken_for_tiles_as_common_practice() -> None:
    # Supplier-hosted general pages on slating, and on slate coverage to the square metre, have 5 per cent for slates.
    figure = waste_figure(Edition.GB, WasteFigure.FLAT_TILES)
    assert (5.0, Basis.COMMON_PRACTICE) == (figure.value, figure.citation.basis)
