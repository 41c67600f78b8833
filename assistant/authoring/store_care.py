"""Looking after a store: whether every session can be read and is as it was written, and which are kept no longer."""

from collections.abc import Iterator
from datetime import datetime, timedelta
from typing import TextIO

from assistant.authoring.session_list import ID_SHOWN
from assistant.errors import SessionUnknown, StoreUnreadable
from assistant.interview.log import EventLog
from assistant.interview.state import fold
from assistant.wording.locale import Wording
from assistant.wording.reasons import reason_in_words

PAGE = 500
"""Ids that are held at a time, however many sessions there are."""


def all_ids(log: EventLog) -> Iterator[str]:
    last = ""
    while page := log.ids_after(last, PAGE):
        yield from page
        last = page[-1]


def check(log: EventLog, wording: Wording, out: TextIO) -> int:
    """A line for each session that isn't as it was written, then a count. Returns the exit status: 1 for any."""
    seen = wrong = unmarked = 0
    for session_id in all_ids(log):
        try:
            found = _looked_at(log, session_id)
        except SessionUnknown:  # erased meanwhile
            continue
        seen += 1
        if found == "unmarked":
            unmarked += 1
        elif found is not None:
            wrong += 1
            reason = found if isinstance(found, str) else ""
            told = (
                reason_in_words(found, wording)
                if isinstance(found, StoreUnreadable)
                else wording.say(f"sessions-{reason}")
            )
            out.write(wording.say("sessions-wrong", id=session_id[:ID_SHOWN], reason=told) + "\n")
    out.write(wording.say("sessions-checked", seen=seen, wrong=wrong) + "\n")
    if unmarked:
        out.write(wording.say("sessions-unmarked", number=unmarked) + "\n")
    return 1 if wrong else 0


def _looked_at(log: EventLog, session_id: str) -> str | StoreUnreadable | None:
    """What is wrong with the session; `unmarked` if an earlier version wrote it, without a fingerprint."""
    try:
        events = log.read(session_id)
    except StoreUnreadable as error:
        return error
    if [event.sequence for event in events] != list(range(1, len(events) + 1)):
        return "out_of_order"
    if not fold(events).session_id:
        return "without_beginning"
    kept = log.kept_fingerprint(session_id)
    if kept is None:
        return "unmarked"
    if kept == log.reckoned_fingerprint(session_id) or log.last_sequence(session_id) != len(events):
        return None
    return "fingerprint_differs"


def purge(log: EventLog, wording: Wording, days: int, now: datetime, out: TextIO, *, only_count: bool) -> int:
    """Erase what nobody touched for so many days; a line for each. Returns the exit status."""
    before = now - timedelta(days=days)
    found = 0
    while page := log.untouched_since(before, PAGE):
        found += len(page)
        if only_count:
            break
        for session_id in page:
            log.erase(session_id)
            out.write(wording.say("sessions-erased", id=session_id[:ID_SHOWN]) + "\n")
    more = only_count and found == PAGE
    message = "sessions-would_purge_more" if more else "sessions-would_purge" if only_count else "sessions-purged"
    out.write(wording.say(message, number=found, days=days) + "\n")
    return 0
