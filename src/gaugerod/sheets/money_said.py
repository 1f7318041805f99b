"""Money as it is written: the currency of the job, its places, thousands parted by a thin space."""

from decimal import Decimal

from gaugerod.take_off.wished import MoneySettings

THIN_SPACE = "\u202f"
"""Narrow, and no line breaks at it."""


def money_said(amount: Decimal, money: MoneySettings) -> str:
    """An amount as it was rounded: no figure is left off, and none is made up beyond the currency's places.

    >>> money_said(Decimal("12500.5"), MoneySettings(currency="£")).replace(THIN_SPACE, "_")
    '£12_500.50'
    >>> money_said(Decimal("999"), MoneySettings(currency="crowns", places=0)).replace(THIN_SPACE, "_")
    '999_crowns'
    >>> money_said(Decimal("-3"), MoneySettings()), money_said(Decimal("0.0325"), MoneySettings())
    ('−3.00', '0.0325')
    """
    exponent = amount.as_tuple().exponent
    own_places = -exponent if isinstance(exponent, int) and exponent < 0 else 0
    figures = f"{amount.copy_abs():,.{max(own_places, money.places)}f}".replace(",", THIN_SPACE)
    sign = "−" if amount < 0 else ""
    if not money.currency:
        return f"{sign}{figures}"
    if money.currency.isalpha():
        return f"{sign}{figures}{THIN_SPACE}{money.currency}"
    return f"{sign}{money.currency}{figures}"
