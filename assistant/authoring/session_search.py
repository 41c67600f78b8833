"""The session that somebody means by what they typed."""

from assistant.errors import SessionUnknown
from assistant.interview.conversation import utc_now
from assistant.interview.log import EventLog, SessionRecord
from assistant.interview.taking_up import session_by_code


def find_session(log: EventLog, typed: str) -> SessionRecord:
    """By its access code, typed in any way, or by the first characters of its id.

    Raises SessionUnknown, Refused after too many codes.
    """
    try:
        return log.find_by_id_prefix(typed.strip().lower())
    except SessionUnknown:
        return session_by_code(log, typed, utc_now())


def session_of_row(log: EventLog, typed: str) -> SessionRecord:
    """As `find_session`, of one row of many: wrong codes aren't counted, for whoever imports rows keeps the store."""
    try:
        return log.find_by_id_prefix(typed.strip().lower())
    except SessionUnknown:
        return log.find_by_code(typed)
