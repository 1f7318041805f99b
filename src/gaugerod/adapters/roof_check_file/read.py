"""Reading a roof to check. Every fault is reported, and reported together."""

from pathlib import Path
from typing import Any

from pydantic import ValidationError

from gaugerod.adapters.job_file.all_faults import faults_of
from gaugerod.adapters.job_file.fields import STATED
from gaugerod.adapters.job_file.text import document_in_file, document_in_text
from gaugerod.adapters.roof_check_file.document import RodTable, RoofFile
from gaugerod.as_built.ask import BattensMeasured, MarginsMeasured, RodMeasured, RoofAsk
from gaugerod.basis.errors import InputRefused
from gaugerod.basis.limit import Limit
from gaugerod.job.roof_checked import RoofToCheck
from gaugerod.job.wished import division_of


def read_roof(path: Path) -> RoofToCheck:
    """The roof in a TOML or JSON file. Raises InputRefused with every fault."""
    return read_roof_document(document_in_file(path))


def read_roof_text(content: bytes, *, as_json: bool = False) -> RoofToCheck:
    """The roof in the bytes of a TOML file, or of a JSON one. Raises InputRefused with every fault."""
    return read_roof_document(document_in_text(content, as_json=as_json))


def read_roof_document(document: dict[str, Any]) -> RoofToCheck:
    """The roof in a document already read. Raises InputRefused with every fault."""
    try:
        checked = RoofFile.model_validate(document)
    except ValidationError as error:
        raise InputRefused(faults_of(error, model=RoofFile, document=document)) from None
    roof = checked.roof
    return RoofToCheck(
        title=roof.title,
        show_lengths_in=roof.show_lengths_in,
        ask=RoofAsk(
            where=roof.name,
            covering=checked.covering.one_length(),
            pitch_deg=roof.pitch,
            exposure=roof.exposure,
            edition=roof.edition,
            division=division_of(roof.show_lengths_in),
            rods=tuple(_rod(rod) for rod in checked.rod),
            finished=roof.finished,
            top_is=roof.top,
            ridge_cover_mm=roof.ridge_cover,
            headlap=None if roof.headlap is None else Limit(value=roof.headlap, unit="mm", citation=STATED),
            overhang=roof.eaves_overhang,
            top=roof.top_batten_from_apex,
        ),
    )


def _rod(table: RodTable) -> RodMeasured:
    if table.marks is not None:
        return BattensMeasured(at_mm=table.at, length_mm=table.rafter, marks_mm=tuple(table.marks))
    if table.margins is None or table.overhang is None:
        raise AssertionError("the table was checked to hold one way or the other")
    return MarginsMeasured(
        at_mm=table.at, length_mm=table.rafter, overhang_mm=table.overhang, margins_mm=tuple(table.margins)
    )
