"""The plain evaluator: tries every rule again and again. The oracle for the other one, and its stand-in.

What holds is found without strata, so that a mistake in them shows up as a disagreement. Instead two sets
close in on the answer: a pass that takes the conclusions certain so far as the only ones that block gives
all that is still possible; a pass in which everything still possible blocks gives what is certain. Without
a cycle through a negation the two meet. Strata are used for the order of the trace only.
"""

from collections.abc import Sequence

from assistant.engine.crisp import ABSENT, CONCLUDED, CrispRule, Facts, Fired, Trace, usable_facts
from assistant.engine.strata import positions


class NaiveEvaluator:
    """Evaluates rules in Python. Raises RulesBroken if a negation lies on a cycle."""

    name = "naive"

    def __init__(self, rules: Sequence[CrispRule]) -> None:
        self._positions = positions(rules)
        self._rules = sorted(rules, key=lambda rule: self._positions[rule.id])
        self._conclusions = frozenset(rule.concludes for rule in rules)

    def evaluate(self, facts: Facts) -> Trace:
        """What the facts lead to. Raises ValueError for a fact that can't be used."""
        given = usable_facts(facts, self._conclusions)
        certain: set[str] = set()
        while True:
            possible = self._closure(given, blocking=certain)
            more_certain = self._closure(given, blocking=possible)
            if more_certain == certain:
                break
            certain = more_certain
        known = given | dict.fromkeys(certain, CONCLUDED)
        return Trace(tuple(_fired(rule) for rule in self._rules if self._holds(rule, known, certain)))

    def _closure(self, given: dict[str, str | float], blocking: set[str]) -> set[str]:
        """All conclusions that can be reached if exactly the `blocking` ones count as concluded."""
        known = dict(given)
        grew = True
        while grew:
            grew = False
            for rule in self._rules:
                if rule.concludes not in known and self._holds(rule, known, blocking):
                    known[rule.concludes] = CONCLUDED
                    grew = True
        return known.keys() - given.keys()

    def _holds(self, rule: CrispRule, known: dict[str, str | float], blocking: set[str]) -> bool:
        for test in rule.tests:
            if test.key not in known or not test.holds(known[test.key]):
                return False
        return blocking.isdisjoint(rule.absent)


def _fired(rule: CrispRule) -> Fired:
    keys = [test.key for test in rule.tests] + [ABSENT + absent for absent in rule.absent]
    return Fired(rule.id, rule.concludes, tuple(dict.fromkeys(keys)))
