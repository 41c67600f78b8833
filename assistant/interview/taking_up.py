"""Taking up a session by its access code, or at a desk by its id."""

from collections.abc import Callable
from datetime import datetime, timedelta

from assistant.errors import Refused, SessionUnknown
from assistant.interview.access_code import normalise_code
from assistant.interview.log import EventLog, SessionRecord

MOST_FAILED_TRIES = 10
WITHIN = timedelta(minutes=10)


def session_by_code(log: EventLog, typed: str, now: datetime) -> SessionRecord:
    """The session with that code, typed in any way.

    Raises SessionUnknown, and Refused with `too_many_codes` for `minutes` where too many that no session has were
    tried from the same place. What can't be a code isn't counted.
    """
    code = normalise_code(typed)
    return _found(log, lambda: log.find_by_code(code), now)


def session_by_id(log: EventLog, beginning: str, now: datetime) -> SessionRecord:
    """The session whose id begins so. Raises as `session_by_code` does: ids are guessed more easily than codes."""
    return _found(log, lambda: log.find_by_id_prefix(beginning), now)


def _found(log: EventLog, find: Callable[[], SessionRecord], now: datetime) -> SessionRecord:
    if log.failed_tries(now - WITHIN, now) >= MOST_FAILED_TRIES:
        raise Refused("too_many_codes", {"minutes": WITHIN.total_seconds() / 60})
    try:
        return find()
    except SessionUnknown:
        log.note_failed_try(now, now - WITHIN)
        raise
