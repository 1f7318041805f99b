"""How much of a thing is ordered for what is needed of it.

Source: a house choice. Scope: pieces and rolls are whole; other goods go to the next tenth of their unit where they are
bought loose, and as they are needed where packs round them up anyway.
"""

from math import ceil

WHOLE = ("pieces", "rolls")
_NOISE = 1e-6


def ordered(amount: float, unit: str, *, loose: bool) -> float:
    """The order for an amount that is needed: never less, float noise aside; in the same unit.

    >>> ordered(3.01, "pieces", loose=True), ordered(3.0000001, "rolls", loose=False)
    (4.0, 3.0)
    >>> ordered(8.208, "m", loose=True), ordered(8.2, "m", loose=True), ordered(8.208, "m", loose=False)
    (8.3, 8.2, 8.208)
    """
    if unit in WHOLE:
        return whole_up_count(amount)
    return ceil((amount - _NOISE) * 10) / 10 if loose else amount


def whole_up_count(amount: float) -> float:
    """The next whole number, float noise aside.

    >>> whole_up_count(3.0), whole_up_count(3.0000001), whole_up_count(3.01)
    (3.0, 3.0, 4.0)
    """
    return float(ceil(amount - _NOISE))
