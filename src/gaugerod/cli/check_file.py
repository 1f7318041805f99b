"""``gaugerod check-file JOB``: is the job file in order?"""

import argparse
from pathlib import Path

from gaugerod.wiring import job_from_file


def run(given: argparse.Namespace) -> int:
    """Read the file; faults are raised all together."""
    job = job_from_file(Path(given.job))
    named = (("buildings", [each.name for each in job.buildings]), ("slopes", [each.name for each in job.slopes]))
    roofs = "; ".join(f"{kind}: {', '.join(names)}" for kind, names in named if names)
    print(f"{given.job} is in order: {job.title}; {job.covering.title}; {roofs}")
    return 0
