"""`ovenside outcomes export`: what came of the sessions, as a table or as lines to learn from elsewhere."""

from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import TextIO

from assistant.authoring.gathered_outcomes import latest_events, outcomes_in
from assistant.authoring.outcome_file import lines_of
from assistant.authoring.outcome_table import written_table
from assistant.authoring.whole_file import write_whole
from assistant.interview.events import Event, OutcomeRecorded
from assistant.interview.log import EventLog
from assistant.knowledge.model import Knowledge
from assistant.wording.locale import Wording

LINES, TABLE = ".jsonl", ".csv"


def export(log: EventLog, knowledge: Knowledge, file: Path | None, wording: Wording, out: TextIO) -> int:
    """The latest outcome of each session; by the file's ending, a table or lines. Without a file, the table and nothing
    else is written out. Returns the exit status.
    """
    if file is None:
        _write_here(written_table(_rows(latest_events(log))).encode(), out)
        return 0
    if file.suffix.lower() not in (LINES, TABLE):
        out.write(wording.say("outcomes-export_kind_unknown", where=str(file)) + "\n")
        return 1
    events = latest_events(log)
    if file.suffix.lower() == TABLE:
        content = written_table(_rows(events)).encode("utf-8-sig")
    else:
        content = lines_of(outcomes_in(log, knowledge))
    try:
        write_whole(file, content)
    except OSError as error:
        out.write(wording.say("outcomes-not_written", where=str(file), reason=error.strerror or str(error)) + "\n")
        return 1
    out.write(wording.say("outcomes-exported", count=len(events), where=str(file)) + "\n")
    return 0


def _write_here(content: bytes, out: TextIO) -> None:
    """As it is, whatever letters and line ends this terminal is set to."""
    if hasattr(out, "buffer"):
        out.flush()
        out.buffer.write(content)
    else:
        out.write(content.decode())


def _rows(events: tuple[Event, ...]) -> Iterator[Mapping[str, str]]:
    for event in events:
        told = event.happening
        assert isinstance(told, OutcomeRecorded)
        first, second, *_ = (*told.causes_found, "", "")
        yield {
            "session": event.session_id,
            "result": told.result,
            "cause_found": first,
            "second_cause": second,
            "part_fitted": told.part_fitted or "",
            "minutes": "" if told.minutes is None else str(told.minutes),
            "note": told.text or "",
            "group": told.group,
        }
