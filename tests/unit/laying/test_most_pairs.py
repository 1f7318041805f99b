"""As many pairs as there can be, against trying everything."""

from collections.abc import Iterable
from functools import cache
from itertools import combinations

from hypothesis import given, settings
from hypothesis import strategies as st

from gaugerod.laying.matching import bits, most_pairs


def graph(size: int, edges: Iterable[tuple[int, int]]) -> list[int]:
    partners = [0] * size
    for one, other in edges:
        partners[one] |= 1 << other
        partners[other] |= 1 << one
    return partners


def by_trying_everything(partners: list[int]) -> int:
    @cache
    def most(left: int) -> int:
        if not left:
            return 0
        one = (left & -left).bit_length() - 1
        rest = left & ~(1 << one)
        return max([most(rest), *(1 + most(rest & ~(1 << other)) for other in bits(partners[one] & rest))])

    return most((1 << len(partners)) - 1)


@settings(max_examples=200, deadline=None)
@given(st.integers(1, 13), st.data())
def test_no_way_of_pairing_gives_more(size: int, data: st.DataObject) -> None:
    places = list(combinations(range(size), 2))
    edges = data.draw(st.sets(st.sampled_from(places), max_size=30)) if places else set()
    partners = graph(size, edges)
    pairs = most_pairs(partners)
    assert set(pairs) <= edges
    assert len({at for pair in pairs for at in pair}) == 2 * len(pairs)
    assert by_trying_everything(partners) == len(pairs)


def test_a_ring_of_five_with_a_tail_needs_the_odd_ring_closed() -> None:
    assert len(most_pairs(graph(6, [(0, 1), (1, 2), (2, 3), (3, 4), (4, 0), (2, 5)]))) == 3


def test_nobody_pairs_with_nobody() -> None:
    assert most_pairs([]) == ()
    assert most_pairs([0, 0]) == ()
