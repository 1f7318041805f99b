"""The roof file: read, refused with every fault, checked by the command."""

from pathlib import Path

import pytest

from gaugerod.adapters.roof_check_file.read import read_roof_text
from gaugerod.as_built.ask import BattensMeasured, MarginsMeasured
from gaugerod.basis.errors import InputRefused
from gaugerod.cli.main import main

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
