"""`ovenside outcomes import`: a table of outcomes, all of it or nothing."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import TextIO, cast

from assistant.authoring.outcome_table import FIELDS, Mistake, Row, rows_of_table
from assistant.authoring.outcome_words import did_you_mean
from assistant.authoring.session_list import ID_SHOWN
from assistant.authoring.session_search import session_of_row
from assistant.errors import OvensideError, SessionUnknown
from assistant.interview.answers import echoed
from assistant.interview.commands import RecordOutcome
from assistant.interview.events import OutcomeRecorded
from assistant.interview.log import Appending, EventLog
from assistant.interview.visit_outcome import is_same, outcome_event, read_outcome
from assistant.knowledge.model import Knowledge
from assistant.wording.locale import Wording

MOST_BYTES = 64 * 1024 * 1024
LEAST_OF_ID = ID_SHOWN
"""Characters of an id that a row needs: of fewer, a slip of the hand or a cell of another kind could name a session."""


class _ChangedMeanwhile(OvensideError):
    """A row that was right when all were checked is so no more."""


@dataclass(frozen=True)
class _Checked:
    """A row in which nothing is wrong; `known` if its session holds the same outcome already."""

    session_id: str
    happening: OutcomeRecorded
    known: bool


@dataclass(frozen=True)
class Import:
    """Of the table's `content` into the log. Goes over the rows twice rather than keep them: once to check all of
    them, then, in one transaction, to record them.
    """

    log: EventLog
    knowledge: Knowledge
    wording: Wording
    content: bytes

    def run(self, now: datetime, out: TextIO, *, dry: bool) -> int:
        """Returns the exit status. `dry`: only say what would be done."""
        found: Counter[str] = Counter()
        for each in self._checked():
            if isinstance(each, Mistake):
                out.write(say_mistake(each, self.wording) + "\n")
            found[_kind(each)] += 1
        if found["mistake"]:
            out.write(self.wording.say("outcomes-import_mistakes", count=found["mistake"]) + "\n")
            return 1
        if not found:
            out.write(self.wording.say("outcomes-import_no_rows") + "\n")
            return 1
        if not dry and found["new"]:
            found.clear()
            try:
                self.log.append_all(self._appendings(now, found))
            except _ChangedMeanwhile:
                out.write(self.wording.say("outcomes-import_changed") + "\n")
                return 1
        message = "outcomes-import_dry" if dry else "outcomes-imported"
        out.write(self.wording.say(message, new=found["new"], known=found["known"]) + "\n")
        return 0

    def _appendings(self, now: datetime, found: Counter[str]) -> Iterator[Appending]:
        for each in self._checked():
            if isinstance(each, Mistake):
                raise _ChangedMeanwhile
            found[_kind(each)] += 1
            if not each.known:
                after = self.log.last_sequence(each.session_id)
                event = outcome_event(self.knowledge, each.session_id, after + 1, each.happening, now)
                yield Appending(each.session_id, after, [event])

    def _checked(self) -> Iterator[_Checked | Mistake]:
        first_rows: dict[bytes, int] = {}
        for row in rows_of_table(self.content):
            if isinstance(row, Mistake):
                yield row
            else:
                yield from self._checked_row(row, first_rows)

    def _checked_row(self, row: Row, first_rows: dict[bytes, int]) -> Iterator[_Checked | Mistake]:
        """`first_rows`: each session so far, with its row."""
        session_id = self._session(row, first_rows)
        if isinstance(session_id, Mistake):
            yield session_id
        told = RecordOutcome(**{field: row.cells.get(field, "") for field in FIELDS})
        read = read_outcome(self.knowledge, told)
        if not isinstance(read, OutcomeRecorded):
            yield from (Mistake(row.number, each.where, each.code, each.details, each.nearest) for each in read)
        elif isinstance(session_id, str):
            yield _Checked(session_id, read, self._known(session_id, read))

    def _known(self, session_id: str, told: OutcomeRecorded) -> bool:
        """Whether the session holds the same outcome already, be it the latest or not."""
        recorded = (event.happening for event in self.log.events_of(OutcomeRecorded, session_id))
        return any(is_same(cast("OutcomeRecorded", each), told) for each in recorded)

    def _session(self, row: Row, first_rows: dict[bytes, int]) -> str | Mistake:
        typed = " ".join(row.cells["session"].split())
        if not typed:
            return Mistake(row.number, "session", "session_missing", {"least": LEAST_OF_ID})
        details: dict[str, str | float] = {"found": echoed(typed), "least": LEAST_OF_ID}
        if len(typed) < LEAST_OF_ID:
            return Mistake(row.number, "session", "session_too_short", details)
        try:
            session_id = session_of_row(self.log, typed).session_id
        except SessionUnknown:
            return Mistake(row.number, "session", "session_unknown", details)
        first = first_rows.setdefault(session_id.encode(), row.number)
        if first != row.number:
            return Mistake(row.number, "session", "session_twice", {"first": first})
        return session_id


def import_file(
    file: Path, log: EventLog, knowledge: Knowledge, wording: Wording, now: datetime, out: TextIO, *, dry: bool
) -> int:
    """Returns the exit status. `now` is aware."""
    try:
        with file.open("rb") as opened:
            content = opened.read(MOST_BYTES + 1)
    except OSError as error:
        out.write(wording.say("outcomes-not_read", where=str(file), reason=error.strerror or str(error)) + "\n")
        return 1
    if len(content) > MOST_BYTES:
        out.write(wording.say("outcomes-too_large", where=str(file), most=MOST_BYTES // 1024**2) + "\n")
        return 1
    return Import(log, knowledge, wording, content).run(now, out, dry=dry)


def _kind(found: _Checked | Mistake) -> str:
    if isinstance(found, Mistake):
        return "mistake"
    return "known" if found.known else "new"


def say_mistake(mistake: Mistake, wording: Wording) -> str:
    """Where it stands, what was found and what was expected, in a sentence or two."""
    said = wording.say(f"outcomes-{mistake.code}", **mistake.details)
    if mistake.nearest is not None:
        said = f"{said} {did_you_mean(mistake.nearest, wording)}"
    if mistake.column:
        return wording.say("outcomes-in_row_and_column", row=mistake.row, column=mistake.column, said=said)
    return wording.say("outcomes-in_row", row=mistake.row, said=said)
