"""What a store holds of one person, for when they ask what it is, or to be forgotten."""

import json
import re
import unicodedata
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from heapq import merge
from itertools import groupby
from typing import TextIO

from assistant.errors import SessionUnknown, StoreUnreadable
from assistant.interview.log import EventLog
from assistant.store.rows import rows_of
from assistant.wording.locale import Wording

FORM = "ovenside person"
VERSION = 1
PAGE = 500
"""Texts, and names, that are held at a time, however many there are."""
LEAST_DIGITS = 6
"""Fewer are a house number or a date rather than a telephone number."""
SAME_LAST_DIGITS = 9
"""By which two telephone numbers are one: what stands before is the way they are dialled from elsewhere."""

_BETWEEN = r"[\W_]*"
"""What may stand between the digits of a number: anything but letters."""
_NUMBER = re.compile(rf"\d(?:{_BETWEEN}\d){{{LEAST_DIGITS - 1},}}")


def sessions_about(log: EventLog, sought: str) -> list[str]:
    """Ids of the sessions whose free text and client's own name together hold every word of `sought`, and the telephone
    number in it however it is written.

    Also that of which it is the client's own name, to the letter.
    """
    wanted = _Wanted.of(sought)
    found = [session_id for session_id, told in _told_by_session(log) if wanted.all_in(told)]
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
    """A line for each, and a count. Raises StoreUnreadable: then those before it are gone, and with the code
    `traces_left` all are.
    """
    erased, left = 0, None
    for session_id in ids:
        try:
            log.erase(session_id)
        except SessionUnknown:  # somebody else erased it just now
            continue
        except StoreUnreadable as error:
            if error.code != "traces_left":
                raise
            left = error
        erased += 1
        out.write(wording.say("sessions-erased", id=session_id[:shown]) + "\n")
    out.write(wording.say("sessions-forgotten", number=erased) + "\n")
    if left is not None:
        raise left


def _told_by_session(log: EventLog) -> Iterator[tuple[str, list[str]]]:
    for session_id, told in groupby(merge(_texts(log), _names(log)), key=lambda each: each[0]):
        yield session_id, [text for _, text in told]


def _texts(log: EventLog) -> Iterator[tuple[str, str]]:
    last = ("", 0)
    while page := log.texts_after(*last, PAGE):
        yield from ((session_id, text) for session_id, _, text in page)
        last = page[-1][:2]


def _names(log: EventLog) -> Iterator[tuple[str, str]]:
    last = ""
    while page := log.names_after(last, PAGE):
        yield from page
        last = page[-1][0]


@dataclass(frozen=True)
class _Wanted:
    numbers: tuple[re.Pattern[str], ...]
    words: frozenset[str]

    @classmethod
    def of(cls, sought: str) -> "_Wanted":
        plain = _plain(sought)
        numbers = tuple(_pattern(found) for found in _NUMBER.findall(plain))
        return cls(numbers, frozenset(_words(_NUMBER.sub(" ", plain))))

    def all_in(self, told: Sequence[str]) -> bool:
        plain = list(map(_plain, told))
        return (
            bool(self.numbers or self.words)
            and all(any(number.search(text) for text in plain) for number in self.numbers)
            and self.words <= _words(" ".join(plain))
        )


def _plain(text: str) -> str:
    """Letters in their plainest form, and every script's digits as these."""
    alike = unicodedata.normalize("NFKC", text)
    return "".join(str(unicodedata.decimal(char)) if char.isdecimal() else char for char in alike)


def _pattern(number: str) -> re.Pattern[str]:
    """Finds the last digits of a number in plain text, whatever stands between them, where a row of digits ends."""
    last = re.sub(r"\D", "", number)[-SAME_LAST_DIGITS:]
    return re.compile(_BETWEEN.join(last) + r"(?!\d)")


def _words(text: str) -> set[str]:
    """Without case, width and accents: people spell their names in more ways than one."""
    apart = unicodedata.normalize("NFKD", text.casefold())
    return set(re.findall(r"\w+", "".join(char for char in apart if not unicodedata.combining(char))))
