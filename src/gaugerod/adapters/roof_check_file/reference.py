"""The reference page of the roof file, written from its own tables so that it cannot fall behind."""

from gaugerod.adapters.job_file.reference import table_lines
from gaugerod.adapters.roof_check_file.schema import roof_schema

_HEAD = """\
# The roof file

<!-- Written by `make docs` from the tables the program reads. Do not edit. -->

A roof to check as built: one slope, what covers it, and every place where its battens or visible margins were measured.
One TOML or JSON document; the same fields either way. `gaugerod check-roof` reads it, and so does the page *Check a roof* of
the app, which writes it too.

Lengths are strings with a unit (`"4.905 m"`, `"75 mm"`, `"16' 1 1/8\\""`) or bare numbers in mm. Pitch is `"35°"`, `"35 deg"`,
`"8 in 12"`, `{ rise = …, run = … }` or `{ rafter = …, run = … }`. A band is `[least, greatest]`, or one length.
Unknown keys are refused by name, with the nearest known key. All faults of a file are reported together.

A place is measured in one of two ways: `marks`, the top edges of the battens; or `overhang` and `margins`, tail to tail.
Where slates lie cannot be told from their battens, so slates are measured by their margins. Random slates are refused: their
length changes up the slope, so no margin shows their lap. The same courses are measured at every place.
"""
_TABLES = (("[roof]", "RoofTable"), ("[covering]", "OneLengthTable"), ("[[rod]]", "RodTable"))


def roof_reference_page() -> str:
    """The page, in Markdown."""
    return "\n".join([_HEAD, *table_lines(roof_schema(), _TABLES)]).rstrip() + "\n"
