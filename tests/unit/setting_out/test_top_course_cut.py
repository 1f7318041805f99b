"""A top course is said to be cut only where there is something to cut."""

from importlib.resources import files

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.job.set_out import set_out
from gaugerod.setting_out.courses import Strategy

HOUSE = files("gaugerod.adapters.job_file").joinpath("examples", "hipped-house.toml")


def test_only_the_slope_whose_ridge_the_shared_lines_miss_has_its_top_course_cut() -> None:
    found = set_out(read_job_text(HOUSE.read_bytes()))
    cut = {slope.slope.name: slope.courses.top_course_cut_mm for slope in found.slopes}
    # One ridge is lower: its rafters are 244 mm shorter than those of the rest, which all end in a whole course.
    assert {"house 4"} == {name for name, each in cut.items() if each is not None}
    assert all(
        (slope.courses.strategy is Strategy.PARALLEL) == (cut[slope.slope.name] is not None) for slope in found.slopes
    )
    assert all("under the ridge of house 4: the top course" in slope.courses.why for slope in found.slopes)


def test_no_top_course_loses_less_than_can_be_marked() -> None:
    found = set_out(read_job_text(HOUSE.read_bytes()))
    cuts = [slope.courses.top_course_cut_mm for slope in found.slopes if slope.courses.top_course_cut_mm is not None]
    assert cuts
    assert all(most_mm >= 1.0 for _, most_mm in cuts)
