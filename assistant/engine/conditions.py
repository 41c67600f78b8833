"""Crisp rules in the narrow form that the rule engine gets: conjunctions of one condition per key.

Tests on one key merge into one condition; a list of codes becomes one engine rule for each code. Nothing
else can be expressed, and the engine is not imported here.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import product
from math import inf

from assistant.engine.crisp import ABSENT, CONCLUDED, CrispRule, Test

Pattern = dict[str, list[dict[str, object]]]
"""The engine's own form of one condition."""


@dataclass(frozen=True)
class Condition:
    """What one fact must be: a code, or a number within bounds (None where there is none).

    A comparison is the engine's operator and the number, such as ('$gte', 3.0).
    """

    key: str
    code: str | None = None
    floor: tuple[str, float] | None = None
    ceiling: tuple[str, float] | None = None

    @property
    def comparisons(self) -> tuple[tuple[str, float], ...]:
        """The bounds that there are."""
        return tuple(bound for bound in (self.floor, self.ceiling) if bound is not None)

    @property
    def pattern(self) -> Pattern:
        """The condition as the engine reads it; only `$and` keeps every part of it."""
        parts: list[dict[str, object]] = [{"k": self.key}]
        if self.code is not None:
            parts.append({"c": self.code})
        parts.extend({operator: {"n": number}} for operator, number in self.comparisons)
        return {"$and": parts}


def alternatives_by_key(rule: CrispRule) -> list[tuple[Condition, ...]]:
    """For each antecedent the conditions of which one must hold: tested keys first, then absent ones.

    An empty tuple stands for tests on one key that contradict each other.
    """
    tests: dict[str, list[Test]] = {}
    for test in rule.tests:
        tests.setdefault(test.key, []).append(test)
    tested = [_merged(key, tests_of_key) for key, tests_of_key in tests.items()]
    negated = [(Condition(ABSENT + absent, code=CONCLUDED),) for absent in dict.fromkeys(rule.absent)]
    return tested + negated


def engine_rules(rule: CrispRule) -> Iterator[tuple[Condition, ...]]:
    """The conjunctions that the rule becomes, each with its antecedents in the same order of keys."""
    return product(*alternatives_by_key(rule))


def _merged(key: str, tests: Sequence[Test]) -> tuple[Condition, ...]:
    lists_of_codes = [test.is_one_of for test in tests if test.is_one_of]
    bounds = [test.bounds for test in tests if test.bounds]
    if lists_of_codes and bounds:
        return ()
    if lists_of_codes:
        shared = [code for code in dict.fromkeys(lists_of_codes[0]) if all(code in c for c in lists_of_codes)]
        return tuple(Condition(key, code=code) for code in shared)
    floor = _tightest(bounds, {"at_least": "$gte", "more_than": "$gt"}, upwards=True)
    ceiling = _tightest(bounds, {"at_most": "$lte", "less_than": "$lt"}, upwards=False)
    lowest = floor[1] if floor else -inf
    highest = ceiling[1] if ceiling else inf
    return (Condition(key, floor=floor, ceiling=ceiling),) if lowest <= highest else ()


def _tightest(bounds: Sequence[dict[str, float]], operators: dict[str, str], upwards: bool) -> tuple[str, float] | None:
    """The comparison that implies all others of its direction; at one number the strict one does."""
    found = [
        (float(bound[name]), operator) for name, operator in operators.items() for bound in bounds if name in bound
    ]
    if not found:
        return None
    outermost = (max if upwards else min)(number for number, _ in found)
    strict = {"$gt", "$lt"} & {operator for number, operator in found if number == outermost}
    inclusive = "$gte" if upwards else "$lte"
    return (strict.pop() if strict else inclusive, outermost)
