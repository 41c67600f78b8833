"""Listing, showing and erasing saved sessions, for whoever keeps the store."""

from datetime import datetime
from typing import TextIO

from assistant.authoring.outcome_words import outcome_in_lines
from assistant.errors import SessionUnknown, StoreUnreadable
from assistant.interview.answers import still_fits
from assistant.interview.events import OutcomeRecorded
from assistant.interview.log import EventLog
from assistant.interview.state import Answer, State, fold
from assistant.reports.lettering import shown
from assistant.wording.locale import Wording
from assistant.wording.reasons import reason_in_words
from assistant.wording.sentences import Sentences

ID_SHOWN = 8
MOST_LISTED = 50


def list_all(log: EventLog, wording: Wording, out: TextIO) -> int:
    """The saved sessions, the latest first. Returns the exit status."""
    say = wording.say
    found = log.sessions(limit=MOST_LISTED)
    if not found:
        out.write(say("sessions-none") + "\n")
    for summary in found:
        state = say("sessions-finished" if summary.finished else "sessions-open")
        begun = _begun(summary.created_at)
        line = say("sessions-line", id=summary.session_id[:ID_SHOWN], begun=begun, events=summary.events, state=state)
        out.write(line + "\n")
    return 0


def begun_line(log: EventLog, session_id: str, wording: Wording) -> str:
    """Which session it is, and when it began. Raises SessionUnknown."""
    record = log.find_by_id_prefix(session_id)
    return wording.say("sessions-begun", id=session_id[:ID_SHOWN], begun=_begun(record.created_at))


def _begun(moment: datetime) -> str:
    return f"{moment:%Y-%m-%d %H:%M} UTC"


def show(log: EventLog, sentences: Sentences, prefix: str, out: TextIO) -> int:
    """Every question of a session with its answer, in the order they were answered, and what came of it."""
    try:
        record = log.find_by_id_prefix(prefix)
    except SessionUnknown:
        return say_unknown(sentences.wording, out)
    state = fold(log.read(record.session_id))
    for answer in sorted(state.answers.values(), key=lambda a: a.sequence):
        given = _given(answer, state, sentences).replace("\n", "\n    ")
        out.write(_seen(f"{_question(answer, sentences)}\n    {given}\n"))
    for event in log.events_of(OutcomeRecorded, record.session_id):
        if isinstance(event.happening, OutcomeRecorded):
            out.write(_seen(outcome_in_lines(event.happening, event.recorded_at, sentences.wording) + "\n"))
    return 0


def erase(log: EventLog, wording: Wording, prefix: str, out: TextIO) -> int:
    """Remove everything of a session from the store's files."""
    try:
        record = log.find_by_id_prefix(prefix)
    except SessionUnknown:
        return say_unknown(wording, out)
    try:
        log.erase(record.session_id)
    except StoreUnreadable as error:
        if error.code != "traces_left":
            raise
        return say_traces_left(error, wording, out)
    out.write(wording.say("sessions-erased", id=record.session_id[:ID_SHOWN]) + "\n")
    return 0


def say_traces_left(error: StoreUnreadable, wording: Wording, out: TextIO) -> int:
    """Something was erased from the log but not wholly from the store's files; the error's detail is the code of the
    reason. Returns the exit status.
    """
    reason = reason_in_words(StoreUnreadable(error.where, error.detail), wording)
    out.write(wording.say("sessions-traces_left", reason=reason) + "\n")
    return 1


def say_unknown(wording: Wording, out: TextIO) -> int:
    """There is no such session. Returns the exit status."""
    out.write(wording.say("sessions-unknown") + "\n")
    return 1


def _seen(lines: str) -> str:
    """The same lines, as far in, without what could move a cursor or hide."""
    return "\n".join(" " * (len(line) - len(line.lstrip(" "))) + shown(line) for line in lines.split("\n"))


def _question(answer: Answer, sentences: Sentences) -> str:
    """The question's text, or its id where today's rules no longer have it."""
    if answer.question_id in sentences.knowledge.questions:
        return sentences.question_by_id(answer.question_id).text
    return answer.question_id


def _given(answer: Answer, state: State, sentences: Sentences) -> str:
    if answer.status != "answered":
        return sentences.wording.say(f"answer-{answer.status}")
    if answer.question_id in state.texts:
        return state.texts[answer.question_id] or sentences.wording.say("answer-erased")
    if not still_fits(sentences.knowledge.questions.get(answer.question_id), answer.value):
        return str(answer.value)
    return sentences.given(answer.question_id, answer.value)
