"""What the setting out works from: where the slope was measured, and what is fixed on it.

Axes: x along the eaves from the left end of the roof structure, y up the slope from the outer face of the fascia.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Station:
    """A place along the eaves where the rafter was measured: fascia face to apex, up the slope."""

    at_mm: float
    length_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Opening:
    """A rectangular opening in the slope: rooflight, chimney, vent.

    ``from_left_mm`` to its left side along the eaves, ``up_slope_mm`` to its sill (lower edge).
    """

    name: str
    from_left_mm: float
    up_slope_mm: float
    width_mm: float
    height_mm: float

    @property
    def head_mm(self) -> float:
        """Upper edge, up the slope."""
        return self.up_slope_mm + self.height_mm

    @property
    def right_mm(self) -> float:
        """Right side, along the eaves."""
        return self.from_left_mm + self.width_mm


@dataclass(frozen=True, slots=True, kw_only=True)
class NailedRod:
    """Battens already nailed at one station: top edges, up the slope from the fascia face, first to last."""

    at_mm: float
    marks_mm: tuple[float, ...]
