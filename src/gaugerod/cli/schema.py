"""``gaugerod schema``: the JSON Schema of the job file, or of the roof file."""

import argparse
import json

from gaugerod.wiring import job_file_schema, roof_file_schema


def run(given: argparse.Namespace) -> int:
    """Print the schema."""
    schema = roof_file_schema() if given.of == "roof" else job_file_schema()
    print(json.dumps(schema, indent=2, ensure_ascii=False))
    return 0
