"""What both evaluators must do."""

import math

import pytest

from assistant.engine.crisp import CrispRule, Fired, Test, Trace
from assistant.errors import RulesBroken

YES = ("yes",)


def rule(rule_id, concludes, *tests, **rest):
    return CrispRule(rule_id, concludes, tests, **rest)


@pytest.fixture
def evaluate(evaluator_class):
    """Evaluates rules on facts; an answer of the naive evaluator in the engine's place fails the test."""

    def run(rules, facts):
        evaluator = evaluator_class(rules)
        trace = evaluator.evaluate(facts)
        assert getattr(evaluator, "fell_back", 0) == 0
        return trace

    return run


def test_no_rules_conclude_nothing(evaluate):
    assert evaluate([], {}) == Trace(())
    assert evaluate([], {"q": "yes", "t": 3.0}) == Trace(())


def test_no_facts_fire_only_what_needs_none(evaluate):
    rules = [rule("r1", "a", Test("q", YES)), rule("r2", "b", absent=("a",))]
    assert evaluate(rules, {}) == Trace((Fired("r2", "b", ("absent:a",)),))


def test_a_rule_fires_if_all_its_tests_hold(evaluate):
    rules = [rule("r", "found", Test("q", ("weak", "none")), Test("t", at_least=3, less_than=9))]
    assert evaluate(rules, {"t": 3, "q": "none"}).fired == (Fired("r", "found", ("q", "t")),)
    for facts in ({"q": "none"}, {"q": "none", "t": 9}, {"q": "normal", "t": 3}, {"q": 3.0, "t": "none"}):
        assert evaluate(rules, facts).fired == ()


@pytest.mark.parametrize("number", [-999999999999999.0, -1.5, -0.001, 0.0, 2.999, 3.0, 999999999999.125])
@pytest.mark.parametrize("step", [-0.001, 0.0, 0.001])
def test_bounds_are_exact_to_the_last_place(evaluate, number, step):
    rules = [
        rule("at_least", "a", Test("t", at_least=number)),
        rule("at_most", "b", Test("t", at_most=number)),
        rule("less", "c", Test("t", less_than=number)),
        rule("more", "d", Test("t", more_than=number)),
    ]
    given = round(number + step, 3)
    if abs(given) >= 1e15:
        given = number
    expected = {
        "at_least": given >= number,
        "at_most": given <= number,
        "less": given < number,
        "more": given > number,
    }
    fired = {fired.rule_id for fired in evaluate(rules, {"t": given}).fired}
    assert fired == {name for name, holds in expected.items() if holds}


def test_numbers_are_rounded_before_they_are_compared(evaluate):
    rules = [rule("r", "found", Test("t", more_than=3.0))]
    assert evaluate(rules, {"t": 3.0004}).fired == ()
    assert evaluate(rules, {"t": 3.0006}).concluded == {"found"}


def test_a_chain_of_conclusions_leads_down_to_the_answers(evaluate):
    rules = [
        rule("third", "c", Test("b", YES)),
        rule("second", "b", Test("a", YES), Test("p", YES)),
        rule("first", "a", Test("q", YES)),
    ]
    trace = evaluate(rules, {"p": "yes", "q": "yes"})
    assert trace.concluded == {"a", "b", "c"}
    assert trace.because("c") == (
        Fired("third", "c", ("b",)),
        Fired("second", "b", ("a", "p")),
        Fired("first", "a", ("q",)),
    )


def test_every_alternative_that_holds_is_in_the_trace(evaluate):
    rules = [
        rule("r1", "found", Test("p", ("x", "y"))),
        rule("r2", "found", Test("q", YES)),
        rule("r3", "found", Test("s", YES)),
    ]
    assert [fired.rule_id for fired in evaluate(rules, {"p": "y", "q": "yes"}).because("found")] == [
        "r1",
        "r2",
    ]


def test_several_tests_on_one_fact_must_all_hold(evaluate):
    rules = [rule("r", "found", Test("t", at_least=3), Test("q", YES), Test("t", at_most=5))]
    assert evaluate(rules, {"q": "yes", "t": 4}).fired == (Fired("r", "found", ("t", "q")),)
    assert evaluate(rules, {"q": "yes", "t": 6}).fired == ()


def test_tests_that_contradict_each_other_never_fire(evaluate):
    rules = [rule("r", "found", Test("q", ("a",)), Test("q", ("b",)))]
    assert evaluate(rules, {"q": "a"}).fired == ()


def test_an_absent_conclusion_blocks_once_it_is_concluded(evaluate):
    rules = [rule("r1", "misuse", Test("q", YES)), rule("r2", "fault", Test("p", YES), absent=("misuse",))]
    assert evaluate(rules, {"p": "yes", "q": "yes"}).concluded == {"misuse"}
    assert evaluate(rules, {"p": "yes", "q": "no"}).fired == (Fired("r2", "fault", ("p", "absent:misuse")),)


def test_an_absent_conclusion_is_settled_however_late_it_is_reached(evaluate):
    rules = [
        rule("r5", "last", absent=("c", "unheard_of")),
        rule("r4", "d", Test("c", YES), absent=("a",)),
        rule("r3", "c", Test("q", YES), absent=("b",)),
        rule("r2", "b", Test("a", YES)),
        rule("r1", "a", Test("p", YES)),
    ]
    assert evaluate(rules, {"p": "yes", "q": "yes"}).concluded == {"a", "b", "last"}
    assert evaluate(rules, {"p": "no", "q": "yes"}).concluded == {"c", "d"}
    assert evaluate(rules, {"q": "no"}).concluded == {"last"}


def test_a_given_fact_is_not_a_conclusion_and_blocks_nothing(evaluate):
    assert evaluate([rule("r", "found", absent=("q",))], {"q": "yes"}).concluded == {"found"}


def test_conclusions_that_rest_on_each_other_need_a_ground(evaluate):
    rules = [
        rule("r1", "a", Test("b", YES)),
        rule("r2", "b", Test("a", YES)),
        rule("r3", "a", Test("q", YES)),
    ]
    assert evaluate(rules, {}).fired == ()
    assert [fired.rule_id for fired in evaluate(rules, {"q": "yes"}).fired] == ["r1", "r2", "r3"]


def test_the_trace_is_ordered_by_stratum_then_band_then_order_then_id(evaluate):
    rules = [
        rule("negating", "e", absent=("never",), band=0),
        rule("never_fires", "never", Test("nothing", YES)),
        rule("late_band", "a", Test("q", YES), band=2),
        rule("z", "b", Test("q", YES), order=1),
        rule("y", "c", Test("q", YES), order=2),
        rule("x", "d", Test("q", YES), order=1),
    ]
    fired = evaluate(rules, {"q": "yes"}).fired
    assert [fired.rule_id for fired in fired] == ["x", "z", "y", "late_band", "negating"]


def test_the_order_of_facts_and_of_rules_changes_nothing(evaluate):
    rules = [rule(f"r{n}", f"c{n % 3}", Test(f"q{n}", YES), Test(f"q{n + 1}", YES)) for n in range(9)]
    facts = {f"q{n}": "yes" for n in range(10)}
    backwards = dict(reversed(facts.items()))
    assert len(evaluate(rules, facts).fired) == 9
    assert evaluate(rules, facts) == evaluate(rules, backwards) == evaluate(rules[::-1], facts)


def test_an_evaluation_leaves_nothing_behind(evaluator_class):
    evaluator = evaluator_class([rule("r1", "a", Test("q", YES)), rule("r2", "b", absent=("a",))])
    given = {"q": "yes"}
    with_answer = evaluator.evaluate(given)
    assert evaluator.evaluate({}).concluded == {"b"}
    assert evaluator.evaluate(given) == with_answer
    assert given == {"q": "yes"}


@pytest.mark.parametrize("value", [None, True, math.nan, 1e15, "free text", "a" * 65])
def test_a_fact_that_cannot_be_used_is_refused_even_if_no_rule_tests_it(evaluator_class, value):
    evaluator = evaluator_class([rule("r", "found", Test("q", YES))])
    with pytest.raises(ValueError, match="other"):
        evaluator.evaluate({"q": "yes", "other": value})
    assert getattr(evaluator, "fell_back", 0) == 0


def test_a_conclusion_cannot_be_given_as_a_fact(evaluator_class):
    with pytest.raises(ValueError, match="found"):
        evaluator_class([rule("r", "found", Test("q", YES))]).evaluate({"found": "no"})


def test_a_negation_on_a_cycle_is_refused(evaluator_class):
    with pytest.raises(RulesBroken, match="2 mistakes"):
        evaluator_class([rule("r1", "a", absent=("b",)), rule("r2", "b", absent=("a",))])
