"""What a front end may ask of a session."""

from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True)
class Start:
    role: str
    region: str
    lang: str
    cavity: str


@dataclass(frozen=True)
class GiveAnswer:
    """`value` as the person or client gave it; it is checked against the question before it becomes an event."""

    question_id: str
    value: Any
    unit: str | None = None


@dataclass(frozen=True)
class SayNotSure:
    question_id: str


@dataclass(frozen=True)
class SkipQuestion:
    question_id: str


@dataclass(frozen=True)
class WithdrawAnswer:
    question_id: str


@dataclass(frozen=True)
class HearDanger:
    """A typed line spoke of a danger sign, clearly or not."""

    sign_id: str
    clear: bool


@dataclass(frozen=True)
class BeginMeasuring:
    question_id: str


@dataclass(frozen=True)
class NoteLine:
    question_id: str
    line: str


@dataclass(frozen=True)
class TakeBackLine:
    question_id: str


@dataclass(frozen=True)
class LeaveMeasuring:
    question_id: str


@dataclass(frozen=True)
class Finish:
    pass


@dataclass(frozen=True)
class RecordOutcome:
    """What came of a session, as somebody typed it: nothing of it is checked yet, and what is empty wasn't told.

    It is recorded from outside a conversation, so it is no `Command` of one.
    """

    result: str = ""
    cause_found: str = ""
    second_cause: str = ""
    part_fitted: str = ""
    minutes: str = ""
    note: str = ""
    group: str = ""


Measuring = BeginMeasuring | NoteLine | TakeBackLine | LeaveMeasuring
Command = Start | GiveAnswer | SayNotSure | SkipQuestion | WithdrawAnswer | HearDanger | Finish | Measuring
