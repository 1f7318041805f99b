"""What the job says of its order: breakage, packs, money. None: the edition's usual, or not known."""

from dataclasses import dataclass, field
from decimal import Decimal

from gaugerod.basis.limit import Limit


@dataclass(frozen=True, slots=True, kw_only=True)
class Pack:
    """How an item is packed. ``size`` in the item's unit; ``pallet_packs_count`` packs on a pallet, None: not known."""

    item: str
    size: float
    pallet_packs_count: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class MoneySettings:
    """The currency's name or sign, its decimal places, and the tax on the whole, with its name. No tax: None."""

    currency: str = ""
    places: int = 2
    tax_name: str = ""
    tax_percent: Decimal | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderWished:
    """Everything that is said of the order.

    ``breakage``     per cent of the covering's units; ``flat_waste`` per cent, to compare the count from the cuts with
    """

    breakage: Limit | None = None
    flat_waste: Limit | None = None
    packs: tuple[Pack, ...] = ()
    money: MoneySettings = field(default_factory=MoneySettings)
