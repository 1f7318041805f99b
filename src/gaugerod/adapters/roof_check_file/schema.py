"""The JSON Schema of the roof file, generated from the document's own tables."""

from typing import Any

from gaugerod.adapters.roof_check_file.document import RoofFile


def roof_schema() -> dict[str, Any]:
    """The schema, with every field described in plain words."""
    schema = RoofFile.model_json_schema(by_alias=True)
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **schema}
