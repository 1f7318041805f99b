"""Run inside WebAssembly Python: the tests of the engine's folders, all that need nothing but the engine and pytest."""

import ast
import os
import platform
from pathlib import Path

import pytest

ROOT = Path("/repo")
PLACES = (
    *(
        f"tests/unit/{stage}"
        for stage in (
            "basis",
            "standards",
            "coverings",
            "rules",
            "geometry",
            "setting_out",
            "laying",
            "as_built",
            "job",
            "sheets",
        )
    ),
    "tests/published",
    "tests/property",
)
NOT_HERE = frozenset(
    {
        "gaugerod.adapters",
        "gaugerod.cli",
        "gaugerod.wiring",
        "hypothesis",
        "numpy",
        "scipy",
        "shapely",
        "pydantic",
        "subprocess",
        "py_straight_skeleton",
    }
)
"""What a browser's engine does without: the door, the commands, the reference libraries, and a test library with compiled parts."""
LEAST_COUNT = 1_200


def run() -> int:
    """The exit status of pytest. Refuses to pass when hardly any test is left to run."""
    files: list[Path] = []
    left_out: list[Path] = []
    for path in sorted(path for place in PLACES for path in (ROOT / place).rglob("test_*.py")):
        (left_out if _needs(path) & NOT_HERE else files).append(path)
    print(
        f"{platform.python_implementation()} {platform.python_version()} on {platform.machine()}, {platform.system()}"
    )
    print(f"{len(files)} files of the engine's tests; {len(left_out)} need more than the engine:")
    print("  " + ", ".join(path.name for path in left_out))
    os.chdir(ROOT)
    counted = _Counted()
    status = pytest.main(
        [
            "-q",
            "-c",
            os.devnull,
            "--rootdir=/repo",
            "--import-mode=importlib",
            "-m",
            "not slow",
            "-p",
            "no:cacheprovider",
            "-p",
            "no:faulthandler",
            *map(str, files),
        ],
        plugins=[counted],
    )
    if counted.passed_count < LEAST_COUNT:
        print(f"only {counted.passed_count} tests ran: at least {LEAST_COUNT} are expected")
        return 1
    return int(status)


class _Counted:
    """Counts the tests that passed."""

    def __init__(self) -> None:
        self.passed_count = 0

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        self.passed_count += report.when == "call" and report.passed


def _needs(path: Path, met: frozenset[Path] = frozenset()) -> set[str]:
    """Every module this file imports, by itself or through helpers under tests; each with the packages it lies in."""
    found: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        names = []
        if isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom) and node.module is not None:
            names = [node.module]
        for name in names:
            parts = name.split(".")
            found.update(".".join(parts[: end + 1]) for end in range(len(parts)))
            helper = ROOT.joinpath(*parts).with_suffix(".py")
            if parts[0] in {"tests", "benchmarks"} and helper.exists() and helper not in met:
                found |= _needs(helper, met | {path})
    return found
