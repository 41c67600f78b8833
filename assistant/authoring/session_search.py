"""The session that somebody means by what they typed."""

from assistant.errors import SessionUnknown
from assistant.interview.log import EventLog, SessionRecord


def find_session(log: EventLog, typed: str) -> SessionRecord:
    """By its access code, typed in any way, or by the first characters of its id. Raises SessionUnknown."""
    try:
        return log.find_by_code(typed)
    except SessionUnknown:
        return log.find_by_id_prefix(typed.strip().lower())
