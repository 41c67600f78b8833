"""Kills a real `ovenside drive` at random moments and looks whether an acknowledged answer is missing.

    python -m tests.benchmarks.driven_kills --kills 200 --seed 1

Ends with status 1 if one is, or if a store can't be read afterwards.
"""

import argparse
import random
import sys
import tempfile
import threading
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from assistant.errors import OvensideError
from assistant.interview.state import State, fold
from assistant.knowledge.danger_questions import OVEN_IS_OFF, is_danger_question
from assistant.knowledge.load import load_knowledge
from assistant.store import open_store
from tests.drive.driven import Driven, catalogue
from tests.drive.random_talk import Catalogue, sound_message

SESSIONS = 4
LATEST_KILL_S = 1.0
BEFORE_ANY_ANSWER = 0.2
"""The share of kills while the program is still starting; the others come some time after its first answer."""


@dataclass
class Outcome:
    kills: int = 0
    acknowledged: int = 0
    lost: int = 0
    unreadable: int = 0
    before_first_answer: int = 0


@dataclass
class Expected:
    """What each session must hold after the lines that were acknowledged: question -> status and value."""

    withdraws: dict[tuple[str, str], str]
    answers: dict[str, dict[str, tuple[str, Any]]] = field(default_factory=dict)

    def touched_by(self, message: dict[str, Any]) -> frozenset[str]:
        """The questions whose answers the message gives or takes back."""
        value = message.get("value")
        other = self.withdraws.get((message.get("id", ""), value)) if isinstance(value, str) else None
        return frozenset(question for question in (message.get("id"), other) if question)

    def take(self, message: dict[str, Any]) -> None:
        answers = self.answers.setdefault(message["session"], {})
        match message["type"]:
            case "answer":
                value = message["value"]
                answers[message["id"]] = ("answered", tuple(sorted(value)) if isinstance(value, list) else value)
                if isinstance(value, str):
                    answers.pop(self.withdraws.get((message["id"], value), ""), None)
            case "not_sure":
                answers[message["id"]] = ("not_sure", None)
            case "skip":
                about_danger = is_danger_question(message["id"]) or message["id"] == OVEN_IS_OFF
                answers[message["id"]] = ("not_sure" if about_danger else "skipped", None)
            case "withdraw":
                answers.pop(message["id"], None)


def withdrawing_answers() -> dict[tuple[str, str], str]:
    """(question, choice) -> the question whose answer that choice takes back, in the project's own rules."""
    rules = Path(__file__).parents[2] / "rules"
    return {
        (question_id, choice_id): choice.withdraws
        for question_id, question in load_knowledge(rules, None).questions.items()
        for choice_id, choice in question.choices.items()
        if choice.withdraws is not None
    }


def kill_once(store: Path, questions: Catalogue, chance: random.Random, outcome: Outcome) -> None:
    expected = Expected(withdrawing_answers())
    driven = Driven(store)
    killer = threading.Timer(chance.uniform(0, LATEST_KILL_S), driven.process.kill)
    early = chance.random() < BEFORE_ANY_ANSWER
    if early:
        killer.start()
    names = [f"run{outcome.kills}-{number}" for number in range(SESSIONS)]
    pending: dict[str, Any] | None = None
    acknowledged = 0
    try:
        for message in _messages(names, questions, chance):
            pending = message
            driven.send(message)
            answer = driven.receive()
            if answer is None:
                break
            if answer["type"] != "problem":
                expected.take(message)
                acknowledged += 1
            pending = None
            if acknowledged == 1 and killer.ident is None and not early:
                killer.start()
    except BrokenPipeError:
        pass
    driven.process.kill()
    if killer.ident is not None:
        killer.join()
    driven.process.communicate()
    outcome.kills += 1
    outcome.acknowledged += acknowledged
    outcome.before_first_answer += acknowledged == 0
    _compare(store, expected, pending, outcome)


def _messages(names: list[str], questions: Catalogue, chance: random.Random) -> Any:
    yield from ({"session": name, "type": "start"} for name in names)
    while True:
        yield sound_message(chance.choice(names), questions, chance)


def _compare(store: Path, expected: Expected, pending: dict[str, Any] | None, outcome: Outcome) -> None:
    """The message in flight may have been kept or not; everything before it must be there."""
    try:
        log = open_store(str(store))
    except OvensideError:
        outcome.unreadable += 1
        return
    for name, answers in expected.answers.items():
        try:
            record = log.find_by_name(name)
            state = fold(log.read(record.session_id)) if record else State()
        except OvensideError:
            outcome.unreadable += 1
            continue
        in_flight = expected.touched_by(pending) if pending and pending["session"] == name else frozenset()
        outcome.lost += sum(
            _kept(state, question) != answer for question, answer in answers.items() if question not in in_flight
        )
    log.close()


def _kept(state: State, question: str) -> tuple[str, Any] | None:
    answer = state.answers.get(question)
    if answer is None:
        return None
    if question in state.texts and answer.status == "answered":
        return answer.status, state.texts[question]
    value = tuple(sorted(answer.value)) if isinstance(answer.value, tuple) else answer.value
    return answer.status, value


def main() -> int:
    options = argparse.ArgumentParser()
    options.add_argument("--kills", type=int, default=200)
    options.add_argument("--seed", type=int, default=1)
    given = options.parse_args()
    chance = random.Random(given.seed)
    outcome = Outcome()
    questions = catalogue()
    with tempfile.TemporaryDirectory() as folder:
        for _ in range(given.kills):
            kill_once(Path(folder) / "sessions.db", questions, chance, outcome)
    print(outcome)
    return int(outcome.lost > 0 or outcome.unreadable > 0)


if __name__ == "__main__":
    sys.exit(main())
