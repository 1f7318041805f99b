"""Every rule has a published case or stands in the list of gaps; so does every value that no print states."""

import re
from pathlib import Path

from gaugerod.basis.citation import Basis
from gaugerod.standards.loader import load_table

ROOT = Path(__file__).parents[2]
RULES = ROOT / "src" / "gaugerod" / "rules"
STANDARDS = ROOT / "src" / "gaugerod" / "standards"
GAPS = (ROOT / "docs" / "validation" / "gaps.md").read_text("utf-8")
GAPS_BY_RULE = GAPS.partition("## Rules with no printed case")[2].partition("\n## ")[0]


def rule_modules() -> set[str]:
    """Modules of rules: those whose head names a source."""
    return {
        ".".join(path.relative_to(RULES).with_suffix("").parts)
        for path in RULES.rglob("*.py")
        if re.search(r'^"""(?:(?!""").)*?^Source:', path.read_text("utf-8"), re.DOTALL | re.MULTILINE)
    }


def checked_in_print() -> set[str]:
    cases = "\n".join(path.read_text("utf-8") for path in (ROOT / "tests" / "published").glob("test_*.py"))
    return set(re.findall(r"^from gaugerod\.rules\.([\w.]+) import", cases, re.MULTILINE))


def listed_as_gaps() -> set[str]:
    return set(re.findall(r"^\| `([\w.]+)` \|", GAPS_BY_RULE, re.MULTILINE))


def test_there_are_rules_to_hold_to_this() -> None:
    assert {"pitch", "headlap", "gauge", "battens", "ridge_cover", "material"} <= rule_modules()


def test_every_rule_is_checked_in_print_or_listed_as_a_gap() -> None:
    assert set() == rule_modules() - checked_in_print() - listed_as_gaps()


def test_no_gap_is_listed_that_is_none() -> None:
    assert set() == listed_as_gaps() & checked_in_print()
    assert set() == listed_as_gaps() - rule_modules()


def test_every_value_that_no_print_states_is_listed() -> None:
    unlisted = []
    for path in sorted(STANDARDS.rglob("*.toml")):
        name = path.relative_to(STANDARDS).with_suffix("").as_posix()
        for row in load_table(name).rows:
            if row.citation.basis is Basis.PUBLISHED:
                continue
            keys = " ".join(row.word(key) for key in load_table(name).keys if isinstance(row.cells[key], str))
            listed = rf"^\| `{re.escape(name)}` \| `{re.escape(keys)}` \| [^|]+ \| {row.citation.basis.value} \|"
            if not re.search(listed, GAPS, re.MULTILINE):
                unlisted.append(f"{name}: {keys} ({row.citation.basis.value})")
    assert [] == unlisted
