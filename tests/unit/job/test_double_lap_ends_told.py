"""At the verges of double lap the sentences say what is laid there, not what would have been cut from one unit."""

from importlib.resources import files

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.job.result import SlopeResult
from gaugerod.job.set_out import set_out


def first_slope(name: str, *, old: str = "", new: str = "") -> SlopeResult:
    text = files("gaugerod.adapters.job_file").joinpath("examples", f"{name}.toml").read_text("utf-8")
    return set_out(read_job_text(text.replace(old, new).encode())).slopes[0]


def test_a_slate_and_a_half_at_the_verge_is_called_that_and_is_no_least_piece() -> None:
    across = first_slope("slates").across
    assert across is not None
    assert "whole and a unit-and-a-half at the left, a unit-and-a-half and whole at the right." in across.why
    assert across.least_piece_mm is None
    assert "least piece" not in {finding.rule for finding in across.findings}


def test_beside_a_wall_the_cut_piece_is_still_told() -> None:
    across = first_slope("slates", old='right = "verge"', new='right = "abutment"').across
    assert across is not None
    assert "a unit-and-a-half at the left" in across.why
    assert "the least piece covers" in across.why
    (told,) = [finding for finding in across.findings if finding.rule == "least piece"]
    assert "at right" in told.says
    assert across.least_piece_mm == told.proposed
