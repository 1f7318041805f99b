"""``gaugerod check-roof ROOF``: check a roof as it was built."""

import argparse
import json
import sys
from pathlib import Path

from gaugerod.cli.main import DONE, OUTSIDE
from gaugerod.cli.roof_check_summary import roof_check_lines
from gaugerod.job.roof_checked import checked_roof
from gaugerod.wiring import roof_check_as_document, roof_from_file, write_roof_check


def run(given: argparse.Namespace) -> int:
    """Read the measurements, check them, show what was found. Exit status 1 when anything is outside a rule;
    what is outside a house tolerance only is advice, and leaves it at 0.
    """
    roof = roof_from_file(Path(given.roof))
    check = checked_roof(roof)
    if given.json is not None:
        text = json.dumps(
            roof_check_as_document(check, title=roof.title), indent=2, ensure_ascii=False, allow_nan=False
        )
        if given.json == "-":
            print(text)
        else:
            Path(given.json).write_text(text + "\n", encoding="utf-8")
    if given.json != "-":
        print("\n".join(roof_check_lines(check, title=roof.title, unit=roof.show_lengths_in)))
    if given.out is not None:
        written = write_roof_check(
            check, title=roof.title, unit=roof.show_lengths_in, folder=Path(given.out), paper=given.paper
        )
        say = sys.stderr if given.json == "-" else sys.stdout
        print(f"\nWritten to {given.out}:", file=say)
        for path, what in written:
            print(f"  {path.name:32} {what}", file=say)
    return OUTSIDE if check.outside else DONE
