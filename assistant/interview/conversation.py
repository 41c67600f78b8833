"""One session under way: commands in, events kept, the next view out."""

from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from time import monotonic
from uuid import uuid4

from assistant.errors import Refused, SessionUnknown, StoreUnreadable
from assistant.interview.assess import Assessment, assess
from assistant.interview.commands import BeginMeasuring, Command, Start
from assistant.interview.decide import consequences_of, decide
from assistant.interview.events import SCHEMA_VERSION, Event, Happening
from assistant.interview.log import EventLog, SessionRecord
from assistant.interview.measuring import may_measure
from assistant.interview.script import Script
from assistant.interview.state import State, fold
from assistant.interview.view import View, look


def utc_now() -> datetime:
    return datetime.now(UTC)


LEAST_BEHIND = timedelta(minutes=1)


class Conversation:
    """Follows the script for one session. Every command is committed before its view is given.

    The session comes to exist with its first events; until then nothing is stored. `clock_behind`: how long before what
    was told already the clock stood when the latest was told, where it went back; what is told keeps its order.
    """

    def __init__(
        self,
        script: Script,
        log: EventLog,
        record: SessionRecord,
        state: State | None = None,
        clock: Callable[[], datetime] = utc_now,
    ) -> None:
        self.script = script
        self.record = record
        self.state = state or State()
        self._log = log
        self._clock = clock
        self._role = self.state.role
        self._pending: tuple[Event, ...] = ()
        self._saving = True
        self._unsaved: tuple[Event, ...] = ()
        self._holds_unsaved = False
        self._pause_s = 0.0
        self._try_again_at = 0.0
        self.clock_behind: timedelta | None = None
        self._assessment: Assessment | None = None
        self._seen: tuple[Assessment, View] | None = None

    @classmethod
    def resume(
        cls,
        script: Script,
        log: EventLog,
        record: SessionRecord,
        clock: Callable[[], datetime] = utc_now,
        *,
        role: str | None = None,
    ) -> "Conversation":
        """Take a stored session up again, in the role in which it was begun or in another one.

        Raises SessionUnknown, StoreUnreadable, and Refused for a role that the rules don't know.
        """
        roles = script.knowledge.roles
        if role is not None and role not in roles:
            raise Refused("unknown_role", {"found": role[:60], "valid": ", ".join(roles), "nearest": ""})
        state = fold(log.read(record.session_id))
        return cls(script, log, record, replace(state, role=role or state.role), clock)

    @property
    def stored(self) -> bool:
        """Whether everything so far is in the log."""
        return self._saving and self.state.sequence > 0 and not self._pending and not self._unsaved

    @property
    def saving(self) -> bool:
        """Whether what is told goes to the log, or waits for it."""
        return self._saving

    @property
    def unsaved(self) -> tuple[Event, ...]:
        """What waits for a log that can't be written just now."""
        return self._unsaved

    @property
    def under_other_rules(self) -> bool:
        """Whether the latest answer was given under other rules than today's, by which everything is weighed anew."""
        return self.state.started and self.state.rules_fingerprint != self.script.knowledge.fingerprint

    @property
    def assessment(self) -> Assessment:
        if self._assessment is None:
            self._assessment = assess(self.script, self.state)
        return self._assessment

    def view(self) -> View:
        """The next question or the verdict, as things stand."""
        assessment = self.assessment
        if self._seen is None or self._seen[0] is not assessment:
            self._seen = (assessment, look(self.script, assessment))
        return self._seen[1]

    def start(self, start: Start, message_id: str | None = None, *, keep_at_once: bool = True) -> None:
        """Begin. With `keep_at_once` false, nothing is stored until the first answer."""
        happenings = decide(self.script.knowledge, self.state, start)
        self._role = start.role
        events = self._events(happenings, 0, message_id)
        if keep_at_once:
            self._log.create(self.record, events)
        else:
            self._pending = events
        self.state, self._assessment = fold(events), None

    def do(self, *commands: Command, message_id: str | None = None) -> None:
        """Decide, commit all at once, advance.

        Raises Refused, StoreUnreadable or SessionMovedOn; then nothing changed.
        """
        state, events = self.state, self._pending
        for command in commands:
            self._refuse_unless_fit(command, state)
            happenings = decide(self.script.knowledge, state, command)
            new = self._events(happenings, state.sequence, message_id)
            message_id = None if new else message_id
            state = fold(new, state)
            events = (*events, *new)
        if events == self._pending:
            return
        assessment = assess(self.script, state)
        while consequences := consequences_of(self.script, assessment):
            new = self._events(consequences, state.sequence, None)
            state, events = fold(new, state), (*events, *new)
            assessment = assess(self.script, state)
        if self._saving:
            self._keep(events)
        self.clock_behind = _behind(self.state, events[-1].recorded_at)
        self.state, self._assessment = state, assessment

    def _refuse_unless_fit(self, command: Command, state: State) -> None:
        """No hot oven is begun to be measured while the script wouldn't ask for it, as things stand by then."""
        if not isinstance(command, BeginMeasuring) or command.question_id not in self.script.knowledge.questions:
            return
        assessment = self.assessment if state is self.state else assess(self.script, state)
        if not may_measure(self.script, assessment, command.question_id):
            raise Refused("not_fit_to_measure", {"question": command.question_id})

    def _keep(self, events: tuple[Event, ...]) -> None:
        """With what waits from before. Raises as `do`, unless what can't be written is held."""
        if self._holds_unsaved and monotonic() < self._try_again_at:
            self._pending, self._unsaved = (), (*self._unsaved, *events)
            return
        events = (*self._not_saved_after_all(), *events)
        if not events:
            self._unsaved = ()
            return
        try:
            if events[0].sequence == 1:
                self._log.create(self.record, events)
            else:
                self._log.append(self.record.session_id, events[0].sequence - 1, events)
        except StoreUnreadable:
            if not self._holds_unsaved:
                raise
            self._pending, self._unsaved = (), events
            self._try_again_at = monotonic() + self._pause_s
        else:
            self._pending = self._unsaved = ()

    def _not_saved_after_all(self) -> tuple[Event, ...]:
        """What waits, without what the log holds: it may have been written, and only the answer been lost."""
        if not self._unsaved:
            return ()
        try:
            kept = {event.event_id for event in self._log.read(self.record.session_id)}
        except (SessionUnknown, StoreUnreadable):
            return self._unsaved
        return tuple(event for event in self._unsaved if event.event_id not in kept)

    def is_behind(self) -> bool:
        """Whether somebody else went on with the session. Raises SessionUnknown or StoreUnreadable."""
        return self.stored and self._log.last_sequence(self.record.session_id) > self.state.sequence

    def events(self) -> tuple[Event, ...]:
        """All that the log holds of the session. Raises SessionUnknown or StoreUnreadable."""
        return self._log.read(self.record.session_id)

    def refresh(self) -> None:
        """Read the session anew, after somebody else appended to it; what was held is let go.

        Raises SessionUnknown or StoreUnreadable.
        """
        state = fold(self._log.read(self.record.session_id))
        self.state, self._assessment, self._unsaved = replace(state, role=self._role), None, ()

    def hold_unsaved(self, pause_s: float = 0.0) -> None:
        """From now on keep what the log can't take just now, and write it with what comes next, or by `save`.

        A log that failed isn't tried again with what comes next for `pause_s` seconds: whoever waits for its failing
        shouldn't wait at every answer.
        """
        self._holds_unsaved, self._pause_s = True, pause_s

    def save(self) -> bool:
        """Try to write what waits; whether nothing waits any more. Raises SessionMovedOn or SessionUnknown."""
        self._try_again_at = 0.0
        if self._unsaved or self._pending:
            self._keep(self._pending)
        return not self._unsaved

    def stop_saving(self) -> None:
        """Go on without the log, for one that can no longer be written: safety advice must not end with it."""
        self._saving = False

    def _events(self, happenings: tuple[Happening, ...], after: int, message_id: str | None) -> tuple[Event, ...]:
        now = self._clock()
        return tuple(
            Event(
                event_id=uuid4().hex,
                session_id=self.record.session_id,
                sequence=after + number,
                schema_version=SCHEMA_VERSION,
                rules_fingerprint=self.script.knowledge.fingerprint,
                recorded_at=now,
                actor=self._role,
                role=self._role,
                message_id=message_id if number == 1 else None,
                happening=happening,
            )
            for number, happening in enumerate(happenings, 1)
        )


def _behind(state: State, now: datetime) -> timedelta | None:
    """How long before the latest of what was told `now` is, if that is more than clocks of two machines may differ."""
    told = [answer.recorded_at for answer in (*state.answers.values(), *state.replaced)]
    behind = max(told, default=now) - now
    return behind if behind >= LEAST_BEHIND else None
