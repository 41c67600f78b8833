"""Plays a drawn oven through a whole conversation, as its householder would answer.

The tables answer every question that reports something. The others are answered as a plain household would, where
the rules have such a question and such an answer; with 'not sure' where they haven't. Nobody measures.

Imports nothing of this folder and little else of the package, so that an earlier tree can be played by these lines.
"""

import time
from collections.abc import Mapping
from typing import Any

from assistant.errors import OvensideError
from assistant.interview.answers import value_of
from assistant.interview.commands import Command, GiveAnswer, SayNotSure, Start
from assistant.interview.conversation import Conversation, utc_now
from assistant.interview.log import SessionRecord
from assistant.interview.script import Script
from assistant.interview.verdict import Verdict
from assistant.interview.view import QuestionView
from assistant.knowledge.danger_questions import SIGN_PREFIX
from assistant.knowledge.model import Question
from assistant.store.memory import MemoryStore

REGION = "great_britain"
ROLE = "householder"
LANG = "en-GB"
MOST_QUESTIONS = 120
PLAIN_TEXT = "Ground floor, after six."
PLAIN_ANSWERS: Mapping[str, Any] = {
    "danger_now": ["none"],
    "danger_plainly": ["none"],
    "which_appliance": "electric_oven",
    "whose_oven": "own",
    "guarantee": "no",
    "may_look_cold": "off_and_cold",
    "oven_is_off": "off_at_breaker",
    "hot_gate": ["adult_stays", "no_child_or_pet_near", "no_home_oxygen", "oven_empty", "cooling_air_as_usual"],
    "breaker_went_when": "found_later",
    "knob_while_heating": "hardly_ever",
    "lamp_means": "lit_while_heating",
    "age_of_oven": 6,
    "since_when": "this_month",
    "earlier_repairs": "never",
}


def answer_to(script: Script, question_id: str, oven: Mapping[str, Any], mistakes: float, unsure: float) -> Command:
    """`oven` is a DrawnOven as plain data; the rates are shares of one."""
    question = script.knowledge.questions[question_id]
    given = {**PLAIN_ANSWERS, **oven["fixed"]}
    if question_id in given:
        return _give_if_taken(question_id, question, given[question_id])
    if question_id.startswith(SIGN_PREFIX):
        return _deny(question_id, question)
    if question.kind == "text":
        return GiveAnswer(question_id, PLAIN_TEXT)
    if getattr(question, "run", None) is not None:
        return SayNotSure(question_id)
    if question.tells == "functions":
        return GiveAnswer(question_id, list(question.choices))
    reply = oven["replies"].get(question_id)
    if reply is None or reply["doubt"] < unsure:
        return SayNotSure(question_id)
    code = reply["wrong"] if reply["slip"] < mistakes else reply["code"]
    if question.number is None and code not in question.choices:
        return SayNotSure(question_id)
    return GiveAnswer(question_id, value_of(question, code))


def _give_if_taken(question_id: str, question: Question, value: Any) -> Command:
    """'Not sure' where the question doesn't take such an answer, or where there is nothing to say."""
    if question.kind == "choice":
        taken = value in question.choices
    elif question.kind == "choices":
        taken = isinstance(value, list) and bool(value) and set(value) <= question.choices.keys()
    else:
        number = question.number
        taken = number is not None and number.least <= value <= number.most
    return GiveAnswer(question_id, value) if taken else SayNotSure(question_id)


def _deny(question_id: str, question: Question) -> Command:
    """To a question about a danger sign: the answer that is no danger, 'no' before others."""
    harmless = [choice_id for choice_id, choice in question.choices.items() if choice.signals is None]
    best = "no" if "no" in harmless else next(iter(harmless), None)
    return SayNotSure(question_id) if best is None else GiveAnswer(question_id, best)


def play(script: Script, oven: Mapping[str, Any], mistakes: float, unsure: float) -> dict[str, Any]:
    """One interview to its verdict, in the oven's region; what was asked, and how it ended. After a stop the oven is
    switched off and said to be, and what may still be talked about is asked.
    """
    region = oven["region"] if oven["region"] in script.knowledge.regions else REGION
    began = time.perf_counter()
    record = SessionRecord(session_id="0" * 32, code_hash=str(oven["number"]), name=None, created_at=utc_now())
    conversation = Conversation(script, MemoryStore(), record)
    conversation.start(Start(ROLE, region, LANG, "single"))
    asked: list[str] = []
    while (question_id := _asked_for(view := conversation.view())) is not None:
        asked.append(question_id)
        if len(asked) > MOST_QUESTIONS:
            raise OvensideError(f"oven {oven['number']}: no verdict after {asked}")
        conversation.do(answer_to(script, question_id, oven, mistakes, unsure))
    assert isinstance(view, Verdict)
    questions = script.knowledge.questions
    return {
        "number": oven["number"],
        "asked": [_asked(question_id, questions[question_id]) for question_id in asked],
        "action": view.action,
        "details": {name: value for name, value in view.details.items() if name != "steps"},
        "named": list(getattr(view, "named", view.hypotheses)),
        "seconds": time.perf_counter() - began,
    }


def _asked_for(view: QuestionView | Verdict) -> str | None:
    """The question that is put, be it by a verdict that asks whether the oven is off; None at the end."""
    if isinstance(view, Verdict):
        then = view.details.get("then")
        return str(then) if then else None
    return view.id


def _asked(question_id: str, question: Question) -> dict[str, Any]:
    return {
        "id": question_id,
        "stage": question.stage,
        "care": question.care.value,
        "minutes": question.minutes.value,
    }
