"""Where the tables give no lap, the slope says what each of them prints; and a lap stated in the job is called that."""

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.job.result import Result
from gaugerod.job.set_out import set_out

SLATES = """
[job]
title = "Weather side"
exposure = "severe"

[covering]
from = "slate-500x250"

[[slope]]
name = "west"
pitch = "{pitch}°"
across = "6.4 m"
rafters = ["4.2 m"]
left = "verge"
right = "verge"
top = "ridge"

[set_out]
ridge_cover = "175 mm"
{wish}
"""


def slates(pitch: str, wish: str = "") -> Result:
    return set_out(read_job_text(SLATES.format(pitch=pitch, wish=wish).encode()))


def test_sources_that_disagree_are_both_told_when_the_safer_gives_no_lap() -> None:
    says = slates("27.5").not_set_out[0].why
    assert "the first reproduction of the table gives 110 mm" in says
    assert "the second reproduction of the table does not recommend that size below 30°" in says


def test_below_both_tables_each_says_from_which_pitch() -> None:
    says = slates("22.5").not_set_out[0].why
    assert "not recommend that size below 27.5°; " in says
    assert "below 30°" in says


def test_a_lap_stated_is_not_called_larger_than_the_least() -> None:
    found = slates("35", wish='headlap = "60 mm"')
    assert found.anything_outside
    sources = {finding.citation.source for finding in found.findings if finding.rule == "headlap as laid"}
    assert sources == {"lap stated in the job"}
