"""`ovenside outcome`: what came of one session, from options or from a short form, as one more event of it."""

import os
import sys
from dataclasses import dataclass, replace
from datetime import datetime
from functools import cache
from pathlib import Path
from typing import TextIO

from assistant.authoring.outcome_form import Asking, Form
from assistant.authoring.outcome_words import outcome_in_lines, recorded, say_misfit
from assistant.authoring.session_list import ID_SHOWN, say_unknown
from assistant.authoring.session_search import find_session
from assistant.errors import SessionMovedOn, SessionUnknown
from assistant.interview.assess import assess
from assistant.interview.commands import RecordOutcome
from assistant.interview.events import OutcomeRecorded
from assistant.interview.log import EventLog, SessionRecord
from assistant.interview.script import script_of
from assistant.interview.state import fold
from assistant.interview.visit_outcome import Misfit, misfits_of, record_outcome
from assistant.knowledge.model import Knowledge
from assistant.wording.locale import Wording

GIVEN_UP = 130
ROOM_FOR_EVERYTHING = "mended"
"""With this result causes, a part and minutes may all be told."""


@dataclass(frozen=True)
class Recording:
    """Where outcomes are recorded, and whom they are told to. `cache`: where simulated ovens are kept."""

    log: EventLog
    knowledge: Knowledge
    wording: Wording
    out: TextIO
    cache: Path | None = None

    def record(self, typed: str, told: RecordOutcome, now: datetime, ask: Asking | None) -> int:
        """Record it, or say why not and record nothing. Returns the exit status.

        `typed`: the session's code, or the beginning of its id. `ask`: how to ask for what wasn't told; None: not at
        all. `now` is aware.
        """
        try:
            session = find_session(self.log, typed)
        except SessionUnknown:
            return say_unknown(self.wording, self.out)
        wrong = misfits_of(self.knowledge, told) if ask is None else self._told_amiss(told)
        if ask is not None and not wrong:
            try:
                told = self._form(session, ask).filled(told)
            except (EOFError, KeyboardInterrupt):
                self._say("", self.wording.say("outcome_form-given_up"))
                return GIVEN_UP
            wrong = misfits_of(self.knowledge, told)
        return self._refused(wrong) if wrong else self._committed(session, told, now)

    def _told_amiss(self, told: RecordOutcome) -> tuple[Misfit, ...]:
        """What can't be so whatever else is answered; without a result, as with one that leaves room for everything."""
        supposed = replace(told, result=told.result or ROOM_FOR_EVERYTHING)
        return tuple(each for each in misfits_of(self.knowledge, supposed) if getattr(told, each.where))

    def _form(self, session: SessionRecord, ask: Asking) -> Form:
        """Begun by what it is about, and by what was recorded of it before."""
        say, shown = self.wording.say, session.session_id[:ID_SHOWN]
        self._say(say("outcome_form-heading", id=shown, begun=f"{session.created_at:%Y-%m-%d %H:%M} UTC"))
        for event in self.log.events_of(OutcomeRecorded, session.session_id)[-1:]:
            assert isinstance(event.happening, OutcomeRecorded)
            self._say(say("outcome_form-before"), outcome_in_lines(event.happening, event.recorded_at, self.wording))
        return Form(self.knowledge, self.wording, ask, self.out, cache(lambda: self._likeliest(session)))

    def _likeliest(self, session: SessionRecord) -> list[str]:
        """The causes by what belief makes of the session under today's rules."""
        script = script_of(self.knowledge, self.cache)
        belief = assess(script, fold(self.log.read(session.session_id))).posterior
        return [cause for cause, _ in belief.causes()]

    def _committed(self, session: SessionRecord, told: RecordOutcome, now: datetime) -> int:
        try:
            happening = record_outcome(self.log, self.knowledge, session.session_id, told, now)
        except SessionMovedOn:
            self._say(self.wording.say("outcomes-moved_on"))
            return 1
        self._say(recorded(happening, session.session_id[:ID_SHOWN], self.wording))
        return 0

    def _refused(self, wrong: tuple[Misfit, ...]) -> int:
        self._say(*(say_misfit(each, self.wording) for each in wrong), self.wording.say("outcomes-nothing_recorded"))
        return 1

    def _say(self, *lines: str) -> None:
        self.out.writelines(line + "\n" for line in lines)


def asking_at_the_terminal(*, plain: bool) -> Asking | None:
    """With line editing where the terminal can do it, unless `plain`; None where nobody sits at one."""
    if not (sys.stdin.isatty() and sys.stdout.isatty()):
        return None
    if plain or os.environ.get("TERM", "dumb") == "dumb":
        return _plainly
    from prompt_toolkit import PromptSession

    session: PromptSession[str] = PromptSession()
    return session.prompt


def _plainly(prompt: str) -> str:
    sys.stdout.write(prompt)
    sys.stdout.flush()
    line = sys.stdin.readline()
    if not line:
        raise EOFError
    return line.rstrip("\n")
