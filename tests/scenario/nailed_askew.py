"""Slopes part-way battened: random ones, on which the last batten nailed did not land where it was marked."""

from dataclasses import dataclass, replace
from random import Random

from gaugerod.basis.band import Band
from gaugerod.basis.citation import house
from gaugerod.basis.errors import InputRefused, NothingToSetOut
from gaugerod.basis.lengths import LengthUnit
from gaugerod.basis.rounding import Division
from gaugerod.coverings.double_lap import Nailing, PlainTile, SizedSlate
from gaugerod.coverings.double_lap_catalogue import plain_tiles, sized_slates
from gaugerod.geometry.taped_slope import TapedSlope
from gaugerod.job.model import BottomKind, Job, Slope, TopKind, Wishes
from gaugerod.job.up_slope import UpSlope, up_slope
from gaugerod.setting_out.across import SideKind
from gaugerod.setting_out.courses import Courses, CoursesAsk, Rod
from gaugerod.setting_out.set_courses import set_out_courses
from gaugerod.setting_out.stations import NailedRod, Station
from gaugerod.standards.edition import Edition, Exposure

_EXAMPLE = house("random case")


def single_lap_ask(chance: Random) -> CoursesAsk:
    """A slope of single-lap tiles at one to four stations; often out of parallel, sometimes with a tight gauge range."""
    length, across, count = chance.randint(250, 500), chance.randint(1000, 12000), chance.randint(1, 4)
    greatest = chance.randint(60, length - 60)
    rafter, taper = chance.randint(900, 9000), chance.choice([0, 0, 5, 30, 120, 300])
    overhang, top = chance.randint(30, 60), chance.randint(15, 60)
    return CoursesAsk(
        where="random",
        stations=tuple(
            Station(
                at_mm=across * index / max(count - 1, 1),
                length_mm=rafter + taper * round(chance.uniform(-1, 1), chance.choice([0, 2])),
            )
            for index in range(count)
        ),
        unit_length_mm=float(length),
        hanging_length_mm=float(length - chance.randint(5, 30)),
        gauge_min_mm=chance.choice([None, float(chance.randint(max(greatest - 120, 20), greatest))]),
        gauge_max_mm=greatest + chance.choice([0.0, 0.3, 0.7]),
        gauge_citation=_EXAMPLE,
        overhang=Band(overhang, overhang + chance.randint(0, 15), _EXAMPLE),
        top=Band(top, top + chance.choice([0, 3, 10, 30, 60]), _EXAMPLE),
        division=chance.choice(list(Division)),
    )


def nailed_on(rods: tuple[Rod, ...], chance: Random) -> tuple[NailedRod, ...]:
    """Battens on their marks up to one that is not, here or there: by a little, by a lot; some of those below neither.

    Now and then the first is the last there is room for.
    """
    count = chance.randint(1, len(rods[0].marks_mm))
    slip = chance.choice([0, 1, 3, 10, 40, 150])
    if chance.random() < 0.01:
        return tuple(NailedRod(at_mm=rod.at_mm, marks_mm=(round(rod.length_mm - 50.0, 6),)) for rod in rods)
    return tuple(
        NailedRod(
            at_mm=rod.at_mm,
            marks_mm=tuple(
                _slipped(mark, slip if at == count - 1 or chance.random() < 0.1 else 0, chance)
                for at, mark in enumerate(rod.marks_mm[:count])
            ),
        )
        for rod in rods
    )


def _slipped(mark_mm: float, by: int, chance: Random) -> float:
    return round(
        mark_mm + chance.choice([0.0, 1.0, 1.0]) * chance.choice([chance.randint(-by, by), chance.uniform(-by, by)]), 6
    )


@dataclass(frozen=True, kw_only=True)
class CarriedOn:
    """The ask as it was before anything was nailed, as it is now, and the answer; None: no room for another batten."""

    before: CoursesAsk
    now: CoursesAsk
    courses: Courses | None


def carried_on_cases(*, count: int, seed: int) -> list[CarriedOn]:
    """Cases that the engine does not refuse as impossible to have measured."""
    chance = Random(seed)  # noqa: S311 - the same cases every time
    cases: list[CarriedOn] = []
    while len(cases) < count:
        ask = single_lap_ask(chance)
        try:
            now = replace(ask, nailed=nailed_on(set_out_courses(ask).rods, chance))
            cases.append(CarriedOn(before=ask, now=now, courses=_carried_on(now)))
        except (InputRefused, NothingToSetOut):
            continue
    return cases


def _carried_on(now: CoursesAsk) -> Courses | None:
    try:
        return set_out_courses(now)
    except NothingToSetOut:
        return None


@dataclass(frozen=True, kw_only=True)
class DoubleLapCase:
    """A slope of plain tiles or slates: as it was sent, and as it is set out from its nailed battens."""

    job: Job
    unit: PlainTile | SizedSlate
    sent: UpSlope
    nailed: tuple[NailedRod, ...]
    again: UpSlope


def double_lap_cases(*, count: int, seed: int) -> list[DoubleLapCase]:
    """Cases that can be set out, before and after."""
    chance = Random(seed)  # noqa: S311
    units: list[PlainTile | SizedSlate] = [
        *plain_tiles().values(),
        *(replace(slate, nailing=Nailing.HEAD) for slate in sized_slates().values()),
    ]
    cases: list[DoubleLapCase] = []
    while len(cases) < count:
        unit = chance.choice(units)
        job = _job(unit, chance)
        slope = job.slopes[0]
        try:
            sent = up_slope(job, slope, shared=None)
            nailed = nailed_on(sent.courses.rods, chance) if isinstance(sent, UpSlope) else ()
            again = up_slope(job, replace(slope, nailed=nailed), shared=None)
        except (InputRefused, NothingToSetOut):
            continue
        if isinstance(sent, UpSlope) and isinstance(again, UpSlope):
            cases.append(DoubleLapCase(job=job, unit=unit, sent=sent, nailed=nailed, again=again))
    return cases


def _job(unit: PlainTile | SizedSlate, chance: Random) -> Job:
    across, rafter = chance.randint(2000, 12000), chance.randint(1500, 8000)
    rafters = ((0.0, float(rafter)), (float(across), float(rafter + chance.choice([0, 0, 6, -14]))))
    slope = Slope(
        name="front",
        pitch_deg=chance.choice([40.0, 45.0, 50.0]),
        taped=TapedSlope(eaves_mm=float(across), rafters=rafters),
        left=SideKind.VERGE,
        right=SideKind.VERGE,
        bottom=BottomKind.EAVES,
        top=TopKind.RIDGE,
        rafter_spacing_mm=400.0,
    )
    return Job(
        title="A coach house",
        edition=Edition.GB,
        exposure=Exposure.MODERATE,
        show_lengths_in=chance.choice([LengthUnit.MM, LengthUnit.CM, LengthUnit.M, LengthUnit.FT_IN]),
        covering=unit,
        slopes=(slope,),
        wishes=Wishes(
            ridge_cover_mm=chance.choice([None, 100.0, 125.0, 150.0, 177.8, 300.0]),
            headlap_mm=chance.choice([None, 65.0, 80.0]),
        ),
    )
