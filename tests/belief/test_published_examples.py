"""Figures that others published, run through this program's own model."""

import pytest

from assistant.belief.hypotheses import compile_evidence_model
from assistant.belief.posterior import posterior, weights_of_evidence
from tests.belief import tiny


def test_the_screening_example_of_bayes_rule():
    """1 % have it, 80 % of them test positive, and so do 9.6 % of the others: 7.8 % of the positive have it.

    Source: G. Gigerenzer and U. Hoffrage, How to improve Bayesian reasoning without instruction, Psychological
    Review 102 (1995), 684-704, after D. M. Eddy (1982). To seven digits: 0.008 / (0.008 + 0.09504).
    """
    model = compile_evidence_model(
        tiny.knowledge(
            {"test": tiny.observable(negative=90.4, positive=9.6)},
            {"q": tiny.question("test", {"plus": ("positive",), "minus": ("negative",)}, tiny.NEXT_TO_NOTHING)},
            {"illness": tiny.cause(1, {"test": tiny.figures(negative=20, positive=80)})},
            something_else=tiny.NEXT_TO_NOTHING,
        )
    )
    assert posterior(model, {}).of("illness") == pytest.approx(0.01, abs=1e-9)
    found = posterior(model, {"q": "plus"}).of("illness")
    assert found == pytest.approx(0.0776398, abs=5e-8)
    assert f"{found:.1%}" == "7.8%"


@pytest.mark.parametrize(
    ("under_first", "under_second", "decibans"), [(80, 40, 3.0103), (90, 9, 10.0), (9, 90, -10.0), (50, 50, 0.0)]
)
def test_weights_of_evidence_in_decibans(under_first, under_second, decibans):
    """A factor of 10 is ten decibans, and a factor of 2 is 10 log10 2 = 3.0103.

    Source: I. J. Good, Probability and the Weighing of Evidence (1950).
    """
    model = compile_evidence_model(
        tiny.knowledge(
            {"sign": tiny.observable(absent=50, present=50)},
            {"q": tiny.question("sign", {"seen": ("present",), "unseen": ("absent",)}, tiny.NEXT_TO_NOTHING)},
            {
                "first": tiny.cause(5, {"sign": tiny.figures(absent=100 - under_first, present=under_first)}),
                "second": tiny.cause(20, {"sign": tiny.figures(absent=100 - under_second, present=under_second)}),
            },
        )
    )
    weights = weights_of_evidence(model, {"q": "seen"}, "first", "second")
    assert weights == pytest.approx({"sign": decibans}, abs=5e-5)
