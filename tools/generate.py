"""Writes what is generated: the schemas, the reference pages, the sheet pictures. Run by ``make docs``."""

import json
from pathlib import Path

from gaugerod.adapters.job_file.reference import reference_page
from gaugerod.adapters.job_file.schema import job_schema
from gaugerod.adapters.result_document.schema import result_schema
from gaugerod.adapters.roof_check_file.reference import roof_reference_page
from gaugerod.adapters.roof_check_file.schema import roof_schema

ROOT = Path(__file__).parents[1]
SCHEMA = ROOT / "src" / "gaugerod" / "adapters" / "job_file" / "job.schema.json"
RESULT_SCHEMA = ROOT / "src" / "gaugerod" / "adapters" / "result_document" / "result.schema.json"
ROOF_SCHEMA = ROOT / "src" / "gaugerod" / "adapters" / "roof_check_file" / "roof.schema.json"
REFERENCE = ROOT / "docs" / "reference" / "job-file.md"
ROOF_REFERENCE = ROOT / "docs" / "reference" / "roof-file.md"


def generated() -> dict[Path, str]:
    """Every generated text with its path: what ``make docs`` writes and a test compares."""
    return {
        SCHEMA: json.dumps(job_schema(), indent=2, ensure_ascii=False) + "\n",
        RESULT_SCHEMA: json.dumps(result_schema(), indent=2, ensure_ascii=False) + "\n",
        ROOF_SCHEMA: json.dumps(roof_schema(), indent=2, ensure_ascii=False) + "\n",
        REFERENCE: reference_page(),
        ROOF_REFERENCE: roof_reference_page(),
    }


def main() -> None:
    """Write them all."""
    for path, text in generated().items():
        path.write_text(text, encoding="utf-8")
        print(path.relative_to(ROOT))


if __name__ == "__main__":
    main()
