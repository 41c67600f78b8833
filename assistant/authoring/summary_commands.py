"""`ovenside summary`: what is read before the visit, by the engineer or by the household."""

import argparse
import json
from typing import TYPE_CHECKING, Any, TextIO

from assistant.authoring.summary_forms import FORMS, NO_TEXT
from assistant.authoring.whole_file import file_or_here, write_whole

if TYPE_CHECKING:
    from assistant.interview.log import EventLog, SessionRecord
    from assistant.interview.script import Script
    from assistant.reports.summary.session import Told
    from assistant.reports.summary.value import Reader, Summary
    from assistant.wording.languages import Languages

READERS: tuple["Reader", ...] = ("engineer", "household")


def add_summary(
    commands: "argparse._SubParsersAction[argparse.ArgumentParser]", shared: argparse.ArgumentParser
) -> None:
    """Its options."""
    summary = commands.add_parser("summary", parents=[shared], help="what to read before the visit")
    summary.add_argument("code", nargs="+", help="the session's code, or the first characters of its id")
    summary.add_argument("--reader", choices=READERS, default="engineer", help="who reads it (default: engineer)")
    summary.add_argument("--form", choices=tuple(FORMS), default="text", help="how it is written (default: text)")
    summary.add_argument("--to", type=file_or_here, metavar="FILE", help="where to write it (default, and -: here)")
    summary.add_argument(
        "--schema", action=_PrintSchema, nargs=0, help="print the JSON Schema of summaries as JSON, and end"
    )


class _PrintSchema(argparse.Action):
    """Ends like --help, so that no session has to be named."""

    def __call__(self, parser: argparse.ArgumentParser, *_: Any) -> None:
        from assistant.reports.summary.json_schema import summary_schema

        print(json.dumps(summary_schema(), indent=2))  # noqa: T201 - what was asked for
        parser.exit()


def summarise(
    log: "EventLog", script: "Script", languages: "Languages", arguments: argparse.Namespace, out: TextIO
) -> int:
    """Write the summary, with the numbers to call where the oven stands. Returns the exit status. Raises
    SessionUnknown.
    """
    say = languages.wording(arguments.lang).say
    if arguments.to is None and arguments.form in NO_TEXT and not _takes_bytes(out):
        out.write(say("summary-needs_file") + "\n")
        return 1
    from assistant.authoring.session_search import find_session

    record = find_session(log, "".join(arguments.code))
    told = told_of(log, record, script, languages, arguments.lang)
    written = FORMS[arguments.form](_summary(told, arguments.reader), told.sentences.wording)
    if arguments.to is None:
        _write_here(written, out, is_text=arguments.form not in NO_TEXT)
        return 0
    try:
        write_whole(arguments.to, written)
    except OSError as error:
        out.write(say("summary-not_made", reason=error.strerror or str(error)) + "\n")
        return 1
    out.write(say("summary-written", where=str(arguments.to)) + "\n")
    return 0


def _takes_bytes(out: TextIO) -> bool:
    """A file or a pipe does; a terminal would show them as letters."""
    return not out.isatty() and hasattr(out, "buffer")


def _write_here(written: bytes, out: TextIO, *, is_text: bool) -> None:
    if is_text:
        out.write(written.decode())
    else:
        out.flush()
        out.buffer.write(written)


def told_of(log: "EventLog", record: "SessionRecord", script: "Script", languages: "Languages", lang: str) -> "Told":
    """The session in the words of that language and with the lines of its own region."""
    from assistant.interview.state import fold
    from assistant.reports.summary.session import Told

    events = log.read(record.session_id)
    return Told(script, languages.sentences_of_session(lang, fold(events).region), events)


def _summary(told: "Told", reader: "Reader") -> "Summary":
    from assistant.reports.summary.engineer import engineer_summary
    from assistant.reports.summary.household import household_summary

    return engineer_summary(told) if reader == "engineer" else household_summary(told)
