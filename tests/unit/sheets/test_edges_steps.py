"""Steps of the edges: once for each kind, each in its place, an edge's own figures beside its name."""

from dataclasses import replace

from gaugerod.edges.answer import MadeEdge
from gaugerod.sheets.edges_steps import steps_by_kind
from gaugerod.sheets.sheet import Heading, Steps
from tests.scenario.edged import chimney, ridge, verge, wall


def told(*edges: MadeEdge) -> dict[str, tuple[str, ...]]:
    blocks = list(steps_by_kind(edges))
    headings = [block.text for block in blocks if isinstance(block, Heading)]
    return dict(zip(headings, (block.lines for block in blocks if isinstance(block, Steps)), strict=True))


def test_what_all_of_a_kind_say_stands_once_and_what_one_says_has_its_name() -> None:
    a = replace(ridge(), name="a", says=("Batten.", "Lay 4.", "Fix."))
    b = replace(ridge(), name="b", says=("Batten.", "Lay 6.", "Fix."))
    assert {"Ridge: dry, two screws to each unit": ("Batten.", "a: Lay 4.", "b: Lay 6.", "Fix.")} == told(a, b)


def test_a_sentence_of_some_names_them_and_keeps_its_place() -> None:
    a = replace(ridge(), name="a", says=("Batten.", "Fix."))
    b = replace(ridge(), name="b", says=("Batten.", "Cut.", "Fix."))
    c = replace(ridge(), name="c", says=("Batten.", "Cut.", "Fix.", "Air."))
    assert ("Batten.", "b; c: Cut.", "Fix.", "c: Air.") == told(a, b, c)["Ridge: dry, two screws to each unit"]


def test_every_sentence_of_every_edge_is_there() -> None:
    edges = [
        replace(ridge(), name=name, says=says)
        for name, says in (("a", ("1", "2", "3")), ("b", ("3", "1")), ("c", ("4", "2", "5")), ("d", ()))
    ]
    (lines,) = told(*edges).values()
    for edge in edges:
        for line in edge.says:
            assert any(each == line or (each.endswith(f": {line}") and edge.name in each) for each in lines)
    assert len({line.rpartition(": ")[2] for line in lines}) == len(lines)


def test_kinds_and_ways_of_making_stand_apart_and_what_is_not_made_is_left_out() -> None:
    other = replace(ridge(), name="b", made="bedded", says=("Bed.",))
    found = told(
        replace(ridge(), says=("Dry.",)), other, replace(wall(), says=("Step.",)), replace(chimney(), says=("Apron.",)),
        replace(verge(), says=("Not said.",)),
    )  # fmt: skip
    assert {
        "Ridge: dry, two screws to each unit": ("Dry.",),
        "Ridge: bedded": ("Bed.",),
        "Side abutment: one flashing that steps and covers": ("Step.",),
        "Opening: chimney": ("Apron.",),
    } == found
