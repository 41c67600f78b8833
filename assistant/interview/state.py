"""Events -> the state of a session: a pure fold that knows nothing of the rules."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime
from functools import reduce
from typing import Literal

from assistant.interview.events import (
    AnswerWithdrawn,
    DangerHeard,
    Event,
    InterviewFinished,
    LineNoted,
    LineTakenBack,
    MeasuringBegun,
    MeasuringLeft,
    NotSureAnswered,
    OutcomeRecorded,
    QuestionAnswered,
    QuestionSkipped,
    SessionStarted,
    StopLifted,
    StopReached,
    TextAnswered,
)
from assistant.knowledge.readings import in_order

Value = str | tuple[str, ...] | float
Status = Literal["answered", "not_sure", "skipped"]


@dataclass(frozen=True)
class Answer:
    """What stands as the answer to a question since event `sequence`. `value` is None for text."""

    question_id: str
    status: Status
    value: Value | None
    sequence: int
    recorded_at: datetime


@dataclass(frozen=True)
class Measuring:
    """What is being written down at a hot oven: since when, the lines so far in the order of their times, and the one
    that was noted last, which may be taken back.
    """

    begun_at: datetime
    lines: tuple[str, ...] = ()
    latest: str | None = None

    @property
    def last_noted(self) -> str | None:
        """The line that is taken back next."""
        return self.latest or (self.lines[-1] if self.lines else None)


@dataclass(frozen=True)
class State:
    """A session as its events left it. `replaced` keeps every answer that was changed or withdrawn.

    `standing_signs` stood as danger after the latest event. `reached`: each sign that stood at some time, the first one
    first, with the event by which it did so last. `measuring`: question -> what is being written down. `outcomes`: what
    was told after it, the latest last; nothing else hangs on them.
    """

    session_id: str = ""
    role: str = ""
    region: str = ""
    lang: str = ""
    cavity: str = ""
    sequence: int = 0
    rules_fingerprint: str = ""
    finished: bool = False
    answers: Mapping[str, Answer] = field(default_factory=dict)
    replaced: tuple[Answer, ...] = ()
    texts: Mapping[str, str | None] = field(default_factory=dict)
    heard: Mapping[str, int] = field(default_factory=dict)
    standing_signs: frozenset[str] = frozenset()
    reached: Mapping[str, int] = field(default_factory=dict)
    measuring: Mapping[str, Measuring] = field(default_factory=dict)
    outcomes: tuple[OutcomeRecorded, ...] = ()

    @property
    def started(self) -> bool:
        return self.sequence > 0

    def status(self, question_id: str) -> Status | Literal["not_asked"]:
        answer = self.answers.get(question_id)
        return answer.status if answer else "not_asked"

    def times_skipped(self, question_id: str) -> int:
        past = [a for a in self.replaced if a.question_id == question_id and a.status == "skipped"]
        return len(past) + (self.status(question_id) == "skipped")


def fold(events: Iterable[Event], state: State | None = None) -> State:
    """Apply events in their order to a state, or to an empty one."""
    return reduce(apply, events, state or State())


def apply(state: State, event: Event) -> State:
    """The state after one more event."""
    happening = event.happening
    if isinstance(happening, OutcomeRecorded):
        return replace(state, sequence=event.sequence, outcomes=(*state.outcomes, happening))
    return _interviewed(state, event)


def _interviewed(state: State, event: Event) -> State:
    """What the interview itself goes by."""
    happening = event.happening
    state = replace(state, sequence=event.sequence, rules_fingerprint=event.rules_fingerprint)
    match happening:
        case SessionStarted(region=region, lang=lang, cavity=cavity):
            return replace(
                state,
                session_id=event.session_id,
                role=event.role,
                region=region,
                lang=lang,
                cavity=cavity,
            )
        case QuestionAnswered(question_id=question_id, value=value):
            return _with_answer(state, event, question_id, "answered", value)
        case TextAnswered(question_id=question_id, text=text):
            state = replace(state, texts={**state.texts, question_id: text})
            return _with_answer(state, event, question_id, "answered", None)
        case NotSureAnswered(question_id=question_id):
            return _with_answer(state, event, question_id, "not_sure", None)
        case QuestionSkipped(question_id=question_id):
            return _with_answer(state, event, question_id, "skipped", None)
        case AnswerWithdrawn(question_id=question_id):
            return _without_answer(replace(state, finished=False), question_id)
        case DangerHeard() | StopReached() | StopLifted():
            return _with_danger(state, event, happening)
        case MeasuringBegun() | LineNoted() | LineTakenBack() | MeasuringLeft():
            return replace(state, measuring=_measuring(state, event, happening))
        case InterviewFinished():
            return replace(state, finished=True)
    return state


def _measuring(
    state: State, event: Event, happening: MeasuringBegun | LineNoted | LineTakenBack | MeasuringLeft
) -> Mapping[str, Measuring]:
    question_id = happening.question_id
    others = {name: each for name, each in state.measuring.items() if name != question_id}
    under_way = state.measuring.get(question_id)
    match happening:
        case MeasuringBegun():
            return {**others, question_id: Measuring(event.recorded_at)}
        case LineNoted(line=line) if under_way is not None:
            return {**others, question_id: replace(under_way, lines=in_order((*under_way.lines, line)), latest=line)}
        case LineTakenBack() if under_way is not None:
            left = list(under_way.lines)
            if under_way.last_noted is not None:
                left.remove(under_way.last_noted)
            return {**others, question_id: replace(under_way, lines=tuple(left), latest=None)}
    return others


def _with_danger(state: State, event: Event, happening: DangerHeard | StopReached | StopLifted) -> State:
    sign_id = happening.sign_id
    match happening:
        case DangerHeard():
            return replace(state, heard={**state.heard, sign_id: event.sequence}, finished=False)
        case StopReached():
            reached = {**state.reached, sign_id: event.sequence}
            standing = state.standing_signs | {sign_id}
            return replace(state, standing_signs=standing, reached=reached, measuring={})
        case StopLifted():
            return replace(state, standing_signs=state.standing_signs - {sign_id})


def _with_answer(state: State, event: Event, question_id: str, status: Status, value: Value | None) -> State:
    state = _without_answer(state, question_id)
    measuring = {name: each for name, each in state.measuring.items() if name != question_id}
    state = replace(state, measuring=measuring)
    answer = Answer(question_id, status, value, event.sequence, event.recorded_at)
    return replace(state, answers={**state.answers, question_id: answer}, finished=False)


def _without_answer(state: State, question_id: str) -> State:
    old = state.answers.get(question_id)
    if old is None:
        return state
    answers = {name: answer for name, answer in state.answers.items() if name != question_id}
    return replace(state, answers=answers, replaced=(*state.replaced, old))
