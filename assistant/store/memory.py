"""A log that lives as long as the process: for trying things out, and for tests."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from datetime import datetime
from threading import RLock

from assistant.errors import Refused, SessionMovedOn, SessionUnknown, StoreUnreadable
from assistant.interview.access_code import hash_code
from assistant.interview.events import Event, Happening, InterviewFinished, OutcomeRecorded
from assistant.interview.log import Appending, SessionRecord, SessionSummary
from assistant.store.rows import (
    EventRow,
    SessionRow,
    event_from,
    fingerprint_after,
    rows_of,
    session_from,
    session_row_of,
    stored_time,
    time_from,
)

WHERE = "memory:"


@dataclass
class _Kept:
    session: SessionRow
    events: list[EventRow] = field(default_factory=list)
    message_ids: set[str | None] = field(default_factory=set)
    fingerprint: str = ""

    def copied(self) -> "_Kept":
        return _Kept(self.session, [*self.events], set(self.message_ids), self.fingerprint)

    def latest(self) -> str:
        """When it was touched last, by any clock."""
        return max(self.session.created_at, *(row.recorded_at for row in self.events))

    def add(self, rows: Sequence[EventRow]) -> None:
        self.events.extend(rows)
        self.fingerprint = fingerprint_after(self.fingerprint, rows)
        self.message_ids.update(row.message_id for row in rows if row.message_id is not None)


class MemoryStore:
    """An EventLog without files. "Durable" means here: until the process ends."""

    def __init__(self) -> None:
        self._lock = RLock()
        self._kept: dict[str, _Kept] | None = {}
        self._event_ids: set[str] = set()
        self._failed_tries: list[datetime] = []

    def create(self, session: SessionRecord, events: Sequence[Event]) -> None:
        if not events:
            raise ValueError("a session starts with an event")
        row, rows = session_row_of(session), rows_of(session.session_id, 0, events)
        with self._lock:
            if row.session_id in self._all():
                raise SessionMovedOn(row.session_id, 0, len(self._all()[row.session_id].events))
            others = [kept.session for kept in self._all().values()]
            if row.name is not None and any(other.name == row.name for other in others):
                raise Refused("name_taken", {"name": row.name})
            if any(other.code_hash == row.code_hash for other in others):
                raise Refused("code_taken")
            self._add(_Kept(row), rows)

    def append(self, session_id: str, expected_sequence: int, events: Sequence[Event]) -> None:
        rows = rows_of(session_id, expected_sequence, events)
        with self._lock:
            kept = self._one(session_id)
            if len(kept.events) != expected_sequence:
                raise SessionMovedOn(session_id, expected_sequence, len(kept.events))
            self._add(kept, rows)

    def append_all(self, appendings: Iterable[Appending]) -> None:
        with self._lock:
            before = {session_id: kept.copied() for session_id, kept in self._all().items()}
            event_ids = set(self._event_ids)
            try:
                for appending in appendings:
                    self.append(*appending)
            except BaseException:
                self._kept, self._event_ids = before, event_ids
                raise

    def read(self, session_id: str) -> tuple[Event, ...]:
        with self._lock:
            return tuple(event_from(row, WHERE) for row in self._one(session_id).events)

    def last_sequence(self, session_id: str) -> int:
        with self._lock:
            return len(self._one(session_id).events)

    def events_of(self, kind: type[Happening], session_id: str | None = None) -> tuple[Event, ...]:
        with self._lock:
            rows = [
                row
                for each, kept in self._all().items()
                if session_id in (None, each)
                for row in kept.events
                if row.type == kind.__name__
            ]
        ordered = rows if session_id is not None else sorted(rows, key=_by_time)
        return tuple(event_from(row, WHERE) for row in ordered)

    def ids_after(self, session_id: str, limit: int) -> list[str]:
        with self._lock:
            return sorted(each for each in self._all() if each > session_id)[:limit]

    def texts_after(self, session_id: str, sequence: int, limit: int) -> list[tuple[str, int, str]]:
        with self._lock:
            kept = [
                (row.session_id, row.sequence, row.text)
                for each in self._all().values()
                for row in each.events
                if row.text is not None and (row.session_id, row.sequence) > (session_id, sequence)
            ]
        return sorted(kept)[:limit]

    def names_after(self, session_id: str, limit: int) -> list[tuple[str, str]]:
        with self._lock:
            rows = [kept.session for kept in self._all().values()]
        named = [(row.session_id, row.name) for row in rows if row.name is not None]
        return sorted(each for each in named if each[0] > session_id)[:limit]

    def untouched_since(self, moment: datetime, limit: int) -> list[str]:
        before = stored_time(moment)
        with self._lock:
            return sorted(each for each, kept in self._all().items() if kept.latest() < before)[:limit]

    def erase_untouched(self, moment: datetime, limit: int) -> list[str]:
        with self._lock:
            ids = self.untouched_since(moment, limit)
            for session_id in ids:
                self.erase(session_id)
            return ids

    def sweep(self) -> None:
        with self._lock:
            self._all()

    def kept_fingerprint(self, session_id: str) -> str | None:
        with self._lock:
            return self._one(session_id).fingerprint

    def reckoned_fingerprint(self, session_id: str) -> str:
        with self._lock:
            return fingerprint_after("", self._one(session_id).events)

    def find_by_code(self, code: str) -> SessionRecord:
        code_hash = hash_code(code)
        with self._lock:
            for kept in self._all().values():
                if kept.session.code_hash == code_hash:
                    return session_from(kept.session, WHERE)
        raise SessionUnknown("no session with that code")

    def failed_tries(self, since: datetime, until: datetime) -> int:
        with self._lock:
            return sum(since <= each <= until for each in self._failed_tries)

    def note_failed_try(self, moment: datetime, keep_since: datetime) -> None:
        with self._lock:
            kept = [each for each in self._failed_tries if keep_since <= each <= moment]
            self._failed_tries = [*kept, moment]

    def forget_tries(self, before: datetime) -> None:
        with self._lock:
            self._failed_tries = [each for each in self._failed_tries if each >= before]

    def find_by_name(self, name: str) -> SessionRecord | None:
        with self._lock:
            for kept in self._all().values():
                if kept.session.name == name:
                    return session_from(kept.session, WHERE)
        return None

    def find_by_id_prefix(self, prefix: str) -> SessionRecord:
        with self._lock:
            rows = [kept.session for kept in self._all().values()]
        found = [row for row in rows if row.session_id.startswith(prefix)]
        if not prefix or len(found) != 1:
            raise SessionUnknown(prefix)
        return session_from(found[0], WHERE)

    def sessions(self, limit: int = 50) -> list[SessionSummary]:
        with self._lock:
            oldest_first = sorted(self._all().values(), key=lambda kept: kept.session.created_at)
            return [_summary_of(kept) for kept in oldest_first[::-1][: max(0, limit)]]

    def seen_message(self, session_id: str, message_id: str) -> bool:
        with self._lock:
            kept = self._all().get(session_id)
            return kept is not None and any(row.message_id == message_id for row in kept.events)

    def erase(self, session_id: str) -> None:
        with self._lock:
            self._event_ids.difference_update(row.event_id for row in self._one(session_id).events)
            del self._all()[session_id]

    def erase_text(self, session_id: str) -> None:
        with self._lock:
            kept = self._one(session_id)
            kept.events[:] = [row._replace(text=None) for row in kept.events]

    def close(self) -> None:
        with self._lock:
            self._kept = None

    def _all(self) -> dict[str, _Kept]:
        if self._kept is None:
            raise StoreUnreadable(WHERE, "closed")
        return self._kept

    def _one(self, session_id: str) -> _Kept:
        kept = self._all().get(session_id)
        if kept is None:
            raise SessionUnknown(session_id)
        return kept

    def _add(self, kept: _Kept, rows: Sequence[EventRow]) -> None:
        for row in rows:
            if row.event_id in self._event_ids:
                raise Refused("event_repeated", {"event_id": row.event_id})
            if row.message_id is not None and row.message_id in kept.message_ids:
                raise Refused("message_repeated", {"message_id": row.message_id})
        kept.add(rows)
        self._event_ids.update(row.event_id for row in rows)
        self._all()[kept.session.session_id] = kept


def _by_time(row: EventRow) -> tuple[str, str, int]:
    return row.recorded_at, row.session_id, row.sequence


def _summary_of(kept: _Kept) -> SessionSummary:
    told = [row.type for row in kept.events if row.type != OutcomeRecorded.__name__]
    return SessionSummary(
        session_id=kept.session.session_id,
        name=kept.session.name,
        created_at=time_from(kept.session.created_at, WHERE),
        last_at=time_from(kept.events[-1].recorded_at, WHERE),
        events=len(kept.events),
        finished=told[-1:] == [InterviewFinished.__name__],
    )
