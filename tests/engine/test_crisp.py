import math

import pytest

from assistant.engine.crisp import CrispRule, Fired, Test, Trace, usable_facts


@pytest.mark.parametrize("conditions", [{}, {"is_one_of": ()}, {"is_one_of": ("yes",), "at_least": 3.0}], ids=str)
def test_a_test_needs_codes_or_bounds_and_not_both(conditions):
    with pytest.raises(ValueError, match="heat"):
        Test("heat", **conditions)


def test_a_bound_of_zero_is_a_bound():
    assert Test("heat", at_least=0.0).bounds == {"at_least": 0.0}


def test_a_rule_needs_a_condition():
    with pytest.raises(ValueError, match="bare"):
        CrispRule("bare", "found", tests=())


@pytest.mark.parametrize(
    ("bounds", "passing", "failing"),
    [
        ({"at_least": 3.0}, [3.0, 3.001], [2.999]),
        ({"more_than": 3.0}, [3.001], [3.0, 2.999]),
        ({"at_most": 3.0}, [3.0, 2.999], [3.001]),
        ({"less_than": 3.0}, [2.999], [3.0, 3.001]),
        ({"at_least": 1.0, "less_than": 3.0}, [1.0, 2.999], [0.999, 3.0]),
    ],
)
def test_bounds_hold_exactly_up_to_their_number(bounds, passing, failing):
    test = Test("heat", **bounds)
    assert [test.holds(number) for number in passing] == [True] * len(passing)
    assert [test.holds(number) for number in failing] == [False] * len(failing)


def test_a_code_passes_no_bounds_and_a_number_no_codes():
    assert not Test("heat", at_least=-1.0).holds("0")
    assert not Test("heat", is_one_of=("3",)).holds(3.0)


@pytest.mark.parametrize(
    "value",
    [
        None,
        True,
        math.nan,
        math.inf,
        -math.inf,
        1e15,
        -1e15,
        10**400,
        "",
        "a word of free text",
        "Yes",
        "a" * 65,
        ["yes"],
        {"yes": 1},
    ],
    ids=lambda value: str(value)[:20],
)
def test_a_value_that_is_no_code_and_no_usable_number_is_refused(value):
    with pytest.raises(ValueError, match="heat"):
        usable_facts({"heat": value}, conclusions=())


@pytest.mark.parametrize("key", ["", "Heat", "heat.top", "$s", "absent:heat", "a" * 65, 3, None])
def test_a_key_that_is_no_id_is_refused(key):
    with pytest.raises(ValueError, match="key"):
        usable_facts({key: "yes"}, conclusions=())


def test_a_conclusion_cannot_be_given():
    with pytest.raises(ValueError, match="concluded by a rule"):
        usable_facts({"found": "yes"}, conclusions=["found"])


@pytest.mark.parametrize(("given", "kept"), [(3, 3.0), (0.0004, 0.0), (0.0006, 0.001), (-7.1239, -7.124), (1e-5, 0.0)])
def test_numbers_are_kept_to_three_places(given, kept):
    usable = usable_facts({"heat": given}, conclusions=())
    assert usable == {"heat": kept}
    assert isinstance(usable["heat"], float)


def test_minus_zero_is_kept_as_zero():
    kept = usable_facts({"heat": -0.0001}, conclusions=())["heat"]
    assert math.copysign(1.0, kept) == 1.0


CHAIN = Trace(
    (
        Fired("r1", "weak_heat", ("q_heat",)),
        Fired("r2", "weak_heat", ("q_browning", "q_time")),
        Fired("r3", "worn_seal", ("q_seal",)),
        Fired("r4", "book", ("weak_heat", "absent:misuse")),
    )
)


def test_the_trace_knows_what_was_concluded():
    assert CHAIN.concluded == {"weak_heat", "worn_seal", "book"}


def test_a_conclusion_is_explained_down_to_the_answers_nearest_first():
    assert [fired.rule_id for fired in CHAIN.because("book")] == ["r4", "r1", "r2"]


def test_what_was_not_concluded_has_no_reasons():
    assert CHAIN.because("misuse") == ()


def test_conclusions_that_rest_on_each_other_are_explained_once():
    circle = Trace((Fired("r1", "a", ("q",)), Fired("r2", "b", ("a",)), Fired("r3", "a", ("b",))))
    assert [fired.rule_id for fired in circle.because("b")] == ["r2", "r1", "r3"]
