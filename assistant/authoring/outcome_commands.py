"""The commands on outcomes: their options, and what they start. Heavy imports wait until they are needed."""

import argparse
import sys
from dataclasses import dataclass
from pathlib import Path
from typing import Any, TypeAlias

from assistant.errors import OvensideError

Options = tuple[tuple[str, dict[str, Any]], ...]

RECORD_OPTIONS: Options = (
    ("id", {"help": "the session's id, or its first characters"}),
    ("--group", {"required": True, "help": "visited or solved_by_phone"}),
    ("--result", {"required": True, "help": "how it ended: mended, advised, no_fault_found, … (see README.md)"}),
    ("--found", {"action": "append", "default": [], "metavar": "CAUSE", "help": "a cause that was found; repeat it"}),
    ("--to", {"type": Path, "metavar": "FILE", "help": "the file of outcomes (default: in your data folder)"}),
)
TOOL_OPTIONS: Options = (
    ("folder", {"nargs": "?", "type": Path, "help": "the folder of rules (default: the rules in use)"}),
    ("--outcomes", {"type": Path, "metavar": "FILE", "help": "the file of outcomes (default: in your data folder)"}),
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
    """`outcomes record`."""
    outcomes = commands.add_parser("outcomes", help="record what cases turned out to be")
    steps = outcomes.add_subparsers(dest="step", required=True, metavar="STEP")
    add_command(steps, "record", "what a saved session turned out to be", shared, RECORD_OPTIONS)


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
    """The exit status of `outcomes record`."""
    from datetime import UTC, datetime

    from assistant.authoring.outcomes import Told, record
    from assistant.interview.script import script_of
    from assistant.knowledge.load import load_knowledge
    from assistant.store import open_store
    from assistant.wording.locale import load_wording

    wording = load_wording(places.locales, arguments.lang)
    script = script_of(load_knowledge(places.rules, places.cache), places.cache)
    told = Told(arguments.id, arguments.group, arguments.result, tuple(arguments.found))
    to = arguments.to or own_file()
    return record(open_store(arguments.store), script, wording, told, datetime.now(UTC).date(), to, sys.stdout)


def use_outcomes(arguments: argparse.Namespace, places: Places) -> int:
    """The exit status of `rules learn` and `rules calibration`."""
    from assistant.authoring.calibration_report import report
    from assistant.authoring.learn import learn
    from assistant.knowledge.load import load_knowledge
    from assistant.wording.locale import load_wording

    wording = load_wording(places.locales, arguments.lang)
    knowledge = load_knowledge(places.rules, places.cache)
    file = arguments.outcomes or own_file()
    if arguments.tool == "calibration":
        return report(knowledge, file, arguments.svg, wording, sys.stdout)
    sizes = {group: getattr(arguments, group) for group in ("unknown", "visited", "solved_by_phone")}
    named = {group: size for group, size in sizes.items() if size is not None}
    return learn(places.rules, knowledge, file, named, wording, sys.stdout)


def own_file() -> Path:
    """Beside the sessions, in the user's data folder. A user without a home has none: OvensideError."""
    from platformdirs import user_data_path

    from assistant.store.opening import make_folder

    try:
        folder = user_data_path("ovenside", appauthor=False)
    except RuntimeError as error:
        raise OvensideError(str(error)) from error
    make_folder(folder)
    return folder / "outcomes.jsonl"
