"""What happened in a session, in the past tense. A session is nothing but the list of its events."""

from collections.abc import Mapping
from dataclasses import asdict, dataclass, fields
from datetime import datetime
from typing import Any

SCHEMA_VERSION = 1

type_names: dict[str, type["Happening"]] = {}


@dataclass(frozen=True, kw_only=True)
class Happening:
    """The part of an event that says what happened; its class name is stored as the event's type."""

    def __init_subclass__(cls) -> None:
        type_names[cls.__name__] = cls


@dataclass(frozen=True, kw_only=True)
class SessionStarted(Happening):
    region: str
    lang: str
    cavity: str


@dataclass(frozen=True, kw_only=True)
class QuestionAnswered(Happening):
    """`value` is a choice's id, a tuple of them, or a number in the question's own unit.

    `given` and `given_unit` keep a number as the person gave it.
    """

    question_id: str
    value: str | tuple[str, ...] | float
    given: float | None = None
    given_unit: str | None = None


@dataclass(frozen=True, kw_only=True)
class TextAnswered(Happening):
    """Free text. The store keeps `text` apart from the log, so that it can be erased: then it is None."""

    question_id: str
    text: str | None


@dataclass(frozen=True, kw_only=True)
class NotSureAnswered(Happening):
    question_id: str


@dataclass(frozen=True, kw_only=True)
class QuestionSkipped(Happening):
    question_id: str


@dataclass(frozen=True, kw_only=True)
class AnswerWithdrawn(Happening):
    question_id: str


@dataclass(frozen=True, kw_only=True)
class DangerHeard(Happening):
    """A typed line spoke of a danger sign. The line itself isn't kept."""

    sign_id: str
    clear: bool


@dataclass(frozen=True, kw_only=True)
class StopReached(Happening):
    """From here on a danger sign stood. Recorded so that no change of answers or rules can make it forgotten."""

    sign_id: str


@dataclass(frozen=True, kw_only=True)
class StopLifted(Happening):
    """The answers on which a sign stood were changed or taken back."""

    sign_id: str


@dataclass(frozen=True, kw_only=True)
class MeasuringBegun(Happening):
    """The oven was switched on, and the clock runs from here."""

    question_id: str


@dataclass(frozen=True, kw_only=True)
class LineNoted(Happening):
    """One line of what is being written down, such as `7:40 out`."""

    question_id: str
    line: str


@dataclass(frozen=True, kw_only=True)
class LineTakenBack(Happening):
    """The latest line noted was a slip."""

    question_id: str


@dataclass(frozen=True, kw_only=True)
class MeasuringLeft(Happening):
    """Nothing more is written down, and what was isn't used."""

    question_id: str


@dataclass(frozen=True, kw_only=True)
class InterviewFinished(Happening):
    pass


@dataclass(frozen=True, kw_only=True)
class OutcomeRecorded(Happening):
    """What the session turned out to be, told after it. A later one replaces it in counting; both stay.

    `group` and `result` are of closed lists, `causes_found` at most two causes. `part_fitted` isn't a cause that was
    found. `minutes`: spent at the oven. The store keeps `text`, a note in somebody's own words, apart from the log:
    empty where none was made, None once it is erased.
    """

    group: str
    result: str
    causes_found: tuple[str, ...]
    part_fitted: str | None
    minutes: int | None
    text: str | None


@dataclass(frozen=True, kw_only=True)
class Event:
    """One happening with its envelope.

    `sequence` counts from 1 within the session; `recorded_at` is aware, in UTC; `message_id` is the
    client's own mark for the message that caused the event, if it gave one.
    """

    event_id: str
    session_id: str
    sequence: int
    schema_version: int
    rules_fingerprint: str
    recorded_at: datetime
    actor: str
    role: str
    message_id: str | None
    happening: Happening


def payload_of(happening: Happening) -> dict[str, Any]:
    """The happening as JSON-ready data, without free text."""
    payload = asdict(happening)
    payload.pop("text", None)
    return payload


def text_of(happening: Happening) -> str | None:
    """The free text that is kept apart, if there is any."""
    text: str | None = getattr(happening, "text", None)
    return text


def happening_from(type_name: str, payload: Mapping[str, Any], text: str | None) -> Happening:
    """Rebuild a happening from its stored form. Raises KeyError or TypeError if the form isn't known."""
    cls = type_names[type_name]
    values: dict[str, Any] = {
        name: tuple(value) if isinstance(value, list) else value for name, value in payload.items()
    }
    if "text" in {field.name for field in fields(cls)}:
        values["text"] = text
    return cls(**values)
