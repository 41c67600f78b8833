"""`ovenside summary`: what is read before the visit, by the engineer or by the household."""

import argparse
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any, TextIO

if TYPE_CHECKING:
    from assistant.interview.log import EventLog, SessionRecord
    from assistant.interview.script import Script
    from assistant.reports.summary.value import Reader, Summary
    from assistant.wording.sentences import Sentences

READERS: tuple["Reader", ...] = ("engineer", "household")
FORMS = ("text", "markdown")


def add_summary(
    commands: "argparse._SubParsersAction[argparse.ArgumentParser]", shared: argparse.ArgumentParser
) -> None:
    """Its options."""
    summary = commands.add_parser("summary", parents=[shared], help="what to read before the visit")
    summary.add_argument("code", nargs="+", help="the session's code, or the first characters of its id")
    summary.add_argument("--reader", choices=READERS, default="engineer", help="who reads it (default: engineer)")
    summary.add_argument("--form", choices=FORMS, default="text", help="how it is written (default: text)")
    summary.add_argument("--to", type=Path, metavar="FILE", help="where to write it (default: here)")


def summarise(
    log: "EventLog", script: "Script", sentences: "Sentences", arguments: argparse.Namespace, out: TextIO
) -> int:
    """Write the summary. Returns the exit status. Raises SessionUnknown."""
    record = _record(log, "".join(arguments.code))
    written = _FORMS[arguments.form](summary_of(log, record, script, sentences, arguments.reader))
    if arguments.to is None:
        out.write(written)
        return 0
    say = sentences.wording.say
    try:
        arguments.to.write_text(written, encoding="utf-8")
    except OSError as error:
        out.write(say("summary-not_made", reason=error.strerror or str(error)) + "\n")
        return 1
    out.write(say("summary-written", where=str(arguments.to)) + "\n")
    return 0


def summary_of(
    log: "EventLog", record: "SessionRecord", script: "Script", sentences: "Sentences", reader: "Reader"
) -> "Summary":
    """The value that every form shows."""
    from assistant.reports.summary.engineer import engineer_summary
    from assistant.reports.summary.household import household_summary
    from assistant.reports.summary.session import Told

    told = Told(script, sentences, log.read(record.session_id))
    return engineer_summary(told) if reader == "engineer" else household_summary(told)


def _record(log: "EventLog", code: str) -> "SessionRecord":
    from assistant.errors import SessionUnknown

    try:
        return log.find_by_code(code)
    except SessionUnknown:
        return log.find_by_id_prefix(code)


def _text(summary: "Summary") -> str:
    from assistant.reports.summary.as_text import as_text

    return as_text(summary)


def _markdown(summary: "Summary") -> str:
    from assistant.reports.summary.as_markdown import as_markdown

    return as_markdown(summary)


_FORMS: Mapping[str, Callable[[Any], str]] = {"text": _text, "markdown": _markdown}
