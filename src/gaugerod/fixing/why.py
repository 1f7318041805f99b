"""Why a unit is perimeter: the kinds of edges it lies at, as bits while courses are walked, as a tuple when told."""

from functools import cache

from gaugerod.laying.ask import EdgeKind

Why = tuple[EdgeKind, ...]
"""The edges that make a unit perimeter, in the order of ``EdgeKind``; empty in the field."""

BIT = {kind: 1 << at for at, kind in enumerate(EdgeKind)}


@cache
def why_of(bits: int) -> Why:
    """The kinds of edges in the bits.

    >>> why_of(BIT[EdgeKind.VERGE] | BIT[EdgeKind.EAVES]), why_of(0)
    ((<EdgeKind.EAVES: 'eaves'>, <EdgeKind.VERGE: 'verge'>), ())
    """
    return tuple(kind for kind, bit in BIT.items() if bits & bit)
