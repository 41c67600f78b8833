"""Taking up a session by its access code."""

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
    if log.failed_tries(now - WITHIN, now) >= MOST_FAILED_TRIES:
        raise Refused("too_many_codes", {"minutes": WITHIN.total_seconds() / 60})
    try:
        return log.find_by_code(code)
    except SessionUnknown:
        log.note_failed_try(now, now - WITHIN)
        raise
