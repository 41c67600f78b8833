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
    """The file or the key can't be used; `code` names why."""

    def __init__(self, code: str) -> None:
        super().__init__(code)
        self.code = code


def new_key(path: Path) -> None:
    """Write a fresh key to a file for its owner alone. Raises FileUnusable if there is one, OSError."""
    if path.exists():
        raise FileUnusable("key_there")
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


def packed(log: EventLog, prefix: str, key: bytes) -> bytes:
    """Everything of a session, its free text too. Raises SessionUnknown."""
    record = log.find_by_id_prefix(prefix)
    rows = rows_of(record.session_id, 0, log.read(record.session_id))
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

    Where it is there already, only what goes on from it is added. Raises FileUnusable where the two differ.
    """
    try:
        there = log.read(record.session_id)
    except SessionUnknown:
        log.create(record, events)
        return len(events)
    shared = min(len(there), len(events))
    if [each.event_id for each in there[:shared]] != [each.event_id for each in events[:shared]]:
        raise FileUnusable("goes_another_way")
    rest = events[shared:]
    if rest:
        log.append(record.session_id, len(there), rest)
    return len(rest)


def _signature(told: dict[str, Any], key: bytes) -> str:
    canonical = json.dumps(told, sort_keys=True, separators=(",", ":"), ensure_ascii=True)
    return hmac.digest(key, canonical.encode("ascii"), "sha256").hex()
