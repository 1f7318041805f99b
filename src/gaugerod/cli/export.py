"""``gaugerod export``: kept jobs as JSON, with all their revisions."""

import argparse
import json
from pathlib import Path

from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.cli.kept import kept_file
from gaugerod.wiring import open_store


def run(given: argparse.Namespace) -> int:
    """Write one job or all of them."""
    with open_store(kept_file(given)) as store:
        document = store.export_all() if given.job is None else store.export_job(given.job)
    text = json.dumps(document, indent=1)
    if given.to == "-":
        print(text)
        return 0
    target = Path(given.to)
    part = target.with_name(f"{target.name}.part")
    try:
        part.write_text(text + "\n", encoding="ascii")
        part.replace(target)  # an export already there is whole until the new one is
    except OSError as error:
        do = f"It cannot be written: {error.strerror}."
        raise InputRefused([Fault("--to", given.to, "a file that can be written, or -", do)]) from None
    print(f"Written to {given.to}: jobs: {len(document['jobs'])}.")
    return 0
