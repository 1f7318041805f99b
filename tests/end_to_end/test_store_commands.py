"""The kept jobs at the command line: import, export, backup, and their refusals."""

import json
from pathlib import Path

import pytest

from gaugerod.cli.main import main

EXAMPLES = Path(__file__).parents[2] / "src" / "gaugerod" / "adapters" / "job_file" / "examples"


def run(capsys: pytest.CaptureFixture[str], *words: object) -> tuple[int, str, str]:
    status = main([str(word) for word in words])
    said = capsys.readouterr()
    return status, said.out, said.err


@pytest.fixture
def data(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    folder = tmp_path / "data"
    monkeypatch.setenv("GAUGEROD_DATA", str(folder))
    return folder


def test_a_job_file_goes_in_and_everything_comes_out_and_in_again(
    data: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    status, out, _ = run(capsys, "import", EXAMPLES / "demo.toml")
    assert (0, True) == (status, out.startswith("Taken in: Yard Cottage, rear slope ("))
    assert (data / "jobs.sqlite").exists()
    target = tmp_path / "all.json"
    assert 0 == run(capsys, "export", "--to", target)[0]
    other = tmp_path / "other"
    assert 0 == run(capsys, "import", target, "--data", other, "--by", "Cy")[0]
    _, out, _ = run(capsys, "export", "--data", other)
    assert json.loads(target.read_text("utf-8")) == json.loads(out)
    assert [] == list(tmp_path.glob("*.part"))


def test_one_job_is_exported_by_its_id(data: Path, capsys: pytest.CaptureFixture[str]) -> None:
    ids = [run(capsys, "import", EXAMPLES / "demo.toml")[1].split("(")[1].split(")")[0] for _ in range(2)]
    assert data.exists()
    status, out, _ = run(capsys, "export", "--job", ids[1])
    assert (0, 1) == (status, len(json.loads(out)["jobs"]))
    status, _, err = run(capsys, "export", "--job", "none")
    assert (2, True) == (status, "There is no job none." in err)


def test_a_backup_goes_beside_the_jobs_by_the_date(data: Path, capsys: pytest.CaptureFixture[str]) -> None:
    run(capsys, "import", EXAMPLES / "demo.toml")
    status, out, _ = run(capsys, "backup")
    (copy,) = (data / "backups").iterdir()
    assert 0 == status
    assert f"Backed up to {copy}: jobs: 1; revisions: 1" in out
    status, _, err = run(capsys, "backup", "--to", copy)
    assert (2, True) == (status, "already" in err)


@pytest.mark.parametrize("command", ["backup", "export"])
def test_where_nothing_is_kept_it_is_said_and_nothing_made(
    data: Path, capsys: pytest.CaptureFixture[str], command: str
) -> None:
    status, out, err = run(capsys, command)
    assert (2, "") == (status, out)
    assert "There are no kept jobs here yet." in err
    assert not data.exists()


def test_a_draft_is_taken_in_and_said_to_be_one(data: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "draft.toml"
    path.write_text("[job]\n", "utf-8")
    status, out, _ = run(capsys, "import", path)
    assert (0, True) == (status, "Taken in: no title (" in out and "a draft" in out)
    assert data.exists()


def test_a_changed_export_is_refused(data: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    run(capsys, "import", EXAMPLES / "demo.toml")
    target = tmp_path / "all.json"
    run(capsys, "export", "--to", target)
    target.write_text(target.read_text("utf-8").replace("7.460 m", "7.640 m"), "utf-8")
    status, _, err = run(capsys, "import", target)
    assert 2 == status
    assert "do not trust its lengths" in err
    _, out, _ = run(capsys, "export")
    assert 1 == len(json.loads(out)["jobs"])
    assert data.exists()


def test_an_export_that_cannot_be_written_is_refused(
    data: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    run(capsys, "import", EXAMPLES / "demo.toml")
    status, _, err = run(capsys, "export", "--to", tmp_path / "none" / "all.json")
    assert (2, True) == (status, "cannot be written" in err)
    assert data.exists()
