"""The only place that joins the engine to real adapters. Each is read when it is first needed."""

import os
import sys
from collections.abc import Mapping
from datetime import datetime
from importlib.resources import files
from pathlib import Path
from typing import TYPE_CHECKING, Any

from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.model import Building, Job
from gaugerod.job.result import Result

if TYPE_CHECKING:
    from gaugerod.adapters.job_draft.from_plan import PlanUnit
    from gaugerod.adapters.store.records import Imported
    from gaugerod.adapters.store.store import JobStore
    from gaugerod.as_built.roof_check import RoofCheck
    from gaugerod.job.roof_checked import RoofToCheck
    from gaugerod.sheets.placed import Placed
    from gaugerod.take_off.money import PriceList, Quotation


def job_from_file(path: Path) -> Job:
    """The job in a TOML or JSON file. Raises InputRefused with every fault."""
    from gaugerod.adapters.job_file.read import read_job  # noqa: PLC0415 - heavy, and not every command needs it

    return read_job(path)


def job_from_document(document: dict[str, Any]) -> Job:
    """The job in a document as the app keeps it. Raises InputRefused with every fault."""
    from gaugerod.adapters.job_file.read import read_job_document  # noqa: PLC0415

    return read_job_document(document)


def building_from_table(table: dict[str, Any]) -> Building:
    """One building of a document that may not be whole yet. Raises InputRefused with every fault."""
    from gaugerod.adapters.job_file.one_building import read_building  # noqa: PLC0415

    return read_building(table)


def document_of_file(content: bytes) -> dict[str, Any]:
    """The document in the bytes of a TOML or JSON job file, not yet checked. Raises InputRefused."""
    from gaugerod.adapters.job_file.text import document_in_text  # noqa: PLC0415

    return document_in_text(content)


def demo_job() -> Job:
    """The job that comes with the program."""
    from gaugerod.adapters.job_file.read import read_job_text  # noqa: PLC0415

    return read_job_text(_demo())


def demo_document() -> dict[str, Any]:
    """The document of the job that comes with the program."""
    return document_of_file(_demo())


def _demo() -> bytes:
    return files("gaugerod.adapters.job_file").joinpath("examples", "demo.toml").read_bytes()


def job_file_schema() -> dict[str, Any]:
    """The JSON Schema of the job file."""
    from gaugerod.adapters.job_file.schema import job_schema  # noqa: PLC0415

    return job_schema()


def result_as_document(result: Result) -> Mapping[str, object]:
    """The result document."""
    from gaugerod.adapters.result_document.document import result_document  # noqa: PLC0415

    return result_document(result)


def take_off_as_document(result: Result) -> Mapping[str, object]:
    """The take-off by itself, under the names the result document has."""
    from gaugerod.adapters.result_document.document import result_document  # noqa: PLC0415

    whole = result_document(result)
    return {
        name: whole[name]
        for name in ("title", "edition", "version", "covering", "take_off", "order", "findings", "cautions")
    }


def price_list_from_file(path: Path) -> "PriceList":
    """The prices and rates in the user's own list, CSV. Raises InputRefused with every fault."""
    from gaugerod.adapters.order_files.price_file import read_price_file  # noqa: PLC0415

    return read_price_file(path)


def blank_price_list_text(result: Result) -> str:
    """The price list of this job to fill in, CSV; empty where nothing was taken off."""
    from gaugerod.adapters.order_files.read_prices import blank_price_list  # noqa: PLC0415
    from gaugerod.job.quoted import tasks_of  # noqa: PLC0415

    return "" if result.take_off is None else blank_price_list(result.take_off, tasks_of(result))


def price_list_in_bytes(content: bytes) -> "PriceList":
    """The prices and rates in the bytes of a list as it was sent, CSV. Raises InputRefused with every fault."""
    from gaugerod.adapters.order_files.read_prices import read_price_list  # noqa: PLC0415

    return read_price_list(content)


def order_file_names(result: Result, quotation: "Quotation | None") -> list[tuple[str, str]]:
    """The name of every file of the order, and of the quotation where there is one, and what it is."""
    from gaugerod.adapters.sheet_files.order_folder import order_folder  # noqa: PLC0415

    made_at = datetime.now().astimezone()
    return [(file.name, file.says) for file in order_folder(result, quotation, paper="a4", made_at=made_at)]


def one_order_file(
    result: Result, quotation: "Quotation | None", *, name: str, paper: str, made_at: datetime
) -> bytes | None:
    """One of those files; None when there is none of that name."""
    from gaugerod.adapters.sheet_files.order_folder import order_folder  # noqa: PLC0415

    files = order_folder(result, quotation, paper=paper, made_at=made_at)
    return next((file.make() for file in files if file.name == name), None)


def write_order(result: Result, quotation: "Quotation | None", *, folder: Path, paper: str) -> list[tuple[Path, str]]:
    """Write the order, and the quotation where there is one; gives each path with what it is."""
    from gaugerod.adapters.sheet_files.order_folder import order_folder  # noqa: PLC0415
    from gaugerod.adapters.sheet_files.write import write_files  # noqa: PLC0415

    made_at = datetime.now().astimezone()
    return write_files(order_folder(result, quotation, paper=paper, made_at=made_at), folder=folder)


def write_record(result: Result, *, path: Path, paper: str) -> None:
    """Write the hand-over record to this file."""
    from gaugerod.adapters.sheet_files.order_folder import record_pdf  # noqa: PLC0415

    path.write_bytes(record_pdf(result, paper=paper, made_at=datetime.now().astimezone()))


def bare_drawing_svg(placed: "Placed") -> str:
    """A drawing as SVG without colours of its own."""
    from gaugerod.adapters.svg.writer import write_svg  # noqa: PLC0415

    return write_svg(placed.drawing, paper=placed.paper, theme=None)


def drawing_style() -> str:
    """The style sheet of drawings without colours: night, daylight and print."""
    from gaugerod.adapters.svg.screen_style import screen_style  # noqa: PLC0415

    return screen_style()


def write_sheets(result: Result, *, folder: Path, paper: str) -> list[tuple[Path, str]]:
    """Write every sheet and drawing into the folder; gives each path with what it is."""
    from gaugerod.adapters.sheet_files.write import write_sheet_files  # noqa: PLC0415

    return write_sheet_files(result, folder=folder, paper=paper, made_at=datetime.now().astimezone())


def sheet_file_names(result: Result) -> list[tuple[str, str, str]]:
    """The name of every file that goes with a result, what it is, and the slope it is of (empty: the whole job)."""
    from gaugerod.adapters.sheet_files.files import sheet_files  # noqa: PLC0415

    made_at = datetime.now().astimezone()
    return [(file.name, file.says, file.of) for file in sheet_files(result, paper="a4", made_at=made_at)]


def one_sheet_file(result: Result, *, name: str, paper: str, made_at: datetime) -> bytes | None:
    """One of those files; None when there is none of that name."""
    from gaugerod.adapters.sheet_files.files import sheet_files  # noqa: PLC0415

    wanted = [file for file in sheet_files(result, paper=paper, made_at=made_at) if file.name == name]
    return wanted[0].make() if wanted else None


def on_roof_page(result: Result, *, made_at: datetime) -> str:
    """The marks one at a time, for a phone on the roof: one HTML file."""
    from gaugerod.adapters.on_roof.write import write_on_roof_html  # noqa: PLC0415

    return write_on_roof_html(result, made_at=made_at)


def on_roof_page_policy() -> str:
    """The content security policy of that page: it runs its own script and style, and loads nothing."""
    from gaugerod.adapters.on_roof.write import on_roof_policy  # noqa: PLC0415

    return on_roof_policy()


def roof_from_file(path: Path) -> "RoofToCheck":
    """The roof to check in a TOML or JSON file. Raises InputRefused with every fault."""
    from gaugerod.adapters.roof_check_file.read import read_roof  # noqa: PLC0415

    return read_roof(path)


def roof_from_document(document: dict[str, Any]) -> "RoofToCheck":
    """The roof to check in a document as a page fills it in. Raises InputRefused with every fault."""
    from gaugerod.adapters.roof_check_file.read import read_roof_document  # noqa: PLC0415

    return read_roof_document(document)


def roof_file_schema() -> dict[str, Any]:
    """The JSON Schema of the roof file."""
    from gaugerod.adapters.roof_check_file.schema import roof_schema  # noqa: PLC0415

    return roof_schema()


def roof_check_as_document(check: "RoofCheck", *, title: str) -> Mapping[str, object]:
    """The document of a roof check."""
    from gaugerod.adapters.result_document.roof_check import roof_check_document  # noqa: PLC0415

    return roof_check_document(check, title=title)


def write_roof_check(
    check: "RoofCheck", *, title: str, unit: LengthUnit, folder: Path, paper: str
) -> list[tuple[Path, str]]:
    """Write the record of a roof check into the folder; gives each path with what it is."""
    from gaugerod.adapters.sheet_files.roof_check_files import roof_check_files  # noqa: PLC0415
    from gaugerod.adapters.sheet_files.write import write_files  # noqa: PLC0415

    made_at = datetime.now().astimezone()
    return write_files(roof_check_files(check, title=title, unit=unit, paper=paper, made_at=made_at), folder=folder)


def roof_check_file_names(check: "RoofCheck", *, title: str, unit: LengthUnit) -> list[tuple[str, str]]:
    """The name of every file that goes with a roof check, and what it is."""
    from gaugerod.adapters.sheet_files.roof_check_files import roof_check_files  # noqa: PLC0415

    made_at = datetime.now().astimezone()
    files = roof_check_files(check, title=title, unit=unit, paper="a4", made_at=made_at)
    return [(file.name, file.says) for file in files]


def one_roof_check_file(
    check: "RoofCheck", *, title: str, unit: LengthUnit, name: str, paper: str, made_at: datetime
) -> bytes | None:
    """One of those files; None when there is none of that name."""
    from gaugerod.adapters.sheet_files.roof_check_files import roof_check_files  # noqa: PLC0415

    files = roof_check_files(check, title=title, unit=unit, paper=paper, made_at=made_at)
    return next((file.make() for file in files if file.name == name), None)


def job_text_from_plan(path: Path, *, pitch: str | None, unit: "PlanUnit | None", layer: str | None) -> str:
    """A job file drafted from a plan outline. Raises InputRefused with every fault."""
    from gaugerod.adapters.job_draft.from_plan import job_text_from_plan_file  # noqa: PLC0415

    return job_text_from_plan_file(path, pitch=pitch, unit=unit, layer=layer)


def job_text_from_roof(path: Path) -> str:
    """A job file drafted from a measured roof. Raises InputRefused with every fault."""
    from gaugerod.adapters.cityjson.read import job_text_from_cityjson  # noqa: PLC0415
    from gaugerod.adapters.job_draft.json_text import bytes_of_file  # noqa: PLC0415

    return job_text_from_cityjson(bytes_of_file(path), title=path.name.removesuffix(".city.json"))


def store_path(data: str | None) -> Path:
    """The file of the kept jobs: in the folder given, or in the user's data folder."""
    from gaugerod.adapters.store.place import FILE_NAME, data_folder  # noqa: PLC0415

    folder = data_folder(given=data, environment=os.environ, platform=sys.platform, home=Path.home())
    return folder / FILE_NAME


def open_store(path: Path) -> "JobStore":
    """The kept jobs. Raises StoreUnusable with what to do."""
    from gaugerod.adapters.store.store import JobStore  # noqa: PLC0415

    return JobStore.open(path)


def take_into_store(path: Path, *, file: Path, by: str) -> "tuple[Imported, ...]":
    """Take an export or a job file into the kept jobs at ``path``. Raises InputRefused with every fault."""
    from gaugerod.adapters.store.take_in import take_in_file  # noqa: PLC0415

    with open_store(path) as store:
        return take_in_file(store, file, by=by)
