"""The glossary: each word once, in order, in one line."""

import re
from pathlib import Path

GLOSSARY = (Path(__file__).parents[2] / "docs" / "reference" / "glossary.md").read_text("utf-8")
WORDS = re.findall(r"^\| (?!word )(?!---)([^|]+) \| [^|]+ \|$", GLOSSARY, re.MULTILINE)


def test_the_words_stand_in_order_each_once() -> None:
    assert len(WORDS) > 60
    assert sorted(set(WORDS)) == WORDS


def test_every_row_has_a_word_and_its_meaning() -> None:
    rows = [line for line in GLOSSARY.splitlines() if line.startswith("| ")]
    assert len(WORDS) == len(rows) - 2
