"""``gaugerod check-file JOB``: is the job file in order?"""

import argparse
from pathlib import Path

from gaugerod.wiring import job_from_file


def run(given: argparse.Namespace) -> int:
    """Read the file; faults are raised all together."""
    job = job_from_file(Path(given.job))
    slopes = ", ".join(slope.name for slope in job.slopes)
    print(f"{given.job} is in order: {job.title}; {job.covering.title}; slopes: {slopes}")
    return 0
