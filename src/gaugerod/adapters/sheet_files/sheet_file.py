"""One file that goes with a result."""

from collections.abc import Callable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetFile:
    """A file: its name, what it is, how it is made, and the slope it is of (empty: the whole job)."""

    name: str
    says: str
    make: Callable[[], bytes]
    of: str = ""
