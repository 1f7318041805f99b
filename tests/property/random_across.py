"""Random slopes to set perps out on. Sizes are those of real single-lap tiles and roofs."""

from hypothesis import strategies as st

from gaugerod.basis.band import Band
from gaugerod.basis.citation import house
from gaugerod.basis.limit import Limit
from gaugerod.basis.rounding import Division
from gaugerod.coverings.single_lap import Bond
from gaugerod.setting_out.across import AcrossAsk, Side, SideKind
from gaugerod.setting_out.stations import Opening

EXAMPLE = house("an example")
HALF = Limit(value=0.5, unit="ratio", citation=EXAMPLE)
VERGE = Band(least_mm=38.0, greatest_mm=50.0, citation=EXAMPLE)
WALL = Band(least_mm=-15.0, greatest_mm=-5.0, citation=EXAMPLE)


def tenths(least_mm: float, greatest_mm: float) -> st.SearchStrategy[float]:
    """Lengths to a tenth of a mm."""
    return st.integers(round(least_mm * 10), round(greatest_mm * 10)).map(lambda count: count / 10)


SIDES = st.one_of(
    st.builds(
        lambda least_mm, spread_mm: Side(
            kind=SideKind.VERGE, reach=Band(least_mm=least_mm, greatest_mm=least_mm + spread_mm, citation=EXAMPLE)
        ),
        tenths(0.0, 60.0),
        tenths(0.0, 20.0),
    ),
    st.just(Side(kind=SideKind.ABUTMENT, reach=WALL)),
)


@st.composite
def openings(draw: st.DrawFn, *, width_mm: float, unit_width_mm: float, most: int) -> tuple[Opening, ...]:
    """Openings from left to right, more than a unit from each other and from the sides."""
    found: list[Opening] = []
    from_mm = unit_width_mm + 20.0
    for index in range(most):
        room_mm = width_mm - unit_width_mm - 20.0 - from_mm
        if room_mm < 400.0 or not draw(st.booleans()):
            break
        opening_mm = draw(tenths(200.0, min(1200.0, room_mm)))
        left_mm = from_mm + draw(tenths(0.0, room_mm - opening_mm))
        found.append(
            Opening(
                name=f"rooflight {index + 1}",
                from_left_mm=left_mm,
                up_slope_mm=1500.0,
                width_mm=opening_mm,
                height_mm=1000.0,
            )
        )
        from_mm = left_mm + opening_mm + unit_width_mm + 20.0
    return tuple(found)


@st.composite
def square_slopes(draw: st.DrawFn, *, most_openings: int = 1, with_larger_units: bool = False) -> AcrossAsk:
    """Slopes with a top line as wide as the eaves, no crowns asked for."""
    closed_mm = draw(tenths(160.0, 330.0))
    shunt_mm = draw(st.one_of(st.just(0.0), tenths(0.0, 10.0)))
    unit_width_mm = closed_mm + shunt_mm + draw(tenths(0.0, 40.0))
    width_mm = draw(tenths(1200.0, 12_000.0))
    return AcrossAsk(
        where="slope",
        eaves_width_mm=width_mm,
        top_left_mm=0.0,
        top_right_mm=width_mm,
        left=draw(SIDES),
        right=draw(SIDES),
        unit_width_mm=unit_width_mm,
        cover_closed_mm=closed_mm,
        cover_open_mm=closed_mm + shunt_mm,
        cover_citation=EXAMPLE,
        bond=draw(st.sampled_from(Bond)),
        half_unit=draw(st.booleans()),
        unit_and_a_half=draw(st.booleans()) if with_larger_units else False,
        high_points_mm=(),
        openings=draw(openings(width_mm=width_mm, unit_width_mm=unit_width_mm, most=most_openings)),
        division=draw(st.sampled_from(Division)),
        minimum_cut=HALF,
        perps_every_count=draw(st.integers(1, 5)),
    )
