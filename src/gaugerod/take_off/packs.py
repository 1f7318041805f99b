"""Whole packs that hold the order, and whole pallets that hold the packs.

Source: sizes are the job's own. Scope: an item whose pack is not stated is ordered loose.
"""

from math import ceil

from gaugerod.take_off.answer import Packed
from gaugerod.take_off.wished import Pack


def packed(order: float, pack: Pack) -> Packed:
    """The packs and pallets for an order.

    >>> packed(100.0, Pack(item="tile", size=6.0, pallet_packs_count=10))
    Packed(pack_size=6.0, packs_count=17, pallet_packs_count=10, pallets_count=2, over=2.0)
    """
    count = ceil(order / pack.size - 1e-9)
    each = pack.pallet_packs_count
    return Packed(
        pack_size=pack.size,
        packs_count=count,
        pallet_packs_count=each,
        pallets_count=None if each is None else ceil(count / each),
        over=count * pack.size - order,
    )
