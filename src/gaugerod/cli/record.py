"""``gaugerod record JOB --out FILE.pdf``: the record that is handed over with the roof."""

import argparse
from pathlib import Path

from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.cli.lines import finding_lines
from gaugerod.cli.main import DONE, OUTSIDE
from gaugerod.job.set_out import set_out
from gaugerod.wiring import job_from_file, write_record


def run(given: argparse.Namespace) -> int:
    """Set the job out and write the record. Exit status 1 when anything is outside a rule: the record says what."""
    result = set_out(job_from_file(Path(given.job)))
    try:
        write_record(result, path=Path(given.out), paper=given.paper)
    except OSError as error:
        do = f"It cannot be written: {error.strerror}."
        raise InputRefused([Fault("--out", given.out, "a file that can be written", do)]) from None
    print(f"Written to {given.out}. Read it through, fill in by hand what is left open, and sign it.")
    if result.anything_outside:
        print("\n".join(finding_lines(result.findings)))
    return OUTSIDE if result.anything_outside else DONE
