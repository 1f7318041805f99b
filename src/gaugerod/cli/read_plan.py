"""``gaugerod read-plan FILE``: a job file from a building's outline in GeoJSON or DXF."""

import argparse
from pathlib import Path

from gaugerod.cli.write_text import READ_IT_FIRST, write_text
from gaugerod.wiring import job_text_from_plan


def run(given: argparse.Namespace) -> int:
    """Read the plan, write the job file; faults are raised all together."""
    text = job_text_from_plan(Path(given.file), pitch=given.pitch, unit=given.unit, layer=given.layer)
    write_text(text, given.out, then=READ_IT_FIRST)
    return 0
