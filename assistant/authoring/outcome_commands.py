"""The commands on outcomes: their options, and what they start. Heavy imports wait until they are needed."""

import argparse
import sys
from dataclasses import dataclass
from pathlib import Path
from typing import Any, TypeAlias

from assistant.authoring.whole_file import file_or_here

Options = tuple[tuple[str, dict[str, Any]], ...]

CODE_OPTIONS: Options = (
    ("code", {"nargs": "+", "help": "the session's code, or the first characters of its id"}),
    ("--no-questions", {"action": "store_true", "help": "ask for nothing, also at a terminal"}),
    ("--plain", {"action": "store_true", "default": argparse.SUPPRESS, "help": "ask without cursor movement"}),
)
TOLD_OPTIONS: Options = (
    ("--result", {"help": "how it ended: mended, advised, no_fault_found, … (see README.md)"}),
    ("--cause-found", {"metavar": "CAUSE", "help": "the cause that was found"}),
    ("--second-cause", {"metavar": "CAUSE", "help": "another one that was found"}),
    ("--part-fitted", {"metavar": "PART", "help": "the part that was fitted; that alone isn't a cause that was found"}),
    ("--minutes", {"metavar": "N", "help": "minutes at the oven"}),
    ("--note", {"metavar": "TEXT", "help": "a few words; nothing about persons"}),
    ("--group", {"help": "visited (default) or solved_by_phone"}),
)
IMPORT_OPTIONS: Options = (
    ("file", {"type": Path, "metavar": "FILE.csv", "help": "the table"}),
    ("--dry-run", {"action": "store_true", "help": "only say what would be recorded"}),
)
EXPORT_OPTIONS: Options = (
    (
        "--to",
        {
            "required": True,
            "type": file_or_here,
            "metavar": "FILE",
            "help": "FILE.csv, FILE.jsonl, or - for the table here",
        },
    ),
)
TOOL_OPTIONS: Options = (
    ("folder", {"nargs": "?", "type": Path, "help": "the folder of rules (default: the rules in use)"}),
    ("--outcomes", {"type": Path, "metavar": "FILE", "help": "a file of outcomes (default: one in your data folder)"}),
)
LEARN_OPTIONS: Options = (
    ("--unknown", {"type": int, "metavar": "N", "default": 0, "help": "sessions of which nobody knows what came"}),
    ("--visited", {"type": int, "metavar": "N", "help": "visits in all (default: those with an outcome)"}),
    ("--solved-by-phone", {"type": int, "metavar": "N", "help": "calls that solved it (default: with an outcome)"}),
)
CALIBRATION_OPTIONS: Options = (
    ("--svg", {"type": Path, "metavar": "FILE", "help": "also draw the reliability diagram"}),
)

Commands: TypeAlias = "argparse._SubParsersAction[argparse.ArgumentParser]"


@dataclass(frozen=True)
class Places:
    """Where the commands find rules and words. `cache` is None where nothing can be kept."""

    rules: Path
    locales: Path
    cache: Path | None


def add_outcomes(commands: Commands, shared: argparse.ArgumentParser) -> None:
    """`outcome`, `outcomes import` and `outcomes export`."""
    add_command(commands, "outcome", "record what came of a session", shared, CODE_OPTIONS + TOLD_OPTIONS)
    outcomes = commands.add_parser("outcomes", help="outcomes of many sessions at once")
    steps = outcomes.add_subparsers(dest="step", required=True, metavar="STEP")
    add_command(steps, "import", "record a table of outcomes, all of it or nothing", shared, IMPORT_OPTIONS)
    add_command(steps, "export", "write what came of the sessions to a file", shared, EXPORT_OPTIONS)


def add_tools(tools: Commands, shared: argparse.ArgumentParser) -> None:
    """`rules learn` and `rules calibration`."""
    learn = "write learned.diff: what outcomes change in how common causes are"
    add_command(tools, "learn", learn, shared, TOOL_OPTIONS + LEARN_OPTIONS)
    calibration = "how well what was called likely came true"
    add_command(tools, "calibration", calibration, shared, TOOL_OPTIONS + CALIBRATION_OPTIONS)


def add_command(to: Commands, name: str, help_: str, shared: argparse.ArgumentParser, options: Options) -> None:
    command = to.add_parser(name, parents=[shared], help=help_)
    for option, form in options:
        command.add_argument(option, **form)


def record_outcome(arguments: argparse.Namespace, places: Places) -> int:
    """The exit status of `outcome`."""
    from datetime import UTC, datetime

    from assistant.authoring.outcome_table import FIELDS
    from assistant.authoring.outcomes import Recording, asking_at_the_terminal
    from assistant.interview.commands import RecordOutcome
    from assistant.knowledge.load import load_knowledge
    from assistant.store import open_store
    from assistant.wording.locale import load_wording

    wording = load_wording(places.locales, arguments.lang)
    knowledge = load_knowledge(places.rules, places.cache)
    recording = Recording(open_store(arguments.store), knowledge, wording, sys.stdout, places.cache)
    told = RecordOutcome(**{field: getattr(arguments, field) or "" for field in FIELDS})
    ask = None if arguments.no_questions else asking_at_the_terminal(plain=arguments.plain)
    return recording.record("".join(arguments.code), told, datetime.now(UTC), ask)


def move_outcomes(arguments: argparse.Namespace, places: Places) -> int:
    """The exit status of `outcomes import` and `outcomes export`."""
    from datetime import UTC, datetime

    from assistant.authoring.outcome_export import export
    from assistant.authoring.outcome_import import import_file
    from assistant.knowledge.load import load_knowledge
    from assistant.store import open_store
    from assistant.wording.locale import load_wording

    wording = load_wording(places.locales, arguments.lang)
    knowledge = load_knowledge(places.rules, places.cache)
    log = open_store(arguments.store)
    if arguments.step == "export":
        return export(log, knowledge, arguments.to, wording, sys.stdout)
    now = datetime.now(UTC)
    return import_file(arguments.file, log, knowledge, wording, now, sys.stdout, dry=arguments.dry_run)


def use_outcomes(arguments: argparse.Namespace, places: Places) -> int:
    """The exit status of `rules learn` and `rules calibration`."""
    from assistant.authoring.calibration_report import report
    from assistant.authoring.gathered_outcomes import gather
    from assistant.authoring.learn import learn
    from assistant.knowledge.load import load_knowledge
    from assistant.store import open_store
    from assistant.wording.locale import load_wording

    wording = load_wording(places.locales, arguments.lang)
    knowledge = load_knowledge(places.rules, places.cache)
    file = arguments.outcomes or _own_file()
    try:
        log, weighed = open_store(arguments.store), arguments.tool == "calibration"
        outcomes = gather(log, knowledge, file, wording, sys.stdout, with_evidence=weighed)
    except OSError as error:
        reason = error.strerror or str(error)
        sys.stdout.write(wording.say("outcomes-not_read", where=str(file), reason=reason) + "\n")
        return 1
    if arguments.tool == "calibration":
        return report(knowledge, outcomes, arguments.svg, wording, sys.stdout)
    sizes = {group: getattr(arguments, group) for group in ("unknown", "visited", "solved_by_phone")}
    named = {group: size for group, size in sizes.items() if size is not None}
    return learn(places.rules, knowledge, outcomes, named, wording, sys.stdout)


def _own_file() -> Path | None:
    """The file of outcomes beside the sessions in the user's data folder, if there is one."""
    from platformdirs import user_data_path

    try:
        file = user_data_path("ovenside", appauthor=False) / "outcomes.jsonl"
    except RuntimeError:  # a user without a home
        return None
    return file if file.exists() else None
