"""Bare numbers with a unit of their own, and whole numbers: how they are read, and how the schema describes them."""

from pydantic import PlainValidator, WithJsonSchema

from gaugerod.adapters.job_file.fields import kind
from gaugerod.adapters.job_file.refusing import refuse_value


def number_of(*, least: float, greatest: float, what: str) -> tuple[PlainValidator, WithJsonSchema]:
    """A number from the least to the greatest, both allowed."""
    allowed = f"{what}, from {least:g} to {greatest:g}"

    def read(value: object) -> float:
        if isinstance(value, (int, float)) and not isinstance(value, bool):
            if least <= value <= greatest:
                return float(value)
            raise refuse_value(value, allowed=allowed, do="Check the figure and its unit.")
        raise refuse_value(value, allowed=allowed, do="Write it as a number, without its unit.")

    return kind(read, {"type": "number", "minimum": least, "maximum": greatest, "title": what})


def whole_of(*, least: int, greatest: int, what: str) -> tuple[PlainValidator, WithJsonSchema]:
    """A whole number from the least to the greatest, both allowed."""

    def read(value: object) -> int:
        allowed = f"{what}, {least} to {greatest}"
        if isinstance(value, int) and not isinstance(value, bool):
            if least <= value <= greatest:
                return value
            raise refuse_value(value, allowed=allowed, do="Check the figure.")
        raise refuse_value(value, allowed=allowed, do="Write it as a whole number.")

    return kind(read, {"type": "integer", "minimum": least, "maximum": greatest, "title": what})
