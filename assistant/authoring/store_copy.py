"""A store copied into another one while it is in use: a backup, and its restoring."""

from typing import TextIO

from assistant.authoring.session_file import FileUnusable, take_in
from assistant.authoring.session_list import ID_SHOWN
from assistant.authoring.store_care import all_ids
from assistant.errors import Refused, SessionUnknown
from assistant.interview.log import EventLog
from assistant.wording.locale import Wording


def copy_all(source: EventLog, target: EventLog, wording: Wording, out: TextIO) -> int:
    """Every session as it is when its turn comes; one that is there already only goes on.

    A session is copied at one moment; sessions have nothing to do with each other. A line for each that differs from
    the one that is there. Returns the exit status.
    """
    copied = events = differing = 0
    for session_id in all_ids(source):
        try:
            record, told = source.find_by_id_prefix(session_id), source.read(session_id)
        except SessionUnknown:  # erased meanwhile
            continue
        try:
            events += take_in(target, record, told)
        except (FileUnusable, Refused) as error:
            differing += 1
            reason = wording.say(f"sessions-{error.code}")
            out.write(wording.say("sessions-wrong", id=session_id[:ID_SHOWN], reason=reason) + "\n")
        else:
            copied += 1
    out.write(wording.say("sessions-copied", sessions=copied, events=events) + "\n")
    return 1 if differing else 0
