"""What tells two causes apart, against sums over everything that could be answered."""

from itertools import product

import pytest

from assistant.authoring.separation import _reports, _sign_of, expected_weights, pairs_of_causes
from assistant.belief.hypotheses import CHOSEN, compile_evidence_model, item_key
from assistant.belief.posterior import weights_of_evidence
from assistant.interview.verdict import NONE
from assistant.knowledge.model import Care
from tests.belief import tiny


@pytest.fixture(scope="module")
def small():
    return tiny.sound_knowledge()


@pytest.fixture(scope="module")
def model(small):
    return compile_evidence_model(small)


def set_of(name):
    return () if name == NONE else (name,)


def share(model, name, reports, codes, cause):
    """P(these answers | cause), answer by answer and state by state."""
    total = 0.0
    for state, of_state in enumerate(model.state_given[name][:, model.place_of[set_of(cause)]]):
        for report, code in zip(reports, codes, strict=True):
            of_state *= model.report_given[report][model.codes[report].index(code), state]
        total += of_state
    return total


def test_the_weight_is_what_belief_makes_of_the_answers_on_average(small, model):
    names = [NONE, *small.causes]
    for name in small.observables:
        reports = [r for r, o in model.observable_of.items() if o == name]
        found = expected_weights(model, name, reports)
        for (row, first), (column, second) in product(enumerate(names), repeat=2):
            wanted = 0.0
            for codes in product(*(model.codes[r] for r in reports)):
                counted = {
                    r: c for r, c in zip(reports, codes, strict=True) if CHOSEN not in model.codes[r] or c == CHOSEN
                }
                weights = weights_of_evidence(model, counted, set_of(first), set_of(second))
                wanted += share(model, name, reports, codes, first) * sum(weights.values())
            assert found[row, column] == pytest.approx(wanted, abs=1e-9)


def test_every_pair_is_there_once_and_the_hardest_comes_first(small, model):
    pairs = pairs_of_causes(small, model, Care.OPEN_HOT)
    names = {NONE, *small.causes}
    assert {frozenset(pair.causes) for pair in pairs} == {frozenset((a, b)) for a in names for b in names if a != b}
    assert [pair.least for pair in pairs] == sorted(pair.least for pair in pairs)
    assert all(pair.told_by in small.observables for pair in pairs)


def test_who_may_be_asked_less_can_tell_less(small, model):
    near, far = (
        {frozenset(pair.causes): pair.least for pair in pairs_of_causes(small, model, care)}
        for care in (Care.TALK, Care.OPEN_HOT)
    )
    assert all(near[pair] <= far[pair] + 1e-9 for pair in near)
    assert any(near[pair] < far[pair] for pair in near)


def test_a_copy_of_a_cause_can_not_be_told_from_it(small):
    name, cause = next(iter(small.causes.items()))
    twins = small.model_copy(update={"causes": {**small.causes, "twin": cause}})
    first = pairs_of_causes(twins, compile_evidence_model(twins), Care.OPEN_HOT)[0]
    assert set(first.causes) == {name, "twin"}
    assert first.decibans == (pytest.approx(0), pytest.approx(0))
    assert first.same_ending


def test_a_sign_counts_once_for_each_observable_however_often_it_may_be_told(script):
    """By the project's rules: the screen, its plainer form and the sign's own question all tell of it."""
    reports = dict(_reports(script.knowledge, script.evidence_model, Care.OPEN_HOT))
    for sign_id, sign in script.knowledge.signs.items():
        for name in sign.told_when:
            telling = [r for r in reports[name] if _sign_of(script.knowledge, r) == sign_id]
            assert len(telling) == 1


def test_what_is_gone_through_counts_too_where_it_is_not_named(script):
    """Then the expected weight is never against the truth."""
    model = script.evidence_model
    report = item_key(item_key("how_it_is_used", "high_or_low_shelf"), "shelf_used")
    named, both = (expected_weights(model, "shelf_used", [report], gone) for gone in (frozenset(), {report}))
    assert (both >= -1e-12).all()
    assert both.max() > 1
    assert not (named >= -1e-12).all()
