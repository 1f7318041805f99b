"""The JSON Schema of the job file, generated from the document's own tables."""

from typing import Any

from gaugerod.adapters.job_file.document import JobFile


def job_schema() -> dict[str, Any]:
    """The schema, with every field described in plain words."""
    schema = JobFile.model_json_schema(by_alias=True)
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **schema}
