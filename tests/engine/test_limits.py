import math

import pytest

from assistant.engine.crisp import CrispRule, Test
from assistant.engine.limits import LimitProblem, fnv_1a_32, limit_problems, refuse_beyond_limits
from assistant.errors import RulesBroken

YES = ("yes",)
ONE_TEST = (Test("q", YES),)


def rule(rule_id="r", concludes="found", tests=ONE_TEST, **rest):
    return CrispRule(rule_id, concludes, tuple(tests), **rest)


def on_keys(count):
    return [Test(f"q{number}", YES) for number in range(count)]


def codes(rules, keys=()):
    return [problem.code for problem in limit_problems(rules, keys)]


def test_an_ordinary_rule_and_no_rule_at_all_have_no_problems():
    assert limit_problems([rule()], ["q"]) == []
    assert limit_problems([], []) == []


def test_a_rule_may_have_twelve_antecedents_and_no_more():
    assert codes([rule(tests=on_keys(12))]) == []
    assert limit_problems([rule(tests=on_keys(13))], []) == [
        LimitProblem("r", "too_many_antecedents", {"found": 13, "most": 12})
    ]


def test_absent_conclusions_are_antecedents_and_tests_on_one_key_are_one():
    assert codes([rule(tests=on_keys(12), absent=("x",))]) == ["too_many_antecedents"]
    assert codes([rule(tests=[Test("t", at_least=float(low)) for low in range(13)])]) == []


def test_there_may_be_four_hundred_keys_and_no_more():
    keys = [f"k{number}" for number in range(399)]
    assert codes([rule(tests=[Test("k0", YES)])], keys) == []
    assert limit_problems([rule(tests=[Test("k0", YES)])], [*keys, "one_more"]) == [
        LimitProblem("", "too_many_keys", {"found": 401, "most": 400})
    ]


def test_tested_keys_conclusions_and_absent_facts_count_as_keys():
    keys = [f"k{number}" for number in range(397)]
    assert codes([rule(absent=("other",))], keys) == []  # with q, found and absent:other
    assert codes([rule(absent=("other", "further"))], keys) == ["too_many_keys"]


def test_one_key_may_be_compared_sixty_times_and_no_more():
    floors = [rule(f"r{low}", tests=[Test("t", at_least=float(low))]) for low in range(61)]
    assert codes(floors[:60]) == []
    assert limit_problems(floors, []) == [
        LimitProblem("", "too_many_comparisons_of_key", {"key": "t", "found": 61, "most": 60})
    ]


def test_ranges_that_exclude_each_other_are_still_compared_one_by_one():
    ranges = [rule(f"r{low}", tests=[Test("t", at_least=low, less_than=low + 1)]) for low in range(31)]
    assert codes(ranges[:30]) == []
    assert codes(ranges) == ["too_many_comparisons_of_key"]


def test_one_key_may_have_four_hundred_tested_codes_and_no_more():
    rules = [rule(f"r{number}", tests=[Test("q", (f"c{number}",))]) for number in range(401)]
    assert codes(rules[:400]) == []
    assert codes(rules) == ["too_many_codes_of_key"]


def test_a_condition_may_stand_in_two_hundred_and_fifty_rules_and_no_more():
    rules = [rule(f"r{number}") for number in range(251)]
    assert codes(rules[:250]) == []
    assert limit_problems(rules, []) == [
        LimitProblem("", "condition_in_too_many_rules", {"key": "q", "found": 251, "most": 250})
    ]


def test_alternatives_multiply_how_often_a_condition_stands():
    several = Test("p", tuple(f"c{number}" for number in range(6)))
    rules = [rule(f"r{number}", tests=[Test("q", YES), several]) for number in range(42)]  # 252 engine rules
    assert codes(rules[:41]) == []
    assert codes(rules) == ["condition_in_too_many_rules"]


def test_a_rule_may_stand_for_sixty_four_engine_rules_and_no_more():
    two = [Test(f"q{number}", ("yes", "no")) for number in range(7)]
    assert codes([rule(tests=two[:6])]) == []
    assert limit_problems([rule(tests=two)], []) == [
        LimitProblem("r", "too_many_alternatives", {"found": 128, "most": 64})
    ]


def test_a_huge_number_of_alternatives_is_counted_without_making_them():
    ten = tuple(f"c{number}" for number in range(10))
    assert "too_many_alternatives" in codes([rule(tests=[Test(f"q{key}", ten) for key in range(12)])])


def test_there_may_be_a_thousand_engine_rules_and_no_more():
    rules = [rule(f"r{number}", tests=[Test(f"q{number % 300}", YES)]) for number in range(1001)]
    assert codes(rules[:1000]) == []
    assert codes(rules) == ["too_many_rules"]


@pytest.mark.parametrize("text", ["", "Heat", "heat-top", "heat.top", "$s", "hitze_ä", "a" * 65])
@pytest.mark.parametrize("what", ["rule", "conclusion", "absent", "key", "code", "given key"])
def test_an_id_outside_its_pattern_is_refused_wherever_it_stands(text, what):
    broken = {
        "rule": lambda: ([rule(rule_id=text)], []),
        "conclusion": lambda: ([rule(concludes=text)], []),
        "absent": lambda: ([rule(absent=(text,))], []),
        "key": lambda: ([rule(tests=[Test(text, YES)])], []),
        "code": lambda: ([rule(tests=[Test("q", (text,))])], []),
        "given key": lambda: ([], [text]),
    }
    assert codes(*broken[what]()) == ["malformed_id"]


def test_an_id_of_sixty_four_characters_is_an_id():
    assert codes([rule(rule_id="r" * 64, concludes="c" * 64, tests=[Test("k" * 64, ("x" * 64,))])]) == []


@pytest.mark.parametrize("bound", [math.nan, math.inf, -math.inf, 1e15, True])
def test_a_bound_that_cannot_be_compared_is_refused(bound):
    assert codes([rule(tests=[Test("t", at_most=bound)])]) == ["bound_not_usable"]


def test_a_bound_finer_than_facts_are_kept_is_refused():
    assert limit_problems([rule(tests=[Test("t", more_than=0.0004)])], []) == [
        LimitProblem("r", "bound_too_fine", {"key": "t", "bound": "more_than", "found": 0.0004})
    ]


@pytest.mark.parametrize("place", [{"band": -1}, {"band": 65}, {"order": -1}, {"order": 1000}])
def test_a_place_that_does_not_fit_the_engines_priority_is_refused(place):
    assert codes([rule(**place)]) == [f"{next(iter(place))}_out_of_range"]
    assert codes([rule(band=64, order=999)]) == []


def test_the_second_rule_of_an_id_is_refused():
    assert codes([rule(), rule()]) == ["repeated_id"]


def test_a_rule_may_not_conclude_what_can_be_given():
    assert codes([rule(concludes="found")], ["q", "found"]) == ["concludes_a_given_key"]


def test_the_hash_is_fnv_1a_of_32_bits():
    # The vectors of draft-eastlake-fnv, appendix C.
    assert [fnv_1a_32(text) for text in ("", "a", "foobar")] == [0x811C9DC5, 0xE40C292C, 0xBF9CF968]


@pytest.mark.parametrize(
    "rules",
    [
        [rule(tests=[Test("liquid", YES), Test("costarring", YES)])],
        [rule(tests=[Test("liquid", ("costarring",))])],
        [rule(rule_id="liquid", concludes="costarring")],
        [rule(tests=[Test("q", ("liquid", "costarring"))])],
    ],
    ids=["keys", "key and code", "rule and conclusion", "codes"],
)
def test_names_that_the_engine_cannot_tell_apart_are_refused(rules):
    assert fnv_1a_32("liquid") == fnv_1a_32("costarring")
    assert codes(rules) == ["same_hash"]


def test_a_negation_on_a_cycle_is_refused():
    assert limit_problems([rule("r1", "a", absent=("b",)), rule("r2", "b", absent=("a",))], []) == [
        LimitProblem("r1", "negation_cycle", {"through": "b a"}),
        LimitProblem("r2", "negation_cycle", {"through": "a b"}),
    ]


def test_all_problems_are_found_at_once():
    rules = [
        rule("Bad", tests=on_keys(13)),
        rule("r", band=99, absent=("found",)),
        rule("r", tests=[Test("t", at_least=math.nan)]),
    ]
    assert sorted(codes(rules, ["q", "Q"])) == [
        "band_out_of_range",
        "bound_not_usable",
        "malformed_id",
        "malformed_id",
        "negation_cycle",
        "repeated_id",
        "too_many_antecedents",
    ]


def test_refusing_carries_every_problem_as_a_line():
    with pytest.raises(RulesBroken) as refused:
        refuse_beyond_limits([rule("r", band=99)], ["Q"])
    assert refused.value.problems == (
        "r: band_out_of_range (found 99, most 64)",
        "the rules together: malformed_id (what key, id Q)",
    )
