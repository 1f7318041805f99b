"""Take-off, order and record as their user runs them."""

import csv
import io
import json
from decimal import Decimal
from pathlib import Path

import openpyxl
import pypdf
import pytest

from gaugerod.cli.main import main

EXAMPLES = Path(__file__).parents[2] / "src" / "gaugerod" / "adapters" / "job_file" / "examples"
DEMO = str(EXAMPLES / "demo.toml")


def run(capsys: pytest.CaptureFixture[str], *arguments: str) -> tuple[int, str, str]:
    try:
        status = main(list(arguments))
    except SystemExit as stopped:  # argparse ends the program itself on --help and on words it does not know
        status = int(stopped.code or 0)
    said = capsys.readouterr()
    return status, said.out, said.err


def outside_job(folder: Path) -> str:
    """A porch one course too short to keep every gauge."""
    job = folder / "porch.toml"
    job.write_text((EXAMPLES / "narrow-gauge.toml").read_text("utf-8").replace("1.180 m", "1.080 m"), "utf-8")
    return str(job)


def filled_in(blank: str, **prices: str) -> str:
    """The blank list with some of its prices written in."""
    rows = list(csv.DictReader(io.StringIO(blank)))
    for row in rows:
        row["price"] = prices.get(f"{row['kind']}_{row['item']}".replace("-", "_"), "")
    out = io.StringIO()
    writer = csv.DictWriter(out, rows[0].keys())
    writer.writeheader()
    writer.writerows(rows)
    return out.getvalue()


def test_the_take_off_shows_what_was_measured_what_is_added_and_what_is_to_order(
    capsys: pytest.CaptureFixture[str],
) -> None:
    status, out, _ = run(capsys, "take-off", DEMO)
    assert 0 == status
    assert "for breakage, 3 per cent" in out
    assert "packs of 42 on 2 pallets" in out
    assert "ridge-unit: ridge unit, 450 mm long" in out
    assert "the flat percentage orders" in out
    assert "Onto the roof, and off it" in out
    assert "Findings:" in out


def test_the_take_off_as_json_has_the_names_of_the_result_document(capsys: pytest.CaptureFixture[str]) -> None:
    status, out, _ = run(capsys, "take-off", DEMO, "--json", "-")
    document = json.loads(out)
    whole = json.loads(run(capsys, "set-out", DEMO, "--json", "-")[1])
    assert 0 == status
    assert whole["take_off"] == document["take_off"]
    assert whole["order"] == document["order"]
    assert {"title", "edition", "version", "covering", "take_off", "order", "findings", "cautions"} == document.keys()


def test_the_take_off_as_json_goes_into_a_file_beside_the_lines(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    target = tmp_path / "take-off.json"
    _, out, _ = run(capsys, "take-off", DEMO, "--json", str(target))
    assert "to order" in out
    assert "Yard Cottage, rear slope" == json.loads(target.read_text("utf-8"))["title"]


def test_lengths_of_the_edges_stand_in_the_unit_of_the_job(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    job = tmp_path / "feet.toml"
    feet = Path(DEMO).read_text("utf-8").replace('show_lengths_in = "mm"', 'show_lengths_in = "ft-in"')
    job.write_text(feet, "utf-8")
    out = run(capsys, "set-out", str(job))[1]
    edges = out[out.index("\nEdges\n") : out.index("What to order")]
    assert "24' 6 11/16\"" in edges
    assert " mm" not in edges


def test_the_main_numbers_have_the_edges_and_the_way_to_the_order(capsys: pytest.CaptureFixture[str]) -> None:
    out = run(capsys, "set-out", DEMO)[1]
    edges = out[out.index("\nEdges\n") : out.index("\nFindings:")]
    assert "ridge          7485 mm, ridge units, dry; 18 units" in edges
    assert "verge          4955 mm, bedded on an undercloak" in edges
    assert "kg of lead" in edges
    assert "gaugerod take-off" in edges


def test_edges_that_are_not_said_are_not_in_the_main_numbers(capsys: pytest.CaptureFixture[str]) -> None:
    assert "\nEdges\n" not in run(capsys, "set-out", str(EXAMPLES / "narrow-gauge.toml"))[1]


def test_a_job_outside_a_rule_is_said_so_by_every_command(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    job = outside_job(tmp_path)
    for arguments in (("take-off", job), ("order", job), ("record", job, "--out", str(tmp_path / "record.pdf"))):
        status, out, _ = run(capsys, *arguments)
        assert 1 == status
        assert "  OUT  " in out
        assert "least gauge" in out


def test_an_order_without_prices_says_that_nothing_is_in_money(capsys: pytest.CaptureFixture[str]) -> None:
    status, out, _ = run(capsys, "order", DEMO)
    assert 0 == status
    assert "No prices are given" in out
    assert "TOTAL" not in out
    assert "Lead: it is heavy and it poisons" in out


def test_a_blank_list_filled_in_makes_a_quotation_that_names_what_it_leaves_out(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    status, blank, _ = run(capsys, "order", DEMO, "--blank-prices", "-")
    assert 0 == status
    prices = tmp_path / "prices.csv"
    prices.write_text(filled_in(blank, item_tile="1.20", work_ridge="20"), "utf-8")
    status, out, _ = run(capsys, "order", DEMO, "--prices", str(prices))
    assert 0 == status
    # nine packs of 42 tiles; 7.485 m of ridge; a fifth on top
    materials, labour = Decimal(9 * 42) * Decimal("1.20"), Decimal("7.485") * 20
    total = ((materials + labour) * Decimal("1.2")).quantize(Decimal("0.01"))
    assert f"  materials        £{materials}" in out
    assert f"  labour           £{labour.quantize(Decimal('0.01'))}" in out
    assert f"  TOTAL            £{total}" in out
    assert "NOT in the total:" in out
    assert "ridge-unit: ridge unit, 450 mm long" in out
    assert "strip-old: take off the old covering" in out


def test_what_is_on_the_list_and_not_needed_is_named(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    prices = tmp_path / "prices.csv"
    prices.write_text("kind,item,unit,price\nitem,copper-nails,pieces,0.05\n", "utf-8")
    out = run(capsys, "order", DEMO, "--prices", str(prices))[1]
    assert "On the list, and not in this order: copper-nails." in out
    assert "TOTAL            £0.00" in out


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("kind,item,unit,price\nitem,tile,pieces,cheap\nitem,tile-nails,pieces,-1\n", "line 3, price"),
        ("item,price\n", "no column kind"),
    ],
)
def test_a_price_list_that_cannot_be_used_gives_two_with_every_fault(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, text: str, words: str
) -> None:
    prices = tmp_path / "prices.csv"
    prices.write_text(text, "utf-8")
    status, out, err = run(capsys, "order", DEMO, "--prices", str(prices))
    assert (2, "") == (status, out)
    assert words in err
    assert "2 faults" in err


def test_a_price_list_that_is_not_there_gives_two(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    status, _, err = run(capsys, "order", DEMO, "--prices", str(tmp_path / "none.csv"))
    assert 2 == status
    assert "price list" in err


def test_the_order_as_files_agrees_in_every_form(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    blank = tmp_path / "blank.csv"
    run(capsys, "order", DEMO, "--blank-prices", str(blank))
    prices = tmp_path / "prices.csv"
    prices.write_text(filled_in(blank.read_text("utf-8"), item_tile="1.20"), "utf-8")
    folder = tmp_path / "order"
    status, out, _ = run(capsys, "order", DEMO, "--prices", str(prices), "--out", str(folder), "--paper", "letter")
    assert 0 == status
    assert {"order.csv", "order.json", "order.xlsx", "order.pdf", "quotation.pdf"} == {
        path.name for path in folder.iterdir()
    }
    assert all(path.name in out for path in folder.iterdir())
    lines = json.loads((folder / "order.json").read_text("utf-8"))["lines"]
    rows = list(csv.DictReader(io.StringIO((folder / "order.csv").read_text("utf-8-sig"))))
    assert [line["item"] for line in lines] == [row["item"] for row in rows]
    assert [line["bought"] for line in lines if line["item"] == "tile"] == [378.0]
    book = openpyxl.load_workbook(io.BytesIO((folder / "order.xlsx").read_bytes()))
    cells = {str(cell.value) for sheet in book for row in sheet.iter_rows() for cell in row}
    assert {line["item"] for line in lines} <= cells
    for name, heading in (("order.pdf", "Order"), ("quotation.pdf", "Quotation")):
        page = pypdf.PdfReader(folder / name).pages[0]
        assert heading in page.extract_text()
        assert (612.0, 792.0) == (round(float(page.mediabox.width)), round(float(page.mediabox.height)))


def test_the_order_of_a_whole_house_has_its_hips_valley_and_lead(
    capsys: pytest.CaptureFixture[str],
) -> None:
    status, out, _ = run(capsys, "order", str(EXAMPLES / "hipped-house.toml"))
    assert 0 == status
    assert "hip unit, 450 mm long" in out
    assert "valley lining" in out
    assert "dry-verge unit" in out


def test_the_record_is_one_pdf(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    target = tmp_path / "record.pdf"
    status, out, _ = run(capsys, "record", DEMO, "--out", str(target))
    assert 0 == status
    assert f"Written to {target}." in out
    assert "Hand-over record" in pypdf.PdfReader(target).pages[0].extract_text()


def test_a_record_needs_a_place_that_can_be_written(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    assert 2 == run(capsys, "record", DEMO)[0]
    status, _, err = run(capsys, "record", DEMO, "--out", str(tmp_path / "missing" / "record.pdf"))
    assert 2 == status
    assert "--out" in err
    assert "No such file or directory" in err


@pytest.mark.parametrize("command", ["take-off", "order", "record"])
def test_each_explains_itself_and_refuses_a_faulty_job(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, command: str
) -> None:
    assert "usage: gaugerod" in run(capsys, command, "--help")[1]
    job = tmp_path / "wrong.toml"
    job.write_text(Path(DEMO).read_text("utf-8").replace('"450 mm", cover', '"420 mm", cover'), "utf-8")
    out_option = ["--out", str(tmp_path / "record.pdf")] if command == "record" else []
    status, _, err = run(capsys, command, str(job), *out_option)
    assert 2 == status
    assert "edges.ridge.unit.cover" in err


@pytest.mark.parametrize("command", ["take_off", "order", "record"])
def test_a_fault_of_the_program_gives_three(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, tmp_path: Path, command: str
) -> None:
    def broken(_job: object) -> None:
        raise ZeroDivisionError("on purpose")

    monkeypatch.setattr(f"gaugerod.cli.{command}.set_out", broken)
    out_option = ["--out", str(tmp_path / "record.pdf")] if command == "record" else []
    status, _, err = run(capsys, command.replace("_", "-"), DEMO, *out_option)
    assert 3 == status
    assert "a fault of this program" in err
