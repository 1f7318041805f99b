"""Every sentence of a result is in the unit its job is shown in; sizes that have a name of their own keep it."""

import re
from collections.abc import Iterator
from importlib.resources import files

import pytest

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.in_words import sentence_in_unit
from gaugerod.job.result import Result
from gaugerod.job.set_out import set_out

EXAMPLES = ("plain-tiles", "slates", "random-slates", "hipped-house", "demo", "narrow-gauge")


def example(name: str, unit: LengthUnit) -> Result:
    text = files("gaugerod.adapters.job_file").joinpath("examples", f"{name}.toml").read_text("utf-8")
    text = re.sub(r"(?m)^show_lengths_in.*\n", "", text)
    return set_out(read_job_text(text.replace("[job]", f'[job]\nshow_lengths_in = "{unit.value}"', 1).encode()))


def sentences(result: Result) -> Iterator[str]:
    yield from (finding.says for finding in result.findings)
    for _, alternative in result.alternatives:
        yield from (alternative.change, alternative.costs)
    for slope in result.slopes:
        yield slope.courses.why
        yield from slope.method
        yield from (words for opening in slope.courses.openings for words in (opening.says, opening.segments_say))
        if slope.across is not None:
            yield slope.across.why
    yield from (corner for roof in result.roofs for corner in roof.corners)


@pytest.mark.parametrize("unit", [LengthUnit.CM, LengthUnit.M])
@pytest.mark.parametrize("name", EXAMPLES)
def test_a_job_shown_in_centimetres_or_metres_has_no_millimetres_in_its_sentences(name: str, unit: LengthUnit) -> None:
    told = list(sentences(example(name, unit)))
    assert told
    assert [] == [words for words in told if re.search(r"(?<!× )\b[\d.]+ mm\b", words)]


@pytest.mark.parametrize("unit", LengthUnit)
def test_a_section_keeps_its_name(unit: LengthUnit) -> None:
    assert sentence_in_unit("Use 38 × 25 mm battens.", unit) == "Use 38 × 25 mm battens."


@pytest.mark.parametrize(
    ("unit", "said"),
    [
        (LengthUnit.MM, "From 45 to 55.5 mm, not -3 mm."),
        (LengthUnit.CM, "From 4.5 to 5.55 cm, not -0.3 cm."),
        (LengthUnit.M, "From 0.045 to 0.0555 m, not -0.003 m."),
        (LengthUnit.FT_IN, 'From 1 3/4" to 2 3/16" (45 to 55.5 mm), not -1/8" (-3 mm).'),
    ],
)
def test_both_ends_of_a_range_are_in_the_unit(unit: LengthUnit, said: str) -> None:
    assert said == sentence_in_unit("From 45.0 to 55.5 mm, not -3 mm.", unit)
