from dataclasses import replace

from gaugerod.basis.citation import house
from gaugerod.basis.finding import Finding, Sense, not_covered
from gaugerod.cli.lines import finding_lines

SHORT = Finding(
    rule="headlap", where="rear", proposed=70.0, limit=75.0, unit="mm", sense=Sense.AT_LEAST,
    citation=house("example"), says="The lap is 5 mm short.",
)  # fmt: skip
OPEN = not_covered(
    rule="wind", where="rear", proposed=None, unit="Pa", citation=house("example"), says="Ask the maker."
)


def test_what_is_said_alike_of_several_places_is_said_once_with_all_of_them_and_what_is_outside_first() -> None:
    lines = list(finding_lines([OPEN, replace(OPEN, where="front"), SHORT, replace(SHORT, where="front")]))
    assert lines[1:] == [
        "Findings: 0 within their rules, 4 to read",
        "  OUT  rear; front: headlap. The lap is 5 mm short. [example (house)]",
        "  ?    rear; front: wind. Ask the maker. [example (house)]",
    ]


def test_what_is_said_differently_stays_apart() -> None:
    lines = list(finding_lines([SHORT, replace(SHORT, where="front", says="The lap is 6 mm short.")]))
    assert 2 == sum(line.startswith("  OUT") for line in lines)
