"""Crisp rules: what the answers certainly mean, with the chain from each conclusion down to the answers."""

from collections.abc import Sequence
from typing import Protocol

from assistant.engine.crisp import CrispRule, Facts, Trace
from assistant.engine.limits import refuse_beyond_limits


class Evaluator(Protocol):
    """Something that evaluates a fixed set of rules; the facts decide the trace, their order doesn't."""

    @property
    def name(self) -> str:
        """'durable-rules' or 'naive'."""

    def evaluate(self, facts: Facts) -> Trace:
        """What the facts lead to. Raises ValueError for a fact that can't be used."""


def evaluator(rules: Sequence[CrispRule], keys: Sequence[str]) -> Evaluator:
    """The engine with these rules where it can be imported, else the naive evaluator.

    `keys` are those on which facts may be given. Raises RulesBroken, with every problem, if the rules are
    beyond the limits of limits.py; they hold for either evaluator.
    """
    try:
        from assistant.engine.durable_adapter import DurableEvaluator
    except ImportError:
        from assistant.engine.naive import NaiveEvaluator

        refuse_beyond_limits(rules, keys)
        return NaiveEvaluator(rules)
    return DurableEvaluator(rules, keys)
