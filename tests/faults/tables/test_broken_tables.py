"""Every way a table can be wrong: one broken file each, and the sentence that says so."""

from pathlib import Path

import pytest

from gaugerod.basis.errors import TableDamaged
from gaugerod.standards.loader import read_table
from gaugerod.standards.table import Table

BROKEN = Path(__file__).parent / "broken"

# The name of the file that is broken; the other of the pair is the sound one unless it stands beside it.
WAYS = {
    "not_toml": "the description cannot be read: ",
    "no_scope": "the description does not state scope",
    "unknown_key": "the description has unknown keys: remark",
    "interpolation_in_words": "interpolation must be true or false, not 'no'",
    "unknown_basis": "unknown basis 'hearsay'",
    "by_row_without_sources": "the basis is by row, but there are no columns source and basis",
    "unknown_basis_in_row": "row 2 has the unknown basis 'hearsay'",
    "column_without_description": "column covering is described by 'word', not by its unit",
    "column_without_unit": "column width_mm has no unit",
    "unknown_unit": "column spacing_to_mm has the unknown unit 'furlong'",
    "unit_not_in_name": "column spacing_to_mm is in deg, so its name must end with _deg",
    "unit_by_row_without_column": "column spacing_to_mm has its unit by row, but there is no column unit",
    "column_with_unknown_key": "column covering has unknown keys: keys",
    "band_without_end": "band spacing must state from, to and includes, and nothing else",
    "band_includes_both": "band spacing includes its 'both' end; say lower or upper",
    "band_on_words": "band spacing stands on covering, which is no column of numbers",
    "seal_leaves_a_column_out": "the seal must state rows, spacing_from_mm, spacing_to_mm, width_mm, and nothing else",
    "seal_in_words": "the seal holds something that is no number",
    "seal_wrong_count": "the seal says 5 rows, there are 4",
    "quote_left_open": "the csv cannot be read: ",
    "wrong_figure": "the seal says width_mm sums to 126, it sums to 136",
    "lost_row": "the seal says 4 rows, there are 3",
    "unknown_column": "unknown columns: breadth_mm",
    "columns_swapped": "the columns must be covering, spacing_from_mm, spacing_to_mm, width_mm, in this order",
    "no_header": "the columns must be covering, spacing_from_mm, spacing_to_mm, width_mm, in this order",
    "short_row": "row 2 has 3 cells, not 4",
    "blank_cell": "row 2, width_mm is blank",
    "not_a_number": "row 2, width_mm is not a number: 'fifty'",
    "not_finite": "row 2, width_mm is not a number: 'nan'",
    "open_outside_a_band": "row 2, width_mm is not a number: 'open'",
    "absent_where_not_said": "row 2, spacing_from_mm is not a number: '-'",
    "repeated_row": "row 2 repeats tile, 450.0",
    "gap": "band spacing has a gap between 450 and 460",
    "overlap": "band spacing overlaps itself between 440 and 450",
    "band_backwards": "band spacing runs backwards: 450 to 400",
}


def table_with(way: str) -> Table:
    texts = {}
    for kind in ("toml", "csv"):
        path = BROKEN / f"{way}.{kind}"
        texts[kind] = (path if path.exists() else BROKEN / f"sound.{kind}").read_text(encoding="utf-8")
    return read_table(way, description=texts["toml"], printed=texts["csv"])


def test_the_sound_pair_is_read() -> None:
    assert 4 == len(table_with("sound").rows)


@pytest.mark.parametrize(("way", "sentence"), WAYS.items(), ids=WAYS.keys())
def test_a_broken_table_is_refused_and_told_why(way: str, sentence: str) -> None:
    with pytest.raises(TableDamaged) as refused:
        table_with(way)
    assert way == refused.value.table
    assert refused.value.wrong.startswith(sentence)


def test_every_broken_file_has_its_sentence() -> None:
    assert {path.stem for path in BROKEN.iterdir()} == {"sound", *WAYS}
