"""Reads arguments, wires the pieces, starts a front end. Heavy imports wait until they are needed."""

import argparse
import contextlib
import os
import signal
import sys
from collections.abc import Callable, Sequence
from io import TextIOWrapper
from pathlib import Path
from typing import TYPE_CHECKING, Any

from assistant import __version__
from assistant.authoring import outcome_commands, reckon_commands, rule_commands, store_commands, summary_commands
from assistant.errors import OvensideError, SessionUnknown, StoreUnreadable

if TYPE_CHECKING:
    from assistant.chat.begin import Setting

DEFAULT_LANG = "en-GB"
DEFAULT_REGION = "great_britain"
DEFAULT_ROLE = "householder"


Options = tuple[tuple[str, dict[str, Any]], ...]

SHARED_OPTIONS: Options = (
    ("--rules", {"type": Path, "metavar": "FOLDER", "help": "another folder of rules"}),
    ("--lang", {"help": f"language (default: {DEFAULT_LANG})"}),
    ("--region", {"help": f"region (default: {DEFAULT_REGION})"}),
    ("--store", {"metavar": "URL", "help": "where sessions are kept: a path, sqlite:PATH, postgresql://… or memory:"}),
)
CHAT_OPTIONS: Options = (
    ("--role", {"help": f"who types: householder, agent or engineer (default: {DEFAULT_ROLE})"}),
    ("--plain", {"action": "store_true", "help": "no cursor movement and no colour, for screen readers"}),
)


def _options(options: Options) -> argparse.ArgumentParser:
    """Without defaults of their own, so that an option counts before the command as well as behind it."""
    parent = argparse.ArgumentParser(add_help=False, argument_default=argparse.SUPPRESS)
    for name, form in options:
        parent.add_argument(name, **form)
    return parent


def parser() -> argparse.ArgumentParser:
    shared = _options(SHARED_OPTIONS)
    chat = _options(CHAT_OPTIONS)

    top = argparse.ArgumentParser(
        prog="ovenside",
        description="A self-check assistant for electric ovens that cook badly.",
        parents=[_options(SHARED_OPTIONS), _options(CHAT_OPTIONS)],
    )
    top.set_defaults(rules=None, lang=DEFAULT_LANG, region=DEFAULT_REGION, store=None, role=DEFAULT_ROLE, plain=False)
    top.add_argument("--version", action="store_true", help="print the version, and what evaluates the rules")
    commands = top.add_subparsers(dest="command", title="commands", metavar="")
    resume = commands.add_parser("resume", parents=[shared, chat], help="go on with a saved session")
    resume.add_argument("code", nargs="*", help="its code; without one, the latest session on this machine")
    desk = commands.add_parser(
        "desk", parents=[shared], help="answer the telephone: the interview from the agent's side"
    )
    desk.add_argument("--customers", metavar="LANG", help="the language in which new calls are held")
    desk.add_argument("--plain", action="store_true", help="line by line, without cursor movement")
    drive = commands.add_parser("drive", parents=[shared], help="answer JSON Lines, for other programs")
    drive.add_argument("--catalogue", action="store_true", help="print every question, cause and action, and end")
    drive.add_argument("--schema", action="store_true", help="print the protocol's JSON Schema, and end")
    sessions = commands.add_parser("sessions", help="list, show or erase saved sessions")
    actions = sessions.add_subparsers(dest="action", required=True, metavar="ACTION")
    actions.add_parser("list", parents=[shared], help="the saved sessions, the latest first")
    for name, help_ in (
        ("show", "what was said in a session"),
        ("weigh", "what belief makes of a session, in figures"),
        ("chart", "draw what was measured in a session"),
        ("erase", "remove everything of a session"),
    ):
        action = actions.add_parser(name, parents=[shared], help=help_)
        action.add_argument("id", help="the session's id, or its first characters")
        if name == "chart":
            action.add_argument("picture", type=Path, metavar="FILE.svg", help="where to draw it")
        if name == "weigh":
            action.add_argument(
                "--ranges", action="store_true", help="also which assumed figures would end it otherwise"
            )
    store_commands.add_actions(actions, shared)
    summary_commands.add_summary(commands, shared)
    outcome_commands.add_outcomes(commands, shared)
    reckon_commands.add_reckon(commands, shared)
    rules = commands.add_parser("rules", help="tools for whoever edits the rules")
    tools = rules.add_subparsers(dest="tool", required=True, metavar="TOOL")
    check = tools.add_parser("check", parents=[shared], help="print every mistake in a folder of rules")
    check.add_argument("folder", nargs="?", type=Path, help="the folder (default: the rules in use)")
    schema = tools.add_parser("schema", parents=[shared], help="write the JSON Schemas by which editors complete")
    schema.add_argument("folder", nargs="?", type=Path, help="the folder of rules (default: the rules in use)")
    outcome_commands.add_tools(tools, shared)
    rule_commands.add_rule_tools(tools, shared)
    return top


def run(words: Sequence[str]) -> int:
    """The exit status: 0 for done, 1 for a mistake that was said, 2 for arguments that weren't understood."""
    _fill_missing_streams()
    _read_and_write_anything()
    _leave_politely_when_ended()
    arguments = parser().parse_args(words)
    try:
        status = _COMMANDS[arguments.command](arguments)
        sys.stdout.flush()
    except KeyboardInterrupt:
        return 130
    except OSError as error:
        return _complain_of_machine(error)
    except StoreUnreadable as error:
        return _complain_of_store(error)
    except OvensideError as error:
        return _complain_of(error)
    return status


def _fill_missing_streams() -> None:
    """A program started without standard streams reads nothing and writes nowhere."""
    for name, mode in (("stdin", "r"), ("stdout", "w"), ("stderr", "w")):
        if getattr(sys, name) is None:
            setattr(sys, name, Path(os.devnull).open(mode, encoding="utf-8"))  # noqa: SIM115 - as long as the program


def _leave_politely_when_ended() -> None:
    """A closed window or an ended process leaves as Ctrl-C does: the terminal as it was, the code told."""

    def leave(*_: object) -> None:
        raise KeyboardInterrupt

    for name in ("SIGTERM", "SIGHUP"):
        if hasattr(signal, name):
            signal.signal(getattr(signal, name), leave)


def _complain_of_machine(error: OSError) -> int:
    """A full disk, an unreadable folder, a reader that went away: say what the system says, and write no more."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), 1)
    if not isinstance(error, BrokenPipeError):
        reason = error.strerror or str(error)
        with contextlib.suppress(OSError):
            print(f"ovenside: {reason}", file=sys.stderr)  # noqa: T201 - said on standard error
    return 1


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


def _cache_folder() -> Path | None:
    """None where the user has no home: then nothing is kept."""
    from platformdirs import user_cache_path

    try:
        return user_cache_path("ovenside", appauthor=False)
    except RuntimeError:
        return None


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
    languages.require_words_for_rules(arguments.lang)
    sentences = languages.sentences(arguments.lang, None)
    if arguments.catalogue:
        print(json.dumps(catalogue(knowledge, sentences)))  # noqa: T201 - what was asked for
        return 0
    defaults = {"lang": arguments.lang, "region": arguments.region}
    driver = Driver(script_of(knowledge, _cache_folder()), open_store(arguments.store), languages, defaults)
    serve(driver, sys.stdin.buffer, sys.stdout.buffer)
    return 0


def _desk(arguments: argparse.Namespace) -> int:
    from assistant.desk.begin import Setting as DeskSetting
    from assistant.desk.begin import begin

    return begin(
        DeskSetting(
            rules=_rules_folder(arguments),
            locales=_shipped("locales"),
            cache=_cache_folder(),
            store=arguments.store,
            lang=arguments.lang,
            customers=arguments.customers or arguments.lang,
            region=arguments.region,
            plain=arguments.plain,
        )
    )


def _sessions(arguments: argparse.Namespace) -> int:
    from assistant.authoring.session_list import erase, list_all, show
    from assistant.store import open_store
    from assistant.wording.locale import load_wording

    wording = load_wording(_shipped("locales"), arguments.lang)
    if arguments.action in store_commands.ACTIONS:
        return store_commands.look_after(arguments, wording, sys.stdout)
    log = open_store(arguments.store)
    if arguments.action == "list":
        return list_all(log, wording, sys.stdout)
    if arguments.action == "erase":
        return erase(log, wording, arguments.id, sys.stdout)
    from assistant.knowledge.load import load_knowledge
    from assistant.wording.sentences import Sentences

    knowledge = load_knowledge(_rules_folder(arguments), _cache_folder())
    if arguments.action == "chart":
        from assistant.authoring.session_chart import draw
        from assistant.interview.script import script_of

        script = script_of(knowledge, _cache_folder())
        return draw(log, script, Sentences(wording, knowledge, None), arguments.id, arguments.picture, sys.stdout)
    if arguments.action == "weigh":
        from assistant.authoring.weighing import weigh
        from assistant.interview.script import script_of

        sentences = Sentences(wording, knowledge, None)
        script = script_of(knowledge, _cache_folder())
        return weigh(log, script, sentences, arguments.id, sys.stdout, with_ranges=arguments.ranges)
    return show(log, Sentences(wording, knowledge, None), arguments.id, sys.stdout)


def _summary(arguments: argparse.Namespace) -> int:
    from assistant.interview.script import script_of
    from assistant.knowledge.load import load_knowledge
    from assistant.store import open_store
    from assistant.wording.languages import Languages

    knowledge = load_knowledge(_rules_folder(arguments), _cache_folder())
    languages = Languages(_shipped("locales"), knowledge)
    script = script_of(knowledge, _cache_folder())
    try:
        return summary_commands.summarise(open_store(arguments.store), script, languages, arguments, sys.stdout)
    except SessionUnknown:
        return _complain("sessions-unknown")


def _outcome(arguments: argparse.Namespace) -> int:
    return outcome_commands.record_outcome(arguments, _places(_rules_folder(arguments)))


def _outcomes(arguments: argparse.Namespace) -> int:
    return outcome_commands.move_outcomes(arguments, _places(_rules_folder(arguments)))


def _reckon(arguments: argparse.Namespace) -> int:
    return reckon_commands.reckon(arguments, _shipped("locales"))


def _places(rules: Path) -> outcome_commands.Places:
    return outcome_commands.Places(rules, _shipped("locales"), _cache_folder())


def _rules(arguments: argparse.Namespace) -> int:
    from assistant.authoring.check import check
    from assistant.authoring.schema import write_schemas
    from assistant.wording.locale import load_wording

    wording = load_wording(_shipped("locales"), arguments.lang)
    folder = getattr(arguments, "folder", None) or _rules_folder(arguments)
    if arguments.tool in ("learn", "calibration"):
        return outcome_commands.use_outcomes(arguments, _places(folder))
    if arguments.tool in rule_commands.OPTIONS:
        return rule_commands.use_rules(arguments, _places(folder))
    if arguments.tool == "schema":
        return write_schemas(folder, wording, sys.stdout)
    return check(folder, wording, sys.stdout, with_words=True)


_COMMANDS: dict[str | None, Callable[[argparse.Namespace], int]] = {
    None: _chat,
    "resume": _resume,
    "desk": _desk,
    "drive": _drive,
    "sessions": _sessions,
    "summary": _summary,
    "outcome": _outcome,
    "outcomes": _outcomes,
    "reckon": _reckon,
    "rules": _rules,
}


def _complain(message_id: str, **details: str | float) -> int:
    from assistant.wording.locale import load_wording

    wording = load_wording(_shipped("locales"), DEFAULT_LANG)
    print(wording.say(message_id, **details), file=sys.stderr)  # noqa: T201 - said on standard error
    return 1


def _complain_of_store(error: StoreUnreadable) -> int:
    from assistant.wording.locale import load_wording
    from assistant.wording.reasons import reason_in_words

    reason = reason_in_words(error, load_wording(_shipped("locales"), DEFAULT_LANG))
    return _complain("problem-store_unusable", where=error.where, reason=reason)


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
