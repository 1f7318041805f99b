"""``gaugerod take-off JOB``: what the job takes, measured and allowed for."""

import argparse
import json
from pathlib import Path

from gaugerod.cli.main import DONE, OUTSIDE
from gaugerod.cli.take_off_lines import take_off_lines
from gaugerod.job.set_out import set_out
from gaugerod.wiring import job_from_file, take_off_as_document


def run(given: argparse.Namespace) -> int:
    """Set the job out and take it off. Exit status 1 when anything is outside a rule: it is said."""
    result = set_out(job_from_file(Path(given.job)))
    if given.json is not None:
        text = json.dumps(take_off_as_document(result), indent=2, ensure_ascii=False, allow_nan=False)
        if given.json == "-":
            print(text)
        else:
            Path(given.json).write_text(text + "\n", encoding="utf-8")
    if given.json != "-":
        print("\n".join(take_off_lines(result)))
    return OUTSIDE if result.anything_outside else DONE
