"""Entries in sentences: everything can be explained, and what is said of it holds."""

import io
from dataclasses import replace

import numpy as np
import pytest

from assistant.authoring.explain import book_of, explain, explanation
from assistant.authoring.explained import percent
from assistant.authoring.explained_causes import weights_of_answers
from assistant.belief.hypotheses import NOT_CHOSEN
from assistant.belief.posterior import posterior
from assistant.interview.script import script_of
from assistant.knowledge.load import load_knowledge
from assistant.wording.locale import load_wording
from tests.conftest import ROOT
from tests.knowledge.broken import LOCALES, SOUND, english

KNOWLEDGE = load_knowledge(SOUND, None)
SCRIPT = script_of(KNOWLEDGE)


def said(wanted, folder=SOUND, script=SCRIPT, wording=None):
    out = io.StringIO()
    status = explain(folder, script, wanted, wording or english(), out)
    return status, out.getvalue()


def test_every_entry_of_a_small_folder_is_explained():
    book = book_of(SOUND, SCRIPT, english())
    names = {name for entries in book.entries.values() for name in entries}
    assert set(KNOWLEDGE.questions) <= names
    for name in names:
        status, text = said(name)
        assert status == 0
        assert text.startswith(f"{name}, ")
        assert "What it says" in text


def test_one_of_each_kind_of_the_projects_rules_is_explained_in_each_language(script):
    book = book_of(ROOT / "rules", script, english())
    marked = replace(book, wording=load_wording(LOCALES, "x-marked"))
    for entries in book.entries.values():
        name = next(iter(entries))
        assert list(explanation(book, name))
        assert all("⟦" in line for line in explanation(marked, name) if line)


def test_a_name_that_two_kinds_have_is_explained_twice():
    kinds = [kind for kind, entries in book_of(SOUND, SCRIPT, english()).entries.items() if "seal" in entries]
    assert said("seal")[1].count("\n\n") == len(kinds) - 1


def test_an_unknown_name_is_a_sentence_with_names_near_it():
    name = next(iter(KNOWLEDGE.causes))
    status, text = said(name[:-1])
    assert status == 1
    first, second = text.splitlines()
    assert first == f"Nothing in {SOUND} is called “{name[:-1]}”."
    assert second.startswith("Near it: ")
    assert name in second
    assert said("qqqq") == (1, f"Nothing in {SOUND} is called “qqqq”.\n")
    assert said("")[0] == 1


@pytest.mark.parametrize("cause", KNOWLEDGE.causes)
def test_the_weight_of_an_answer_is_what_it_does_to_the_odds_of_the_cause(cause):
    """Belief before and after that answer alone: ten times the logarithm of how much the odds grew."""
    model = SCRIPT.evidence_model

    def log_odds(answers):
        probability = posterior(model, answers).of(cause)
        return 10 * np.log10(probability / (1 - probability))

    weights = list(weights_of_answers(model, cause))
    assert weights
    for report, code, decibans in weights:
        assert code != NOT_CHOSEN
        assert decibans == pytest.approx(log_odds({report: code}) - log_odds({}), abs=1e-9)


def test_an_effect_names_who_has_it_and_where_they_differ(script):
    text = "\n".join(explanation(book_of(ROOT / "rules", script, english()), "no_heat_above"))
    for cause_id, cause in script.knowledge.causes.items():
        assert (f"  {cause_id}" in text.split("The causes that have it")[1]) == (cause.effect == "no_heat_above")
    assert "top_element_open, which shows otherwise in runs_too_cold" in text


def test_a_cause_tells_which_rows_come_from_its_effect(script):
    knowledge = script.knowledge
    cause = knowledge.causes["top_element_open"]
    text = "\n".join(explanation(book_of(ROOT / "rules", script, english()), "top_element_open"))
    for name in cause.shows:
        row = next(line for line in text.splitlines() if line.startswith(f"  {name}: "))
        taken_over = cause.shows_as(knowledge.effects["no_heat_above"], name)
        assert row.endswith("from its effect “no_heat_above”") == taken_over
        assert not (taken_over and f"  shows.{name}." in text)


def test_a_test_tells_what_it_separates(script):
    text = "\n".join(explanation(book_of(ROOT / "rules", script, english()), "test_selector"))
    assert "all_close: the likeliest of a sound oven" in text
    assert "one_below_open: the likeliest where there is selector_contact_below" in text
    assert "between top_element_open and selector_contact_above, which look alike" in text


def test_every_test_and_effect_of_the_projects_rules_is_explained(script):
    book = book_of(ROOT / "rules", script, english())
    tests = [q for q, question in script.knowledge.questions.items() if question.stage == "tests"]
    assert tests
    for name in (*tests, *script.knowledge.effects):
        assert len(list(explanation(book, name))) > 4


def test_numbers_are_told_with_source_and_range():
    for name, cause in KNOWLEDGE.causes.items():
        least, most = cause.base_rate.range
        text = said(name)[1]
        assert f"base_rate: {cause.base_rate.value:g} %, from {least:g} to {most:g}, source: assumed" in text


def test_what_opens_a_question_and_what_a_finding_does_is_told():
    question_id, question = next((q, x) for q, x in KNOWLEDGE.questions.items() if x.ask_when)
    assert f"opened by one of these findings: {', '.join(question.ask_when)}" in said(question_id)[1]
    for finding_id, finding in KNOWLEDGE.findings.items():
        text = said(finding_id)[1]
        assert "When it holds" in text
        if finding.then.allows_care:
            assert f"allows care up to “{finding.then.allows_care.value}”" in text


@pytest.mark.parametrize(
    ("share", "shown"), [(0.5, "50"), (0.999, "99.9"), (1.0, "100"), (0.002, "0.2"), (0.0213, "2.1")]
)
def test_percentages_keep_the_digits_that_say_something(share, shown):
    assert percent(share) == shown
