"""Plain tiles and sized slates: the lap to keep, what the courses are asked with, and the rules of these coverings."""

from collections.abc import Iterator

from gaugerod.basis.citation import house
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import Finding
from gaugerod.basis.limit import Limit
from gaugerod.coverings.double_lap import PlainTile, SizedSlate
from gaugerod.coverings.single_lap import Material
from gaugerod.job.model import Job, Slope
from gaugerod.job.rules_met import batten_findings, overhang_findings
from gaugerod.job.wished import division_of, overhang_on_slope, stations_of
from gaugerod.rules.battens import BattenedCovering
from gaugerod.rules.plain_tile import Hung, plain_tile_headlap, plain_tile_laps, plain_tile_pitch
from gaugerod.rules.slates import slate_headlap_least, slate_laps, slate_pitch, slate_rafter
from gaugerod.setting_out.courses import Courses
from gaugerod.setting_out.double_lap_ask import DoubleLapAsk
from gaugerod.setting_out.double_lap_extras import DoubleLapExtras

WISHED_LAP = house("lap stated in the job")


def double_lap_ask(job: Job, slope: Slope, unit: PlainTile | SizedSlate) -> DoubleLapAsk:
    """What the courses are asked with. Raises NothingToSetOut where no table gives a lap and the job states none."""
    return DoubleLapAsk(
        where=slope.name,
        unit=unit,
        hung=Hung.ROOF,
        stations=stations_of(slope),
        headlap=headlap_to_keep(job, slope, unit),
        overhang=overhang_on_slope(job, slope),
        ridge_cover_mm=job.wishes.ridge_cover_mm,
        edition=job.edition,
        division=division_of(job.show_lengths_in),
        openings=slope.openings,
        nailed=slope.nailed,
    )


def headlap_to_keep(job: Job, slope: Slope, unit: PlainTile | SizedSlate) -> Limit:
    """The least lap of the edition, or the one stated in the job. A smaller one is kept to, and the rules then say so."""
    if job.wishes.headlap_mm is not None:
        return Limit(value=job.wishes.headlap_mm, unit="mm", citation=WISHED_LAP)
    least = least_headlap(job, slope, unit)
    if least is None:
        raise NothingToSetOut(f"{slope.name}: no source gives {unit.title} a headlap at {slope.pitch_deg:.1f}°.")
    return least


def least_headlap(job: Job, slope: Slope, unit: PlainTile | SizedSlate) -> Limit | None:
    """The least lap the edition gives at this slope's pitch; None where no source gives one."""
    match unit:
        case PlainTile():
            return plain_tile_headlap(tile=unit, exposure=job.exposure, edition=job.edition)
        case SizedSlate():
            return slate_headlap_least(
                slate=unit,
                pitch_deg=slope.pitch_deg,
                exposure=job.exposure,
                edition=job.edition,
                reading=job.wishes.slate_reading,
                between=job.wishes.slate_between,
            )


def double_lap_findings(
    job: Job, slope: Slope, unit: PlainTile | SizedSlate, *, courses: Courses, extras: DoubleLapExtras
) -> tuple[Finding, ...]:
    """The rules of plain tiles or slates for one slope as it is set out."""
    return (
        *(
            _plain(job, slope, unit, courses, extras)
            if isinstance(unit, PlainTile)
            else _slate(job, slope, unit, courses, extras)
        ),
        *overhang_findings(job, slope, courses),
        *batten_findings(job, slope, battened(unit)),
    )


def battened(unit: PlainTile | SizedSlate) -> BattenedCovering:
    """Which row of the batten table answers."""
    if isinstance(unit, PlainTile):
        return BattenedCovering.TILE_DOUBLE_LAP
    return BattenedCovering.NATURAL_SLATE if unit.material is Material.NATURAL_SLATE else BattenedCovering.MADE_SLATE


def _plain(job: Job, slope: Slope, tile: PlainTile, courses: Courses, extras: DoubleLapExtras) -> Iterator[Finding]:
    yield plain_tile_pitch(where=slope.name, pitch_deg=slope.pitch_deg, tile=tile, edition=job.edition)
    yield from plain_tile_laps(
        where=slope.name,
        least_lap_mm=courses.headlap_mm,
        greatest_lap_mm=extras.greatest_headlap_mm,
        tile=tile,
        exposure=job.exposure,
        edition=job.edition,
    )


def _slate(job: Job, slope: Slope, slate: SizedSlate, courses: Courses, extras: DoubleLapExtras) -> Iterator[Finding]:
    yield slate_pitch(where=slope.name, pitch_deg=slope.pitch_deg, edition=job.edition)
    yield from slate_laps(
        where=slope.name,
        least_lap_mm=courses.headlap_mm,
        greatest_lap_mm=extras.greatest_headlap_mm,
        slate=slate,
        pitch_deg=slope.pitch_deg,
        exposure=job.exposure,
        edition=job.edition,
        between=job.wishes.slate_between,
    )
    yield from slate_rafter(
        where=slope.name,
        rafter_mm=max(length_mm for _, length_mm in slope.taped.rafters),
        pitch_deg=slope.pitch_deg,
        exposure=job.exposure,
        edition=job.edition,
    )
