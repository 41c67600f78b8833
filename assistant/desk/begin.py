"""Opens a desk: rules, words, the store, and where calls come from."""

import os
import re
import secrets
import sys
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from uuid import uuid4

from assistant.desk import panels
from assistant.desk.call import Call
from assistant.desk.desk import Desk
from assistant.desk.plain import Plain
from assistant.errors import StoreUnreadable
from assistant.interview.access_code import hash_code, new_code, normalise_code
from assistant.interview.commands import Start
from assistant.interview.conversation import Conversation, utc_now
from assistant.interview.log import EventLog, SessionRecord
from assistant.interview.script import Script, script_of
from assistant.interview.taking_up import session_by_code, session_by_id
from assistant.knowledge.load import load_knowledge
from assistant.reports.screen import wants_colour, write
from assistant.store import open_store
from assistant.wording.languages import Languages

ROLE = "agent"
_BEGINNING_OF_ID = re.compile(r"[0-9a-f]{8,15}|[0-9a-f]{32}")
"""Not so long as a code."""
INTERRUPTED = 130
"""As shells tell it."""
BUSY_SECONDS = 1.0
ANSWER_SECONDS = 3.0
"""What the store doesn't take by then waits at the desk, and the customer doesn't."""
PAUSE_SECONDS = 15.0
"""Until a store that failed is tried again by itself."""


@dataclass(frozen=True)
class Setting:
    """`lang` is the agent's language, `customers` the one in which new calls are held."""

    rules: Path
    locales: Path
    cache: Path | None
    store: str | None
    lang: str
    customers: str
    region: str
    plain: bool


@dataclass(frozen=True)
class StoredCalls:
    """Calls are sessions of the store; each change of one is there before it is shown, or waits and is said to."""

    script: Script
    log: EventLog
    languages: Languages
    lang: str
    customers: str
    region: str
    clock: Callable[[], datetime] = utc_now
    pause_s: float = PAUSE_SECONDS

    def begin(self) -> Call:
        code = new_code(secrets.token_bytes)
        record = SessionRecord(session_id=uuid4().hex, code_hash=hash_code(code), name=None, created_at=self.clock())
        conversation = Conversation(self.script, self.log, record, clock=self.clock)
        conversation.start(Start(ROLE, self.region, self.customers, "single"), keep_at_once=False)
        return self._call(conversation, code)

    def take(self, typed: str) -> Call:
        """By its code, or by the beginning of its id, as a list of the store's sessions tells it after a crash."""
        beginning = typed.strip().lower()
        by_id = _BEGINNING_OF_ID.fullmatch(beginning) is not None
        record = (session_by_id if by_id else session_by_code)(self.log, beginning, self.clock())
        conversation = Conversation.resume(self.script, self.log, record, self.clock, role=ROLE)
        return self._call(conversation, None if by_id else normalise_code(typed))

    def _call(self, conversation: Conversation, code: str | None) -> Call:
        conversation.hold_unsaved(self.pause_s)
        state = conversation.state
        langs = dict.fromkeys((self.lang, state.lang))
        return Call(
            conversation=conversation,
            read_out=self.languages.sentences_of_session(state.lang, state.region),
            own=self.languages.sentences_of_session(self.lang, state.region),
            listeners=tuple(self.languages.listener(lang) for lang in langs),
            hurt_listeners=tuple(self.languages.hurt_listener(lang) for lang in langs),
            code=code,
        )


def begin(setting: Setting) -> int:
    """Until the agent leaves. Returns the exit status: 1 if something was left unsaved.

    Raises StoreUnreadable, and Refused for a language or region.
    """
    knowledge = load_knowledge(setting.rules, setting.cache)
    languages = Languages(setting.locales, knowledge)
    for lang in (setting.lang, setting.customers):
        languages.require_words_for_rules(lang)
    own = languages.sentences(setting.lang, setting.region)
    log = open_store(setting.store, BUSY_SECONDS, ANSWER_SECONDS)
    source = StoredCalls(
        script_of(knowledge, setting.cache), log, languages, setting.lang, setting.customers, setting.region
    )
    desk = Desk(source, own)
    try:
        interrupted = _is_interrupted(desk, plain=setting.plain)
        for call in desk.unsaved_calls:
            with suppress(StoreUnreadable):  # it is said below
                call.save()
        write(sys.stdout, [*panels.ways_back(desk), *panels.left_behind(desk)], colour=False)
    finally:
        log.close()
    return 1 if desk.unsaved_calls else INTERRUPTED if interrupted else 0


def _is_interrupted(desk: Desk, *, plain: bool) -> bool:
    """Run the desk; whether it was ended from outside."""
    try:
        _run(desk, plain=plain)
    except KeyboardInterrupt:
        return True
    return False


def _run(desk: Desk, *, plain: bool) -> None:
    capable = sys.stdin.isatty() and sys.stdout.isatty() and os.environ.get("TERM", "dumb") != "dumb"
    if plain or not capable:
        Plain(desk, sys.stdin, sys.stdout).run()
        return
    from assistant.desk.full_screen import FullScreen

    FullScreen(desk, colour=wants_colour(sys.stdout, os.environ)).run()
