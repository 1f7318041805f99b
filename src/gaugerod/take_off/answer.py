"""The take-off: what comes back. Measured first, then allowances, then whole units and packs."""

from dataclasses import dataclass
from enum import StrEnum

from gaugerod.basis.citation import Citation
from gaugerod.basis.finding import Finding
from gaugerod.basis.working import Step


class Trade(StrEnum):
    """The part of the job a quantity belongs to, in the order it is bought."""

    COVERING = "covering"
    UNDERLAY = "underlay"
    BATTENS = "battens"
    FIXINGS = "fixings"
    EDGES = "edges"
    LEAD = "lead"
    AIR = "air"


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """One quantity as it lies on the roof, before any allowance.

    ``item``      a stable name; a price list and the packs of the job speak of it by this name: ``tile``, ``ridge-unit``
    ``what``      what it is, in words, with its size
    ``unit``      ``pieces``, ``m``, ``m2``, ``kg``, ``litres``, ``rolls``
    ``net``       the quantity, in that unit
    ``by_slope``  the part of each slope (or of the edge named), where it can be told apart; they sum to ``net``
    ``how``       how it was measured, in words
    """

    item: str
    what: str
    trade: Trade
    unit: str
    net: float
    by_slope: tuple[tuple[str, float], ...]
    how: str
    each_kg: float | None = None
    citation: Citation | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Allowance:
    """What is added to a measured quantity, in its unit, and why."""

    name: str
    amount: float
    citation: Citation


@dataclass(frozen=True, slots=True, kw_only=True)
class Packed:
    """Whole packs that hold the quantity, and whole pallets that hold the packs (None: no pallet size is known).

    ``over``  what the packs hold beyond what is ordered, in the quantity's unit
    """

    pack_size: float
    packs_count: int
    pallet_packs_count: int | None
    pallets_count: int | None
    over: float


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderLine:
    """One line of the order. ``order`` is never less than what was measured with its allowances; pieces are whole.

    ``mass_kg``  of what is ordered; None where the mass of one is not known
    """

    measured: Measured
    allowances: tuple[Allowance, ...]
    order: float
    packed: Packed | None
    mass_kg: float | None

    @property
    def bought(self) -> float:
        """What comes to the site: the packs where it is packed, else the order."""
        return self.order if self.packed is None else self.packed.packs_count * self.packed.pack_size


@dataclass(frozen=True, slots=True, kw_only=True)
class WasteCompared:
    """The same covering ordered two ways: counted from the real cuts, and with a flat percentage on the area.

    ``counted_count``  units by the cuts, offcuts used, with breakage: in widths of a whole unit, a half being half of one
    ``flat_count``     net area × units on each m², and the flat percentage on top
    """

    item: str
    net_by_area_count: float
    flat_ratio: float
    flat_citation: Citation
    flat_count: int
    counted_count: int
    cuts_count: int
    offcuts_saved_count: int
    says: str

    @property
    def difference_count(self) -> int:
        """Units the flat percentage orders beyond what the cuts need; below nothing: units it would be short."""
        return self.flat_count - self.counted_count


@dataclass(frozen=True, slots=True, kw_only=True)
class Masses:
    """What goes onto the roof and what comes off it, kg, least and greatest. None: not known."""

    new_least_kg: float | None
    new_greatest_kg: float | None
    old_least_kg: float | None
    old_greatest_kg: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class TakeOff:
    """The whole take-off. ``not_counted``: what the order leaves out, and why, a sentence each."""

    lines: tuple[OrderLine, ...]
    compared: tuple[WasteCompared, ...]
    masses: Masses
    not_counted: tuple[str, ...]
    findings: tuple[Finding, ...]
    working: Step

    @property
    def by_trade(self) -> tuple[tuple[Trade, tuple[OrderLine, ...]], ...]:
        """The lines of each part of the job that has some, in the order it is bought."""
        found = ((trade, tuple(line for line in self.lines if line.measured.trade is trade)) for trade in Trade)
        return tuple((trade, lines) for trade, lines in found if lines)

    def line(self, item: str) -> OrderLine | None:
        """The line of this item; None when there is none."""
        return next((line for line in self.lines if line.measured.item == item), None)
