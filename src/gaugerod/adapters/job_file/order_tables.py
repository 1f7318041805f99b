"""The order as it is written: allowances, packs, money. What is left out, the edition answers, or is not known."""

from pydantic import Field

from gaugerod.adapters.job_file.fields import STATED, Words
from gaugerod.adapters.job_file.order_fields import (
    Currency,
    ItemName,
    MoneyPlaces,
    PackSize,
    PacksOnPallet,
    SharePerCent,
    TaxPerCent,
)
from gaugerod.adapters.job_file.part import Part
from gaugerod.basis.limit import Limit
from gaugerod.take_off.wished import MoneySettings, OrderWished, Pack

MOST_PACKS_COUNT = 200


class PackTable(Part):
    """How an item is packed."""

    item: ItemName = Field(description="The item, as the take-off names it: tile, ridge-unit, underlay-roll.")
    size: PackSize = Field(description="What one pack holds, in the unit of the item.")
    pallet: PacksOnPallet | None = Field(default=None, description="Packs on a pallet. Left out: not known.")

    def pack(self) -> Pack:
        """What the job is told."""
        return Pack(item=self.item, size=self.size, pallet_packs_count=self.pallet)


class MoneyTable(Part):
    """The money a quotation is made in. Prices come from a list of your own."""

    currency: Currency | None = Field(default=None, description="Its name or sign. Left out: figures alone.")
    places: MoneyPlaces = Field(default=2, description="Decimal places every amount is rounded to.")
    tax_name: Words | None = Field(default=None, description="What the tax is called.")
    tax: TaxPerCent | None = Field(default=None, description="On the whole, per cent. Left out: no tax is counted.")

    def settings(self) -> MoneySettings:
        """What the job is told."""
        return MoneySettings(
            currency=self.currency or "", places=self.places, tax_name=self.tax_name or "", tax_percent=self.tax
        )


class OrderTable(Part):
    """What is added to the take-off, how it is packed, and in what money."""

    breakage: SharePerCent | None = Field(
        default=None, description="Added to the units of the covering, per cent. Left out: the usual share."
    )
    flat_waste: SharePerCent | None = Field(
        default=None,
        description="The flat share that the count from the cuts is compared with, per cent. Left out: the usual one.",
    )
    pack: list[PackTable] = Field(default=[], max_length=MOST_PACKS_COUNT, description="How items are packed.")
    money: MoneyTable = Field(default_factory=MoneyTable, description="The money of the quotation.")

    def wished(self) -> OrderWished:
        """What the job is told."""
        return OrderWished(
            breakage=_per_cent(self.breakage),
            flat_waste=_per_cent(self.flat_waste),
            packs=tuple(pack.pack() for pack in self.pack),
            money=self.money.settings(),
        )


def _per_cent(value: float | None) -> Limit | None:
    return None if value is None else Limit(value=value, unit="percent", citation=STATED)
