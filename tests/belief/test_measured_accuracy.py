"""Measurements move belief towards what is there: at simulated ovens of another structure, and by their own rules."""

from collections.abc import Callable, Sequence
from dataclasses import replace

import numpy as np
import numpy.typing as npt
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.belief.instruments import COMPARED
from assistant.belief.measured import MOST_READINGS, of_bread, of_lamp, of_temperatures
from assistant.belief.physical import Seen, behaviour_of, simulate
from assistant.belief.posterior import DECIBANS_PER_NAT
from assistant.belief.synthetic import MOST_DECIBANS, Compared, Measured, jackknife_error, left_out
from assistant.knowledge.model import Knowledge
from assistant.knowledge.readings import BrownedBread, LampLog, TemperatureLog
from tests.belief.weighing import weighed
from tests.benchmarks.measured_ovens import NONE, written_at

OVENS = 40
CAUSES = ((), ("base_element_open",), ("thermostat_drifted_low",), ("thermostat_stuck_closed",), ("voltage_low",))
SOUND, NO_BASE, DRIFTED, STUCK, WEAK = range(len(CAUSES))
CAP = MOST_DECIBANS + 1e-6
BREADTH = 0.4

ShownBy = Callable[[str], Seen]


@pytest.fixture(scope="module")
def shown_by(knowledge: Knowledge) -> ShownBy:
    """Measuring question -> what a few ways to behave show."""
    kept: dict[str, Seen] = {}

    def shown(question_id: str) -> Seen:
        if question_id not in kept:
            kept[question_id] = _simulated(knowledge, question_id, draws=64)
        return kept[question_id]

    return shown


def _simulated(knowledge: Knowledge, question_id: str, draws: int) -> Seen:
    run = knowledge.questions[question_id].run
    assert run is not None
    return simulate([behaviour_of(knowledge, causes) for causes in CAUSES], run, draws)


def _decibans(compared: Compared, one: int, other: int) -> float:
    measured = weighed([compared], BREADTH)
    return float((measured.log_likelihood[one] - measured.log_likelihood[other]) * DECIBANS_PER_NAT)


def _apart(measured: Measured) -> float:
    return float(np.ptp(measured.log_likelihood) * DECIBANS_PER_NAT)


def test_what_is_measured_at_ovens_of_another_structure_speaks_for_what_is_there(
    knowledge: Knowledge, shown_by: ShownBy
) -> None:
    written = written_at("second", knowledge, ["base_element_open"] * OVENS + [NONE] * OVENS, seed=3)
    for question_id in ("lamp_watch", "bread_tray"):
        question = knowledge.questions[question_id]
        assert question.run is not None
        compare, seen, until_s = COMPARED[question.kind], shown_by(question_id), question.run.longest.value * 60
        weights = [_decibans(compare(seen, lines[question_id], until_s), NO_BASE, SOUND) for lines in written]
        assert np.mean(weights[:OVENS]) > 4, question_id
        assert np.mean(weights[OVENS:]) < -2, question_id


TIMES = (240.0, 480.0, 720.0, 1000.0, 1300.0, 1600.0)


@settings(max_examples=25, deadline=None)
@given(
    readings=st.lists(st.floats(0, 315), min_size=len(TIMES), max_size=len(TIMES)),
    order=st.permutations(range(len(TIMES))),
)
def test_the_order_of_readings_says_nothing(shown_by: ShownBy, readings: Sequence[float], order: Sequence[int]) -> None:
    seen = shown_by("thermometer_log")
    straight = of_temperatures(seen, TemperatureLog(TIMES, tuple(readings), ()))
    mixed = of_temperatures(seen, TemperatureLog(tuple(TIMES[n] for n in order), tuple(readings[n] for n in order), ()))
    one, other = weighed([straight], BREADTH), weighed([mixed], BREADTH)
    np.testing.assert_allclose(one.log_likelihood, other.log_likelihood, atol=1e-6)


@settings(max_examples=40, deadline=None)
@given(
    lit_first=st.booleans(),
    gaps=st.lists(st.floats(2, 900), max_size=8),
    watched=st.floats(120, 1800),
)
def test_no_lamp_speaks_louder_than_it_may(
    shown_by: ShownBy, lit_first: bool, gaps: Sequence[float], watched: float
) -> None:
    changes = tuple(float(at) for at in np.cumsum(gaps) if at <= watched)
    found = weighed([of_lamp(shown_by("lamp_watch"), LampLog(lit_first, changes, watched))], BREADTH)
    assert np.isfinite(found.log_likelihood).all()
    assert _apart(found) <= CAP
    assert (found.log_likelihood.max() - found.unnamed) * DECIBANS_PER_NAT <= CAP


@settings(max_examples=25, deadline=None)
@given(shades=st.lists(st.integers(0, 5), min_size=18, max_size=18))
def test_no_bread_speaks_louder_than_it_may(shown_by: ShownBy, shades: Sequence[int]) -> None:
    top, underside = tuple(map(float, shades[:9])), tuple(map(float, shades[9:]))
    assert _apart(weighed([of_bread(shown_by("bread_tray"), BrownedBread(top, underside))], BREADTH)) <= CAP


@pytest.mark.parametrize("reading_c", [20.0, 90.0, 180.0, 310.0])
def test_a_long_list_of_the_same_reading_speaks_no_louder_than_it_may(shown_by: ShownBy, reading_c: float) -> None:
    times = tuple(1000.0 + 2 * number for number in range(150))
    log = TemperatureLog(times, (reading_c,) * len(times), ())
    found = weighed([of_temperatures(shown_by("thermometer_log"), log)], BREADTH)
    assert len(of_temperatures(shown_by("thermometer_log"), log).told.values) <= MOST_READINGS
    assert _apart(found) <= CAP


def test_a_cold_reading_does_speak(shown_by: ShownBy) -> None:
    """The caps above would hold too where nothing spoke at all."""
    cool = of_temperatures(shown_by("thermometer_log"), TemperatureLog(TIMES, (60, 100, 120, 125, 125, 125), ()))
    assert _decibans(cool, DRIFTED, SOUND) > 10


def test_more_draws_leave_less_error(knowledge: Knowledge) -> None:
    log = LampLog(True, (900.0, 1080.0, 1140.0), 1500.0)
    many = _simulated(knowledge, "lamp_watch", draws=512)
    errors = {}
    for draws in (64, 512):
        few = [_draws(many, slice(n, n + draws)) for n in range(0, 512, draws)]
        apart = [[_of_two(found) for found in left_out([of_lamp(each, log)], BREADTH)] for each in few]
        errors[draws] = np.mean([jackknife_error(each) for each in apart])
    assert 0 < errors[512] < 0.6 * errors[64]


def _of_two(found: Measured) -> float:
    return float(found.log_likelihood[NO_BASE] - found.log_likelihood[SOUND])


def _draws(seen: Seen, some: slice) -> Seen:
    names = ("lit_first", "turns_s", "shown_c", "above", "below", "to_back", "to_right")
    return replace(seen, **{name: getattr(seen, name)[:, some] for name in names})


def test_a_watch_that_ended_before_the_lamp_went_out_speaks_for_slow_ovens_the_more_the_longer_it_was(
    shown_by: ShownBy,
) -> None:
    seen = shown_by("lamp_watch")
    for_slow = [_decibans(of_lamp(seen, LampLog(True, (), 60.0 * m)), NO_BASE, SOUND) for m in (3, 8, 11, 25)]
    assert abs(for_slow[0]) < 0.5
    assert for_slow == sorted(for_slow)
    assert for_slow[-1] > 8


def test_how_often_a_lamp_goes_out_twice_counts_beside_how_it_does_so() -> None:
    """All ovens of the first kind go out twice in that time, and every fourth of the second, at the same times."""
    chance = np.random.default_rng(4)
    turns = np.array([660.0, 840.0, 900.0]) + chance.normal(0, 20, (1, 64, 3))
    seldom = np.where((np.arange(64) % 4 > 0)[None, :, None] & (np.arange(3) == 2), np.nan, turns)
    log = LampLog(True, (660.0, 840.0, 900.0), 960.0)
    assert 3 < _decibans(of_lamp(_lamps(np.concatenate([turns, seldom])), log), 0, 1) < 6.5


def _lamps(turns_s: npt.NDArray[np.float64]) -> Seen:
    """(K, D, M): ovens of which only the lamp was looked at, lit at first."""
    shape = turns_s.shape[:2]
    nothing = np.zeros(shape, dtype=np.float32)
    return Seen(
        lit_first=np.full(shape, True),
        turns_s=turns_s.astype(np.float32),
        times_s=np.zeros(1),
        shown_c=np.zeros((*shape, 1), dtype=np.float32),
        above=nothing,
        below=nothing,
        to_back=nothing,
        to_right=nothing,
    )


def test_a_watch_that_ended_early_leaves_sound_ovens_possible(shown_by: ShownBy) -> None:
    early = of_lamp(shown_by("lamp_watch"), LampLog(True, (), 300.0))
    assert _decibans(early, STUCK, SOUND) < 1
    late = of_lamp(shown_by("lamp_watch"), LampLog(True, (), 1800.0))
    assert 8 < _decibans(late, STUCK, SOUND) <= CAP
