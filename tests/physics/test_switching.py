"""Two-point switches: when they turn, and that they hold."""

from itertools import pairwise

import numpy as np

from assistant.physics.switching import Switches


def _one(opens_at: float = 10, closes_at: float = 8, on: float = 0, off: float = 0, closed: bool = True) -> Switches:
    return Switches(np.array([opens_at]), np.array([closes_at]), np.array([closed]), np.array([on]), np.array([off]))


def _follow(switches: Switches, levels: list[float]) -> list[float]:
    """The times of switching while the level goes straight from each to the next, 2 s apart."""
    for number, (before, after) in enumerate(pairwise(levels)):
        rate = np.array([(after - before) / 2.0])
        switches.advance(np.array([before]), np.array([after]), rate, 2.0 * number, 2.0)
    return switches.times()[:, 0].tolist()


def test_it_turns_where_the_straight_line_meets_the_point() -> None:
    assert _follow(_one(), [9, 9.5, 10.5, 9, 7, 7]) == [3.0, 7.0]


def test_it_turns_where_a_bent_course_meets_the_point() -> None:
    """Source: the parabola's own equation: y = 8 + 3 t - t² / 2 is 10 at 3 - √5 s; y = 12 - 2 t² is 9 at √1.5 s."""
    rising, falling = _one(), _one(closes_at=9, closed=False)
    for switches, before, after, rate, there in ((rising, 8, 12, 3, 3 - 5**0.5), (falling, 12, 4, 0, 1.5**0.5)):
        switches.advance(np.array([before]), np.array([after]), np.array([rate]), 0.0, 2.0)
        np.testing.assert_allclose(switches.times(), [[there]])


def test_between_its_points_it_stays_as_it_was() -> None:
    assert _follow(_one(closed=True), [8.5, 9.9, 8.1, 9.0]) == []
    assert _follow(_one(closed=False), [9.9, 8.5, 9.9, 9.0]) == []


def test_it_stays_closed_as_long_as_it_must_and_then_opens() -> None:
    assert _follow(_one(on=5), [11, 11, 11, 11]) == [5.0]


def test_it_stays_open_as_long_as_it_must_and_then_closes() -> None:
    assert _follow(_one(off=7), [9, 11, 7, 7, 7, 7, 7]) == [1.0, 8.0]


def test_it_does_not_turn_at_all_where_the_level_came_back_before_it_might() -> None:
    assert _follow(_one(off=7), [9, 11, 7, 7, 9, 9, 9]) == [1.0]


def test_an_infinite_point_is_never_reached() -> None:
    assert _follow(_one(opens_at=np.inf), [0, 1e6, 0, 1e6]) == []
    assert _follow(_one(closes_at=-np.inf), [0, 11, -1e6, 11]) == [20 / 11]


def test_each_lane_has_its_own_times_in_order() -> None:
    switches = Switches(np.full(3, 10.0), np.full(3, 8.0), np.full(3, True), np.zeros(3), np.zeros(3))
    levels = np.array([[9.0, 9.0, 9.0], [11, 9, 9], [7, 9, 11], [11, 9, 11]])
    rates = np.diff(levels, axis=0) / 2.0
    turned = [switches.advance(levels[n], levels[n + 1], rates[n], 2.0 * n, 2.0) for n in range(3)]
    assert [None if one is None else one[0].tolist() for one in turned] == [[0], [0, 2], [0]]
    np.testing.assert_allclose(switches.times(), [[1.0, np.nan, 3.0], [3.5, np.nan, np.nan], [5.5, np.nan, np.nan]])
    assert switches.closed.tolist() == [False, True, False]
    assert switches.closed_first.tolist() == [True, True, True]
