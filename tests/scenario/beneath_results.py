"""Whole jobs with everything that lies beneath the covering: the examples that ask for it, and others with it added."""

from functools import cache
from importlib.resources import files

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.job.result import Result, SlopeResult
from gaugerod.job.set_out import set_out

ASKED = """
[battens]
[underlay]
resistance = "high"
lies_on = "rafters"
[ventilation]
insulated = "at-ceiling"
[fixings]
nail_metal = "copper"
[load]
"""
"""Added to an example that asks for nothing beneath."""
NAMES = ("demo", "hipped-house", "plain-tiles", "slates", "random-slates", "feet-and-inches")


@cache
def beneath_result(name: str) -> Result:
    """The result of an example, set out once."""
    text = files("gaugerod.adapters.job_file").joinpath("examples", f"{name}.toml").read_text("utf-8")
    return set_out(read_job_text((text if "[battens]" in text else text + ASKED).encode()))


def edited_demo(*changes: tuple[str, str]) -> Result:
    """The demo with parts of its text changed."""
    text = files("gaugerod.adapters.job_file").joinpath("examples", "demo.toml").read_text("utf-8")
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    return set_out(read_job_text(text.encode()))


def slope_named(result: Result, name: str) -> SlopeResult:
    """One slope of a result."""
    return next(slope for slope in result.slopes if slope.slope.name == name)
