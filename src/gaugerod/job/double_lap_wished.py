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
from gaugerod.standards.slate_headlap import printed_laps

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
    least = _least_headlap(job, slope, unit)
    wished_mm = job.wishes.headlap_mm
    if wished_mm is not None:
        return Limit(value=wished_mm, unit="mm", citation=WISHED_LAP)
    if least is None:
        raise NothingToSetOut(_no_lap(job, slope, unit))
    return least


def _no_lap(job: Job, slope: Slope, unit: PlainTile | SizedSlate) -> str:
    """Why there is no lap to set out with, what each table prints, and what can be done."""
    told = f"{unit.title} at {slope.pitch_deg:.1f}° in {job.exposure.value.replace('-', ' ')} exposure"
    printed = printed_laps(
        length_mm=unit.length_mm,
        width_mm=unit.width_mm,
        pitch_deg=slope.pitch_deg,
        exposure=job.exposure,
        edition=job.edition,
        between=job.wishes.slate_between,
    )
    if unit.material is not Material.NATURAL_SLATE or not printed:
        return f"{slope.name}: no table held here gives a headlap for {told}. Ask the maker, and state it as headlap in set_out."
    names = ("first", "second") if len(printed) > 1 else ("only",)
    tables = "; ".join(
        f"the {name} reproduction of the table gives {lap.headlap_mm:g} mm"
        if lap.headlap_mm is not None
        else f"the {name} reproduction of the table does not recommend that size below {lap.recommended_from_deg:g}°"
        for name, lap in zip(names, printed, strict=True)
    )
    return (
        f"{slope.name}: no lap is taken for {told}: {tables}. Choose a larger slate or another covering; or ask the maker, "
        f"and state his lap as headlap in set_out. To go by one reproduction alone, say which as slate_laps."
    )


def _least_headlap(job: Job, slope: Slope, unit: PlainTile | SizedSlate) -> Limit | None:
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
