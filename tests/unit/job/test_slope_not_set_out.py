"""A slope on which nothing can be set out holds no other slope up: it stands apart, with the reason and what would mend it."""

import pytest

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import Verdict
from gaugerod.job.result import NotSetOut, Result
from gaugerod.job.set_out import set_out
from gaugerod.setting_out.courses import Alternative

SLATES = '[covering]\nfrom = "slate-500x250"\n[set_out]\nridge_cover = "150 mm"\n'
HOUSE = """
[[building]]
name = "house"
outline = [["0 m", "0 m"], ["9 m", "0 m"], ["9 m", "6 m"], ["0 m", "6 m"]]
pitch = ["{pitch}", "{end}", "{pitch}", "gable"]
"""


def slope(name: str, *, pitch: str = "40°", rafter: str = "4.2 m") -> str:
    return (
        f'[[slope]]\nname = "{name}"\npitch = "{pitch}"\nacross = "6.4 m"\nrafters = ["{rafter}"]\n'
        'left = "verge"\nright = "verge"\ntop = "ridge"\n'
    )


def set_out_text(*tables: str) -> Result:
    job = '[job]\ntitle = "Weather side"\nexposure = "severe"\n'
    return set_out(read_job_text("\n".join((job, *tables)).encode()))


def the_one_short(result: Result) -> NotSetOut:
    (short,) = result.not_set_out
    return short


def sizes(offers: tuple[Alternative, ...]) -> list[list[str]]:
    return [offer.change.removeprefix("Slates of ").partition(" mm")[0].split(" × ") for offer in offers]


def test_a_slope_too_low_for_the_slates_leaves_the_others_set_out() -> None:
    result = set_out_text(slope("main"), slope("lean-to", pitch="27.5°"), SLATES)
    short = the_one_short(result)
    assert ["main"] == [done.slope.name for done in result.slopes]
    assert short.slope.name == "lean-to"
    assert result.anything_outside
    assert "write it as a job of its own" in short.why
    assert {"lean-to"} == {finding.where for finding in result.findings if finding.verdict is Verdict.OUTSIDE}


def test_the_slates_offered_have_a_lap_at_that_pitch() -> None:
    offers = the_one_short(set_out_text(slope("main"), slope("lean-to", pitch="27.5°"), SLATES)).alternatives
    assert offers
    lapped = [
        f'[covering]\nfrom = "slate-500x250"\nlength = {length}\nwidth = {width}\n' for length, width in sizes(offers)
    ]
    for covering in lapped:
        assert () == set_out_text(slope("lean-to", pitch="27.5°"), covering).not_set_out


def test_no_larger_slate_is_advised_where_no_size_will_do() -> None:
    short = the_one_short(set_out_text(slope("main"), slope("lean-to", pitch="20°"), SLATES))
    assert () == short.alternatives
    assert "Choose another covering" in short.why
    assert "slate_laps" not in short.why


def test_a_low_hip_end_leaves_the_rest_of_its_building_set_out() -> None:
    result = set_out_text(HOUSE.format(pitch="35°", end="25°"), SLATES)
    assert ["house 1", "house 3"] == [done.slope.name for done in result.slopes]
    assert "house 2" == the_one_short(result).slope.name
    # The two that are left share no hip, so nothing is said of lines that meet.
    assert "courses round corners" not in {finding.rule for finding in result.findings}


def test_a_slope_too_short_for_courses_says_so_once_and_holds_nothing_up() -> None:
    result = set_out_text(slope("main"), slope("bay", rafter="0.4 m"), SLATES)
    short = the_one_short(result)
    assert ["main"] == [done.slope.name for done in result.slopes]
    assert short.why.startswith("The slope is 400 mm up the rafter")


def test_where_no_slope_at_all_can_be_set_out_the_reason_is_raised() -> None:
    with pytest.raises(NothingToSetOut, match="no courses to set out"):
        set_out_text(slope("bay", rafter="0.4 m"), slope("porch", rafter="0.4 m"), SLATES)
