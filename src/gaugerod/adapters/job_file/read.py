"""Reading a job: the document checked, and the job made of it. Every fault is reported, and reported together."""

from dataclasses import replace
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from gaugerod.adapters.job_file.all_faults import faults_of
from gaugerod.adapters.job_file.contradictions import contradictions
from gaugerod.adapters.job_file.document import JobFile, SetOutTable
from gaugerod.adapters.job_file.one_building import building_of
from gaugerod.adapters.job_file.plan_fields import NamedEdge
from gaugerod.adapters.job_file.slope_tables import OpeningTable, OutlinedSlopeTable, SlopeTable
from gaugerod.adapters.job_file.text import document_in_file, document_in_text
from gaugerod.basis.errors import InputRefused
from gaugerod.edges.wished import OpeningMade
from gaugerod.geometry.taped_slope import TapedSlope
from gaugerod.job.beneath_wished import BeneathWished
from gaugerod.job.model import Job, Slope, SlopeOutline, Wishes
from gaugerod.job.outlined import outlined_slope
from gaugerod.laying.ask import EdgeKind
from gaugerod.setting_out.stations import NailedRod, Opening


def read_job(path: Path) -> Job:
    """The job in a TOML or JSON file. Raises InputRefused with every fault."""
    return read_job_document(document_in_file(path))


def read_job_text(content: bytes, *, as_json: bool = False) -> Job:
    """The job in the bytes of a TOML file, or of a JSON one. Raises InputRefused with every fault."""
    return read_job_document(document_in_text(content, as_json=as_json))


def read_job_document(document: dict[str, Any]) -> Job:
    """The job in a document already read. Raises InputRefused with every fault."""
    checked = _checked(document)
    return Job(
        title=checked.job.title,
        edition=checked.job.edition,
        exposure=checked.job.exposure,
        show_lengths_in=checked.job.show_lengths_in,
        covering=checked.covering.record(),
        slopes=tuple(_slope(slope) for slope in checked.slope),
        buildings=tuple(building_of(building) for building in checked.building),
        wishes=_wishes(checked.set_out),
        beneath=BeneathWished(
            battens=None if checked.battens is None else checked.battens.wished(),
            underlay=None if checked.underlay is None else checked.underlay.wished(),
            air=None if checked.ventilation is None else checked.ventilation.wished(),
            fixings=None if checked.fixings is None else checked.fixings.wished(),
            load=None if checked.load is None else checked.load.wished(),
        ),
        edges=checked.edges.wished(),
        order=checked.order.wished(),
        record=checked.record.wished(),
    )


def _checked(document: dict[str, Any]) -> JobFile:
    """The document as tables, once nothing in it is wrong."""
    contradicting = list(contradictions(document))
    try:
        checked = JobFile.model_validate(document)
    except ValidationError as error:
        raise InputRefused([*faults_of(error, model=JobFile, document=document), *contradicting]) from None
    if contradicting:
        raise InputRefused(contradicting)
    return checked


def _slope(table: SlopeTable | OutlinedSlopeTable) -> Slope:
    return _taped(table) if isinstance(table, SlopeTable) else _outlined(table)


def _outlined(table: OutlinedSlopeTable) -> Slope:
    kinds = tuple(EdgeKind.RIDGE if edge is NamedEdge.MONO_RIDGE else EdgeKind(edge.value) for edge in table.edges)
    slope = outlined_slope(
        name=table.name,
        pitch_deg=table.pitch,
        outline=SlopeOutline(points_mm=tuple(table.outline), kinds=kinds),
        top=table.top(),
        rafter_spacing_mm=table.rafter_spacing_mm(),
        rafters_at_mm=tuple(table.rafters_at),
        openings=_openings(table.opening),
    )
    return replace(slope, openings_made=_openings_made(table.opening))


def _taped(table: SlopeTable) -> Slope:
    return Slope(
        name=table.name,
        pitch_deg=table.pitch,
        taped=TapedSlope(
            eaves_mm=table.across,
            rafters=tuple(table.stations_mm()),
            ridge_mm=table.ridge,
            diagonal_from_left_mm=table.diagonals.from_left,
            diagonal_from_right_mm=table.diagonals.from_right,
        ),
        left=table.left,
        right=table.right,
        bottom=table.bottom,
        top=table.top,
        rafter_spacing_mm=table.rafter_spacing_mm(),
        rafters_at_mm=tuple(table.rafters_at),
        openings=_openings(table.opening),
        openings_made=_openings_made(table.opening),
        nailed=tuple(NailedRod(at_mm=nailed.at, marks_mm=tuple(nailed.marks)) for nailed in table.nailed),
    )


def _openings(tables: list[OpeningTable]) -> tuple[Opening, ...]:
    return tuple(
        Opening(
            name=opening.name,
            from_left_mm=opening.from_left,
            up_slope_mm=opening.up_slope,
            width_mm=opening.width,
            height_mm=opening.height,
        )
        for opening in tables
    )


def _openings_made(tables: list[OpeningTable]) -> tuple[tuple[str, OpeningMade], ...]:
    """What stands in each opening, by its name, where it is said."""
    return tuple((opening.name, opening.made) for opening in tables if opening.made is not None)


def _wishes(table: SetOutTable) -> Wishes:
    return Wishes(
        eaves_overhang=table.eaves_overhang,
        overhang_measured=table.overhang_measured,
        top_batten_from_apex=table.top_batten_from_apex,
        ridge_cover_mm=table.ridge_cover,
        verge_overhang=table.verge_overhang,
        abutment_set_back=table.abutment_set_back,
        bond=table.bond,
        perps_every_count=table.perps_every,
        headlap_mm=table.headlap,
        joint=table.joint,
        slate_reading=table.slate_laps,
        slate_between=table.slate_laps_between_pitches,
        random_aim=table.random_slates,
    )
