"""Golden texts: compared as they stand; written anew when GAUGEROD_REGENERATE is set, for a person to read the diff."""

import os
from collections.abc import Callable
from pathlib import Path

import pytest

GOLDEN = Path(__file__).parent / "texts"


@pytest.fixture
def same_as_golden() -> Callable[[str, str], None]:
    """Compare a text with the golden one of that name."""

    def compare(name: str, text: str) -> None:
        path = GOLDEN / name
        if os.environ.get("GAUGEROD_REGENERATE"):
            path.parent.mkdir(exist_ok=True)
            path.write_text(text, encoding="utf-8")
        assert path.read_text(encoding="utf-8") == text, "GAUGEROD_REGENERATE=1 pytest tests/golden writes it anew"

    return compare
