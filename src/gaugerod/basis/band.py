"""A band: the least and greatest a length may be, and the value aimed for."""

from dataclasses import dataclass

from gaugerod.basis.citation import Citation
from gaugerod.basis.finding import TOUCH


@dataclass(frozen=True, slots=True)
class Band:
    """Lengths from ``least_mm`` to ``greatest_mm``, both allowed. ``aim_mm`` is the middle.

    >>> from gaugerod.basis.citation import house
    >>> band = Band(least_mm=45.0, greatest_mm=55.0, citation=house("example"))
    >>> band.aim_mm, band.holds(55.0), band.holds(55.1)
    (50.0, True, False)
    """

    least_mm: float
    greatest_mm: float
    citation: Citation

    def __post_init__(self) -> None:
        if not self.least_mm <= self.greatest_mm:
            raise ValueError(f"band runs backwards: {self.least_mm} to {self.greatest_mm}")

    @property
    def aim_mm(self) -> float:
        """The middle of the band."""
        return (self.least_mm + self.greatest_mm) / 2

    def holds(self, length_mm: float) -> bool:
        """Is this length inside the band, its ends included?"""
        return self.least_mm - TOUCH <= length_mm <= self.greatest_mm + TOUCH
