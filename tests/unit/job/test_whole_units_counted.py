"""The whole units of a slope are those carried up and laid as they are: what is sawn or replaced is not among them."""

from importlib.resources import files

import pytest

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.job.result import Laid
from gaugerod.job.set_out import set_out
from gaugerod.laying.cut_unit import Remedy


def laid_slopes(name: str) -> list[Laid]:
    text = files("gaugerod.adapters.job_file").joinpath("examples", f"{name}.toml").read_bytes()
    return [slope.laid for slope in set_out(read_job_text(text)).slopes if slope.laid is not None]


@pytest.mark.parametrize("name", ["slates", "plain-tiles"])
def test_a_unit_and_a_half_at_a_verge_takes_the_place_of_two_units(name: str) -> None:
    (laid,) = laid_slopes(name)
    assert {Remedy.UNIT_AND_A_HALF} == {piece.remedy for piece in laid.pieces}
    places_count = laid.laying.whole_count + laid.laying.cut_count
    assert places_count == laid.whole_units_count + 2 * len(laid.pieces)


def test_every_place_of_a_roof_is_whole_sawn_half_or_under_a_wide_neighbour() -> None:
    for laid in laid_slopes("hipped-house"):
        sawn = {(piece.course, piece.index) for piece in laid.pieces}
        beside = {(piece.course, piece.neighbour) for piece in laid.pieces if piece.remedy is Remedy.UNIT_AND_A_HALF}
        places_count = laid.laying.whole_count + laid.laying.cut_count
        assert places_count == laid.whole_units_count + len(sawn | beside) + laid.half_units_count
