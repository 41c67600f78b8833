"""The commands of whoever looks after a store: check, purge, person, backup, restore, export, import, key."""

import argparse
from pathlib import Path
from typing import TYPE_CHECKING, Any, TextIO

if TYPE_CHECKING:
    from assistant.interview.log import EventLog
    from assistant.wording.locale import Wording

ACTIONS = ("check", "purge", "person", "backup", "restore", "export", "import", "key")
MOST_DAYS = 36_500


def add_actions(
    actions: "argparse._SubParsersAction[argparse.ArgumentParser]", shared: argparse.ArgumentParser
) -> None:
    def add(name: str, help_: str) -> argparse.ArgumentParser:
        return actions.add_parser(name, parents=[shared], help=help_)

    add("check", "whether every session can be read and is as it was written")
    purge = add("purge", "erase the sessions that nobody touched for so many days")
    purge.add_argument("--days", type=_days, required=True, metavar="NUMBER")
    purge.add_argument("--count", action="store_true", help="only say how many there are")
    person = add("person", "what is kept of one person: list it, write it to a file, or erase it")
    person.add_argument("words", nargs="+", metavar="WORD", help="a telephone number, or words that they told")
    what = person.add_mutually_exclusive_group()
    what.add_argument("--copy", type=Path, metavar="FILE", help="write everything of these sessions to a file")
    what.add_argument("--erase", action="store_true", help="remove everything of these sessions")
    backup = add("backup", "copy every session into a new file, while the store is in use")
    backup.add_argument("file", type=Path, metavar="FILE")
    restore = add("restore", "copy every session of such a file into the store")
    restore.add_argument("file", type=Path, metavar="FILE")
    export = add("export", "write everything of one session to a signed file")
    export.add_argument("id", help="the session's id, or its first characters")
    export.add_argument("file", type=Path, metavar="FILE")
    import_ = add("import", "take in a session from such a file")
    import_.add_argument("file", type=Path, metavar="FILE")
    for each in (export, import_):
        each.add_argument("--key", type=Path, required=True, metavar="FILE", help="the key that both sides have")
    key = add("key", "make a key for signed files")
    key.add_argument("file", type=Path, metavar="FILE")


def _days(typed: str) -> int:
    if not typed.isdecimal() or not 1 <= int(typed) <= MOST_DAYS:
        raise argparse.ArgumentTypeError(f"please give a whole number of days from 1 to {MOST_DAYS}")
    return int(typed)


def look_after(arguments: Any, wording: "Wording", out: TextIO) -> int:
    """Returns the exit status. Raises StoreUnreadable, OSError."""
    from assistant.authoring import session_file
    from assistant.authoring.session_file import FileUnusable
    from assistant.authoring.session_list import say_traces_left, say_unknown
    from assistant.authoring.store_copy import refuse_unless_backup
    from assistant.errors import SessionUnknown, StoreUnreadable
    from assistant.store import open_store

    try:
        if arguments.action == "key":
            session_file.new_key(arguments.file)
            out.write(wording.say("sessions-key_made", file=str(arguments.file)) + "\n")
            return 0
        if arguments.action == "restore":
            refuse_unless_backup(arguments.file)
        return _with_store(open_store(arguments.store), arguments, wording, out)
    except FileUnusable as error:
        out.write(wording.say(f"sessions-{error.code}", file=error.file) + "\n")
        return 1
    except SessionUnknown:
        return say_unknown(wording, out)
    except StoreUnreadable as error:
        if error.code != "traces_left":
            raise
        return say_traces_left(error, wording, out)
    except OSError as error:
        file = _file_of(error, arguments)
        if file is None:
            raise
        out.write(wording.say("sessions-file_unusable", file=str(file), reason=error.strerror or str(error)) + "\n")
        return 1


def _file_of(error: OSError, arguments: Any) -> Path | None:
    """Which of the files that were named the error is about; None if it is about none."""
    if error.filename is None:
        return None
    named = [getattr(arguments, each, None) for each in ("file", "copy", "key")]
    files = [each for each in named if isinstance(each, Path)]
    return next((each for each in files if str(each) == str(error.filename)), files[0] if files else None)


def _with_store(log: "EventLog", arguments: Any, wording: "Wording", out: TextIO) -> int:
    from assistant.authoring import store_care, store_copy
    from assistant.interview.conversation import utc_now

    match arguments.action:
        case "check":
            return store_care.check(log, wording, out)
        case "purge":
            purge = store_care.count_untouched if arguments.count else store_care.purge
            return purge(log, wording, arguments.days, utc_now(), out)
        case "person":
            return _person(log, arguments, wording, out)
        case "backup":
            return store_copy.back_up(log, arguments.file, wording, out)
        case "restore":
            return store_copy.restore(arguments.file, log, wording, out)
        case "export":
            return _export(log, arguments, wording, out)
    return _import(log, arguments, wording, out)


def _export(log: "EventLog", arguments: Any, wording: "Wording", out: TextIO) -> int:
    from assistant.authoring import session_file

    _refuse_if_there(arguments.file)
    content = session_file.packed(log, arguments.id, session_file.read_key(arguments.key))
    return _written(arguments.file, content, wording.say("sessions-exported", file=str(arguments.file)), out)


def _import(log: "EventLog", arguments: Any, wording: "Wording", out: TextIO) -> int:
    from assistant.authoring import session_file
    from assistant.authoring.session_file import FileUnusable
    from assistant.authoring.session_list import ID_SHOWN
    from assistant.errors import Refused, SessionMovedOn

    key = session_file.read_key(arguments.key)
    record, events = session_file.unpacked(arguments.file.read_bytes(), key, str(arguments.file))
    shown = record.session_id[:ID_SHOWN]
    try:
        new = session_file.take_in(log, record, events)
    except (FileUnusable, Refused, SessionMovedOn) as error:
        code = "goes_another_way" if isinstance(error, SessionMovedOn) else error.code
        out.write(wording.say("sessions-wrong", id=shown, reason=wording.say(f"sessions-{code}")) + "\n")
        return 1
    out.write(wording.say("sessions-taken_in", id=shown, number=new) + "\n")
    return 0


def _person(log: "EventLog", arguments: Any, wording: "Wording", out: TextIO) -> int:
    from assistant.authoring import one_person
    from assistant.authoring.session_list import ID_SHOWN, begun_line

    if arguments.copy is not None:
        _refuse_if_there(arguments.copy)
    ids = one_person.sessions_about(log, " ".join(arguments.words))
    if arguments.copy is not None and ids:
        said = wording.say("sessions-copied_of_person", file=str(arguments.copy), number=len(ids))
        return _written(arguments.copy, one_person.told_of_person(log, ids), said, out)
    if arguments.erase and ids:
        one_person.erase_all(log, ids, wording, out, ID_SHOWN)
        return 0
    for session_id in ids:
        out.write(begun_line(log, session_id, wording) + "\n")
    out.write(wording.say("sessions-of_person", number=len(ids)) + "\n")
    return 0 if ids else 1


def _refuse_if_there(file: Path) -> None:
    """A file of another use may have that name, the key's or the store's own."""
    from assistant.authoring.session_file import FileUnusable

    if file.is_file():
        raise FileUnusable("file_there", str(file))


def _written(file: Path, content: bytes, said: str, out: TextIO) -> int:
    from assistant.authoring.whole_file import write_whole

    write_whole(file, content)
    out.write(said + "\n")
    return 0
