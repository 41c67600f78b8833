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
    days = int(typed)
    if not 1 <= days <= MOST_DAYS:
        raise argparse.ArgumentTypeError(f"a whole number from 1 to {MOST_DAYS}")
    return days


def look_after(arguments: Any, wording: "Wording", out: TextIO) -> int:
    """Returns the exit status. Raises StoreUnreadable, OSError."""
    from assistant.authoring import session_file
    from assistant.authoring.session_file import FileUnusable
    from assistant.authoring.session_list import say_unknown
    from assistant.errors import SessionUnknown
    from assistant.store import open_store

    try:
        if arguments.action == "key":
            session_file.new_key(arguments.file)
            out.write(wording.say("sessions-key_made", file=str(arguments.file)) + "\n")
            return 0
        return _with_store(open_store(arguments.store), arguments, wording, out)
    except FileUnusable as error:
        out.write(wording.say(f"sessions-{error.code}") + "\n")
        return 1
    except SessionUnknown:
        return say_unknown(wording, out)


def _with_store(log: "EventLog", arguments: Any, wording: "Wording", out: TextIO) -> int:
    from assistant.authoring import session_file, store_care
    from assistant.authoring.session_file import FileUnusable
    from assistant.authoring.session_list import ID_SHOWN
    from assistant.authoring.store_copy import copy_all
    from assistant.authoring.whole_file import write_whole
    from assistant.interview.conversation import utc_now
    from assistant.store import open_store

    match arguments.action:
        case "check":
            return store_care.check(log, wording, out)
        case "purge":
            return store_care.purge(log, wording, arguments.days, utc_now(), out, only_count=arguments.count)
        case "person":
            return _person(log, arguments, wording, out)
        case "backup":
            if arguments.file.exists():
                raise FileUnusable("backup_there")
            return copy_all(log, open_store(f"sqlite:{arguments.file}"), wording, out)
        case "restore":
            if not arguments.file.is_file():
                raise FileUnusable("backup_gone")
            return copy_all(open_store(f"sqlite:{arguments.file}"), log, wording, out)
        case "export":
            write_whole(arguments.file, session_file.packed(log, arguments.id, session_file.read_key(arguments.key)))
            out.write(wording.say("sessions-exported", file=str(arguments.file)) + "\n")
            return 0
    key = session_file.read_key(arguments.key)
    record, events = session_file.unpacked(arguments.file.read_bytes(), key, str(arguments.file))
    new = session_file.take_in(log, record, events)
    out.write(wording.say("sessions-taken_in", id=record.session_id[:ID_SHOWN], number=new) + "\n")
    return 0


def _person(log: "EventLog", arguments: Any, wording: "Wording", out: TextIO) -> int:
    from assistant.authoring import one_person
    from assistant.authoring.session_list import ID_SHOWN, begun_line
    from assistant.authoring.whole_file import write_whole

    ids = one_person.sessions_about(log, " ".join(arguments.words))
    if arguments.copy is not None and ids:
        write_whole(arguments.copy, one_person.told_of_person(log, ids))
        out.write(wording.say("sessions-copied_of_person", file=str(arguments.copy), number=len(ids)) + "\n")
    elif arguments.erase and ids:
        one_person.erase_all(log, ids, wording, out, ID_SHOWN)
        out.write(wording.say("sessions-forgotten", number=len(ids)) + "\n")
    else:
        for session_id in ids:
            out.write(begun_line(log, session_id, wording) + "\n")
        out.write(wording.say("sessions-of_person", number=len(ids)) + "\n")
    return 0 if ids else 1
