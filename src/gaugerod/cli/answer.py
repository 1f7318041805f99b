"""What a setting-out command does with a job: set it out, print the main numbers, write what was asked for."""

import json as json_text
import sys
from pathlib import Path

from gaugerod.cli.main import DONE, OUTSIDE
from gaugerod.cli.summary import summary_lines
from gaugerod.job.model import Job
from gaugerod.job.result import Result
from gaugerod.job.set_out import set_out
from gaugerod.wiring import result_as_document, write_sheets


def answer(job: Job, *, json: str | None, out: str | None, paper: str) -> int:
    """Set the job out and show it. Exit status 1 when anything is outside a rule."""
    result = set_out(job)
    if json is not None:
        _write_document(result, json)
    if json != "-":
        print("\n".join(summary_lines(result)))
    if out is not None:
        written = write_sheets(result, folder=Path(out), paper=paper)
        say = sys.stderr if json == "-" else sys.stdout
        print(f"\nWritten to {out}:", file=say)
        for path, what in written:
            print(f"  {path.name:32} {what}", file=say)
    return OUTSIDE if result.anything_outside else DONE


def _write_document(result: Result, target: str) -> None:
    text = json_text.dumps(result_as_document(result), indent=2, ensure_ascii=False, allow_nan=False)
    if target == "-":
        print(text)
    else:
        Path(target).write_text(text + "\n", encoding="utf-8")
