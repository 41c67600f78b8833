import random
from dataclasses import dataclass

import pytest

from assistant.belief import calibration as calibration_module
from assistant.belief.calibration import ELSE, calibration, prequential_cases
from assistant.belief.hypotheses import compile_evidence_model
from assistant.belief.learning import base_rates, learned_from, with_rates
from assistant.belief.posterior import posterior
from tests.belief import tiny
from tests.belief.outcomes import outcome


@pytest.fixture(scope="module")
def known():
    return tiny.sound_knowledge()


def test_the_first_outcome_is_forecast_with_the_experts_rates(known):
    (case,) = prequential_cases([outcome(evidence={"browning_seen": "hardly"})], known)
    model = compile_evidence_model(known)
    after = posterior(model, {"browning_seen": "hardly"})
    assert case.forecast.of_causes == {cause: pytest.approx(after.of(cause)) for cause in known.causes}
    assert case.by_rates_alone.of_causes == {
        cause: pytest.approx(posterior(model, {}).of(cause)) for cause in known.causes
    }
    assert case.found == {"weak_element"}


def test_every_outcome_is_forecast_before_it_is_counted(known):
    lines = [outcome(number, group=group) for number, group in enumerate(["visited", "solved_by_phone", "visited"])]
    cases = list(prequential_cases(lines, known))
    for index, case in enumerate(cases):
        learned = learned_from(lines[:index], known, {})
        rates = base_rates(known.model_copy(update={"learned": learned}))
        expected = posterior(compile_evidence_model(with_rates(known, rates)), {})
        assert case.forecast.of_causes["weak_element"] == pytest.approx(expected.of("weak_element"))
    said = [case.forecast.of_causes["weak_element"] for case in cases]
    assert said == sorted(said)
    assert said[0] < said[-1]


def test_what_the_rules_have_learned_already_is_left_out(known):
    lines = [outcome(1), outcome(2)]
    taught = known.model_copy(update={"learned": learned_from(lines, known, {})})
    assert calibration(lines, taught) == calibration(lines, known)


def test_outcomes_that_show_nothing_are_neither_forecast_nor_counted(known):
    lines = [outcome(1, result="no_access"), outcome(2), outcome(3), outcome(3, result="back_within_30_days")]
    assert len(list(prequential_cases(lines, known))) == 1
    assert calibration(lines[:1], known) is None


def test_a_part_that_is_not_fitted_rules_its_causes_out(known):
    (case,) = prequential_cases([outcome(not_fitted=("lower_element",))], known)
    assert case.forecast.of_causes["weak_element"] == 0
    assert case.by_rates_alone.of_causes["weak_element"] > 0


def test_answers_that_todays_rules_do_not_have_are_left_out(known):
    old = outcome(evidence={"browning_seen": "gone", "gone": "yes", "seal_seen": "has_gaps"})
    new = outcome(evidence={"seal_seen": "has_gaps"})
    assert calibration([old], known) == calibration([new], known)
    assert calibration([new], known) != calibration([outcome()], known)


def test_what_no_hypothesis_says_counts_as_something_else(known):
    both = outcome(1, causes_found=("weak_element", "worn_seal"))
    unnamed = outcome(1, causes_found=("something_else",))
    cases = [next(prequential_cases([line], known)) for line in (both, unnamed)]
    assert all(case.forecast.of_hypotheses[ELSE] > 0 for case in cases)
    scores = [calibration([line], known).scores for line in (both, unnamed)]
    assert scores[0].log_of_hypotheses == pytest.approx(scores[1].log_of_hypotheses)
    assert scores[0].brier_of_causes > scores[1].brier_of_causes


@dataclass(frozen=True)
class SeveralAtOnce:
    """A belief whose hypotheses are tuples of causes."""

    def of(self, cause):
        return {"weak_element": 0.5, "worn_seal": 0.4}.get(cause, 0.0)

    def ranked(self):
        both, weak = ("worn_seal", "weak_element"), ("weak_element",)
        return ((both, 0.4), ((), 0.3), (("something_else",), 0.2), (weak, 0.1))


def test_hypotheses_of_several_causes_are_scored_as_such(known, monkeypatch):
    monkeypatch.setattr(calibration_module, "posterior", lambda *_: SeveralAtOnce())
    found = calibration([outcome(causes_found=("weak_element", "worn_seal"))], known)
    assert found.scores.brier_of_hypotheses == pytest.approx(0.6**2 + 0.3**2 + 0.2**2 + 0.1**2)
    assert found.scores.brier_of_causes == pytest.approx((0.5**2 + 0.6**2) / 3)
    (leader,) = found.bands_of_leader
    assert (leader.predicted, leader.observed, leader.count) == (0.4, 1.0, 1)
    nothing = calibration([outcome(result="no_fault_found")], known)
    assert nothing.scores.brier_of_hypotheses == pytest.approx(0.4**2 + 0.7**2 + 0.2**2 + 0.1**2)


def test_scores_by_hand(known):
    (case,) = prequential_cases([outcome()], known)
    said = case.forecast.of_hypotheses
    scores = calibration([outcome()], known).scores
    truth = frozenset({"weak_element"})
    assert scores.brier_of_hypotheses == pytest.approx(sum((p - (h == truth)) ** 2 for h, p in said.items()))
    causes = case.forecast.of_causes
    assert scores.brier_of_causes == pytest.approx(
        sum((p - (cause == "weak_element")) ** 2 for cause, p in causes.items()) / len(causes)
    )


def simulated_outcomes(known, count, seed=3):
    """Outcomes of ovens made by the model itself, all of them looked at."""
    chance = random.Random(seed)
    model = compile_evidence_model(known)
    lines = []
    for number in range(count):
        index = chance.choices(range(len(model.hypotheses)), model.prior_odds)[0]
        state = {
            name: chance.choices(range(len(table)), table[:, index])[0] for name, table in model.state_given.items()
        }
        evidence = {
            question: chance.choices(model.codes[question], table[:, state[model.observable_of[question]]])[0]
            for question, table in model.report_given.items()
        }
        cause = model.hypotheses[index]
        found = {"result": "no_fault_found"} if cause == "none" else {"causes_found": (cause,)}
        lines.append(outcome(number, evidence=evidence, **found))
    return lines


def test_simulated_by_the_model_itself_answers_help_and_what_is_called_likely_is(known):
    found = calibration(simulated_outcomes(known, 600), known)
    assert found.cases == 600
    for name in ("brier_of_hypotheses", "log_of_hypotheses", "brier_of_causes", "log_of_causes"):
        assert getattr(found.scores, name) < getattr(found.scores_of_rates_alone, name)
    for bands, count in ((found.bands_of_leader, 600), (found.bands_of_causes, 600 * len(known.causes))):
        assert sum(band.count for band in bands) == count
        near = [band.observed_low - 0.03 <= band.predicted <= band.observed_high + 0.03 for band in bands]
        assert sum(near) >= len(bands) - 1
