"""``gaugerod demo``: set out the roof that comes with the program."""

import argparse

from gaugerod.cli.answer import answer
from gaugerod.wiring import demo_job


def run(given: argparse.Namespace) -> int:
    """Set out the demo job and write its sheets."""
    return answer(demo_job(), json=given.json, out=given.out, paper=given.paper)
