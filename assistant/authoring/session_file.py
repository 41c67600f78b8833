"""One session as a signed file, for where stores aren't shared.

The signature is an HMAC with SHA-256 (RFC 2104, FIPS 198-1) over the file without it, by a key that both sides have.
"""

import hmac
import json
import secrets
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from assistant.authoring.whole_file import write_whole
from assistant.errors import OvensideError, SessionUnknown
from assistant.interview.events import Event
from assistant.interview.log import EventLog, SessionRecord
from assistant.store.rows import (
    EventRow,
    SessionRow,
    event_from,
    fingerprint_after,
    rows_of,
    session_from,
    session_row_of,
)

FORM = "ovenside session"
VERSION = 1
KEY_BYTES = 32
LEAST_KEY_BYTES = 16


class FileUnusable(OvensideError):
    """The file, the key or the session in it can't be used; `code` names why, `file` which file, if not the first."""

    def __init__(self, code: str, file: str = "") -> None:
        super().__init__(code)
        self.code = code
        self.file = file


def new_key(path: Path) -> None:
    """Write a fresh key to a file for its owner alone. Raises FileUnusable if there is one, OSError."""
    if path.exists():
        raise FileUnusable("key_there", str(path))
    write_whole(path, secrets.token_bytes(KEY_BYTES).hex().encode("ascii") + b"\n")


def read_key(path: Path) -> bytes:
    """Raises FileUnusable if it isn't one, OSError."""
    try:
        key = bytes.fromhex(path.read_text("ascii"))
    except ValueError as error:
        raise FileUnusable("not_a_key") from error
    if len(key) < LEAST_KEY_BYTES:
        raise FileUnusable("not_a_key")
    return key


def read_whole(log: EventLog, session_id: str) -> tuple[SessionRecord, tuple[Event, ...]]:
    """Raises SessionUnknown if it was erased, FileUnusable with the code of what is missing, StoreUnreadable."""
    record = log.find_by_id_prefix(session_id)
    try:
        events = log.read(session_id)
    except SessionUnknown:
        log.find_by_id_prefix(session_id)
        raise FileUnusable("no_entries") from None
    if [event.sequence for event in events] != list(range(1, len(events) + 1)):
        raise FileUnusable("out_of_order")
    return record, events


def packed(log: EventLog, prefix: str, key: bytes) -> bytes:
    """Everything of a session, its free text too. Raises as `read_whole` does."""
    record, events = read_whole(log, log.find_by_id_prefix(prefix).session_id)
    rows = rows_of(record.session_id, 0, events)
    told: dict[str, Any] = {
        "form": FORM,
        "version": VERSION,
        "session": session_row_of(record)._asdict(),
        "events": [row._asdict() for row in rows],
        "fingerprint": fingerprint_after("", rows),
    }
    return json.dumps({**told, "signature": _signature(told, key)}, indent=1, ensure_ascii=False).encode("utf-8")


def unpacked(content: bytes, key: bytes, where: str) -> tuple[SessionRecord, tuple[Event, ...]]:
    """Raises FileUnusable for anything but what `packed` made with that key, StoreUnreadable for a later form."""
    try:
        told = json.loads(content.decode("utf-8"))
        signature = told.pop("signature")
        form, version = told["form"], told["version"]
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError) as error:
        raise FileUnusable("not_a_session_file") from error
    if form != FORM or not isinstance(signature, str):
        raise FileUnusable("not_a_session_file")
    if not hmac.compare_digest(signature.encode("utf-8", "replace"), _signature(told, key).encode("ascii")):
        raise FileUnusable("signature_differs")
    if version != VERSION:
        raise FileUnusable("later_file")
    rows = [EventRow(**row) for row in told["events"]]
    return session_from(SessionRow(**told["session"]), where), tuple(event_from(row, where) for row in rows)


def take_in(log: EventLog, record: SessionRecord, events: Sequence[Event]) -> int:
    """Keep the session as the file has it, and give the number of events that were new.

    Where it is there already, only what goes on from it is added. Raises FileUnusable where the two differ in more than
    text that was erased from one of them, or where what is there isn't whole; SessionMovedOn where somebody goes on
    with it just now.
    """
    try:
        _, there = read_whole(log, record.session_id)
    except SessionUnknown:
        log.create(record, events)
        return len(events)
    shared = min(len(there), len(events))
    rows = (rows_of(record.session_id, 0, each[:shared]) for each in (there, events))
    if not all(map(_are_one, *rows)):
        raise FileUnusable("goes_another_way")
    rest = events[shared:]
    if rest:
        log.append(record.session_id, len(there), rest)
    return len(rest)


def _are_one(row: EventRow, other: EventRow) -> bool:
    """Whether the two are the same event; text that was erased is like any."""
    if row._replace(text=None) != other._replace(text=None):
        return False
    return row.text == other.text or row.text is None or other.text is None


def _signature(told: dict[str, Any], key: bytes) -> str:
    canonical = json.dumps(told, sort_keys=True, separators=(",", ":"), ensure_ascii=True)
    return hmac.digest(key, canonical.encode("ascii"), "sha256").hex()
