"""Figures that others published, run through this program's own model."""

from itertools import product

import numpy as np
import pytest

from assistant.belief.combination import states_given
from assistant.belief.decision import expected_costs
from assistant.belief.hypotheses import EvidenceModel, compile_evidence_model, membership
from assistant.belief.posterior import posterior, weights_of_evidence
from assistant.belief.value import Candidate, look_ahead, one_step
from tests.belief import tiny

NOTHING = tiny.NEXT_TO_NOTHING
SEEN = {"seen": ("present",), "unseen": ("absent",)}


def test_the_screening_example_of_bayes_rule():
    """1 % have it, 80 % of them test positive, and so do 9.6 % of the others: 7.8 % of the positive have it.

    Source: G. Gigerenzer and U. Hoffrage, How to improve Bayesian reasoning without instruction, Psychological
    Review 102 (1995), 684-704, after D. M. Eddy (1982). To seven digits: 0.008 / (0.008 + 0.09504).
    """
    model = compile_evidence_model(
        tiny.knowledge(
            {"test": tiny.observable(negative=90.4, positive=9.6)},
            {"q": tiny.question("test", {"plus": ("positive",), "minus": ("negative",)}, NOTHING)},
            {"illness": tiny.cause(1, {"test": tiny.figures(negative=20, positive=80)})},
            something_else=NOTHING,
        )
    )
    assert posterior(model, {}).of("illness") == pytest.approx(0.01, abs=1e-9)
    found = posterior(model, {"q": "plus"}).of("illness")
    assert found == pytest.approx(0.0776398, abs=5e-8)
    assert f"{found:.1%}" == "7.8%"


def model_of_fever(of_each, leak):
    """Percent that show fever. Cold is written as a habit."""
    causes = {}
    for name, present in of_each.items():
        made = tiny.habit if name == "cold" else tiny.cause
        causes[name] = made(5, {"fever": tiny.figures(absent=100 - present, present=present)})
    return compile_evidence_model(
        tiny.knowledge(
            {"fever": tiny.observable(absent=100 - leak, present=leak)},
            {"q": tiny.question("fever", SEEN, NOTHING)},
            causes,
        )
    )


def fever_given(model, *causes):
    return states_given(model.shown["fever"], membership((causes,), model.causes[:-1]))[1, 0]


@pytest.mark.parametrize(
    ("cold", "flu", "malaria", "expected"),
    [
        (0, 0, 0, 0.0),
        (0, 0, 1, 0.9),
        (0, 1, 0, 0.8),
        (0, 1, 1, 0.98),
        (1, 0, 0, 0.4),
        (1, 0, 1, 0.94),
        (1, 1, 0, 0.88),
        (1, 1, 1, 0.988),
    ],
)
def test_the_noisy_or_of_fever(cold, flu, malaria, expected):
    """The chances that each inhibits the fever are 0.6, 0.2 and 0.1, and there is no leak.

    Source: S. Russell and P. Norvig, Artificial Intelligence: A Modern Approach, the section on the efficient
    representation of conditional distributions, table of P(fever | cold, flu, malaria).
    """
    model = model_of_fever({"cold": 40, "flu": 80, "malaria": 90}, leak=NOTHING)
    there = [name for name, held in (("cold", cold), ("flu", flu), ("malaria", malaria)) if held]
    assert fever_given(model, *there) == pytest.approx(expected, abs=1e-9)


@pytest.mark.parametrize("leak", [0.01, 0.1, 0.35])
def test_the_noisy_or_with_a_leak(leak):
    """1 - (1 - leak) times the product of 1 - p over the causes there.

    Source: J. Pearl, Probabilistic Reasoning in Intelligent Systems (1988), p. 184. There p leaves the leak out;
    here a cause is written as it is seen, leak included.
    """
    of_each = {"cold": 0.4, "flu": 0.8, "malaria": 0.9}
    with_leak = {name: 100 * (1 - (1 - leak) * (1 - p)) for name, p in of_each.items()}
    model = model_of_fever(with_leak, leak=100 * leak)
    for held in product([False, True], repeat=3):
        there = [name for name, there in zip(of_each, held, strict=True) if there]
        expected = 1 - (1 - leak) * np.prod([1 - of_each[name] for name in there])
        assert fever_given(model, *there) == pytest.approx(expected)


@pytest.mark.parametrize(
    ("under_first", "under_second", "decibans"),
    [
        (80, 40, 3.0103),
        (75, 15, 6.9897),
        (90, 9, 10.0),
        (63, 50, 1.0037),
        (9, 90, -10.0),
        (50, 50, 0.0),
    ],
)
def test_weights_of_evidence_in_decibans(under_first, under_second, decibans):
    """A factor of 10 is ten decibans, 2 is 10 log10 2 = 3.0103, 5 is 6.9897; about 1.26 makes a single one.

    Source: I. J. Good, Probability and the Weighing of Evidence (1950).
    """
    model = compile_evidence_model(
        tiny.knowledge(
            {"sign": tiny.observable(absent=50, present=50)},
            {"q": tiny.question("sign", SEEN, NOTHING)},
            {
                "first": tiny.cause(5, {"sign": tiny.figures(absent=100 - under_first, present=under_first)}),
                "second": tiny.cause(20, {"sign": tiny.figures(absent=100 - under_second, present=under_second)}),
            },
        )
    )
    weights = weights_of_evidence(model, {"q": "seen"}, ("first",), ("second",))
    assert weights == pytest.approx({"sign": decibans}, abs=5e-5)


DRAWS = [f"draw{number}" for number in range(10)]


def model_of_widgets():
    """One machine makes a third bad, the other, of which there are ten times as many, a sixth."""
    third = tiny.figures(absent=200 / 3, present=100 / 3)
    return compile_evidence_model(
        tiny.knowledge(
            {draw: tiny.observable(absent=500 / 6, present=100 / 6) for draw in DRAWS},
            {f"q_{draw}": tiny.question(draw, SEEN, NOTHING) for draw in DRAWS},
            {"worse_machine": tiny.cause(100 / 11, dict.fromkeys(DRAWS, third))},
            something_else=NOTHING,
        )
    )


def test_the_widget_test():
    """-10 dB before, +3.0103 for each bad widget, -0.9691 for each good one.

    The set-up is after E. T. Jaynes, Probability Theory: The Logic of Science (2003), chapter 4.
    """
    model = model_of_widgets()
    before = posterior(model, {})
    assert 10 * np.log10(before.of("worse_machine") / before.of_set(())) == pytest.approx(-10, abs=1e-6)
    answers = {f"q_{draw}": "seen" if number < 5 else "unseen" for number, draw in enumerate(DRAWS)}
    weights = weights_of_evidence(model, answers, ("worse_machine",), ())
    assert [weights[draw] for draw in DRAWS] == pytest.approx([3.0103] * 5 + [-0.9691] * 5, abs=5e-5)
    after = posterior(model, answers)
    assert 10 * np.log10(after.of("worse_machine") / after.of_set(())) == pytest.approx(0.2060, abs=5e-5)
    assert after.of("worse_machine") == pytest.approx(0.511856, abs=5e-7)


def model_of_alternatives(chances, tables):
    """Exclusive alternatives, and questions that each speak of a thing of its own: answers x alternatives."""
    names = tuple(f"alternative{number}" for number in range(len(chances)))
    return EvidenceModel(
        causes=names,
        hypotheses=tuple((name,) for name in names),
        prior_odds=np.array(chances, dtype=float),
        state_given={f"of_{q}": np.array(table, dtype=float) for q, table in tables.items()},
        report_given={q: np.eye(len(table)) for q, table in tables.items()},
        codes={q: tuple(f"answer{number}" for number in range(len(table))) for q, table in tables.items()},
        observable_of={q: f"of_{q}" for q in tables},
        needs={},
    )


def decision_of_payoffs(payoffs):
    """Alternatives x actions; what is paid out is a cost below zero, and nothing is a visit."""
    costs = -np.array(payoffs, dtype=float)
    names = [f"act{number}" for number in range(costs.shape[1])]
    return tiny.plain_decision(names, np.zeros(costs.shape[1]), costs)


PLANT = decision_of_payoffs([[200, 100, 0], [-180, -20, 0]])
"""A large plant, a small one or none, in a market that is favourable or not: thousands of dollars."""

LEAST = 1e-13
PERFECT = [[1 - LEAST, LEAST], [LEAST, 1 - LEAST]]
SURVEY = [[0.70, 0.20], [0.30, 0.80]]


def worth_of(model, decision):
    asked = list(model.codes)
    outlook = look_ahead(model, {}, posterior(model, {}), asked, dropped=0)
    candidates = [Candidate(question_id, effort=0.0, minutes=1.0) for question_id in asked]
    worths = one_step(decision, outlook, candidates, range(len(decision.actions)))
    return {worth.question_id: worth for worth in worths}


def test_the_expected_value_of_perfect_information():
    """Expected 10, 40 and 0; with perfect information 100; so it is worth 60.

    Source: B. Render, R. M. Stair and M. E. Hanna, Quantitative Analysis for Management, chapter on decision
    analysis, the example of the large and the small plant.
    """
    model = model_of_alternatives([1, 1], {"perfect": PERFECT})
    costs = expected_costs(PLANT, posterior(model, {}).marginals[None, :], np.ones(1))[0]
    assert costs == pytest.approx([-10, -40, 0])
    assert worth_of(model, PLANT)["perfect"].value == pytest.approx(60, abs=1e-9)


def test_the_expected_value_of_a_survey():
    """Positive in 70 % of favourable markets and in 20 % of others: posteriors 0.78 and 0.27, worth 19.

    Source: as above, the example's market survey (there 19.2, from posteriors rounded to two digits).
    """
    model = model_of_alternatives([1, 1], {"survey": SURVEY})
    outlook = look_ahead(model, {}, posterior(model, {}), ["survey"], dropped=0)
    assert outlook.given[0] @ outlook.probabilities == pytest.approx(0.45)
    after = [posterior(model, {"survey": code}).of("alternative0") for code in ("answer0", "answer1")]
    assert after == pytest.approx([0.77778, 0.27273], abs=5e-6)
    assert worth_of(model, PLANT)["survey"].value == pytest.approx(19, abs=1e-9)


def test_entropy_in_bits():
    """Chances of 1/2, 1/4 and 1/4 hold 1.5 bits, which an answer that tells all takes away.

    Source: C. E. Shannon, A Mathematical Theory of Communication (1948), section 6.
    """
    perfect = np.full((3, 3), LEAST) + np.eye(3) * (1 - 3 * LEAST)
    model = model_of_alternatives([2, 1, 1], {"perfect": perfect, "useless": np.full((2, 3), 0.5)})
    found = worth_of(model, decision_of_payoffs([[1, 0], [0, 1], [0, 1]]))
    assert found["perfect"].bits_per_minute == pytest.approx(1.5, abs=1e-9)
    assert found["useless"].bits_per_minute == pytest.approx(0, abs=1e-12)
