"""``gaugerod read-roof FILE``: a job file from a measured roof in CityJSON."""

import argparse
from pathlib import Path

from gaugerod.cli.write_text import READ_IT_FIRST, write_text
from gaugerod.wiring import job_text_from_roof


def run(given: argparse.Namespace) -> int:
    """Read the roof, write the job file; faults are raised all together."""
    write_text(job_text_from_roof(Path(given.file)), given.out, then=READ_IT_FIRST)
    return 0
