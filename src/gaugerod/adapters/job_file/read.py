"""Reading a job file: the text, the document, the job. Every fault is reported, and reported together."""

import json
import tomllib
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from gaugerod.adapters.job_file.all_faults import faults_of
from gaugerod.adapters.job_file.document import JobFile, SetOutTable, SlopeTable
from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.geometry.taped_slope import TapedSlope
from gaugerod.job.model import Job, Slope, Wishes
from gaugerod.setting_out.stations import NailedRod, Opening

LARGEST_BYTES = 1_000_000
"""A job file larger than this is no job file."""


def read_job(path: Path) -> Job:
    """The job in a TOML or JSON file. Raises InputRefused with every fault."""
    try:
        with path.open("rb") as file:
            content = file.read(LARGEST_BYTES + 1)
    except OSError as error:
        raise InputRefused(
            [Fault("file", str(path), "a job file that can be read", f"It cannot be opened: {error.strerror}.")]
        ) from None
    return read_job_text(content, as_json=path.suffix.lower() == ".json")


def read_job_text(content: bytes, *, as_json: bool = False) -> Job:
    """The job in the bytes of a TOML file, or of a JSON one. Raises InputRefused with every fault."""
    return read_job_document(_document(content, as_json=as_json))


def read_job_document(document: dict[str, Any]) -> Job:
    """The job in a document already read. Raises InputRefused with every fault."""
    try:
        checked = JobFile.model_validate(document)
    except ValidationError as error:
        raise InputRefused(faults_of(error, JobFile)) from None
    return Job(
        title=checked.job.title,
        edition=checked.job.edition,
        exposure=checked.job.exposure,
        show_lengths_in=checked.job.show_lengths_in,
        covering=checked.covering.record(),
        slopes=tuple(_slope(slope) for slope in checked.slope),
        wishes=_wishes(checked.set_out),
    )


def _document(content: bytes, *, as_json: bool) -> dict[str, Any]:
    if len(content) > LARGEST_BYTES:
        raise _refused(f"{len(content)} bytes or more", f"up to {LARGEST_BYTES} bytes", "This is no job file.")
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise _refused("bytes that are no text", "text in UTF-8", "Save it as plain text.") from None
    if not text.strip():
        raise _refused("nothing", "a job", "The file is empty. Start from the example in the reference.")
    document = _from_json(text) if as_json or text.lstrip().startswith("{") else _from_toml(text)
    if not isinstance(document, dict):
        raise _refused("a list or a bare value", "tables: job, covering, slope", "Write it as the reference shows.")
    return document


def _from_toml(text: str) -> Any:  # noqa: ANN401 - what a file holds is checked afterwards
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise _refused(str(error), "TOML", "Mend the line it names. Lengths with a unit go in quotes.") from None
    except RecursionError:
        raise _refused("brackets inside brackets without end", "TOML", "This is no job file.") from None


def _from_json(text: str) -> Any:  # noqa: ANN401 - what a file holds is checked afterwards
    try:
        return json.loads(text, object_pairs_hook=_each_key_once)
    except json.JSONDecodeError as error:
        raise _refused(f"{error.msg} at line {error.lineno}", "JSON", "Mend the line it names.") from None
    except (RecursionError, ValueError) as error:
        raise _refused(str(error)[:80], "JSON", "This is no job file.") from None


def _each_key_once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    keys = [key for key, _ in pairs]
    if len(set(keys)) < len(keys):
        twice = next(key for key in keys if keys.count(key) > 1)
        raise _refused(f"the key {twice[:60]} twice in one table", "each key once", "Take one of them out.")
    return dict(pairs)


def _refused(given: str, allowed: str, do: str) -> InputRefused:
    return InputRefused([Fault("file", given, allowed, do)])


def _slope(table: SlopeTable) -> Slope:
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
        rafter_spacing_mm=table.rafter_spacing,
        openings=tuple(
            Opening(
                name=opening.name,
                from_left_mm=opening.from_left,
                up_slope_mm=opening.up_slope,
                width_mm=opening.width,
                height_mm=opening.height,
            )
            for opening in table.opening
        ),
        nailed=tuple(NailedRod(at_mm=nailed.at, marks_mm=tuple(nailed.marks)) for nailed in table.nailed),
    )


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
    )
