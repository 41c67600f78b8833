"""Which danger signs stand, which are still open, which were withdrawn. Computed before anything else."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Literal

from assistant.interview.state import Answer, State
from assistant.knowledge.danger_questions import (
    DANGER_NOW,
    DANGER_PLAINLY,
    NONE,
    OVEN_IS_OFF,
    UNSURE,
    sign_question_id,
)
from assistant.knowledge.model import Knowledge

STILL_ON = "still_on"


@dataclass(frozen=True)
class Stop:
    """A danger sign that stands, since which event, and what it rests on: the sign itself or a finding."""

    sign_id: str
    source: Literal["sign", "finding"]
    source_id: str
    since: int
    told_at: datetime | None


@dataclass(frozen=True)
class Danger:
    """`stops` gravest first; `open_questions` must be asked before anything else; `withdrawn` signs once stood.

    `ask_whether_off` is false where nobody should go near the oven any more, not even to confirm that it is off.
    """

    stops: tuple[Stop, ...]
    open_questions: tuple[str, ...]
    withdrawn: tuple[str, ...]
    off_confirmed: bool
    ask_whether_off: bool

    @property
    def open(self) -> bool:
        """While this holds: no hot test, no 'use it differently', no 'do it yourself'."""
        return bool(self.stops or self.open_questions)


def danger_of(state: State, knowledge: Knowledge, finding_stops: Mapping[str, Stop]) -> Danger:
    """`finding_stops`: sign -> the stop that a crisp finding puts on it."""
    standing = dict(finding_stops)
    open_questions: list[str] = []
    for sign_id in sorted(knowledge.signs, key=lambda s: knowledge.signs[s].order):
        stop = _stop_from_answers(sign_id, state, knowledge)
        if stop is not None:
            standing.setdefault(sign_id, stop)
        elif _is_open(sign_id, state, knowledge):
            open_questions.append(sign_question_id(sign_id))
    ordered = sorted(standing.values(), key=lambda stop: (knowledge.signs[stop.sign_id].order, stop.sign_id))
    return Danger(
        stops=tuple(ordered),
        open_questions=(*open_questions, *_open_screens(state)),
        withdrawn=tuple(s for s in _once_raised(state, knowledge) if s not in standing),
        off_confirmed=_off_confirmed(state, ordered),
        ask_whether_off=all(knowledge.signs[stop.sign_id].confirm_off for stop in ordered),
    )


def _open_screens(state: State) -> Iterator[str]:
    if state.status(DANGER_NOW) == "not_asked":
        yield DANGER_NOW
    elif state.status(DANGER_NOW) != "answered" and state.status(DANGER_PLAINLY) == "not_asked":
        yield DANGER_PLAINLY


def _signalled(answer: Answer, knowledge: Knowledge) -> set[str]:
    """The signs that an answer speaks of."""
    question = knowledge.questions.get(answer.question_id)
    if question is None or answer.value is None or isinstance(answer.value, float):
        return set()
    chosen = (answer.value,) if isinstance(answer.value, str) else answer.value
    signals = (question.choices[c].signals for c in chosen if c in question.choices)
    return {sign_id for sign_id in signals if sign_id is not None}


def _raisers(sign_id: str, state: State, knowledge: Knowledge) -> list[Answer]:
    """The standing answers, other than to the sign's own question, that speak of the sign."""
    own = sign_question_id(sign_id)
    return [a for q, a in state.answers.items() if q != own and sign_id in _signalled(a, knowledge)]


def _stop_from_answers(sign_id: str, state: State, knowledge: Knowledge) -> Stop | None:
    sign = knowledge.signs[sign_id]
    own = state.answers.get(sign_question_id(sign_id))
    if own is not None and _own_answer_stops(own, sign_id, knowledge):
        return Stop(sign_id, "sign", sign_id, own.sequence, own.recorded_at)
    if sign_id == UNSURE:
        plain = state.answers.get(DANGER_PLAINLY)
        if plain is not None and plain.status != "answered":
            return Stop(sign_id, "sign", sign_id, plain.sequence, plain.recorded_at)
    raisers = _raisers(sign_id, state, knowledge)
    if raisers and sign.grade == "stop":
        last = max(raisers, key=lambda answer: answer.sequence)
        return Stop(sign_id, "sign", sign_id, last.sequence, last.recorded_at)
    return None


def _own_answer_stops(own: Answer, sign_id: str, knowledge: Knowledge) -> bool:
    if own.status == "answered":
        return sign_id in _signalled(own, knowledge)
    return knowledge.signs[sign_id].not_sure_is_danger


def _is_open(sign_id: str, state: State, knowledge: Knowledge) -> bool:
    """A sign that was raised or heard, and whose own question has no answer since then."""
    own = state.answers.get(sign_question_id(sign_id))
    answered_at = own.sequence if own is not None else 0
    raised_at = [answer.sequence for answer in _raisers(sign_id, state, knowledge)]
    return max([state.heard.get(sign_id, 0), *raised_at]) > answered_at


def _once_raised(state: State, knowledge: Knowledge) -> Iterator[str]:
    """Signs that stopped the interview, or would have, by an answer since changed or withdrawn."""
    for sign_id, sign in knowledge.signs.items():
        own = sign_question_id(sign_id)
        for past in state.replaced:
            by_own = past.question_id == own and _own_answer_stops(past, sign_id, knowledge)
            by_other = sign.grade == "stop" and sign_id in _signalled(past, knowledge)
            unsure = sign_id == UNSURE and past.question_id == DANGER_PLAINLY and past.status != "answered"
            if by_own or by_other or unsure:
                yield sign_id
                break


def _off_confirmed(state: State, stops: list[Stop]) -> bool:
    """Whether the oven was said to be off after the latest sign."""
    answer = state.answers.get(OVEN_IS_OFF)
    if answer is None or answer.status != "answered" or answer.value == STILL_ON:
        return False
    return all(answer.sequence > stop.since for stop in stops)


def screen_is_clear(state: State) -> bool:
    """Whether the opening screen was answered with 'none of these'."""
    answer = state.answers.get(DANGER_NOW)
    return answer is not None and answer.value == (NONE,)
