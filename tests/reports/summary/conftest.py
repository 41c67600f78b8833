"""Sessions of which summaries are made."""

from dataclasses import replace

import pytest

from assistant.interview.commands import GiveAnswer
from assistant.interview.conversation import Conversation
from assistant.interview.script import Script
from assistant.reports.summary.session import Told
from assistant.wording.languages import Languages
from assistant.wording.sentences import Sentences
from tests.reports.summary.sessions import begun, told_of

GATE = ("adult_stays", "no_child_or_pet_near", "no_home_oxygen", "oven_empty", "cooling_air_as_usual")
MEASURED = {
    "danger_now": ("none",),
    "what_goes_wrong": ("too_cold_or_slow",),
    "which_appliance": "built_in_knobs",
    "complaint_in_own_words": "The cake sinks – Łódź, Ελλάδα, Ёлка.",
    "person_at_oven": "yes",
    "may_look_cold": "off_and_cold",
    "look_over": ("none",),
    "ever_tripped": "never",
    "lamp_means": "lit_while_heating",
    "hot_gate": GATE,
    "thermometer_kind": "hanging_or_standing",
    "thermometer_log": ("2:00 60 C", "5:00 95 C", "10:00 130 C", "12:30 opened", "20:00 150 C", "30:00 155 C"),
    "lamp_watch": ("9:10 out", "11:40 lit", "13:00 out", "16:30 lit", "17:40 out", "20:00 end"),
}


def _answered(script: Script, answers: dict[str, object]) -> Conversation:
    conversation = begun(script)
    for question_id, value in answers.items():
        conversation.do(GiveAnswer(question_id, value))
    return conversation


@pytest.fixture(scope="session")
def measured(script: Script, sentences: Sentences) -> Told:
    """Two charts, and something typed in three alphabets."""
    return told_of(_answered(script, MEASURED), sentences)


@pytest.fixture(scope="session")
def dangerous(script: Script, sentences: Sentences) -> Told:
    return told_of(_answered(script, {"danger_now": ("sparks",)}), sentences)


@pytest.fixture(scope="session")
def tolds(measured: Told, dangerous: Told, script: Script, languages: Languages) -> tuple[Told, ...]:
    """Sessions of different kinds, the first also in a language that is longer and full of accents."""
    just_begun = told_of(begun(script), measured.sentences)
    return (measured, dangerous, just_begun, replace(measured, sentences=languages.sentences("x-marked", None)))
