"""The user's own price list as a file."""

from pathlib import Path

from gaugerod.adapters.order_files.read_prices import MOST_BYTES_COUNT, read_price_list
from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.take_off.money import PriceList


def read_price_file(path: Path) -> PriceList:
    """The prices and rates in a CSV file. Raises InputRefused with every fault."""
    try:
        with path.open("rb") as file:
            content = file.read(MOST_BYTES_COUNT + 1)
    except OSError as error:
        do = f"It cannot be opened: {error.strerror}."
        raise InputRefused([Fault("price list", str(path), "a CSV file that can be read", do)]) from None
    return read_price_list(content)
