"""States and intervals: what two showings share and what is left."""

from __future__ import annotations

import math

from hypothesis import given
from hypothesis import strategies as st

from keytool.library.value import Interval, States

NAMES = st.sampled_from("abcdef")
states = st.builds(States, st.frozensets(NAMES, min_size=1))
numbers = st.integers(-20, 20).map(float) | st.sampled_from([-math.inf, math.inf])
intervals = st.tuples(numbers, numbers).filter(lambda ends: ends[0] < ends[1]).map(lambda ends: Interval(*ends))
PROBES = [each / 2 for each in range(-42, 43)]


def holds(interval: Interval, number: float) -> bool:
    return interval.low <= number < interval.high


@given(states, states)
def test_states_fall_into_shared_and_rest(one: States, other: States) -> None:
    rest = frozenset().union(*(piece.ids for piece in one.without(other)))
    assert one.meet(other).ids | rest == one.ids
    assert not one.meet(other).ids & rest
    assert not rest & other.ids
    assert math.isclose(one.share(other) * len(one.ids), len(one.meet(other).ids))


@given(intervals, intervals)
def test_every_number_is_in_the_shared_part_or_in_one_piece_of_the_rest(one: Interval, other: Interval) -> None:
    pieces = one.without(other)
    for number in PROBES:
        assert holds(one.meet(other), number) == (holds(one, number) and holds(other, number))
        assert sum(holds(piece, number) for piece in pieces) == (holds(one, number) and not holds(other, number))


@given(intervals, intervals)
def test_meet_is_the_same_both_ways(one: Interval, other: Interval) -> None:
    shared = one.meet(other)
    assert shared.is_empty == other.meet(one).is_empty
    assert shared.is_empty or shared == other.meet(one)


@given(intervals, intervals)
def test_shares_of_a_bounded_interval_add_up(one: Interval, other: Interval) -> None:
    share = one.share(other)
    assert 0 <= share <= 1
    assert (share == 0) == one.meet(other).is_empty
    if math.isfinite(one.high - one.low):
        assert math.isclose(share + sum(one.share(piece) for piece in one.without(other)), 1)


@given(states)
def test_a_showing_lies_wholly_in_itself(shown: States) -> None:
    assert shown.share(shown) == 1 and shown.without(shown) == () and not shown.is_empty


@given(st.floats(-1e6, 1e6), st.floats(0, 1e6))
def test_a_written_range_holds_both_its_ends(low: float, width: float) -> None:
    interval = Interval.closed(low, low + width)
    assert holds(interval, low) and holds(interval, low + width)
    assert not holds(interval, math.nextafter(low, -math.inf))
    assert not interval.is_empty and interval.share(interval) == 1


def test_a_single_number_is_told_from_a_threshold_at_it() -> None:
    at_18 = Interval.closed(18, 18)
    assert not at_18.meet(Interval(low=18)).is_empty
    assert at_18.meet(Interval(high=18)).is_empty
