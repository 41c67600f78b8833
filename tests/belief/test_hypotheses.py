import numpy as np
import pytest

from assistant.belief.hypotheses import codes_of, compile_evidence_model
from tests.belief import tiny
from tests.belief.brute_force import chance_of_evidence, prior_weights, reports_of, sets_of

SEEDS = range(40)


@pytest.mark.parametrize("seed", SEEDS)
def test_every_column_is_a_distribution(seed):
    model = compile_evidence_model(tiny.random_knowledge(seed))
    for table in (*model.state_given.values(), *model.report_given.values()):
        assert table.sum(axis=0) == pytest.approx(np.ones(table.shape[1]), abs=1e-12)
        assert table.min() > 0


@pytest.mark.parametrize("seed", SEEDS)
def test_the_hypotheses_are_all_sets_that_may_be_there_with_their_odds(seed):
    knowledge = tiny.random_knowledge(seed)
    model = compile_evidence_model(knowledge)
    assert model.hypotheses[0] == ()
    assert model.hypotheses[-1] == ("something_else",)
    assert len(model.hypotheses) == len(sets_of(knowledge))
    found = dict(zip(map(frozenset, model.hypotheses), model.prior_odds, strict=True))
    assert found == pytest.approx(prior_weights(knowledge))


@pytest.mark.parametrize("seed", SEEDS)
def test_reports_are_as_probable_as_the_rules_say(seed):
    knowledge = tiny.random_knowledge(seed)
    model = compile_evidence_model(knowledge)
    reports = reports_of(knowledge)
    assert {report: list(codes) for report, codes in model.codes.items()} == reports
    for report, codes in reports.items():
        states = knowledge.observables[model.observable_of[report]].states
        expected = [[chance_of_evidence(knowledge, report, code, state) for state in states] for code in codes]
        assert model.report_given[report] == pytest.approx(np.array(expected), abs=1e-12)


@pytest.mark.parametrize("seed", range(5))
def test_members_say_which_causes_each_hypothesis_holds(seed):
    model = compile_evidence_model(tiny.random_knowledge(seed))
    for row, hypothesis in zip(model.members, model.hypotheses, strict=True):
        assert {cause for cause, held in zip(model.causes, row, strict=True) if held} == set(hypothesis)


def test_an_answer_shares_its_mistakes_among_those_that_mean_something_else():
    means = {"a": ("low",), "b": ("low",), "c": ("high",), "d": ("high",), "e": ("high",)}
    model = compile_evidence_model(
        tiny.knowledge(
            {"heat": tiny.observable(low=50, high=50)},
            {"q": tiny.question("heat", means, mistakes=30)},
            {"c": tiny.cause(5, {"heat": tiny.figures(low=90, high=10)})},
        )
    )
    assert model.report_given["q"][:, 0] == pytest.approx([0.35, 0.35, 0.1, 0.1, 0.1])
    assert model.report_given["q"][:, 1] == pytest.approx([0.15, 0.15, 0.7 / 3, 0.7 / 3, 0.7 / 3])


def test_an_answer_that_only_speaks_of_the_ovens_parts_is_no_report():
    seal_seen = tiny.sound_knowledge().questions["seal_seen"]
    assert codes_of(seal_seen) == ("looks_whole", "has_gaps", "seal_missing")
    missing = seal_seen.choices["seal_missing"].model_copy(update={"means": ()})
    without = seal_seen.model_copy(update={"choices": seal_seen.choices | {"seal_missing": missing}})
    assert codes_of(without) == ("looks_whole", "has_gaps")


def test_something_else_predicts_what_causes_predict_broadened_by_its_breadth():
    """By hand: odds 1:1 of two causes give 0.4, 0.4, 0.2; at a breadth of 50 % their roots are 0.632, 0.632, 0.447."""
    heat = tiny.observable(low=10, middle=10, high=80)
    causes = {
        "a": tiny.cause(20, {"heat": tiny.figures(low=70, middle=20, high=10)}),
        "b": tiny.cause(20, {"heat": tiny.figures(low=10, middle=60, high=30)}),
    }
    questions = {"q": tiny.question("heat", {"x": ("low",), "y": ("middle",), "z": ("high",)}, mistakes=10)}
    model = compile_evidence_model(tiny.knowledge({"heat": heat}, questions, causes, breadth=50))
    assert model.state_given["heat"][:, -1] == pytest.approx([0.3694, 0.3694, 0.2612], abs=5e-5)


@pytest.mark.parametrize(("breadth", "expected"), [(0, [0.9, 0.1]), (100, [0.5, 0.5])])
def test_breadth_goes_from_what_causes_predict_to_anything(breadth, expected):
    model = compile_evidence_model(
        tiny.knowledge(
            {"heat": tiny.observable(low=20, high=80)},
            {"q": tiny.question("heat", {"a": ("low",), "b": ("high",)}, mistakes=10)},
            {"c": tiny.cause(5, {"heat": tiny.figures(low=90, high=10)})},
            breadth=breadth,
        )
    )
    assert model.state_given["heat"][:, -1] == pytest.approx(expected)


def test_a_cause_shows_the_normal_where_it_says_nothing():
    model = compile_evidence_model(tiny.sound_knowledge())
    normal, high_shelf = 0, model.hypotheses.index(("high_shelf",))
    assert (model.state_given["heat"][:, normal] == model.state_given["heat"][:, high_shelf]).all()
    assert (model.state_given["browning"][:, normal] != model.state_given["browning"][:, high_shelf]).any()


def test_prior_odds_are_those_of_the_base_rates_and_of_the_pair_that_comes_together():
    """By hand: 8 % + 3 % + 4 % + 5 % leave 80 % sound; 8 times as often asked about; 15 % of worn seals come together
    with a weak element.
    """
    model = compile_evidence_model(tiny.sound_knowledge())
    shelf, element, seal = 8 / 80, 3 / 80, 4 / 80
    expected = {
        (): 1,
        ("high_shelf",): shelf,
        ("weak_element",): element,
        ("weak_element", "high_shelf"): element * shelf / 8,
        ("worn_seal",): seal,
        ("worn_seal", "high_shelf"): seal * shelf / 8,
        ("weak_element", "worn_seal"): seal * 15 / 85,
        ("something_else",): 5 / 80,
    }
    assert dict(zip(model.hypotheses, model.prior_odds, strict=True)) == pytest.approx(expected)


def test_given_base_rates_stand_instead_of_the_rules_own():
    model = compile_evidence_model(tiny.sound_knowledge(), {"high_shelf": 0.5, "weak_element": 0.2, "worn_seal": 0.1})
    found = dict(zip(model.hypotheses, model.prior_odds, strict=True))
    odds = [found[(name,)] for name in ("high_shelf", "weak_element", "worn_seal", "something_else")]
    assert odds == pytest.approx([0.5 / 0.15, 0.2 / 0.15, 0.1 / 0.15, 0.05 / 0.15])


def test_some_ovens_count_as_sound_whatever_the_rates_add_up_to():
    model = compile_evidence_model(tiny.sound_knowledge(), {"high_shelf": 0.6, "weak_element": 0.3, "worn_seal": 0.2})
    found = dict(zip(model.hypotheses, model.prior_odds, strict=True))
    assert found["high_shelf",] == pytest.approx(0.6 / 0.05)


def test_the_priors_are_the_shares_that_the_rules_give_as_far_as_causes_come_alone():
    model = compile_evidence_model(tiny.sound_knowledge())
    alone = {h: odds for h, odds in zip(model.hypotheses, model.prior_odds, strict=True) if len(h) < 2}
    shares = {h: odds / sum(alone.values()) for h, odds in alone.items()}
    assert [shares[("high_shelf",)], shares[("something_else",)], shares[()]] == pytest.approx([0.08, 0.05, 0.8])
