"""Plays drawn ovens through whole conversations of whichever tree `assistant` is imported from.

    python tests/benchmarks/played_interviews.py TREE OVENS.json RESULTS.json --mistakes 5 --unsure 10

Imports nothing but `assistant`, so that an earlier tree can be played by the same lines: run it with PYTHONPATH=TREE.
"""

import argparse
import json
import time
from pathlib import Path
from typing import Any

from assistant.interview.answers import value_of
from assistant.interview.commands import Command, GiveAnswer, SayNotSure, Start
from assistant.interview.conversation import Conversation, utc_now
from assistant.interview.log import SessionRecord
from assistant.interview.script import Script, script_of
from assistant.interview.verdict import Verdict
from assistant.knowledge.load import load_knowledge
from assistant.store.memory import MemoryStore

REGION = "great_britain"
MOST_QUESTIONS = 90
FIXED: dict[str, Any] = {
    "danger_now": ["none"],
    "danger_plainly": ["none"],
    "which_appliance": "electric_oven",
    "whose_oven": "own",
    "guarantee": "no",
    "may_look_cold": "off_and_cold",
    "look_over": ["none"],
    "hot_gate": ["adult_stays", "no_child_or_pet_near", "no_home_oxygen", "oven_empty", "cooling_air_as_usual"],
    "breaker_went_when": "found_later",
    "knob_while_heating": "hardly_ever",
    "lamp_means": "lit_while_heating",
    "age_of_oven": 6,
    "since_when": "this_month",
    "earlier_repairs": "never",
}


def answer_to(script: Script, question_id: str, oven: dict[str, Any], mistakes: float, unsure: float) -> Command:
    question = script.knowledge.questions[question_id]
    fixed = {**FIXED, **oven["fixed"]}
    if question_id in fixed:
        return GiveAnswer(question_id, fixed[question_id])
    if question_id.startswith("sign_"):
        return GiveAnswer(question_id, "no")
    if question.kind == "text":
        return GiveAnswer(question_id, "Ground floor, after six.")
    if question.tells == "functions":
        return GiveAnswer(question_id, list(question.choices))
    reply = oven["replies"].get(question_id)
    if reply is None or reply["doubt"] < unsure:
        return SayNotSure(question_id)
    code = reply["wrong"] if reply["slip"] < mistakes else reply["code"]
    if question.number is None and code not in question.choices:
        return SayNotSure(question_id)
    return GiveAnswer(question_id, value_of(question, code))


def play(script: Script, oven: dict[str, Any], mistakes: float, unsure: float) -> dict[str, Any]:
    """One interview to its first verdict; what was asked, and how it ended."""
    began = time.perf_counter()
    record = SessionRecord(session_id="0" * 32, code_hash=str(oven["number"]), name=None, created_at=utc_now())
    conversation = Conversation(script, MemoryStore(), record)
    conversation.start(Start("householder", REGION, "en-GB", "single"))
    asked: list[str] = []
    while not isinstance(view := conversation.view(), Verdict):
        asked.append(view.id)
        if len(asked) > MOST_QUESTIONS:
            raise RuntimeError(f"oven {oven['number']}: no verdict after {asked}")
        conversation.do(answer_to(script, view.id, oven, mistakes, unsure))
    questions = script.knowledge.questions
    return {
        "number": oven["number"],
        "asked": [_asked(question_id, questions[question_id]) for question_id in asked],
        "action": view.action,
        "details": {name: value for name, value in view.details.items() if name != "steps"},
        "named": list(getattr(view, "named", view.hypotheses)),
        "seconds": time.perf_counter() - began,
    }


def _asked(question_id: str, question: Any) -> dict[str, Any]:
    return {
        "id": question_id,
        "stage": question.stage,
        "care": question.care.value,
        "minutes": question.minutes.value,
    }


def main() -> None:
    arguments = argparse.ArgumentParser(description="Play drawn ovens through one tree.")
    arguments.add_argument("tree", type=Path)
    arguments.add_argument("ovens", type=Path)
    arguments.add_argument("results", type=Path)
    arguments.add_argument("--mistakes", type=float, default=0.0, help="percent")
    arguments.add_argument("--unsure", type=float, default=10.0, help="percent")
    chosen = arguments.parse_args()
    script = script_of(load_knowledge(chosen.tree.resolve() / "rules", None))
    ovens = json.loads(chosen.ovens.read_text("utf-8"))
    results = [play(script, oven, chosen.mistakes / 100, chosen.unsure / 100) for oven in ovens]
    chosen.results.write_text(json.dumps(results), "utf-8")


if __name__ == "__main__":
    main()
