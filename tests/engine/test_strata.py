import pytest

from assistant.engine.crisp import CrispRule, Test
from assistant.engine.strata import NegationCycle, negation_cycles, positions
from assistant.errors import RulesBroken


def rule(rule_id, concludes, needs=(), absent=(), **place):
    return CrispRule(rule_id, concludes, tuple(Test(key, ("yes",)) for key in needs), tuple(absent), **place)


def strata(rules):
    return {rule_id: position[0] for rule_id, position in positions(rules).items()}


def test_a_negation_comes_after_every_rule_that_could_conclude_it():
    rules = [
        rule("last", "c", needs=["q"], absent=["b"]),
        rule("first", "a", needs=["q"]),
        rule("alternative", "b", needs=["a"]),
        rule("late_alternative", "b", needs=["q"], absent=["a"]),
    ]
    assert strata(rules) == {"first": 0, "alternative": 0, "late_alternative": 1, "last": 2}


def test_a_chain_stays_in_the_stratum_of_what_it_builds_on():
    rules = [
        rule("r3", "d", needs=["c"]),
        rule("r2", "c", needs=["b"]),
        rule("r1", "b", needs=["q"], absent=["a"]),
        rule("r0", "a", needs=["q"]),
    ]
    assert strata(rules) == {"r0": 0, "r1": 1, "r2": 1, "r3": 1}


def test_a_negation_of_what_nothing_concludes_needs_no_stratum_of_its_own():
    assert strata([rule("r", "a", absent=["nothing"])]) == {"r": 0}


def test_conclusions_that_rest_on_each_other_share_a_stratum():
    rules = [rule("r1", "a", needs=["b"]), rule("r2", "b", needs=["a"]), rule("r3", "a", needs=["q"])]
    assert strata(rules) == {"r1": 0, "r2": 0, "r3": 0}
    assert negation_cycles(rules) == []


def test_a_position_ends_in_band_order_and_id():
    assert positions([rule("r", "a", needs=["q"], band=2, order=7)]) == {"r": (0, 2, 7, "r")}


def test_a_rule_that_negates_itself_is_a_cycle():
    assert negation_cycles([rule("r", "a", absent=["a"])]) == [NegationCycle("r", ("a",))]


def test_every_negation_on_a_cycle_is_named_with_its_way_round():
    rules = [
        rule("r1", "a", absent=["b"]),
        rule("r2", "b", needs=["c"]),
        rule("r3", "c", absent=["a"]),
        rule("sound", "d", absent=["a"]),
    ]
    assert negation_cycles(rules) == [
        NegationCycle("r1", ("b", "c", "a")),
        NegationCycle("r3", ("a", "b", "c")),
    ]


def test_rules_with_negation_cycles_have_no_positions():
    with pytest.raises(RulesBroken) as refused:
        positions([rule("r1", "a", absent=["b"]), rule("r2", "b", absent=["a"])])
    assert refused.value.problems == (
        "r1: a negation on a cycle: b <- a",
        "r2: a negation on a cycle: a <- b",
    )
