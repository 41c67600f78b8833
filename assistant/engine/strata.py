"""The order of rules: a negation is only evaluated after everything that could conclude what it negates.

The stratum of a conclusion is the highest of the rules that conclude it. A rule's stratum is at least that
of every conclusion it tests, and above that of every conclusion it needs absent; the lowest such numbers
from 0 are taken.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from assistant.engine.crisp import CrispRule
from assistant.errors import RulesBroken

Position = tuple[int, int, int, str]
"""Stratum, band, order and rule id."""


@dataclass(frozen=True)
class NegationCycle:
    """A rule that needs absent what, in the end, depends on the rule's own conclusion.

    `through` are the conclusions from the absent one to the rule's own, each depending on the next.
    """

    rule_id: str
    through: tuple[str, ...]


def negation_cycles(rules: Sequence[CrispRule]) -> list[NegationCycle]:
    """Every negation that lies on a cycle, in the order of the rules."""
    depends_on: dict[str, list[str]] = {}
    for rule in rules:
        premises = [test.key for test in rule.tests] + list(rule.absent)
        depends_on.setdefault(rule.concludes, []).extend(premises)
    cycles = []
    for rule in rules:
        for absent in dict.fromkeys(rule.absent):
            through = _path(depends_on, absent, rule.concludes)
            if through:
                cycles.append(NegationCycle(rule.id, through))
    return cycles


def _path(depends_on: dict[str, list[str]], start: str, goal: str) -> tuple[str, ...]:
    """A shortest path along the dependencies, both ends included; empty if there is none."""
    paths: dict[str, tuple[str, ...]] = {start: (start,)}
    to_visit = [start]
    while to_visit:
        here = to_visit.pop(0)
        if here == goal:
            return paths[here]
        for further in depends_on.get(here, ()):
            if further not in paths:
                paths[further] = (*paths[here], further)
                to_visit.append(further)
    return ()


def strata_of_conclusions(rules: Sequence[CrispRule]) -> dict[str, int]:
    """The stratum of each conclusion. Raises RulesBroken, naming each one, if there are negation cycles."""
    cycles = negation_cycles(rules)
    if cycles:
        raise RulesBroken([f"{cycle.rule_id}: a negation on a cycle: {' <- '.join(cycle.through)}" for cycle in cycles])
    levels = dict.fromkeys((rule.concludes for rule in rules), 0)
    settled = False
    while not settled:
        settled = True
        for rule in rules:
            needed = _stratum(rule, levels)
            if levels[rule.concludes] < needed:
                levels[rule.concludes] = needed
                settled = False
    return levels


def positions(rules: Sequence[CrispRule]) -> dict[str, Position]:
    """Rule id to its place in every trace. Raises RulesBroken if there are negation cycles."""
    levels = strata_of_conclusions(rules)
    return {rule.id: (_stratum(rule, levels), rule.band, rule.order, rule.id) for rule in rules}


def _stratum(rule: CrispRule, levels: dict[str, int]) -> int:
    tested = [levels[test.key] for test in rule.tests if test.key in levels]
    negated = [levels[absent] + 1 for absent in rule.absent if absent in levels]
    return max([0, *tested, *negated])
