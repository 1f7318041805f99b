"""Where a value comes from, and how sure it is."""

from dataclasses import dataclass
from enum import StrEnum


class Basis(StrEnum):
    """How sure a value is.

    ``published`` was read in a published source; ``memory`` was recalled and not checked against
    the document it is said to be in; ``common-practice`` is a custom of the trade with no published
    source; ``house`` is this program's own choice.
    """

    PUBLISHED = "published"
    MEMORY = "memory"
    COMMON_PRACTICE = "common-practice"
    HOUSE = "house"


@dataclass(frozen=True, slots=True)
class Citation:
    """The source of one value: the document and place in it, and the basis.

    >>> str(Citation(source="NHBC Standards 7.2.19", basis=Basis.PUBLISHED))
    'NHBC Standards 7.2.19 (published)'
    """

    source: str
    basis: Basis

    def __str__(self) -> str:
        return f"{self.source} ({self.basis.value})"


def house(why: str) -> Citation:
    """A choice of this program's own, with its reason."""
    return Citation(source=why, basis=Basis.HOUSE)


def common_practice(what: str) -> Citation:
    """A custom of the trade that no published source states."""
    return Citation(source=what, basis=Basis.COMMON_PRACTICE)
