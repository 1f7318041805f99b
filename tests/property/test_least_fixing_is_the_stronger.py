"""Rules that reach the same unit add up to the stronger of them, whatever their order; none can take away."""

from hypothesis import given
from hypothesis import strategies as st

from gaugerod.fixing.held import Held, held
from gaugerod.laying.ask import EdgeKind
from gaugerod.rules.fixings import LeastFixing

COUNTS = st.integers(0, 4)
LEASTS = st.builds(
    LeastFixing, nails_count=COUNTS, clips_count=COUNTS, hooks_count=COUNTS, fixings_count=st.integers(0, 9)
)
HOLES = st.none() | st.integers(0, 6)
WHY = st.sets(st.sampled_from(EdgeKind))


def meets(one: Held, least: LeastFixing) -> bool:
    """Is a unit so held by what it needs at the least?"""
    return (
        one.nails_count >= least.nails_count
        and one.clips_count >= least.clips_count
        and one.hooks_count >= least.hooks_count
        and one.in_all_count >= least.in_all_count
    )


@given(LEASTS, LEASTS, LEASTS)
def test_it_is_a_least_upper_bound(one: LeastFixing, other: LeastFixing, third: LeastFixing) -> None:
    both = one.at_least(other)
    assert one == one.at_least(one)
    assert both == other.at_least(one)
    assert both.at_least(third) == one.at_least(other.at_least(third))
    assert both == both.at_least(one) == both.at_least(other)
    assert one == one.at_least(LeastFixing())


@given(LEASTS, LEASTS, HOLES, WHY)
def test_a_second_rule_only_adds(one: LeastFixing, other: LeastFixing, holes: int | None, why: set[EdgeKind]) -> None:
    both = one.at_least(other)
    assert both.in_all_count >= max(one.in_all_count, other.in_all_count)
    before, after = (held(least, holes_count=holes, why=why) for least in (one, both))
    assert after.in_all_count >= before.in_all_count
    assert meets(after, one)
    assert meets(after, other)


@given(LEASTS, HOLES, WHY)
def test_a_unit_is_held_by_just_what_it_needs(least: LeastFixing, holes: int | None, why: set[EdgeKind]) -> None:
    done = held(least, holes_count=holes, why=why)
    assert meets(done, least)
    assert least.in_all_count == done.in_all_count
    assert 0 == done.bonds_count
    if holes is not None:
        assert done.nails_count <= max(holes, least.nails_count)
        assert 0 == done.either_count


@given(LEASTS)
def test_clips_are_those_made_for_the_place(least: LeastFixing) -> None:
    at_eaves, at_verge, inside = (
        held(least, holes_count=0, why=why) for why in ([EdgeKind.EAVES], [EdgeKind.VERGE], [])
    )
    over = least.in_all_count - least.nails_count - least.clips_count - least.hooks_count
    assert (over, 0, 0) == (at_eaves.eaves_clips_count, at_eaves.verge_clips_count, inside.eaves_clips_count)
    assert (over, 0, 0) == (at_verge.verge_clips_count, at_verge.eaves_clips_count, inside.verge_clips_count)
    assert least.clips_count + over == inside.tail_clips_count
