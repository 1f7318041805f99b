"""All tables that ship: whole, and placed where their folder says."""

from pathlib import Path

import pytest

import gaugerod.standards
from gaugerod.standards.loader import load_table

SHELF = Path(str(gaugerod.standards.__file__)).parent
NAMES = sorted(str(path.relative_to(SHELF).with_suffix("")) for path in SHELF.rglob("*.toml"))


@pytest.mark.parametrize("name", NAMES)
def test_a_shipped_table_matches_its_seal(name: str) -> None:
    table = load_table(name)
    assert name == table.name
    assert table.rows


def test_every_csv_has_its_description() -> None:
    assert NAMES == sorted(str(path.relative_to(SHELF).with_suffix("")) for path in SHELF.rglob("*.csv"))
