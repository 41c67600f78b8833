import random

import pytest

from assistant.belief.calibration import calibration, prequential_cases
from assistant.belief.hypotheses import compile_evidence_model
from assistant.belief.learning import base_rates, learned_from
from assistant.belief.posterior import posterior
from tests.belief import tiny
from tests.belief.outcomes import outcome


@pytest.fixture(scope="module")
def known():
    return tiny.sound_knowledge()


def test_the_first_outcome_is_forecast_with_the_experts_rates(known):
    (case,) = prequential_cases([outcome(evidence={"browning_seen": "hardly"})], known)
    model = compile_evidence_model(known)
    assert case.forecast.probabilities == pytest.approx(posterior(model, {"browning_seen": "hardly"}).probabilities)
    assert case.by_rates_alone.probabilities == pytest.approx(posterior(model, {}).probabilities)
    assert list(case.found) == [cause == "weak_element" for cause in model.causes]
    assert model.hypotheses[case.came] == ("weak_element",)


def test_every_outcome_is_forecast_before_it_is_counted(known):
    lines = [outcome(number, group=group) for number, group in enumerate(["visited", "solved_by_phone", "visited"])]
    cases = list(prequential_cases(lines, known))
    for index, case in enumerate(cases):
        learned = learned_from(lines[:index], known, {})
        rates = base_rates(known.model_copy(update={"learned": learned}))
        expected = posterior(compile_evidence_model(known, rates), {})
        assert case.forecast.probabilities == pytest.approx(expected.probabilities, abs=1e-12)
    said = [case.forecast.of("weak_element") for case in cases]
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
    assert case.forecast.of("weak_element") == 0
    assert case.by_rates_alone.of("weak_element") > 0


def test_answers_that_todays_rules_do_not_have_are_left_out(known):
    old = outcome(evidence={"browning_seen": "gone", "gone": "yes", "seal_seen": "has_gaps"})
    new = outcome(evidence={"seal_seen": "has_gaps"})
    assert calibration([old], known) == calibration([new], known)
    assert calibration([new], known) != calibration([outcome()], known)


def test_two_causes_at_once_are_a_hypothesis_of_their_own(known):
    (case,) = prequential_cases([outcome(causes_found=("weak_element", "worn_seal"))], known)
    assert case.forecast.model.hypotheses[case.came] == ("weak_element", "worn_seal")


def test_what_no_hypothesis_says_counts_as_something_else(known):
    three = outcome(1, causes_found=("weak_element", "worn_seal", "something_else"))
    unnamed = outcome(1, causes_found=("something_else",))
    cases = [next(prequential_cases([line], known)) for line in (three, unnamed)]
    assert {case.forecast.model.hypotheses[case.came] for case in cases} == {("something_else",)}
    scores = [calibration([line], known).scores for line in (three, unnamed)]
    assert scores[0].log_of_hypotheses == pytest.approx(scores[1].log_of_hypotheses)
    assert scores[0].brier_of_causes > scores[1].brier_of_causes


def test_scores_by_hand(known):
    (case,) = prequential_cases([outcome()], known)
    said = dict(case.forecast.ranked())
    scores = calibration([outcome()], known).scores
    assert scores.brier_of_hypotheses == pytest.approx(
        sum((p - (hypothesis == ("weak_element",))) ** 2 for hypothesis, p in said.items())
    )
    marginals = {cause: case.forecast.of(cause) for cause in case.forecast.model.causes}
    assert scores.brier_of_causes == pytest.approx(
        sum((p - (cause == "weak_element")) ** 2 for cause, p in marginals.items()) / len(marginals)
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
        causes = model.hypotheses[index]
        found = {"causes_found": causes} if causes else {"result": "no_fault_found"}
        lines.append(outcome(number, evidence=evidence, **found))
    return lines


def test_simulated_by_the_model_itself_answers_help_and_what_is_called_likely_is(known):
    found = calibration(simulated_outcomes(known, 600), known)
    assert found.cases == 600
    for name in ("brier_of_hypotheses", "log_of_hypotheses", "brier_of_causes", "log_of_causes"):
        assert getattr(found.scores, name) < getattr(found.scores_of_rates_alone, name)
    for bands, count in ((found.bands_of_leader, 600), (found.bands_of_causes, 600 * (len(known.causes) + 1))):
        assert sum(band.count for band in bands) == count
        near = [band.observed_low - 0.03 <= band.predicted <= band.observed_high + 0.03 for band in bands]
        assert sum(near) >= len(bands) - 1
