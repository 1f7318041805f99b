"""One file that goes with a result."""

from collections.abc import Callable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetFile:
    """A file: its name, what it is, and how it is made."""

    name: str
    says: str
    make: Callable[[], bytes]
