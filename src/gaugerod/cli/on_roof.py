"""``gaugerod on-roof JOB``: the marks one at a time, in one file for a phone."""

import argparse
from datetime import datetime
from pathlib import Path

from gaugerod.cli.main import DONE, OUTSIDE
from gaugerod.cli.write_text import write_text
from gaugerod.job.set_out import set_out
from gaugerod.wiring import job_from_file, on_roof_page


def run(given: argparse.Namespace) -> int:
    """Set the job out and write the file. Exit status 1 when anything is outside a rule: the file says what."""
    result = set_out(job_from_file(Path(given.job)))
    page = on_roof_page(result, made_at=datetime.now().astimezone())
    write_text(page, given.out, then="Send it to the phone and open it there: it needs no signal.")
    return OUTSIDE if result.anything_outside else DONE
