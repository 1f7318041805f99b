"""Look-ups in a table: included ends, open ends, and nothing outside what is printed."""

from math import inf, nan

import pytest

from gaugerod.basis.citation import Basis
from gaugerod.basis.errors import TableDamaged
from gaugerod.standards.loader import load_table, read_table
from gaugerod.standards.table import OffTable, Row, Table

DESCRIPTION = """
document = "An example"
edition = "1"
locus = "Table 1"
source = "made up"
basis = "by-row"
scope = "tests"
interpolation = false
[bands.pitch]
from = "pitch_from_deg"
to = "pitch_to_deg"
includes = "lower"
[columns]
size = { unit = "word", key = true }
pitch_from_deg = { unit = "deg" }
pitch_to_deg = { unit = "deg" }
headlap_mm = { unit = "mm", absent_means = "not recommended at this pitch" }
source = { unit = "word", key = true }
basis = { unit = "word" }
[seal]
rows = 5
pitch_from_deg = 117.5
pitch_to_deg = 72.5
headlap_mm = 335.5
"""
PRINTED = """size,pitch_from_deg,pitch_to_deg,headlap_mm,source,basis
500x250,20,22.5,-,first print,published
500x250,22.5,25,105.5,first print,published
500x250,25,open,95,first print,published
500x250,20,25,115,second print,memory
600x300,30,open,20,first print,published
"""


@pytest.fixture
def table() -> Table:
    return read_table("example", description=DESCRIPTION, printed=PRINTED)


def lap_mm(table: Table, pitch_deg: float, source: str = "first print") -> float | str | None:
    found = table.row_in_band("pitch", pitch_deg, size="500x250", source=source)
    return found.number_or_none("headlap_mm") if isinstance(found, Row) else "off"


def test_a_band_holds_its_lower_end_and_not_its_upper(table: Table) -> None:
    assert 105.5 == lap_mm(table, 22.5)
    assert 105.5 == lap_mm(table, 24.999)
    assert 95.0 == lap_mm(table, 25.0)


def test_an_open_end_reaches_any_finite_figure(table: Table) -> None:
    assert 95.0 == lap_mm(table, 89.0)


def test_a_figure_not_printed_is_no_number(table: Table) -> None:
    assert lap_mm(table, 20.0) is None
    row = table.row_in_band("pitch", 20.0, size="500x250", source="first print")
    assert isinstance(row, Row)
    with pytest.raises(LookupError, match="no number in headlap_mm"):
        row.number("headlap_mm")
    with pytest.raises(LookupError, match="no word in headlap_mm"):
        row.word("headlap_mm")


@pytest.mark.parametrize("pitch_deg", [19.999, 0.0, -22.5, nan, inf, -inf])
def test_below_the_table_and_no_measurement_are_off_it(table: Table, pitch_deg: float) -> None:
    assert "off" == lap_mm(table, pitch_deg)


def test_sources_that_differ_are_each_found_with_their_own_basis(table: Table) -> None:
    assert 115.0 == lap_mm(table, 22.5, source="second print")
    found = table.row_in_band("pitch", 22.5, size="500x250", source="second print")
    assert isinstance(found, Row)
    assert Basis.MEMORY is found.citation.basis
    assert "second print" == found.citation.source


def test_words_that_leave_two_rows_are_refused(table: Table) -> None:
    with pytest.raises(LookupError, match="has 2 rows for pitch"):
        table.row_in_band("pitch", 22.5, size="500x250")
    with pytest.raises(LookupError, match="has 4 rows"):
        table.row_where(size="500x250")


def test_off_the_table_names_the_question_and_the_scope(table: Table) -> None:
    found = table.row_in_band("pitch", 10.0, size="500x250", source="first print")
    assert isinstance(found, OffTable)
    assert "no row for pitch 10, size 500x250, source first print; the table covers: tests" == found.says


def test_a_row_the_program_relies_on_must_be_there(table: Table) -> None:
    with pytest.raises(TableDamaged, match="no row for size 100x100"):
        table.own_row(size="100x100")


def test_rows_keep_the_printed_order(table: Table) -> None:
    assert ["first print", "first print", "first print", "second print"] == [
        row.word("source") for row in table.rows_where(size="500x250")
    ]


def test_cells_cannot_be_changed(table: Table) -> None:
    with pytest.raises(TypeError):
        table.rows[0].cells["size"] = "600x300"  # type: ignore[index]


def test_a_shipped_table_is_read_once() -> None:
    name = "gb/bs_5534_2014/batten_sections"
    assert load_table(name) is load_table(name)


def test_an_upper_end_is_included_where_the_table_says_so() -> None:
    battens = load_table("gb/bs_5534_2014/batten_sections")

    def width_mm(spacing_mm: float) -> float | str:
        row = battens.row_in_band("support_spacing", spacing_mm, covering="tile-single-lap")
        return row.number("width_mm") if isinstance(row, Row) else "off"

    assert [38.0, 38.0, 50.0, 50.0, "off"] == [width_mm(at) for at in (449.9, 450.0, 450.1, 600.0, 600.1)]
    assert ["off"] * 3 == [width_mm(at) for at in (0.0, -1.0, nan)]
