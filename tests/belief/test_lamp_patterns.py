"""Rules read a lamp's pattern in a word, belief in numbers: the two readings are of one lamp."""

from collections.abc import Sequence

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.belief import measured
from assistant.belief.measured import lamp_features
from assistant.knowledge.model import Knowledge
from assistant.knowledge.readings import LONG_ENOUGH, lamp_log, minutes_and_seconds, summary

SAME = {
    measured.NEVER_LIT: {"never_lit"},
    measured.NEVER_OUT: {"never_out", "lit_so_far"},
    measured.CYCLES: {"cycles"},
    measured.OUT_AND_NEVER_ON: {"out_and_never_on", "cycles"},
    measured.DARK_AND_THEN_LIT: {"dark_and_then_lit"},
    measured.OUT_AND_ON_ONCE: {"cycles"},
}
"""A lamp that came on late and went out once cycles for the rules, and hasn't come on again for belief."""


@given(
    lit_first=st.booleans(),
    gaps=st.lists(st.integers(2, 900), max_size=6),
    after_s=st.integers(0, 900),
)
def test_rules_and_belief_read_the_same_pattern(
    knowledge: Knowledge, lit_first: bool, gaps: Sequence[int], after_s: int
) -> None:
    question = knowledge.questions["lamp_watch"]
    assert question.run is not None
    times = [0.0, *np.cumsum(gaps).astype(float)]
    ended_s = max(times[-1] + after_s, 120.0)
    states = [lit_first ^ (number % 2 == 1) for number in range(len(times))]
    lines = [f"{minutes_and_seconds(at)} {'lit' if lit else 'out'}" for at, lit in zip(times, states, strict=True)]
    lines.append(f"{minutes_and_seconds(ended_s)} end")
    log = lamp_log(lines)
    turns = np.array(log.changes_s or [np.nan]).reshape(1, 1, -1)
    pattern = int(lamp_features(np.array([[log.lit_first]]), turns, ended_s).pattern[0, 0])
    word = summary(question, lines)
    assert word in SAME[pattern]
    if pattern == measured.NEVER_OUT:
        long_enough = ended_s >= LONG_ENOUGH * question.run.longest.value * 60
        assert (word == "never_out") is long_enough


@pytest.mark.parametrize("pattern", range(measured.PATTERNS))
def test_every_pattern_has_its_word(pattern: int) -> None:
    assert SAME[pattern]
