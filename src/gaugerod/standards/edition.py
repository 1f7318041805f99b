"""Which set of rules answers. The edition is always an argument; there is no current one."""

from enum import StrEnum


class Edition(StrEnum):
    """A national set of rules: a folder of tables each."""

    GB = "GB"


class Exposure(StrEnum):
    """Driving-rain exposure of the site."""

    SHELTERED = "sheltered"
    MODERATE = "moderate"
    SEVERE = "severe"
    VERY_SEVERE = "very-severe"
