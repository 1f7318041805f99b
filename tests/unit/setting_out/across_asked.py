"""A plain slope to ask perps for: two verges, 300 mm cover mid-shunt, a unit of 330 mm. Round figures, for sums by hand."""

from gaugerod.basis.band import Band
from gaugerod.basis.citation import house
from gaugerod.basis.limit import Limit
from gaugerod.basis.rounding import Division
from gaugerod.coverings.single_lap import Bond
from gaugerod.setting_out.across import Across, AcrossAsk, EndPiece, Fit, Side, SideKind
from gaugerod.setting_out.stations import Opening

EXAMPLE = house("an example")
VERGE = Side(kind=SideKind.VERGE, reach=Band(40.0, 50.0, EXAMPLE))
WALL = Side(kind=SideKind.ABUTMENT, reach=Band(-15.0, -5.0, EXAMPLE))
HIP = Side(kind=SideKind.HIP, reach=Band(0.0, 0.0, EXAMPLE))
CROWNED = Side(kind=SideKind.VERGE, reach=Band(40.0, 50.0, EXAMPLE), high_point=True)


def asked(
    width_mm: float,
    *,
    top: tuple[float, float] | None = None,
    left: Side = VERGE,
    right: Side = VERGE,
    cover_mm: tuple[float, float] = (297.0, 303.0),
    unit_width_mm: float = 330.0,
    bond: Bond = Bond.STRAIGHT,
    half_unit: bool = False,
    unit_and_a_half: bool = False,
    high_points_mm: tuple[float, ...] = (),
    openings: tuple[Opening, ...] = (),
    division: Division = Division.MILLIMETRE,
    every_count: int = 3,
    minimum_cut: float = 0.5,
) -> AcrossAsk:
    return AcrossAsk(
        where="rear",
        eaves_width_mm=width_mm,
        top_left_mm=0.0 if top is None else top[0],
        top_right_mm=width_mm if top is None else top[1],
        left=left,
        right=right,
        unit_width_mm=unit_width_mm,
        cover_closed_mm=cover_mm[0],
        cover_open_mm=cover_mm[1],
        cover_citation=EXAMPLE,
        bond=bond,
        half_unit=half_unit,
        unit_and_a_half=unit_and_a_half,
        high_points_mm=high_points_mm,
        openings=openings,
        division=division,
        minimum_cut=Limit(value=minimum_cut, unit="ratio", citation=EXAMPLE),
        perps_every_count=every_count,
    )


def opening(name: str, from_left_mm: float, *, width_mm: float = 780.0, up_slope_mm: float = 1600.0) -> Opening:
    return Opening(name=name, from_left_mm=from_left_mm, up_slope_mm=up_slope_mm, width_mm=width_mm, height_mm=1180.0)


def fits(across: Across, at: str) -> list[Fit]:
    return [piece.fit for piece in across.pieces if piece.at == at]


def piece(across: Across, at: str, bond_row: int = 0) -> EndPiece:
    return next(each for each in across.pieces if each.at == at and each.bond_row == bond_row)
