"""The two evaluators agree on random rules and answers, and the comparison notices when one is wrong."""

from dataclasses import replace
from itertools import product
from random import Random

import pytest

pytest.importorskip("durable.engine", exc_type=ImportError)

from assistant.engine import conditions, durable_adapter
from assistant.engine.conditions import Condition
from assistant.engine.crisp import Test
from assistant.engine.durable_adapter import DurableEvaluator, EngineSession
from assistant.engine.naive import NaiveEvaluator
from tests.engine.random_rules import disagreements, random_facts, random_rules

RULE_SETS = 40
SETS_OF_FACTS = 50


def compared(naive_class=NaiveEvaluator, seed=7):
    """Whatever the evaluators disagree on, found one after the other; none may come from falling back."""
    random = Random(seed)
    for _ in range(RULE_SETS):
        rules = random_rules(random)
        engine = DurableEvaluator(rules)
        naive = naive_class(rules)
        yield from disagreements(naive.evaluate, engine.evaluate, random, rules, SETS_OF_FACTS)
        assert engine.fell_back == 0


def test_both_evaluators_agree_on_random_rules_and_answers():
    assert list(compared()) == []


def test_random_rules_cover_what_rules_can_say():
    random = Random(7)
    seen = {"chain": 0, "negation": 0, "bounds": 0, "one_of_several": 0, "merged": 0, "alternatives": 0}
    for _ in range(RULE_SETS):
        rules = random_rules(random)
        by_id = {rule.id: rule for rule in rules}
        conclusions = [rule.concludes for rule in rules]
        for _ in range(SETS_OF_FACTS):
            fired = NaiveEvaluator(rules).evaluate(random_facts(random, rules)).fired
            for rule in (by_id[one.rule_id] for one in fired):
                keys = [test.key for test in rule.tests]
                seen["chain"] += any(key in conclusions for key in keys)
                seen["negation"] += any(absent in conclusions for absent in rule.absent)
                seen["bounds"] += any(test.bounds for test in rule.tests)
                seen["one_of_several"] += any(len(test.is_one_of) > 1 for test in rule.tests)
                seen["merged"] += len(set(keys)) < len(keys)
                seen["alternatives"] += conclusions.count(rule.concludes) > 1
    assert min(seen.values()) > 100, seen


class IgnoresAbsent(NaiveEvaluator):
    def _holds(self, rule, known, blocking):
        return super()._holds(rule, known, blocking=set())


class DropsTheSecondTest(NaiveEvaluator):
    def _holds(self, rule, known, blocking):
        return super()._holds(replace(rule, tests=rule.tests[:1] + rule.tests[2:]), known, blocking)


class TakesAtLeastAsMoreThan(NaiveEvaluator):
    def _holds(self, rule, known, blocking):
        strict = tuple(
            test if test.at_least is None else replace(test, at_least=None, more_than=test.at_least)
            for test in rule.tests
        )
        return super()._holds(replace(rule, tests=strict), known, blocking)


class DecidesNegationsTooEarly(NaiveEvaluator):
    def _closure(self, given, blocking):
        return super()._closure(given, blocking=set())


@pytest.mark.parametrize(
    "broken", [IgnoresAbsent, DropsTheSecondTest, TakesAtLeastAsMoreThan, DecidesNegationsTooEarly]
)
def test_a_defect_of_the_naive_evaluator_is_noticed(broken):
    assert next(compared(naive_class=broken), None) is not None


def drop_the_last_antecedent(rule):
    for conjunction in product(*conditions.alternatives_by_key(rule)):
        yield conjunction[:-1] or conjunction


def drop_absent(rule):
    for conjunction in product(*conditions.alternatives_by_key(rule)):
        kept = tuple(condition for condition in conjunction if not condition.key.startswith("absent:"))
        yield kept or conjunction


def keep_the_first_alternative(rule):
    yield from list(product(*conditions.alternatives_by_key(rule)))[:1]


def leave_tests_on_one_key_unmerged(key, tests):
    return conditions_of_one_test(key, tests[:1])


conditions_of_one_test = conditions._merged
two_sided_pattern = Condition.pattern


def forget_strictness(condition):
    return two_sided_pattern.fget(
        replace(
            condition,
            floor=condition.floor and ("$gte", condition.floor[1]),
            ceiling=condition.ceiling and ("$lte", condition.ceiling[1]),
        )
    )


def forget_the_ceiling(condition):
    return two_sided_pattern.fget(replace(condition, ceiling=None if condition.floor else condition.ceiling))


def negate_before_anything_ran(rules):
    return [sorted({absent for rule in rules for absent in rule.absent})]


def fire_without_telling_other_rules(session, rule, antecedents, context):
    session._concluded.add(rule.concludes)
    fire(session, rule, antecedents, context)


fire = EngineSession._fire

ADAPTER_DEFECTS = {
    "drops the last antecedent": (durable_adapter, "engine_rules", drop_the_last_antecedent),
    "drops what must be absent": (durable_adapter, "engine_rules", drop_absent),
    "keeps one alternative": (durable_adapter, "engine_rules", keep_the_first_alternative),
    "merges nothing": (conditions, "_merged", leave_tests_on_one_key_unmerged),
    "takes strict bounds as wide": (Condition, "pattern", property(forget_strictness)),
    "forgets the second bound": (Condition, "pattern", property(forget_the_ceiling)),
    "negates too early": (durable_adapter, "_negated_before", negate_before_anything_ran),
    "breaks the chain": (EngineSession, "_fire", fire_without_telling_other_rules),
}


@pytest.mark.parametrize("defect", ADAPTER_DEFECTS.values(), ids=ADAPTER_DEFECTS.keys())
def test_a_defect_of_the_adapter_is_noticed(monkeypatch, defect):
    monkeypatch.setattr(*defect)
    assert next(compared(), None) is not None


def test_a_wrong_order_of_the_trace_is_noticed(monkeypatch):
    places = durable_adapter.positions

    def without_strata(rules):
        return {rule_id: (0, *place[1:]) for rule_id, place in places(rules).items()}

    monkeypatch.setattr(durable_adapter, "positions", without_strata)
    assert next(compared(), None) is not None


def test_a_test_that_lets_numbers_pass_as_codes_is_noticed(monkeypatch):
    holds = Test.holds
    monkeypatch.setattr(Test, "holds", lambda test, value: holds(test, value) or isinstance(value, float))
    assert next(compared(), None) is not None
