"""A limit: one figure a source states, with its unit and where it comes from."""

from dataclasses import dataclass

from gaugerod.basis.citation import Citation


@dataclass(frozen=True, slots=True)
class Limit:
    """One stated figure, in ``unit`` (``mm``, ``deg``, ``count``, ``ratio``).

    >>> from gaugerod.basis.citation import house
    >>> str(Limit(value=75.0, unit="mm", citation=house("example")))
    '75 mm (example (house))'
    """

    value: float
    unit: str
    citation: Citation

    def __str__(self) -> str:
        return f"{self.value:g} {self.unit} ({self.citation})"
