"""What a job file says is what the job holds."""

import copy
import json
import tomllib
from math import isclose
from pathlib import Path
from typing import Any

import pytest

from gaugerod.adapters.job_file.read import read_job, read_job_document, read_job_text
from gaugerod.adapters.job_file.text import LARGEST_BYTES
from gaugerod.basis.citation import Basis
from gaugerod.basis.errors import InputRefused
from gaugerod.basis.lengths import LengthUnit
from gaugerod.coverings.catalogue import covering
from gaugerod.coverings.single_lap import Bond, SingleLapTile
from gaugerod.job.model import BottomKind, OverhangMeasured, TopKind, Wishes
from gaugerod.setting_out.across import SideKind
from gaugerod.setting_out.stations import NailedRod
from gaugerod.standards.edition import Edition, Exposure

SOUND = Path(__file__).parents[2] / "faults" / "jobs" / "sound.toml"


@pytest.fixture
def document() -> dict[str, Any]:
    return tomllib.loads(SOUND.read_text("utf-8"))


def test_every_table_reaches_the_job() -> None:
    job = read_job(SOUND)
    (slope,) = job.slopes
    (opening,) = slope.openings
    assert ("Mill Lane, rear", Edition.GB, Exposure.MODERATE) == (job.title, job.edition, job.exposure)
    assert LengthUnit.MM == job.show_lengths_in
    assert covering("flat-interlocking-420x330") == job.covering
    assert ("rear", 35.0, 7460.0) == (slope.name, slope.pitch_deg, slope.taped.eaves_mm)
    assert ((0.0, 4905.0), (7460.0, 4918.0)) == slope.taped.rafters
    assert (SideKind.VERGE, SideKind.ABUTMENT) == (slope.left, slope.right)
    assert (BottomKind.EAVES, TopKind.RIDGE) == (slope.bottom, slope.top)
    assert (2400.0, 1600.0, 780.0, 1180.0) == (
        opening.from_left_mm, opening.up_slope_mm, opening.width_mm, opening.height_mm,
    )  # fmt: skip


def test_a_band_that_the_job_states_says_so(document: dict[str, Any]) -> None:
    band = read_job_document(document).wishes.eaves_overhang
    assert band is not None
    assert (45.0, 55.0) == (band.least_mm, band.greatest_mm)
    assert ("stated in the job file", Basis.HOUSE) == (band.citation.source, band.citation.basis)


def test_one_length_is_a_band_of_that_length(document: dict[str, Any]) -> None:
    document["set_out"]["verge_overhang"] = "44 mm"
    band = read_job_document(document).wishes.verge_overhang
    assert band is not None
    assert (44.0, 44.0) == (band.least_mm, band.greatest_mm)


def test_what_the_job_does_not_wish_is_left_to_the_edition(document: dict[str, Any]) -> None:
    del document["set_out"]
    assert Wishes() == read_job_document(document).wishes


def test_every_wish_reaches_the_job(document: dict[str, Any]) -> None:
    document["set_out"] = {
        "overhang_measured": "level", "top_batten_from_apex": ["25 mm", "50 mm"], "ridge_cover": "125 mm",
        "abutment_set_back": [5, 15], "bond": "broken", "perps_every": 5,
    }  # fmt: skip
    wishes = read_job_document(document).wishes
    assert OverhangMeasured.LEVEL == wishes.overhang_measured
    assert (125.0, Bond.BROKEN, 5) == (wishes.ridge_cover_mm, wishes.bond, wishes.perps_every_count)
    assert wishes.top_batten_from_apex is not None
    assert wishes.abutment_set_back is not None
    assert (50.0, 5.0) == (wishes.top_batten_from_apex.greatest_mm, wishes.abutment_set_back.least_mm)


def test_toml_and_json_give_the_same_job(document: dict[str, Any], tmp_path: Path) -> None:
    as_json = tmp_path / "job.json"
    as_json.write_text(json.dumps(document), "utf-8")
    assert read_job(SOUND) == read_job(as_json) == read_job_text(as_json.read_bytes()) == read_job_document(document)


def test_a_mark_of_byte_order_and_windows_lines_do_no_harm() -> None:
    windows = "\ufeff" + SOUND.read_text("utf-8").replace("\n", "\r\n")
    assert read_job(SOUND) == read_job_text(windows.encode("utf-8"))


def test_the_document_is_left_as_it_was(document: dict[str, Any]) -> None:
    before = copy.deepcopy(document)
    read_job_document(document)
    assert before == document


@pytest.mark.parametrize(
    ("rafters", "expected"),
    [
        (["4.9 m"], ((0.0, 4900.0),)),
        (["4.9 m", 4910, "4.92 m"], ((0.0, 4900.0), (3730.0, 4910.0), (7460.0, 4920.0))),
        ([{"at": 0, "length": "4.9 m"}, {"at": "2 m", "length": "4.91 m"}], ((0.0, 4900.0), (2000.0, 4910.0))),
        ([{"length": "4.9 m"}, {"length": "4.91 m"}], ((0.0, 4900.0), (7460.0, 4910.0))),
    ],
)
def test_rafters_stand_where_they_were_measured_or_evenly(
    document: dict[str, Any], rafters: list[Any], expected: tuple[tuple[float, float], ...]
) -> None:
    document["slope"][0]["rafters"] = rafters
    assert expected == read_job_document(document).slopes[0].taped.rafters


@pytest.mark.parametrize(
    ("pitch", "expected_deg"),
    [
        (35, 35.0),
        (22.5, 22.5),
        ("35 deg", 35.0),
        ("12 in 12", 45.0),
        ({"rise": "8 in", "run": "8 in"}, 45.0),
        ({"rafter": "2 m", "run": "1 m"}, 60.0),
    ],
)
def test_the_pitch_is_read_each_way_it_is_written(document: dict[str, Any], pitch: object, expected_deg: float) -> None:
    document["slope"][0]["pitch"] = pitch
    assert isclose(expected_deg, read_job_document(document).slopes[0].pitch_deg, rel_tol=1e-9)


def test_the_tape_gives_ridge_and_diagonals_where_they_were_taken(document: dict[str, Any]) -> None:
    document["slope"][0] |= {"ridge": "7.462 m", "diagonals": {"from_left": "8.935 m"}}
    taped = read_job_document(document).slopes[0].taped
    assert (7462.0, 8935.0, None) == (taped.ridge_mm, taped.diagonal_from_left_mm, taped.diagonal_from_right_mm)


def test_battens_already_nailed_reach_the_job(document: dict[str, Any]) -> None:
    document["slope"][0]["nailed"] = [{"at": 0, "marks": [348, "693 mm"]}, {"at": "7.460 m", "marks": ["350 mm"]}]
    assert (
        NailedRod(at_mm=0.0, marks_mm=(348.0, 693.0)),
        NailedRod(at_mm=7460.0, marks_mm=(350.0,)),
    ) == read_job_document(document).slopes[0].nailed


def test_a_figure_of_the_covering_put_right_is_used_and_said(document: dict[str, Any]) -> None:
    document["covering"] |= {"headlap_min": "100 mm", "mass": "4.9 kg", "measured": ["mass", "hanging_length_mm"]}
    tile = read_job_document(document).covering
    assert isinstance(tile, SingleLapTile)
    assert (320.0, 4.9) == (tile.gauge_max_mm, tile.mass_kg)
    assert "given in the job: headlap_min, mass" in tile.citation.source
    assert {"mass_kg", "hanging_length_mm"} == tile.measured


def test_a_covering_of_ones_own_needs_no_catalogue(document: dict[str, Any]) -> None:
    document["covering"] = {
        "title": "Own clay tile", "form": "flat", "material": "clay", "length": "342 mm", "width": "230 mm",
        "headlap_min": 75, "cover_closed": "196 mm", "cover_open": "202 mm", "measured": ["length", "cover_closed"],
    }  # fmt: skip
    tile = read_job_document(document).covering
    assert isinstance(tile, SingleLapTile)
    assert ("Own clay tile", 267.0, None) == (tile.title, tile.gauge_max_mm, tile.hanging_length_mm)
    assert {"length_mm", "cover_closed_mm"} == tile.measured
    assert tile.citation.source == "stated in the job file"


def test_a_file_that_cannot_be_opened_is_refused_with_the_reason(tmp_path: Path) -> None:
    for path in (tmp_path / "none.toml", tmp_path):
        with pytest.raises(InputRefused, match="It cannot be opened"):
            read_job(path)


@pytest.mark.parametrize(("bytes_over", "words"), [(0, None), (1, "This is no job file"), (9_750_000, "no job file")])
def test_a_file_may_be_as_large_as_the_limit_and_no_larger(tmp_path: Path, bytes_over: int, words: str | None) -> None:
    path = tmp_path / "large.toml"
    sound = SOUND.read_bytes()
    path.write_bytes(sound + b"#" * (LARGEST_BYTES + bytes_over - len(sound)))
    if words is None:
        assert read_job(path).title == "Mill Lane, rear"
    else:
        with pytest.raises(InputRefused, match=words):
            read_job(path)


@pytest.mark.parametrize(
    "content",
    [
        b"a" + b".a" * 100_000 + b" = 1",
        b"a = " + b"[" * 100_000,
        b'{"a": ' + b"[" * 100_000,
        b'{"a": ' * 900 + b"1" + b"}" * 900,
        b"a = " + b"9" * 5_000,
        b'{"a": ' + b"9" * 5_000 + b"}",
    ],
    ids=["dots", "toml brackets", "json brackets", "json depth", "toml digits", "json digits"],
)
def test_a_file_made_to_choke_on_is_refused_at_once(content: bytes) -> None:
    with pytest.raises(InputRefused, match="This is no job file"):
        read_job_text(content)


@pytest.mark.parametrize(("key", "most"), [("rafters", 200), ("opening", 50), ("nailed", 50)])
def test_a_list_longer_than_any_survey_is_refused(document: dict[str, Any], key: str, most: int) -> None:
    document["slope"][0][key] = [{}] * (most + 1)
    with pytest.raises(InputRefused, match=f"at most {most}"):
        read_job_document(document)
