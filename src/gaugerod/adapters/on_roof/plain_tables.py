"""The marks as plain tables: for print, and for a phone that shows the file but runs no script in it."""

import html
from collections.abc import Iterator

from gaugerod.basis.finding import Finding, Verdict
from gaugerod.basis.lengths import write_length
from gaugerod.job.result import Result, SlopeResult
from gaugerod.job.rod_marks import rod_marks
from gaugerod.sheets.mark_words import mark_word, marks_read
from gaugerod.sheets.shared_rods import different_rods, rod_name

_SIGNS = {Verdict.OUTSIDE: "▲ OUTSIDE", Verdict.NOT_COVERED: "◇ Not covered"}


def plain_tables(result: Result) -> str:
    """Everything not within its rule, a table for each rod that differs and each perp line, the cautions.

    Lengths in the job's unit.
    """
    cautions = "".join(f"<li>{html.escape(caution)}</li>" for caution in result.cautions)
    slopes = (line for slope in result.slopes for line in _slope(result, slope))
    return "\n".join((*_told(result), *slopes, f"<h2>Before you go up</h2><ul>{cautions}</ul>"))


def _on_the_roof(result: Result) -> list[Finding]:
    """Every finding on marks and perps; what lies beneath is laid before, from its own sheets."""
    return [finding for finding in result.findings if finding not in set(result.beneath.findings)]


def _told(result: Result) -> Iterator[str]:
    for short in result.not_set_out:
        yield f"<p><strong>▲ {html.escape(short.slope.name)} is not set out.</strong> {html.escape(short.why)}</p>"
    told = dict.fromkeys((each.verdict, each.rule, each.says) for each in _on_the_roof(result))
    for verdict, rule, says in told:
        if verdict is not Verdict.WITHIN:
            yield f"<p><strong>{_SIGNS[verdict]}: {html.escape(rule)}.</strong> {html.escape(says)}</p>"


def _slope(result: Result, slope: SlopeResult) -> Iterator[str]:
    unit, word = result.job.show_lengths_in, mark_word(slope).capitalize()
    yield f"<h2>{html.escape(slope.slope.name)}</h2>"
    for numbers in different_rods(slope):
        marks = rod_marks(slope, numbers[0] - 1)
        yield _table(
            f"{rod_name(numbers).capitalize()}: {marks_read(slope)}, up from the fascia face",
            (word, "Mark"),
            [(f"{mark.name} (nailed)" if mark.kept else mark.name, write_length(mark.mark_mm, unit)) for mark in marks],
        )
    for line in () if slope.across is None else slope.across.perp_lines:
        rows = [(f"{number}", write_length(mark_mm, unit)) for number, mark_mm in enumerate(line.marks_mm, 1)]
        yield _table(f"Perps at the {line.line}, from the left end", ("Perp", "Mark"), rows)


def _table(caption: str, headings: tuple[str, str], rows: list[tuple[str, str]]) -> str:
    head = "".join(f'<th scope="col">{html.escape(heading)}</th>' for heading in headings)
    body = "".join("<tr>" + "".join(f"<td>{html.escape(cell)}</td>" for cell in row) + "</tr>" for row in rows)
    return f"<table><caption>{html.escape(caption)}</caption><tr>{head}</tr>{body}</table>"
