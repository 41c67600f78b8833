"""An interview with its trace on, typed and piped."""

import io
import re

import pytest

from assistant.authoring.cases import begin
from assistant.authoring.trial import Trial
from assistant.interview.next_question import next_chosen
from assistant.interview.verdict import Verdict
from assistant.interview.view import QuestionView

REGION = "great_britain"


@pytest.fixture
def tried(script, languages):
    """Runs a trial on these lines; what was printed, and the conversation as it was left."""

    def tried(*lines, role="householder", lang="en-GB", answers=None):
        conversation = begin(script, REGION, role)
        out = io.StringIO()
        typed = io.StringIO("".join(f"{line}\n" for line in lines))
        sentences = languages.sentences(lang, REGION)
        trial = Trial(
            conversation, sentences, languages.listener(lang), typed, out, answers or {}, "case.yaml", echo=True
        )
        assert trial.run("rules") == 0
        return out.getvalue(), conversation

    return tried


def test_no_line_at_all_ends_cleanly_after_the_first_question(tried):
    text, conversation = tried()
    assert conversation.state.answers == {}
    assert "[danger_now]" in text
    assert text.endswith("The input ended before the verdict.\n")


def test_answers_are_taken_by_number_by_id_and_in_words(tried, knowledge):
    choices = list(knowledge.questions["what_goes_wrong"].choices)
    for typed in ("5", choices[4]):
        _, conversation = tried("none", typed)
        assert conversation.state.answers["what_goes_wrong"].value == (choices[4],)
    _, conversation = tried("none of these", f"{choices[4]}, {choices[7]}", "electric")
    assert conversation.state.answers["what_goes_wrong"].value == (choices[4], choices[7])
    assert conversation.state.answers["which_appliance"].value == "electric_oven"


@pytest.mark.parametrize("nonsense", ["xyzzy", "999", "\x1b[2J", "", "change"])
def test_nonsense_is_a_sentence_and_the_question_stays(tried, nonsense):
    text, conversation = tried("none", nonsense, "5")
    assert conversation.state.answers["what_goes_wrong"].value
    assert "\x1b" not in text
    assert ("isn't understood" in text) != ("can't be done" in text)


def test_findings_that_fire_are_named_with_what_they_rest_on(tried):
    text, conversation = tried("none", "pale_below")
    fired = conversation.assessment.trace.concluded
    rests_on = dict(re.findall(r"\+ (\w+), by (\S+)", text))
    assert rests_on.keys() == fired != set()
    through_others = {finding for finding, ground in rests_on.items() if ground in fired}
    assert {rests_on[finding] for finding in fired - through_others} == {"what_goes_wrong=pale_below"}
    assert through_others == {"cooks_badly"}


def test_what_moved_is_shown_before_and_after(tried):
    text, conversation = tried("none", "pale_below")
    first, probability = max(conversation.assessment.posterior.causes(), key=lambda each: each[1])
    line = next(line for line in reversed(text.splitlines()) if line.strip().startswith(first) and "→" in line)
    assert f"→ {100 * probability:5.1f} %" in line


def test_the_ground_of_each_question_is_said(tried, script):
    """Answered with 'not sure' from the first to the last: as many grounds as questions, each of its own kind."""
    text, conversation = tried("none", "pale_below", *["not sure"] * 60)
    questions = text.count("[danger_now]") + len(conversation.state.answers) - 1
    assert text.count("Why this one: ") == questions
    for part in ("danger comes before", "asks for it", "in the order of the stage", "expected to save"):
        assert part in text
    assert next_chosen(script, conversation.assessment) is None


def test_the_verdict_stands_with_what_each_ending_costs(tried, sentences):
    text, conversation = tried("none", "pale_below", *["not sure"] * 60)
    verdict = conversation.view()
    assert isinstance(verdict, Verdict)
    assert sentences.headline(verdict) in text
    costs = text.split("expected to cost; the verdict takes the least:\n")[1].splitlines()
    figures = [float(line.split()[0]) for line in costs]
    assert len(figures) > 1
    assert figures == sorted(figures)


def test_a_stop_shows_the_verdict_then_asks_whether_the_oven_is_off(tried):
    text, conversation = tried("fire")
    assert conversation.assessment.danger.stops
    assert "stop: fire (sign fire)" in text
    assert "danger stops everything" in text
    text, conversation = tried("too_hot", "1", "1")
    assert "[oven_is_off]" in text
    assert conversation.state.answers["oven_is_off"]


def test_danger_in_a_typed_line_is_heard(tried):
    text, conversation = tried("none", "pale_below", "it sparks at the back")
    assert "Heard as danger: sparks." in text
    assert "sparks" in conversation.state.heard


def test_back_takes_the_latest_answer_back(tried):
    text, conversation = tried("back", "none", "pale_below", "back")
    assert "There is no earlier answer" in text
    assert "The answer to what_goes_wrong is taken back." in text
    assert set(conversation.state.answers) == {"danger_now"}


def test_answers_from_a_file_are_given_when_asked_and_the_rest_is_typed(tried):
    answers = {"danger_now": ["none"], "what_goes_wrong": ["pale_below"], "which_appliance": "spaceship"}
    text, conversation = tried("electric", answers=answers)
    assert "pale_below  (from case.yaml)" in text
    assert "The answer to which_appliance in case.yaml isn't taken: " in text
    assert conversation.state.answers["which_appliance"].value == "electric_oven"


def test_stop_leaves_and_an_engineer_may_try_too(tried):
    text, conversation = tried("none", "stop", "5", role="engineer")
    assert text.endswith("Left before the verdict.\n")
    assert conversation.state.role == "engineer"
    assert isinstance(conversation.view(), QuestionView)


def test_every_sentence_is_in_the_language(tried):
    text, _ = tried("none", "5", lang="x-marked")
    written = [line for line in text.splitlines() if line and not line.startswith(">")]
    assert all("⟦" in line for line in written)
