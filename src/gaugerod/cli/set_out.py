"""``gaugerod set-out JOB``: set out a job file."""

import argparse
from pathlib import Path

from gaugerod.cli.answer import answer
from gaugerod.wiring import job_from_file


def run(given: argparse.Namespace) -> int:
    """Read the job, set it out, show it."""
    return answer(job_from_file(Path(given.job)), json=given.json, out=given.out, paper=given.paper)
