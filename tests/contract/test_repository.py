"""What may not stand in any file of the project."""

import re
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
# Written in pieces, so that this file does not hold what it looks for.
HOSTS = re.compile("|".join(["py" + r"pi\.org", "python" + "hosted", "npm" + r"js\.(org|com)", "deb\\." + "debian"]))
PLACES = re.compile("|".join(["/wo" + "rk/", "/ro" + "ot/", "/fa" + "rm/", "file:" + "///"]))


def tracked_files() -> list[Path]:
    done = subprocess.run(["git", "ls-files", "-z"], cwd=ROOT, capture_output=True, text=True, check=False)
    if done.returncode != 0:
        pytest.skip("not a git checkout")
    return [ROOT / name for name in done.stdout.split("\0") if name]


def test_no_file_names_a_registry_host_or_a_place_on_a_machine() -> None:
    found: list[str] = []
    for path in tracked_files():
        if not path.is_file() or path.suffix in {".png", ".pdf"}:
            continue
        text = path.read_text("utf-8", errors="replace")
        found.extend(
            f"{path.relative_to(ROOT)}: {match[0]}" for pattern in (HOSTS, PLACES) for match in pattern.finditer(text)
        )
    assert [] == found


def test_the_locks_are_hashed_to_the_last_line() -> None:
    for name in ("requirements.txt", "requirements-dev.txt"):
        blocks = re.split(r"\n(?=\S)", (ROOT / name).read_text("utf-8").strip())
        assert [] == [block.split("\n")[0] for block in blocks if "--hash=sha256:" not in block]
