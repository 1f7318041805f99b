"""``gaugerod demo``: set out the roof that comes with the program."""

import argparse
import sys
from pathlib import Path

from gaugerod.cli.answer import answer
from gaugerod.wiring import demo_job


def run(given: argparse.Namespace) -> int:
    """Set out the demo job and write its sheets."""
    status = answer(demo_job(), json=given.json, out=given.out, paper=given.paper)
    print(f"\nTo open it in a browser: {Path(sys.argv[0])} serve", file=sys.stderr if given.json == "-" else sys.stdout)
    return status
