"""Prints every benchmark as ratios measured in one run: ``python -m benchmarks``."""

from importlib import import_module
from pathlib import Path


def main() -> None:
    """Run every module beside this one; each gives rows of (name, figure, note)."""
    names = sorted(path.stem for path in Path(__file__).parent.glob("*.py") if not path.stem.startswith("_"))
    for name in names:
        for what, figure, note in import_module(f"benchmarks.{name}").rows():
            print(f"{name:14} {what:58} {figure:>10}  {note}")


if __name__ == "__main__":
    main()
