"""The working: a tree that shows how every number was come by."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from gaugerod.basis.citation import Citation


@dataclass(frozen=True, slots=True)
class Step:
    """One number of the working.

    ``formula`` is in words (``length − headlap``); ``inputs`` maps the words of the formula to their
    values, each with its unit in the word (``{"length (mm)": 420.0}``); ``unit`` is that of ``value``.
    ``parts`` are the steps this one stands on.
    """

    name: str
    formula: str
    inputs: Mapping[str, float | str]
    value: float | str
    unit: str
    citation: Citation | None = None
    parts: tuple["Step", ...] = ()

    def walk(self, depth: int = 0) -> Iterator[tuple[int, "Step"]]:
        """This step and all below it, each with its depth, in reading order."""
        yield depth, self
        for part in self.parts:
            yield from part.walk(depth + 1)
