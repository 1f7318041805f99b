"""What the rules say about a job: about its covering and site once, about each slope as set out."""

from dataclasses import replace

from gaugerod.basis.finding import Finding
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.job.model import Job, Slope
from gaugerod.job.wished import least_top_cover, overhang_on_slope, overhang_on_the_level_mm
from gaugerod.rules.battens import BattenedCovering, batten_section
from gaugerod.rules.eaves_overhang import eaves_overhang
from gaugerod.rules.exposure import exposure, low_pitch_lap
from gaugerod.rules.headlap import headlap
from gaugerod.rules.material import material_cautions
from gaugerod.rules.pitch import pitch
from gaugerod.rules.ridge_cover import ridge_cover
from gaugerod.setting_out.courses import Courses


def job_findings(job: Job) -> tuple[Finding, ...]:
    """What holds for the whole job: the driving rain. In double lap the tables of laps take it in already."""
    if not isinstance(job.covering, SingleLapTile):
        return ()
    return (exposure(where="site", exposure=job.exposure, edition=job.edition),)


def single_lap_findings(job: Job, slope: Slope, tile: SingleLapTile, *, courses: Courses) -> tuple[Finding, ...]:
    """The rules of single-lap tiles for one slope as it is set out."""
    where, edition = slope.name, job.edition
    return (
        *pitch(where=where, pitch_deg=slope.pitch_deg, tile=tile, edition=edition),
        *headlap(where=where, headlap_mm=courses.headlap_mm, tile=tile, edition=edition),
        *low_pitch_lap(where=where, pitch_deg=slope.pitch_deg, headlap_mm=courses.headlap_mm, edition=edition),
        *overhang_findings(job, slope, courses),
        *_top(job, slope, tile, courses),
        *batten_findings(job, slope, BattenedCovering.TILE_SINGLE_LAP),
        *material_cautions(where=where, pitch_deg=slope.pitch_deg, tile=tile),
    )


def batten_findings(job: Job, slope: Slope, covering: BattenedCovering) -> tuple[Finding, ...]:
    """The batten section for the covering on these rafters."""
    return (
        batten_section(
            where=slope.name, covering=covering, rafter_spacing_mm=slope.rafter_spacing_mm, edition=job.edition
        ),
    )


def overhang_findings(job: Job, slope: Slope, courses: Courses) -> tuple[Finding, ...]:
    """The overhang against its band and the published statements; how it measures on the level stands beside it."""
    found = eaves_overhang(
        where=slope.name, overhang_mm=courses.overhang_mm, band=overhang_on_slope(job, slope), edition=job.edition
    )
    level_mm = overhang_on_the_level_mm(overhang_mm=courses.overhang_mm, pitch_deg=slope.pitch_deg)
    beside = f" Measured on the level it is {level_mm:.1f} mm."
    return tuple(replace(finding, says=finding.says + beside) for finding in found)


def _top(job: Job, slope: Slope, tile: SingleLapTile, courses: Courses) -> tuple[Finding, ...]:
    """The ridge's cover over the top course, at the rod where it is least."""
    if job.wishes.ridge_cover_mm is None:
        return ()  # said already, where the band was narrowed
    head_to_nib_mm = None if tile.hanging_length_mm is None else tile.length_mm - tile.hanging_length_mm
    return (
        ridge_cover(
            where=slope.name,
            ridge_cover_mm=job.wishes.ridge_cover_mm,
            top_batten_below_apex_mm=max(rod.below_apex_mm for rod in courses.rods),
            head_to_nib_mm=head_to_nib_mm,
            least=least_top_cover(job, slope),
        ),
    )
