"""What the job says twice of its order: two packs of one item."""

from collections.abc import Iterator

from gaugerod.adapters.job_file.as_written import Table, table_in, tables_in, words_of
from gaugerod.adapters.job_file.order_tables import MOST_PACKS_COUNT
from gaugerod.basis.errors import Fault


def order_contradictions(document: Table) -> Iterator[Fault]:
    """Every item whose pack is given a second time."""
    met: set[str] = set()
    for path, pack in tables_in(table_in(document, "order"), "pack", most=MOST_PACKS_COUNT, inside="order."):
        item = words_of(pack.get("item"))
        if item in met:
            yield Fault(f"{path}.item", item, "an item of its own", "Two packs are given for this item.")
        elif item is not None:
            met.add(item)
