"""`ovenside outcomes export`: what came of the sessions, as a table or as lines to learn from elsewhere."""

import os
import tempfile
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import TextIO

from assistant.authoring.gathered_outcomes import latest_events, outcomes_in
from assistant.authoring.outcome_file import lines_of
from assistant.authoring.outcome_table import written_table
from assistant.interview.events import Event, OutcomeRecorded
from assistant.interview.log import EventLog
from assistant.knowledge.model import Knowledge
from assistant.wording.locale import Wording

LINES, TABLE = ".jsonl", ".csv"


def export(log: EventLog, knowledge: Knowledge, file: Path, wording: Wording, out: TextIO) -> int:
    """The latest outcome of each session; by the file's ending, a table or lines. Returns the exit status."""
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


def write_whole(file: Path, content: bytes) -> None:
    """The file is there as a whole or as it was before, for its owner alone. Raises OSError."""
    descriptor, beside = tempfile.mkstemp(dir=file.parent, prefix=f".{file.name}.")
    try:
        with os.fdopen(descriptor, "wb") as opened:
            opened.write(content)
            opened.flush()
            os.fsync(opened.fileno())
        Path(beside).replace(file)
    except BaseException:
        Path(beside).unlink(missing_ok=True)
        raise
