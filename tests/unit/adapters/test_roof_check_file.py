"""The roof file: read, refused with every fault, checked by the command."""

import json
from itertools import pairwise
from pathlib import Path

import pytest

from gaugerod.adapters.roof_check_file.read import read_roof_text
from gaugerod.as_built.ask import BattensMeasured, MarginsMeasured
from gaugerod.as_built.needed import needed_by
from gaugerod.basis.errors import InputRefused
from gaugerod.cli.main import main
from gaugerod.job.roof_checked import checked_roof

EXAMPLES = Path(__file__).parents[3] / "src" / "gaugerod" / "adapters" / "roof_check_file" / "examples"

ROOF = """
[roof]
title = "Back slope, as nailed"
name = "back"
pitch = "35°"
exposure = "moderate"
ridge_cover = "125 mm"

[covering]
from = "flat-interlocking-420x330"

[[rod]]
at = "0.3 m"
rafter = "1.400 m"
marks = ["340 mm", "680 mm", "1020 mm", "1365 mm"]
"""


def test_battens_are_read_in_millimetres() -> None:
    roof = read_roof_text(ROOF.encode())
    (rod,) = roof.ask.rods
    assert isinstance(rod, BattensMeasured)
    assert rod.marks_mm == (340.0, 680.0, 1020.0, 1365.0)
    assert (rod.at_mm, rod.length_mm, roof.ask.pitch_deg) == (300.0, 1400.0, 35.0)


def test_margins_are_read_from_the_first_tail() -> None:
    margins = ROOF.replace("marks = [", 'overhang = "45 mm"\nmargins = [')
    (rod,) = read_roof_text(margins.encode()).ask.rods
    assert isinstance(rod, MarginsMeasured)
    assert rod.overhang_mm == 45.0
    assert len(rod.margins_mm) == 4


@pytest.mark.parametrize(
    ("old", "new", "field"),
    [
        ('pitch = "35°"', 'pitch = "steep"', "roof.pitch"),
        ('exposure = "moderate"', "", "roof.exposure"),
        ("marks = [", "margins = [", "rod"),
        ("marks = [", 'overhang = "45 mm"\nmarks = [', "rod"),
        ('"1365 mm"', '"thirteen"', "rod"),
    ],
)
def test_faults_name_their_field(old: str, new: str, field: str) -> None:
    with pytest.raises(InputRefused) as refused:
        read_roof_text(ROOF.replace(old, new).encode())
    assert any(fault.field.startswith(field) for fault in refused.value.faults), refused.value.faults


def test_random_slates_are_refused_because_no_margin_shows_their_lap() -> None:
    heap = 'from = "random-slates"\n\n[[covering.heap]]\nlength = "400 mm"\nrun = "60 m"\n'
    with pytest.raises(InputRefused) as refused:
        read_roof_text(ROOF.replace('from = "flat-interlocking-420x330"\n', heap).encode())
    (fault,) = refused.value.faults
    assert fault.field == "covering.from"
    assert fault.given == "random-slates"


@pytest.mark.parametrize("name", ["patched-slope", "plain-tiles-by-margins"])
def test_the_examples_are_checked_and_found_short(name: str) -> None:
    check = checked_roof(read_roof_text((EXAMPLES / f"{name}.toml").read_bytes()))
    assert check.leaks
    assert check.strip_back is not None
    assert check.strip_back.cures


def test_a_lap_stated_for_slates_reaches_the_check() -> None:
    slates = ROOF.replace("flat-interlocking-420x330", "slate-500x250").replace(
        "exposure", 'headlap = "90 mm"\nexposure'
    )
    read = read_roof_text(slates.replace("marks = [", 'overhang = "45 mm"\nmargins = [').encode())
    assert read.ask.headlap is not None
    assert 90.0 == read.ask.headlap.value


def test_a_plain_tile_with_a_figure_put_right_is_read() -> None:
    tiles = ROOF.replace('from = "flat-interlocking-420x330"', 'from = "clay-plain-265x165"\nheadlap_min = "70 mm"')
    assert 70.0 == needed_by(read_roof_text(tiles.encode()).ask).least_lap.value


def test_the_document_alone_goes_to_standard_output(capsys: pytest.CaptureFixture[str]) -> None:
    assert 1 == main(["check-roof", str(EXAMPLES / "patched-slope.toml"), "--json", "-"])
    document = json.loads(capsys.readouterr().out)
    # 3825 − 3390 = 435 between battens 10 and 11: a tile of 420 leaves 15 open
    assert -15.0 == document["smallest_lap"]["lap_mm"]
    assert [11, 7, 12, 14] == [leak["course"] for leak in document["leaks_first"]["courses"]]
    assert 6 == document["strip_back"]["keep"]
    for rod in document["strip_back"]["rods"]:
        marks = rod["marks_mm"]
        assert max(upper - lower for lower, upper in pairwise(marks)) <= 345.0


def test_a_sound_roof_gives_nothing_and_a_faulty_file_two(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    sound = tmp_path / "sound.toml"
    sound.write_text(ROOF.replace('"340 mm", "680 mm", "1020 mm", "1365 mm"', "347, 685, 1023, 1361"), encoding="utf-8")
    assert 0 == main(["check-roof", str(sound)])
    assert "No lap is short and nothing is outside a rule." in capsys.readouterr().out
    faulty = tmp_path / "faulty.toml"
    faulty.write_text(ROOF.replace("1365 mm", "1000 mm").replace("0.3 m", "-1 m"), encoding="utf-8")
    assert 2 == main(["check-roof", str(faulty)])
    assert "rod[0].at" in capsys.readouterr().err


def test_lengths_may_be_shown_in_feet_and_inches(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    feet = tmp_path / "feet.toml"
    text = (EXAMPLES / "patched-slope.toml").read_text("utf-8")
    feet.write_text(text.replace('exposure = "moderate"', 'exposure = "moderate"\nshow_lengths_in = "ft-in"'), "utf-8")
    assert 1 == main(["check-roof", str(feet)])
    out = capsys.readouterr().out
    assert 'open by 5/8"' in out


def test_the_command_says_what_is_short_and_writes_the_record(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    roof = tmp_path / "roof.toml"
    # A tile 420 mm long, least lap 75 mm: 365 mm between the third and the fourth batten leaves 55 mm, 20 mm short.
    marks = [330, 665, 1000, 1365, 1700, 2035, 2370, 2705, 3040, 3315]
    rod = f'rafter = "3.360 m"\nmarks = {[f"{mark} mm" for mark in marks]}\n'
    roof.write_text(ROOF.split("rafter =", maxsplit=1)[0] + rod, encoding="utf-8")
    assert main(["check-roof", str(roof), "--out", str(tmp_path / "out")]) == 1
    said = capsys.readouterr().out
    assert "course 4 over 3" in said
    assert "Keep the first" in said
    assert {path.name for path in (tmp_path / "out").iterdir()} == {
        "roof-check.pdf",
        "roof-check.svg",
        "roof-check.json",
    }


def test_a_house_tolerance_alone_is_advice_and_gives_nothing(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    # Gauges of 300 twice, then 340 twice: the third batten is 40 mm below its place in equal gauges of 320.
    uneven = tmp_path / "uneven.toml"
    marks = ROOF.replace('"340 mm", "680 mm", "1020 mm", "1365 mm"', "347, 647, 947, 1287, 1627")
    uneven.write_text(marks.replace("1.400 m", "1.665 m"), encoding="utf-8")
    assert 0 == main(["check-roof", str(uneven)])
    out = capsys.readouterr().out
    assert "Advice, by house tolerances: it shows, it does not leak, and it is outside no rule" in out
    assert "  OUT  " not in out
    assert 0 == main(["check-roof", str(uneven), "--json", "-"])
    document = json.loads(capsys.readouterr().out)
    assert "gauge run-out" in {finding["rule"] for finding in document["advice"]}
    assert [] == [finding for finding in document["findings"] if finding["verdict"] == "outside"]
