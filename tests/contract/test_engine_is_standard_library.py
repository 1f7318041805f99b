"""The engine must run where nothing can be installed: it imports with every third party blocked."""

import subprocess
import sys
from pathlib import Path

SOURCE = Path(__file__).parents[2] / "src"
ENGINE = [folder for folder in (
    "basis", "geometry", "standards", "coverings", "rules", "setting_out", "laying", "substrate", "fixing", "edges",
    "take_off", "as_built", "job", "sheets",
) if (SOURCE / "gaugerod" / folder).is_dir()]  # fmt: skip
BLOCKED_IMPORTS = """
import sys, importlib, importlib.abc

class OnlyStandardLibrary(importlib.abc.MetaPathFinder):
    def find_spec(self, name, path=None, target=None):
        top = name.partition(".")[0]
        if top != "gaugerod" and top not in sys.stdlib_module_names:
            raise ImportError("blocked: " + name)
        return None

sys.meta_path.insert(0, OnlyStandardLibrary())
for name in sys.argv[1:]:
    importlib.import_module(name)
"""


def engine_modules() -> list[str]:
    names = []
    for folder in ENGINE:
        for path in sorted((SOURCE / "gaugerod" / folder).rglob("*.py")):
            parts = path.relative_to(SOURCE).with_suffix("").parts
            names.append(".".join(parts[:-1] if parts[-1] == "__init__" else parts))
    return names


def test_every_engine_module_imports_with_third_parties_blocked() -> None:
    names = engine_modules()
    assert len(names) > 30
    done = subprocess.run(
        [sys.executable, "-I", "-c", f"import sys; sys.path.insert(0, {str(SOURCE)!r})\n{BLOCKED_IMPORTS}", *names],
        capture_output=True,
        text=True,
        check=False,
    )
    assert (0, "") == (done.returncode, done.stderr)


def test_importing_the_package_reads_nothing_heavy() -> None:
    heavy = ("pydantic", "typst", "ezdxf", "numpy")
    ask = f"import sys, gaugerod, gaugerod.cli.main; print([name for name in {heavy} if name in sys.modules])"
    done = subprocess.run([sys.executable, "-c", ask], capture_output=True, text=True, check=True)
    assert "[]" == done.stdout.strip()
