"""What an interview needs of a store: a log for each session that only grows, until it is erased."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import NamedTuple, Protocol

from assistant.interview.events import Event, Happening


@dataclass(frozen=True, kw_only=True)
class SessionRecord:
    """What is kept of a session besides its events.

    `session_id` is internal, a random UUID (version 4) in hex. `code_hash` stands for the access code,
    which is never stored. `name` is a client's own name for the session, if it gave one. `code_hash`
    and `name` are unique among the sessions. `created_at` is aware.
    """

    session_id: str
    code_hash: str
    name: str | None
    created_at: datetime


@dataclass(frozen=True, kw_only=True)
class SessionSummary:
    """One line of a list of sessions.

    `last_at` is when the event with the highest sequence was recorded, by the clock of that moment;
    `events` counts them; `finished` says whether the last one is InterviewFinished, outcomes that were recorded
    after it left aside.
    """

    session_id: str
    name: str | None
    created_at: datetime
    last_at: datetime
    events: int
    finished: bool


class Appending(NamedTuple):
    """What `append` is asked for one session."""

    session_id: str
    expected_sequence: int
    events: Sequence[Event]


class EventLog(Protocol):
    """Sessions and their events.

    Every method raises StoreUnreadable if the place where the log is kept can't be opened, read or
    written, or was closed. A log may be opened in one thread and used in others; calls take turns.
    ValueError marks a caller's mistake: events of another session, sequences with gaps, naive times.
    """

    def create(self, session: SessionRecord, events: Sequence[Event]) -> None:
        """Keep a new session with its first events, numbered from 1; there must be at least one.

        All or nothing; returns only after the commit is durable. Raises SessionMovedOn if the session
        is there already, and Refused with the code `name_taken`, `code_taken`, or one of `append`'s.
        """

    def append(self, session_id: str, expected_sequence: int, events: Sequence[Event]) -> None:
        """Add events after `expected_sequence`, the sequence of the last event the writer has seen.

        All or nothing; returns only after the commit is durable: whatever happens afterwards, the
        events are there. Appending nothing only checks the sequence.
        Raises SessionUnknown, SessionMovedOn if the session's last event is another one, and Refused
        with one of these codes: `message_repeated` (an earlier append holds events of that message),
        `event_repeated` (an event with that id is stored), `not_unicode` (text with lone surrogates),
        `not_finite` (a number that is infinite or none).
        """

    def append_all(self, appendings: Iterable[Appending]) -> None:
        """As `append`, to several sessions: all of it or nothing, whatever fails in between.

        The appendings are taken one by one while no other writer can come between, so whoever makes them may read
        the log for each, and sees what those before it added. An error that they raise ends it, and is raised.
        """

    def read(self, session_id: str) -> tuple[Event, ...]:
        """The session's events by sequence, whatever the clocks said. Raises SessionUnknown."""

    def last_sequence(self, session_id: str) -> int:
        """The sequence of the session's last event. Raises SessionUnknown."""

    def events_of(self, kind: type[Happening], session_id: str | None = None) -> tuple[Event, ...]:
        """The events of that kind, of all sessions or of one, by when they were recorded, in a session by sequence.

        None of an unknown session.
        """

    def ids_after(self, session_id: str, limit: int) -> list[str]:
        """At most `limit` ids of sessions, in their order, behind that one; behind an empty one, the first."""

    def texts_after(self, session_id: str, sequence: int, limit: int) -> list[tuple[str, int, str]]:
        """At most `limit` free texts, each with its session's id and its sequence, behind that one, in their order."""

    def names_after(self, session_id: str, limit: int) -> list[tuple[str, str]]:
        """At most `limit` sessions' ids, each with its client's own name, behind that id, in their order.

        Those without a name are passed over.
        """

    def untouched_since(self, moment: datetime, limit: int) -> list[str]:
        """At most `limit` ids of sessions to which nothing was added at that moment or later, in their order."""

    def erase_untouched(self, moment: datetime, limit: int) -> list[str]:
        """Erase at most `limit` such sessions, and give their ids.

        All or nothing, and looked at while nobody can add to them: what somebody goes on with meanwhile stays. Traces
        are left until `sweep`, the next `erase` or `erase_text`.
        """

    def sweep(self) -> None:
        """Remove the traces of what was erased, as `erase` does by itself. Raises StoreUnreadable as it does."""

    def kept_fingerprint(self, session_id: str) -> str | None:
        """The fingerprint of the events as they were written; None for a session that an earlier version wrote.

        Raises SessionUnknown.
        """

    def reckoned_fingerprint(self, session_id: str) -> str:
        """The fingerprint of the events as they are there now. Raises SessionUnknown."""

    def find_by_code(self, code: str) -> SessionRecord:
        """The session with that access code, typed in any way. Raises SessionUnknown."""

    def failed_tries(self, since: datetime, until: datetime) -> int:
        """How many codes that no session has were tried from here in that time, both ends included."""

    def note_failed_try(self, moment: datetime, keep_since: datetime) -> None:
        """Remember that one was tried from here, not which. Those from before `keep_since` are forgotten, and those
        from after `moment`, which a clock left that went wrong.
        """

    def forget_tries(self, before: datetime) -> None:
        """Forget those that were tried before that moment, from wherever it was."""

    def find_by_name(self, name: str) -> SessionRecord | None:
        """The session with exactly that client's name, or None."""

    def find_by_id_prefix(self, prefix: str) -> SessionRecord:
        """The one session whose id starts so. Raises SessionUnknown if none does, or several do.

        An empty prefix is nobody's, even if there is only one session.
        """

    def sessions(self, limit: int = 50) -> list[SessionSummary]:
        """At most `limit` sessions, the latest created first."""

    def seen_message(self, session_id: str, message_id: str) -> bool:
        """Whether the session holds an event of that message; False for an unknown session too."""

    def erase(self, session_id: str) -> None:
        """Remove everything of the session. Its free text and its client's name can't be recovered from the store's
        own files; how far the rest can't either, and what a server keeps beside them, each store says.

        Raises SessionUnknown, and StoreUnreadable with the code `traces_left`, the code of the reason as its detail, if
        the session is gone from the log but such traces may be left in the files; they are then removed by the next
        erasure, in a file also by the next opening.
        """

    def erase_text(self, session_id: str) -> None:
        """Remove the session's free text as `erase` does; the events stay, their text is None.

        Doing it again is no mistake. Raises as `erase` does.
        """

    def close(self) -> None:
        """Let go of the files. Closing twice is no mistake."""
