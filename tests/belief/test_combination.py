"""What several causes show together, by hand and against listing every joint state."""

import numpy as np
import pytest

from assistant.belief.combination import own_part, sets_of_causes, states_given
from assistant.belief.hypotheses import SOMETHING_ELSE, compile_evidence_model, membership
from tests.belief import tiny
from tests.belief.brute_force import sets_of, states_under

SEEDS = range(60)


def shown(model, name, *causes):
    """The distribution of the observable under exactly these causes."""
    if SOMETHING_ELSE in causes:
        return model.state_given[name][:, -1]
    found = states_given(model.shown[name], membership((causes,), model.causes[:-1]))[:, 0]
    if len(causes) <= 2:
        column = [set(hypothesis) for hypothesis in model.hypotheses].index(set(causes))
        assert model.state_given[name][:, column] == pytest.approx(found, abs=1e-15)
    return found


def model_of(causes, pairs=(), ordered=True, **normal):
    normal = normal or {"good": 80, "poor": 15, "bad": 5}
    means = {f"says_{state}": (state,) for state in normal}
    return compile_evidence_model(
        tiny.knowledge(
            {"heat": tiny.observable(ordered, **normal)},
            {"q": tiny.question("heat", means, mistakes=10)},
            causes,
            pairs,
        )
    )


def faulty(good, poor, bad, **others):
    return tiny.cause(5, {"heat": tiny.figures(good=good, poor=poor, bad=bad)}, **others)


def silent(**others):
    return tiny.cause(5, {"elsewhere": tiny.figures(a=50, b=50)}, **others)


@pytest.mark.parametrize("seed", SEEDS)
def test_states_are_as_probable_as_listing_every_joint_state_says(seed):
    knowledge = tiny.random_knowledge(seed)
    model = compile_evidence_model(knowledge)
    for causes in sets_of(knowledge):
        for name, observable in knowledge.observables.items():
            expected = states_under(knowledge, name, causes)
            assert shown(model, name, *causes) == pytest.approx([expected[s] for s in observable.states], abs=1e-12)


def test_two_faults_show_the_worse_of_what_each_adds():
    """By hand: F = 0.8, 0.95, 1; the parts added are 0.4/0.8, 0.76/0.95 and 0.6/0.8, 0.855/0.95."""
    model = model_of({"a": faulty(40, 36, 24), "b": faulty(60, 25.5, 14.5)})
    up_to = [0.8 * 0.5 * 0.75, 0.95 * 0.8 * 0.9, 1]
    assert np.cumsum(shown(model, "heat", "a", "b")) == pytest.approx(up_to)


def test_beside_another_fault_no_cause_makes_anything_better():
    model = model_of({"a": faulty(40, 36, 24), "better": faulty(90, 9, 1)})
    assert shown(model, "heat", "better") == pytest.approx([0.9, 0.09, 0.01])
    assert shown(model, "heat", "a", "better") == pytest.approx([0.4, 0.36, 0.24])


def test_the_part_a_cause_adds_is_the_greatest_distribution_below_what_it_shows():
    normal = np.array([0.2, 0.6, 0.2])
    alone = np.array([0.19, 0.21, 0.6])
    assert own_part(alone, normal) == pytest.approx([0.5, 0.5, 1.0])
    assert own_part(normal, normal) == pytest.approx([1.0, 1.0, 1.0])


def test_of_a_pattern_each_cause_is_as_likely_to_be_seen():
    causes = {"a": faulty(40, 36, 24), "b": faulty(60, 30, 10), "quiet": silent()}
    model = model_of(causes, ordered=False)
    assert shown(model, "heat", "a", "b") == pytest.approx([0.5, 0.33, 0.17])
    assert shown(model, "heat", "a", "quiet") == pytest.approx([0.4, 0.36, 0.24])


@pytest.mark.parametrize("ordered", [True, False])
def test_a_cause_that_masks_hides_all_that_do_not(ordered):
    model = model_of({"dead": faulty(1, 1, 98, masks=("heat",)), "b": faulty(60, 30, 10)}, ordered=ordered)
    assert shown(model, "heat", "dead", "b") == pytest.approx([0.01, 0.01, 0.98])


def test_a_mask_that_says_nothing_shows_the_normal():
    model = model_of({"cold": silent(masks=("heat",)), "b": faulty(60, 30, 10)})
    assert shown(model, "heat", "cold", "b") == pytest.approx([0.8, 0.15, 0.05])


OF_THE_PAIR = {"heat": tiny.figures(good=20, poor=20, bad=60)}


@pytest.mark.parametrize("ordered", [True, False])
def test_a_pair_shows_its_own_table(ordered):
    causes = {"a": faulty(40, 36, 24), "b": faulty(60, 30, 10)}
    model = model_of(causes, [tiny.pair("a", "b", shows=OF_THE_PAIR)], ordered)
    assert shown(model, "heat", "a", "b") == pytest.approx([0.2, 0.2, 0.6])


@pytest.mark.parametrize("ordered", [True, False])
def test_a_pair_shows_its_own_table_though_one_of_the_two_masks(ordered):
    causes = {"dead": faulty(96, 2, 2, masks=("heat",)), "b": faulty(1, 4, 95)}
    model = model_of(causes, [tiny.pair("b", "dead", shows=OF_THE_PAIR)], ordered)
    assert shown(model, "heat", "b", "dead") == pytest.approx([0.2, 0.2, 0.6])


@pytest.mark.parametrize("ordered", [True, False])
def test_a_pair_shows_its_own_table_though_one_or_both_say_nothing(ordered):
    causes = {"a": silent(), "b": silent(), "c": faulty(60, 30, 10)}
    pairs = [tiny.pair("a", "b", shows=OF_THE_PAIR), tiny.pair("c", "b", shows=OF_THE_PAIR)]
    model = model_of(causes, pairs, ordered)
    assert shown(model, "heat", "a", "b") == pytest.approx([0.2, 0.2, 0.6])
    assert shown(model, "heat", "c", "b") == pytest.approx([0.2, 0.2, 0.6])


def test_a_pair_counts_as_one_beside_a_third():
    habit = tiny.habit(5, {"heat": tiny.figures(good=60, poor=30, bad=10)})
    causes = {"a": faulty(40, 36, 24), "b": faulty(60, 30, 10), "habit": habit}
    pairs = [tiny.pair("a", "b", shows=OF_THE_PAIR)]
    assert shown(model_of(causes, pairs, False), "heat", "a", "b", "habit") == pytest.approx([0.4, 0.25, 0.35])
    up_to = [0.2 * 0.6 / 0.8, 0.4 * 0.9 / 0.95, 1]
    assert np.cumsum(shown(model_of(causes, pairs), "heat", "a", "b", "habit")) == pytest.approx(up_to)


def test_a_pair_of_which_one_masks_hides_a_third():
    habit = tiny.habit(5, {"heat": tiny.figures(good=60, poor=30, bad=10)})
    causes = {"dead": faulty(96, 2, 2, masks=("heat",)), "b": faulty(60, 30, 10), "habit": habit}
    model = model_of(causes, [tiny.pair("b", "dead", shows=OF_THE_PAIR)])
    assert shown(model, "heat", "b", "dead", "habit") == pytest.approx([0.2, 0.2, 0.6])


def test_a_third_that_masks_hides_a_pair():
    habit = tiny.habit(5, {"heat": tiny.figures(good=1, poor=1, bad=98)}, masks=("heat",))
    causes = {"a": faulty(40, 36, 24), "b": faulty(60, 30, 10), "habit": habit}
    model = model_of(causes, [tiny.pair("a", "b", shows=OF_THE_PAIR)])
    assert shown(model, "heat", "a", "b", "habit") == pytest.approx([0.01, 0.01, 0.98])


def test_sets_hold_at_most_two_causes_of_which_one_may_be_a_habit():
    found = sets_of_causes(["a", "b", "c"], ["x", "y"], [frozenset("ab"), frozenset("cy")])
    assert found[0] == ()
    assert len(found) == len(set(found)) == 1 + 5 + 2 + 5
    assert ("a", "b") not in found
    assert ("c", "y") not in found
    assert ("b", "c") in found
    assert ("b", "x") in found
    assert ("x", "y") not in found
    assert max(map(len, found)) == 2
