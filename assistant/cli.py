"""Reads arguments, wires the pieces, starts a front end. Heavy imports wait until they are needed."""

import argparse
import os
import sys
from collections.abc import Callable, Sequence
from io import TextIOWrapper
from pathlib import Path
from typing import TYPE_CHECKING

from assistant import __version__
from assistant.errors import OvensideError, SessionUnknown, StoreUnreadable

if TYPE_CHECKING:
    from assistant.chat.begin import Setting

DEFAULT_LANG = "en-GB"
DEFAULT_REGION = "great_britain"


def parser() -> argparse.ArgumentParser:
    shared = argparse.ArgumentParser(add_help=False)
    shared.add_argument("--rules", type=Path, metavar="FOLDER", help="another folder of rules")
    shared.add_argument("--lang", default=DEFAULT_LANG, help="language (default: %(default)s)")
    shared.add_argument("--region", default=DEFAULT_REGION, help="region (default: %(default)s)")
    shared.add_argument("--store", metavar="URL", help="where sessions are kept: a path, sqlite:PATH or memory:")
    chat = argparse.ArgumentParser(add_help=False)
    chat.add_argument("--role", default="householder", help="who types: householder, agent or engineer")
    chat.add_argument("--plain", action="store_true", help="no cursor movement and no colour, for screen readers")

    top = argparse.ArgumentParser(
        prog="ovenside",
        description="A self-check assistant for electric ovens that cook badly.",
        parents=[shared, chat],
    )
    top.add_argument("--version", action="store_true", help="print the version, and what evaluates the rules")
    commands = top.add_subparsers(dest="command", title="commands", metavar="")
    resume = commands.add_parser("resume", parents=[shared, chat], help="go on with a saved session")
    resume.add_argument("code", nargs="*", help="its code; without one, the latest session on this machine")
    drive = commands.add_parser("drive", parents=[shared], help="answer JSON Lines, for other programs")
    drive.add_argument("--catalogue", action="store_true", help="print every question, cause and action, and end")
    drive.add_argument("--schema", action="store_true", help="print the protocol's JSON Schema, and end")
    sessions = commands.add_parser("sessions", help="list, show or erase saved sessions")
    actions = sessions.add_subparsers(dest="action", required=True, metavar="ACTION")
    actions.add_parser("list", parents=[shared], help="the saved sessions, the latest first")
    for name, help_ in (("show", "what was said in a session"), ("erase", "remove everything of a session")):
        action = actions.add_parser(name, parents=[shared], help=help_)
        action.add_argument("id", help="the session's id, or its first characters")
    rules = commands.add_parser("rules", help="tools for whoever edits the rules")
    tools = rules.add_subparsers(dest="tool", required=True, metavar="TOOL")
    check = tools.add_parser("check", parents=[shared], help="print every mistake in a folder of rules")
    check.add_argument("folder", nargs="?", type=Path, help="the folder (default: the rules in use)")
    schema = tools.add_parser("schema", parents=[shared], help="write the JSON Schemas by which editors complete")
    schema.add_argument("folder", nargs="?", type=Path, help="the folder of rules (default: the rules in use)")
    return top


def run(words: Sequence[str]) -> int:
    """The exit status: 0 for done, 1 for a mistake that was said, 2 for arguments that weren't understood."""
    _read_and_write_anything()
    arguments = parser().parse_args(words)
    try:
        return _COMMANDS[arguments.command](arguments)
    except KeyboardInterrupt:
        return 130
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), 1)
        return 1
    except StoreUnreadable as error:
        return _complain("store-unusable", where=error.where, reason=error.reason)
    except OvensideError as error:
        return _complain_of(error)


def _read_and_write_anything() -> None:
    """Bytes that aren't text, and signs that this terminal can't show, become '?' instead of an error."""
    for stream in (sys.stdin, sys.stdout, sys.stderr):
        if isinstance(stream, TextIOWrapper):
            stream.reconfigure(errors="replace")


def _shipped(name: str) -> Path:
    """`rules` or `locales`: inside the installed package, or beside it in a checkout."""
    here = Path(__file__).parent
    installed = here / "shipped" / name
    return installed if installed.is_dir() else here.parent / name


def _rules_folder(arguments: argparse.Namespace) -> Path:
    folder: Path | None = arguments.rules
    return folder or _shipped("rules")


def _cache_folder() -> Path:
    from platformdirs import user_cache_path

    return user_cache_path("ovenside", appauthor=False)


def _setting(arguments: argparse.Namespace) -> "Setting":
    from assistant.chat.begin import Setting

    return Setting(
        rules=_rules_folder(arguments),
        locales=_shipped("locales"),
        cache=_cache_folder(),
        store=arguments.store,
        lang=arguments.lang,
        region=arguments.region,
        plain=arguments.plain,
        role=arguments.role,
    )


def _chat(arguments: argparse.Namespace) -> int:
    if arguments.version:
        return _print_version()
    from assistant.chat.begin import begin

    return begin(_setting(arguments))


def _print_version() -> int:
    from assistant.engine import evaluator

    print(f"ovenside {__version__} ({evaluator((), ()).name})")  # noqa: T201 - what was asked for
    return 0


def _resume(arguments: argparse.Namespace) -> int:
    from assistant.chat.begin import resume

    code = "".join(arguments.code)
    try:
        return resume(_setting(arguments), code)
    except SessionUnknown:
        return _complain("sessions-code_unknown" if code else "sessions-nothing_to_resume")


def _drive(arguments: argparse.Namespace) -> int:
    import json

    if arguments.schema:
        from assistant.drive.schema import protocol_schema

        print(json.dumps(protocol_schema(), indent=2))  # noqa: T201 - what was asked for
        return 0
    from assistant.drive.lines import catalogue
    from assistant.drive.serve import Driver, serve
    from assistant.interview.script import script_of
    from assistant.knowledge.load import load_knowledge
    from assistant.store import open_store
    from assistant.wording.languages import Languages

    knowledge = load_knowledge(_rules_folder(arguments), _cache_folder())
    languages = Languages(_shipped("locales"), knowledge)
    sentences = languages.sentences(arguments.lang, None)
    if arguments.catalogue:
        print(json.dumps(catalogue(knowledge, sentences)))  # noqa: T201 - what was asked for
        return 0
    defaults = {"lang": arguments.lang, "region": arguments.region}
    driver = Driver(script_of(knowledge), open_store(arguments.store), languages, defaults)
    serve(driver, sys.stdin.buffer, sys.stdout.buffer)
    return 0


def _sessions(arguments: argparse.Namespace) -> int:
    from assistant.authoring.session_list import erase, list_all, show
    from assistant.knowledge.load import load_knowledge
    from assistant.store import open_store
    from assistant.wording.languages import Languages

    languages = Languages(_shipped("locales"), load_knowledge(_rules_folder(arguments), _cache_folder()))
    sentences = languages.sentences(arguments.lang, None)
    log = open_store(arguments.store)
    if arguments.action == "list":
        return list_all(log, sentences, sys.stdout)
    action = show if arguments.action == "show" else erase
    return action(log, sentences, arguments.id, sys.stdout)


def _rules(arguments: argparse.Namespace) -> int:
    from assistant.authoring.check import check
    from assistant.authoring.schema import write_schemas
    from assistant.wording.locale import load_wording

    wording = load_wording(_shipped("locales"), arguments.lang)
    folder = arguments.folder or _rules_folder(arguments)
    if arguments.tool == "schema":
        return write_schemas(folder, wording, sys.stdout)
    return check(folder, wording, sys.stdout, with_words=True)


_COMMANDS: dict[str | None, Callable[[argparse.Namespace], int]] = {
    None: _chat,
    "resume": _resume,
    "drive": _drive,
    "sessions": _sessions,
    "rules": _rules,
}


def _complain(message_id: str, **details: str | float) -> int:
    from assistant.wording.locale import load_wording

    wording = load_wording(_shipped("locales"), DEFAULT_LANG)
    print(wording.say(message_id, **details), file=sys.stderr)  # noqa: T201 - said on standard error
    return 1


def _complain_of(error: OvensideError) -> int:
    """A situation that no front end worded: mistakes in the rules, an unknown language, a broken message."""
    from assistant.errors import Refused, RulesBroken
    from assistant.knowledge.load import FolderBroken

    if isinstance(error, FolderBroken):
        from assistant.authoring.check import problem_lines
        from assistant.wording.locale import load_wording

        lines = problem_lines(error.problems, load_wording(_shipped("locales"), DEFAULT_LANG))
        print("\n".join(lines), file=sys.stderr)  # noqa: T201 - said on standard error
        return 1
    if isinstance(error, RulesBroken):
        print("\n".join(error.problems), file=sys.stderr)  # noqa: T201 - said on standard error
        return 1
    if isinstance(error, Refused):
        return _complain(f"problem-{error.code}", **error.details)
    print(f"ovenside: {error}", file=sys.stderr)  # noqa: T201 - said on standard error
    return 1
