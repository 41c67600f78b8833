import pytest

from assistant.engine.conditions import Condition, engine_rules
from assistant.engine.crisp import CrispRule, Test


def conjunctions(*tests, absent=()):
    return list(engine_rules(CrispRule("r", "found", tests, absent)))


def test_each_code_becomes_a_rule_of_its_own():
    assert conjunctions(Test("a", ("yes", "no")), Test("b", ("x", "y"))) == [
        (Condition("a", code="yes"), Condition("b", code="x")),
        (Condition("a", code="yes"), Condition("b", code="y")),
        (Condition("a", code="no"), Condition("b", code="x")),
        (Condition("a", code="no"), Condition("b", code="y")),
    ]


def test_a_code_named_twice_counts_once():
    assert conjunctions(Test("a", ("yes", "yes"))) == [(Condition("a", code="yes"),)]


def test_lists_of_codes_on_one_key_leave_what_they_share():
    assert conjunctions(Test("a", ("x", "y", "z")), Test("a", ("z", "y"))) == [
        (Condition("a", code="y"),),
        (Condition("a", code="z"),),
    ]


@pytest.mark.parametrize(
    ("tests", "floor", "ceiling"),
    [
        ([Test("t", at_least=3), Test("t", more_than=3)], ("$gt", 3.0), None),
        ([Test("t", at_least=4), Test("t", more_than=3)], ("$gte", 4.0), None),
        ([Test("t", at_most=3), Test("t", less_than=3)], None, ("$lt", 3.0)),
        ([Test("t", at_most=2), Test("t", less_than=3)], None, ("$lte", 2.0)),
        ([Test("t", at_least=1, less_than=9), Test("t", at_most=5)], ("$gte", 1.0), ("$lte", 5.0)),
    ],
)
def test_bounds_on_one_key_merge_into_the_tightest(tests, floor, ceiling):
    assert conjunctions(*tests) == [(Condition("t", floor=floor, ceiling=ceiling),)]


@pytest.mark.parametrize(
    "tests",
    [
        [Test("t", ("x",)), Test("t", ("y",))],
        [Test("t", ("x",)), Test("t", at_least=1)],
        [Test("t", at_least=5), Test("t", at_most=4)],
    ],
)
def test_tests_that_contradict_each_other_leave_nothing_to_run(tests):
    assert conjunctions(*tests, Test("other", ("yes",))) == []


def test_absent_conclusions_come_last_and_once():
    assert conjunctions(Test("a", ("yes",)), absent=("b", "b")) == [
        (Condition("a", code="yes"), Condition("absent:b", code="yes"))
    ]


def test_a_pattern_holds_every_part_under_one_and():
    condition = Condition("t", floor=("$gte", 3.0), ceiling=("$lt", 9.0))
    assert condition.pattern == {"$and": [{"k": "t"}, {"$gte": {"n": 3.0}}, {"$lt": {"n": 9.0}}]}
    assert Condition("a", code="yes").pattern == {"$and": [{"k": "a"}, {"c": "yes"}]}
