"""The numbers of belief that stand in belief.yaml."""

from typing import Self

from pydantic import model_validator
from pydantic_core import PydanticCustomError

from assistant.knowledge.figures import Entry, Parts, Percentage, Questions, Rate, Tests, Times, Words


class BeliefSettings(Entry):
    """Numbers of the belief: the unnamed cause, the words for likelihood, danger, and what an engineer takes along.

    `asked_about`: how many times as often an oven with something wrong is asked about as a sound one.
    `stop_above`: dangerous causes together from here on stop everything. `dangerous_above`: from here on no hot
    test, nothing to be done or used by oneself, and a visit. `danger_asked_above`: from here on a question that may
    reach such a threshold goes before all others, if it does so with a probability of `danger_told_above`.
    `proposed_above`: an act or a way of use is told only if what it serves is at least as probable as this.
    `way_opens`: how often a question that only opens the way to another is answered so that it does.
    """

    something_else: Rate
    something_else_breadth: Percentage
    asked_about: Times
    words: Words
    dangerous_above: Rate
    stop_above: Rate
    danger_asked_above: Rate
    danger_told_above: Rate
    way_opens: Rate
    patience: Questions
    proposed_above: Rate
    parts_brought: Parts
    tests_planned: Tests

    @model_validator(mode="after")
    def _thresholds_rise(self) -> Self:
        if not self.danger_asked_above.value <= self.dangerous_above.value <= self.stop_above.value:
            raise PydanticCustomError("thresholds_not_rising", "thresholds of danger don't rise")
        return self
