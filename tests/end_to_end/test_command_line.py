"""The command line as its user runs it: in process for speed, exit status and words looked at."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from gaugerod.cli.main import main

EXAMPLES = Path(__file__).parents[2] / "src" / "gaugerod" / "adapters" / "job_file" / "examples"
DEMO = EXAMPLES / "demo.toml"


def run(capsys: pytest.CaptureFixture[str], *arguments: str) -> tuple[int, str, str]:
    try:
        status = main(list(arguments))
    except SystemExit as stopped:  # argparse ends the program itself on --help and on words it does not know
        status = int(stopped.code or 0)
    said = capsys.readouterr()
    return status, said.out, said.err


def test_the_demo_is_within_every_rule(capsys: pytest.CaptureFixture[str]) -> None:
    status, out, _ = run(capsys, "set-out", str(DEMO))
    assert 0 == status
    assert "15 at 322.8 mm, 323.8 mm gauge" in out


def test_the_result_document_goes_to_standard_output_alone(capsys: pytest.CaptureFixture[str]) -> None:
    status, out, _ = run(capsys, "set-out", str(DEMO), "--json", "-")
    document = json.loads(out)
    assert 0 == status
    assert [348.0, 4868.0] == [document["slopes"][0]["courses"]["rods"][0]["marks_mm"][index] for index in (0, -1)]


def test_something_outside_a_rule_gives_one_and_says_what_could_change(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    job = tmp_path / "porch.toml"
    job.write_text((EXAMPLES / "narrow-gauge.toml").read_text("utf-8").replace("1.180 m", "1.080 m"), "utf-8")
    status, out, _ = run(capsys, "set-out", str(job))
    assert 1 == status
    assert "least gauge" in out
    assert "What could change:" in out


def test_a_lap_that_is_short_is_never_printed_without_a_word(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    job = tmp_path / "slates.toml"
    stated = (EXAMPLES / "slates.toml").read_text("utf-8").replace("[set_out]", '[set_out]\nheadlap = "56 mm"')
    job.write_text(stated, "utf-8")
    status, out, _ = run(capsys, "set-out", str(job))
    assert 1 == status
    lap = next(line for line in out.splitlines() if "headlap" in line)
    assert lap.endswith("(OUTSIDE: see the findings)")
    assert "OUTSIDE" not in run(capsys, "set-out", str(EXAMPLES / "slates.toml"))[1]


def test_a_hip_has_no_overhang_in_the_main_numbers(capsys: pytest.CaptureFixture[str]) -> None:
    out = run(capsys, "set-out", str(EXAMPLES / "hipped-house.toml"))[1]
    assert "hip 0 mm" not in out
    assert "hip, hip" in out


def test_every_fault_of_a_file_is_listed_and_gives_two(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    job = tmp_path / "wrong.toml"
    job.write_text(DEMO.read_text("utf-8").replace('"35°"', '"95°"').replace("7.460 m", "seven"), "utf-8")
    status, out, err = run(capsys, "set-out", str(job))
    assert (2, "") == (status, out)
    assert "2 faults" in err
    assert "slope[0].pitch" in err
    assert "slope[0].across" in err


def test_a_file_that_is_not_there_gives_two(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    status, _, err = run(capsys, "check-file", str(tmp_path / "none.toml"))
    assert 2 == status
    assert "cannot be opened" in err


def test_check_file_says_what_it_holds(capsys: pytest.CaptureFixture[str]) -> None:
    status, out, _ = run(capsys, "check-file", str(DEMO))
    assert 0 == status
    assert "is in order" in out


@pytest.mark.parametrize(("of", "table"), [([], "slope"), (["--of", "job"], "slope"), (["--of", "roof"], "rod")])
def test_the_schema_of_either_file_is_printed(capsys: pytest.CaptureFixture[str], of: list[str], table: str) -> None:
    status, out, _ = run(capsys, "schema", *of)
    assert 0 == status
    assert table in json.loads(out)["properties"]


@pytest.mark.parametrize("command", ["set-out", "demo", "coverings", "measure", "check-file", "schema"])
def test_every_command_explains_itself(capsys: pytest.CaptureFixture[str], command: str) -> None:
    status, out, _ = run(capsys, command, "--help")
    assert 0 == status
    assert "usage: gaugerod" in out


def test_help_with_no_command_teaches_a_first_roof(capsys: pytest.CaptureFixture[str]) -> None:
    status, out, _ = run(capsys)
    assert 0 == status
    assert "A first roof:" in out


def test_an_unknown_command_is_refused(capsys: pytest.CaptureFixture[str]) -> None:
    status, _, err = run(capsys, "tile-it")
    assert 2 == status
    assert "invalid choice" in err


def test_coverings_are_listed_and_shown(capsys: pytest.CaptureFixture[str]) -> None:
    status, out, _ = run(capsys, "coverings")
    assert 0 == status
    assert "flat-interlocking-420x330" in out
    status, out, _ = run(capsys, "coverings", "clay-pantile-340x240")
    assert 0 == status
    assert "hanging_length_mm" in out
    status, _, err = run(capsys, "coverings", "clay-pantil")
    assert 2 == status
    assert "Did you mean clay-pantile-340x240?" in err


@pytest.mark.parametrize("name", ["slate-500x250", "concrete-plain-265x165", "random-slates"])
def test_every_covering_of_the_list_can_be_shown(capsys: pytest.CaptureFixture[str], name: str) -> None:
    assert name in run(capsys, "coverings")[1]
    status, out, _ = run(capsys, "coverings", name)
    assert 0 == status
    assert name in out


@pytest.mark.parametrize("wrong", ["slate-500x25", "random-slate"])
def test_a_double_lap_name_misspelt_is_answered_with_the_nearest(
    capsys: pytest.CaptureFixture[str], wrong: str
) -> None:
    status, _, err = run(capsys, "coverings", wrong)
    assert 2 == status
    assert f"Did you mean {wrong}" in err


def test_a_place_that_cannot_be_written_is_no_fault_of_the_program(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    target = tmp_path / "missing" / "result.json"
    status, _, err = run(capsys, "set-out", str(DEMO), "--json", str(target))
    assert 2 == status
    assert str(target) in err
    assert "No such file or directory" in err


def test_a_measured_tile_goes_straight_into_a_job(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    status, out, _ = run(
        capsys, "measure", "--lap", "75", "--gauge-at-lap", "345", "--width", "330", "--ten-closed", "2.976 m",
        "--ten-open", "3030", "--hanging-length", "398", "--closest-gauge", "300", "--pitch-min", "30",
    )  # fmt: skip
    assert 0 == status
    table = out[out.rindex("[covering]") : out.index("Not measured")]
    job = tmp_path / "own.toml"
    text = DEMO.read_text("utf-8").replace('[covering]\nfrom = "flat-interlocking-420x330"\n', table)
    job.write_text(text, "utf-8")
    status, out, _ = run(capsys, "set-out", str(job), "--json", "-")
    assert 345.0 == json.loads(out)["slopes"][0]["courses"]["limit"]["gauge_max_mm"]
    assert 300.0 == json.loads(out)["slopes"][0]["courses"]["limit"]["gauge_min_mm"]
    assert status in {0, 1}


def test_measuring_by_asking_gives_the_same_record(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    answers = iter(["", "330", "what?", "398", "75", "345", "", "2976", "3030", "", ""])
    monkeypatch.setattr("builtins.input", lambda _question: next(answers))
    status, out, err = run(capsys, "measure")
    assert 0 == status
    assert "length = 420" in out
    assert "cannot be read" in err


def test_contradicting_figures_of_a_test_lay_give_their_misfit(capsys: pytest.CaptureFixture[str]) -> None:
    status, _, err = run(capsys, "measure", "--length", "420", "--lap", "75", "--gauge-at-lap", "365")
    assert 2 == status
    assert "-20.0 mm apart" in err


def test_a_fault_of_the_program_gives_three(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def broken(_job: object) -> None:
        raise ZeroDivisionError("on purpose")

    monkeypatch.setattr("gaugerod.cli.answer.set_out", broken)
    status, _, err = run(capsys, "set-out", str(DEMO))
    assert 3 == status
    assert "a fault of this program" in err


def test_setting_out_to_json_reads_no_part_it_does_not_need() -> None:
    """So that starting stays quick: no roof check, no sheets, no kept jobs."""
    script = (
        "import contextlib, io, sys\n"
        "from gaugerod.cli.main import main\n"
        "with contextlib.redirect_stdout(io.StringIO()):\n"
        f"    main(['set-out', {str(DEMO)!r}, '--json', '-'])\n"
        "heavy = ('gaugerod.as_built', 'gaugerod.sheets', 'gaugerod.web', 'gaugerod.adapters.store', 'sqlite3', 'typst')\n"
        "print([name for name in sys.modules if name.startswith(heavy)])\n"
    )
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    assert "[]" == done.stdout.strip()
