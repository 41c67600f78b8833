"""What a store holds of one person, for when they ask what it is, or to be forgotten."""

import json
import re
import unicodedata
from collections.abc import Iterator, Sequence
from itertools import groupby
from typing import TextIO

from assistant.errors import SessionUnknown
from assistant.interview.log import EventLog
from assistant.store.rows import rows_of
from assistant.wording.locale import Wording

FORM = "ovenside person"
VERSION = 1
PAGE = 500
"""Texts that are held at a time, however many there are."""
LEAST_DIGITS = 6
"""Fewer are a house number or a date rather than a telephone number."""
SAME_LAST_DIGITS = 9
"""By which two telephone numbers are one: what stands before is the way they are dialled from elsewhere."""

_NUMBER = re.compile(r"[0-9 ()+/.\-]+")


def sessions_about(log: EventLog, sought: str) -> list[str]:
    """Ids of the sessions whose free text holds every word of `sought`, or that telephone number however it is spaced.

    Also that of which it is the client's own name.
    """
    found = [session_id for session_id, texts in _texts_by_session(log) if _is_about(texts, sought)]
    named = log.find_by_name(sought.strip())
    return sorted({*found, *([named.session_id] if named is not None else [])})


def told_of_person(log: EventLog, ids: Sequence[str]) -> bytes:
    """Everything of these sessions as JSON, in a form that another program can read."""
    sessions = []
    for session_id in ids:
        record = log.find_by_id_prefix(session_id)
        rows = rows_of(session_id, 0, log.read(session_id))
        entries = [
            {
                "sequence": row.sequence,
                "recorded_at": row.recorded_at,
                "role": row.role,
                "type": row.type,
                "told": json.loads(row.payload),
                "text": row.text,
            }
            for row in rows
        ]
        sessions.append(
            {
                "session_id": session_id,
                "name": record.name,
                "created_at": record.created_at.isoformat(),
                "entries": entries,
            }
        )
    told = {"form": FORM, "version": VERSION, "sessions": sessions}
    return json.dumps(told, indent=1, ensure_ascii=False).encode("utf-8")


def erase_all(log: EventLog, ids: Sequence[str], wording: Wording, out: TextIO, shown: int) -> None:
    """A line for each. Raises StoreUnreadable; then those before it are gone."""
    for session_id in ids:
        try:
            log.erase(session_id)
        except SessionUnknown:  # somebody else erased it just now
            continue
        out.write(wording.say("sessions-erased", id=session_id[:shown]) + "\n")


def _texts_by_session(log: EventLog) -> Iterator[tuple[str, list[str]]]:
    for session_id, texts in groupby(_texts(log), key=lambda each: each[0]):
        yield session_id, [text for _, text in texts]


def _texts(log: EventLog) -> Iterator[tuple[str, str]]:
    last = ("", 0)
    while page := log.texts_after(*last, PAGE):
        yield from ((session_id, text) for session_id, _, text in page)
        last = page[-1][:2]


def _is_about(texts: Sequence[str], sought: str) -> bool:
    number = _digits(sought) if _NUMBER.fullmatch(sought.strip()) else ""
    if len(number) >= LEAST_DIGITS:
        ends = number[-SAME_LAST_DIGITS:]
        return any(_digits(run).endswith(ends) for text in texts for run in _NUMBER.findall(text))
    words = _words(sought)
    return bool(words) and words <= _words(" ".join(texts))


def _words(text: str) -> set[str]:
    """Without case, width and accents: people spell their names in more ways than one."""
    apart = unicodedata.normalize("NFKD", text.casefold())
    return set(re.findall(r"\w+", "".join(char for char in apart if not unicodedata.combining(char))))


def _digits(text: str) -> str:
    return "".join(char for char in text if char in "0123456789")
