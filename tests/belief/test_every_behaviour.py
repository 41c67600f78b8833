"""Whatever the rules say that causes do, alone or two at once, the oven model can follow it."""

import numpy as np

from assistant.belief.physical import DRAWS, behaviours, simulate
from assistant.interview.script import Script
from assistant.knowledge.model import HotRun


def test_every_behaviour_of_the_rules_can_be_simulated(script: Script) -> None:
    """For a minute: whether an oven changes too quickly for the step is seen at once."""
    knowledge = script.knowledge
    distinct = behaviours(knowledge, script.evidence_model.hypotheses).distinct
    assert len(distinct) > 100
    runs = {question.run.way: question.run for question in knowledge.questions.values() if question.run is not None}
    assert "fan_with_ring" in runs
    for hot_run in runs.values():
        seen = simulate(distinct, _for_a_minute(hot_run))
        assert seen.draws == DRAWS
        assert np.isfinite(seen.shown_c).all()


def _for_a_minute(hot_run: HotRun) -> HotRun:
    return hot_run.model_copy(update={"longest": hot_run.longest.model_copy(update={"value": 1.0})})
