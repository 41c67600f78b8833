"""Looking after a store: whether every session can be read and is as it was written, and which are kept no longer."""

from collections.abc import Iterator
from datetime import datetime, timedelta
from typing import TextIO

from assistant.authoring.session_file import FileUnusable, read_whole
from assistant.authoring.session_list import ID_SHOWN
from assistant.errors import SessionUnknown, StoreUnreadable
from assistant.interview.log import EventLog
from assistant.interview.state import fold
from assistant.wording.locale import Wording
from assistant.wording.reasons import reason_in_words

PAGE = 500
"""Ids that are held at a time, however many sessions there are."""
OF_ONE_SESSION = frozenset({"later_form", "unknown_form", "not_a_time", "damaged", "disk_error"})
"""Why a session may be unreadable while others can be read; a server that is away isn't asked for each."""
TRIES_KEPT = timedelta(hours=1)
"""Of codes that no session has. Longer than they count."""


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
        except FileUnusable as error:
            found = error.code
        except StoreUnreadable as error:
            if error.code not in OF_ONE_SESSION:
                raise
            found = error
        seen += 1
        if found == "unmarked":
            unmarked += 1
        elif found is not None:
            wrong += 1
            told = wording.say(f"sessions-{found}") if isinstance(found, str) else reason_in_words(found, wording)
            out.write(wording.say("sessions-wrong", id=session_id[:ID_SHOWN], reason=told) + "\n")
    out.write(wording.say("sessions-checked", seen=seen, wrong=wrong) + "\n")
    if unmarked:
        out.write(wording.say("sessions-unmarked", number=unmarked) + "\n")
    return 1 if wrong else 0


def _looked_at(log: EventLog, session_id: str) -> str | StoreUnreadable | None:
    """What is wrong with the session; `unmarked` if an earlier version wrote it, without a fingerprint.

    Raises as `read_whole` does.
    """
    _, events = read_whole(log, session_id)
    if not fold(events).session_id:
        return "without_beginning"
    kept = log.kept_fingerprint(session_id)
    if kept is None:
        return "unmarked"
    if kept == log.reckoned_fingerprint(session_id) or log.last_sequence(session_id) != len(events):
        return None
    return "fingerprint_differs"


def purge(log: EventLog, wording: Wording, days: int, now: datetime, out: TextIO) -> int:
    """Erase what nobody touched for so many days; a line for each. Returns the exit status.

    Tries of codes that no session has are forgotten too. Raises StoreUnreadable, with `traces_left` when all is done.
    """
    log.forget_tries(now - TRIES_KEPT)
    erased = 0
    try:
        while page := log.erase_untouched(now - timedelta(days=days), PAGE):
            erased += len(page)
            for session_id in page:
                out.write(wording.say("sessions-erased", id=session_id[:ID_SHOWN]) + "\n")
        out.write(wording.say("sessions-purged", number=erased, days=days) + "\n")
    finally:
        if erased:
            log.sweep()
    return 0


def count_untouched(log: EventLog, wording: Wording, days: int, now: datetime, out: TextIO) -> int:
    """Say how many sessions `purge` would erase. Returns the exit status."""
    found = len(log.untouched_since(now - timedelta(days=days), PAGE))
    message = "sessions-would_purge_more" if found == PAGE else "sessions-would_purge"
    out.write(wording.say(message, number=found, days=days) + "\n")
    return 0
