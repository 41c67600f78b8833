"""Invented sessions in a log, for what is told of them afterwards."""

import io
from datetime import UTC, datetime
from uuid import uuid4

from assistant.interview.access_code import hash_code
from assistant.interview.events import SCHEMA_VERSION, Event, QuestionAnswered, SessionStarted
from assistant.interview.log import SessionRecord

NOW = datetime(2026, 3, 31, 15, 0, tzinfo=UTC)
CODE = "7K3M-QX8D-0ZRT-5WAB"
STARTED = SessionStarted(region="great_britain", lang="en-GB", cavity="single")


def keep_session(log, session_id, *happenings, code=None):
    """Started, pale underneath, and then what happened."""
    code_hash = hash_code(code) if code else uuid4().hex * 2
    record = SessionRecord(session_id=session_id, code_hash=code_hash, name=None, created_at=NOW)
    pale = QuestionAnswered(question_id="underside_pale", value="a_bit_pale")
    everything = (STARTED, pale, *happenings)
    log.create(record, [event_of(session_id, n, each) for n, each in enumerate(everything, 1)])
    return record


def event_of(session_id, sequence, happening, recorded_at=NOW):
    return Event(
        event_id=uuid4().hex,
        session_id=session_id,
        sequence=sequence,
        schema_version=SCHEMA_VERSION,
        rules_fingerprint="f" * 64,
        recorded_at=recorded_at,
        actor="householder",
        role="householder",
        message_id=None,
        happening=happening,
    )


class Typed:
    """Lines typed one after the other; an error among them is raised; after the last one the input ends."""

    def __init__(self, *lines):
        self.left = list(lines)

    def __call__(self, prompt):
        if not self.left:
            raise EOFError
        line = self.left.pop(0)
        if isinstance(line, str):
            return line
        raise line


def output():
    return io.StringIO()
