"""``gaugerod on-roof`` as its user runs it."""

from pathlib import Path

import pytest

from gaugerod.cli.main import main

EXAMPLES = Path(__file__).parents[2] / "src" / "gaugerod" / "adapters" / "job_file" / "examples"


def test_it_writes_one_file_and_says_what_to_do_with_it(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    out = tmp_path / "roof.html"
    assert 0 == main(["on-roof", str(EXAMPLES / "demo.toml"), "--out", str(out)])
    assert [out] == list(tmp_path.iterdir())
    assert out.read_text("utf-8").startswith("<!doctype html>")
    assert "Send it to the phone" in capsys.readouterr().out


def test_something_outside_a_rule_gives_one_and_stands_in_the_file(capsys: pytest.CaptureFixture[str]) -> None:
    assert 1 == main(["on-roof", str(EXAMPLES / "narrow-gauge.toml")])
    assert "▲ OUTSIDE: least gauge" in capsys.readouterr().out


def test_a_file_that_cannot_be_written_gives_two(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    assert 2 == main(["on-roof", str(EXAMPLES / "demo.toml"), "--out", str(tmp_path)])
    assert "--out" in capsys.readouterr().err


def test_a_job_that_is_not_there_gives_two(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    assert 2 == main(["on-roof", str(tmp_path / "none.toml")])
    assert "Traceback" not in capsys.readouterr().err
