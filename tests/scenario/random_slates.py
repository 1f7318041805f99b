"""A slope and a stack of random slates of our own, for tests of diminishing courses."""

from dataclasses import replace

from gaugerod.basis.band import Band
from gaugerod.basis.citation import house
from gaugerod.basis.limit import Limit
from gaugerod.basis.rounding import Division
from gaugerod.coverings.double_lap import Heap, Nailing, RandomSlates
from gaugerod.coverings.single_lap import Material
from gaugerod.setting_out.diminishing.ask import Aim, DiminishingAsk
from gaugerod.setting_out.stations import Station

EXAMPLE = house("example")

STACK = RandomSlates(
    name="stack",
    title="Slates from the old roof",
    material=Material.NATURAL_SLATE,
    nailing=Nailing.HEAD,
    hole_below_mm=25.0,
    heaps=tuple(Heap(length_mm=600.0 - 25.0 * at, run_mm=38_000.0) for at in range(14)),
    broken_ratio=0.05,
    joint_mm=5.0,
    citation=EXAMPLE,
)


def mm(value: float) -> Limit:
    """A limit of the example."""
    return Limit(value=value, unit="mm", citation=EXAMPLE)


def ask(
    *,
    heaps: tuple[Heap, ...] = STACK.heaps,
    rafters_mm: tuple[float, ...] = (8000.0,),
    headlap_mm: float = 75.0,
    nailing: Nailing = Nailing.HEAD,
    aim: Aim = Aim.LEAST_LEFT,
    division: Division = Division.MILLIMETRE,
    ridge_cover_mm: float = 200.0,
    least_batten_mm: float = 50.0,
    broken_ratio: float = 0.05,
    overhang: tuple[float, float] = (45.0, 55.0),
) -> DiminishingAsk:
    """The example, with what a test changes."""
    return DiminishingAsk(
        where="rear",
        slates=replace(STACK, heaps=heaps, nailing=nailing, broken_ratio=broken_ratio),
        stations=tuple(Station(at_mm=3500.0 * at, length_mm=length) for at, length in enumerate(rafters_mm)),
        course_width_mm=7000.0,
        side_waste_mm=150.0,
        headlap=mm(headlap_mm),
        overhang=Band(least_mm=overhang[0], greatest_mm=overhang[1], citation=EXAMPLE),
        ridge_cover_mm=ridge_cover_mm,
        ridge_lap=mm(75.0),
        apex_clear=mm(25.0),
        least_batten_gauge=mm(least_batten_mm),
        nail_clear=mm(10.0),
        division=division,
        aim=aim,
    )
