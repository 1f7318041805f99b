"""``gaugerod schema``: the JSON Schema of the job file."""

import argparse
import json

from gaugerod.wiring import job_file_schema


def run(_given: argparse.Namespace) -> int:
    """Print the schema."""
    print(json.dumps(job_file_schema(), indent=2, ensure_ascii=False))
    return 0
