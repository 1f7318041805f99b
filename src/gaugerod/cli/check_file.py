"""``gaugerod check-file JOB``: is the job file in order?"""

import argparse
from pathlib import Path

from gaugerod.job.buildings import formed
from gaugerod.wiring import job_from_file


def run(given: argparse.Namespace) -> int:
    """Read the file; faults are raised all together, and what a building's roof asks, or why it does not close."""
    job = job_from_file(Path(given.job))
    for building in job.buildings:
        formed(building)
    named = (("buildings", [each.name for each in job.buildings]), ("slopes", [each.name for each in job.slopes]))
    roofs = "; ".join(f"{kind}: {', '.join(names)}" for kind, names in named if names)
    print(f"{given.job} is in order: {job.title}; {job.covering.title}; {roofs}")
    return 0
