"""What an order leaves out, and so what no total holds: what was not counted, slopes not set out, edges not worked out."""

from collections.abc import Iterator

from gaugerod.job.result import Result
from gaugerod.take_off.answer import Trade

EDGES_LEFT_OUT = "Ridges, hips, verges, valleys and walls: the edges were not worked out."
_OF_EDGES = frozenset({Trade.EDGES, Trade.LEAD})


def left_out(result: Result) -> tuple[str, ...]:
    """A sentence for each thing, none said twice."""
    return tuple(_sentences(result))


def _sentences(result: Result) -> Iterator[str]:
    taken = result.take_off
    if taken is None:
        return
    yield from taken.not_counted
    said = " ".join(taken.not_counted)
    for short in result.not_set_out:
        if short.slope.name not in said:
            yield f"{short.slope.name} is not set out: {short.why}"
    if result.edges is None and not any(line.measured.trade in _OF_EDGES for line in taken.lines):
        yield EDGES_LEFT_OUT
