"""What a person who watches the lamp sees."""

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest

from assistant.physics.heating import Run, Switched
from assistant.physics.lamp import Pattern, lamp_times
from tests.physics.sound import YES, drawn, ran


def _run(*times: list[float], closed_first: bool = True) -> Run:
    """An hour's run whose control switched at these times, a lane for each list."""
    most = max(len(one) for one in times)
    table = np.array([one + [np.nan] * (most - len(one)) for one in times]).T.reshape(most, len(times))
    lanes = np.full(len(times), closed_first)
    return replace(ran(drawn(len(times))), control=Switched(lanes, table))


THREE = ([600.0, 780.0, 840.0, 1020.0, 1080.0], [600.0], [])


def test_the_patterns_are_told_apart() -> None:
    found = lamp_times(_run(*THREE), 0, 3600).pattern
    assert found.tolist() == [Pattern.CYCLES, Pattern.OUT_AND_NEVER_ON, Pattern.NEVER_OUT]


def test_a_lamp_that_never_comes_on_is_never_lit() -> None:
    found = lamp_times(_run([], closed_first=False), 0, 3600)
    assert found.pattern.tolist() == [Pattern.NEVER_LIT]
    assert found.share_lit.tolist() == [0.0]
    assert np.isnan([found.first_out[0], found.first_on[0], found.period[0]]).all()


def test_times_are_from_the_start_of_the_run() -> None:
    found = lamp_times(_run(*THREE), 300, 3600)
    np.testing.assert_array_equal(found.first_out, [600, 600, np.nan])
    np.testing.assert_array_equal(found.first_on, [780, np.nan, np.nan])


def test_the_period_is_the_mean_from_going_out_to_going_out() -> None:
    found = lamp_times(_run([600.0, 780.0, 840.0, 1020.0, 1100.0]), 0, 3600)
    assert found.period.tolist() == [250.0]


def test_the_period_is_told_by_coming_on_where_it_went_out_but_once() -> None:
    found = lamp_times(_run([600.0, 780.0, 840.0, 1020.0, 1080.0]), 700, 1050)
    assert found.period.tolist() == [240.0]


def test_the_share_lit_is_of_the_time_watched() -> None:
    run = _run([600.0, 780.0, 840.0])
    np.testing.assert_allclose(lamp_times(run, 0, 3600).share_lit, [660 / 3600])
    np.testing.assert_allclose(lamp_times(run, 500, 800).share_lit, [120 / 300])


def test_only_what_was_watched_is_seen() -> None:
    run = _run([600.0, 780.0, 840.0, 1020.0])
    seen = {
        (0, 500): Pattern.NEVER_OUT,
        (0, 700): Pattern.OUT_AND_NEVER_ON,
        (650, 700): Pattern.NEVER_LIT,
        (700, 800): Pattern.CYCLES,
        (1100, 2000): Pattern.NEVER_OUT,
    }
    assert {watch: lamp_times(run, *watch).pattern[0] for watch in seen} == seen


def test_the_times_of_a_run_are_those_of_its_control() -> None:
    """Source: the same counted lane by lane in plain Python."""
    run = ran(drawn(8, "sensor"), "fan_with_ring")
    found = lamp_times(run, 900, 3000)
    for lane in range(8):
        turns = [t for t in run.control.times[:, lane] if not np.isnan(t)]
        lit = [(a, b) for k, (a, b) in enumerate(pairwise([0.0, *turns, 3600.0])) if k % 2 == 0]
        outs = [t for t in turns[::2] if 900 < t <= 3000]
        within = sum(max(0.0, min(b, 3000) - max(a, 900)) for a, b in lit)
        assert found.share_lit[lane] == pytest.approx(within / 2100)
        assert found.first_out[lane] == outs[0]
        assert found.period[lane] == pytest.approx(np.mean(np.diff(outs)))


def test_the_lamp_stays_lit_when_the_cut_out_trips() -> None:
    run = ran(drawn(5, never_opens=YES), minutes=90)
    assert np.isfinite(run.cut_out.times[0]).all()
    assert (lamp_times(run, 0, 5400).pattern == Pattern.NEVER_OUT).all()


@pytest.mark.parametrize("watch", [(-1, 60), (60, 60), (90, 60), (0, 3601), (0, float("nan"))])
def test_a_watch_outside_the_run_is_refused(watch: tuple[float, float]) -> None:
    with pytest.raises(ValueError, match="doesn't lie within 0 s to 3600"):
        lamp_times(_run([600.0]), *watch)
