"""A store copied into another one while it is in use: a backup, and its restoring."""

import secrets
from contextlib import closing
from pathlib import Path
from typing import TextIO

from assistant.authoring.session_file import FileUnusable, read_whole, take_in
from assistant.authoring.session_list import ID_SHOWN
from assistant.authoring.store_care import OF_ONE_SESSION, all_ids
from assistant.errors import Refused, SessionMovedOn, SessionUnknown, StoreUnreadable
from assistant.interview.events import Event
from assistant.interview.log import EventLog, SessionRecord
from assistant.store.opening import holds_sessions
from assistant.store.sqlite import SqliteStore
from assistant.wording.locale import Wording
from assistant.wording.reasons import reason_in_words

Whole = tuple[SessionRecord, tuple[Event, ...]]


def back_up(source: EventLog, file: Path, wording: Wording, out: TextIO) -> int:
    """Copy every session that can be read into a new file, which is there once it is whole.

    Returns the exit status, 1 if any couldn't be copied. Raises FileUnusable if the file is there, StoreUnreadable and
    OSError; then nothing is left of it.
    """
    _refuse_if_there(file)
    beside = file.with_name(f".{secrets.token_hex(8)}.part")
    ahead, shared = (beside.with_name(f"{beside.name}{end}") for end in ("-wal", "-shm"))
    try:
        with closing(SqliteStore(beside)) as copy:
            status = copy_all(source, copy, wording, out)
        if ahead.exists():  # closing goes by in silence where there is no room for what was written ahead
            raise StoreUnreadable(str(file), "disk_error")
        _refuse_if_there(file)
        beside.replace(file)
    except StoreUnreadable as error:
        ours = Path(error.where).name == beside.name
        raise StoreUnreadable(str(file) if ours else error.where, error.code, error.detail) from error
    finally:
        for each in (beside, ahead, shared):
            each.unlink(missing_ok=True)
    return status


def refuse_unless_backup(file: Path) -> None:
    """Raises FileUnusable, and OSError. To be asked while the file isn't open anywhere in this process."""
    if not file.exists():
        raise FileUnusable("backup_gone", str(file))
    if not holds_sessions(file):
        raise FileUnusable("not_a_backup", str(file))


def restore(file: Path, target: EventLog, wording: Wording, out: TextIO) -> int:
    """Copy every session of a backup into the store. Returns the exit status. Raises StoreUnreadable."""
    with closing(SqliteStore(file)) as source:
        return copy_all(source, target, wording, out)


def copy_all(source: EventLog, target: EventLog, wording: Wording, out: TextIO) -> int:
    """Every session as it is when its turn comes; one that is there already only goes on.

    A session is copied at one moment; sessions have nothing to do with each other. A line for each that can't be read,
    or that differs from the one that is there. Returns the exit status: 1 for any such.
    """
    copied = made = events = wrong = 0
    for session_id in all_ids(source):
        try:
            record, told = _from_source(source, session_id)
            new = _into_target(target, record, told)
        except SessionUnknown:  # erased meanwhile
            continue
        except (FileUnusable, Refused) as error:
            reason = wording.say(f"sessions-{error.code}")
        except SessionMovedOn:
            reason = wording.say("sessions-goes_another_way")
        except _OneUnreadable as error:
            reason = reason_in_words(error.why, wording)
        else:
            copied, events, made = copied + 1, events + new, made + (new == len(told))
            continue
        wrong += 1
        out.write(wording.say("sessions-wrong", id=session_id[:ID_SHOWN], reason=reason) + "\n")
    out.write(wording.say("sessions-copied", sessions=copied, made=made, events=events) + "\n")
    return 1 if wrong else 0


class _OneUnreadable(Exception):
    """Of the store one session can't be read; the others may."""

    def __init__(self, why: StoreUnreadable) -> None:
        super().__init__(str(why))
        self.why = why


def _from_source(source: EventLog, session_id: str) -> Whole:
    try:
        return read_whole(source, session_id)
    except StoreUnreadable as error:
        if error.code in OF_ONE_SESSION:
            raise _OneUnreadable(error) from error
        raise


def _into_target(target: EventLog, record: SessionRecord, told: tuple[Event, ...]) -> int:
    """A disk that fails ends it all; entries that are there and can't be read don't."""
    try:
        return take_in(target, record, told)
    except StoreUnreadable as error:
        if error.code in OF_ONE_SESSION - {"damaged", "disk_error"}:
            raise _OneUnreadable(error) from error
        raise


def _refuse_if_there(file: Path) -> None:
    if file.exists():
        raise FileUnusable("backup_there", str(file))
