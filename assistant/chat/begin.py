"""Begins or resumes a chat. The first screen is shown before the rules and the rule engine are loaded."""

import os
import sys
from concurrent.futures import Future, ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.chat.opening import Opening, keep_opening, opening_file, read_opening
from assistant.chat.screen import Paragraph, wants_colour, write
from assistant.errors import SessionUnknown
from assistant.knowledge.fingerprint import combined, fingerprint
from assistant.store import open_store

if TYPE_CHECKING:
    from assistant.chat.talk import Talk
    from assistant.chat.terminal import Terminal
    from assistant.interview.conversation import Conversation
    from assistant.interview.log import EventLog, SessionRecord
    from assistant.interview.script import Script
    from assistant.wording.languages import Languages


@dataclass(frozen=True)
class Setting:
    """Where rules, wording and sessions come from, and in which language and region to speak."""

    rules: Path
    locales: Path
    cache: Path
    store: str | None
    lang: str
    region: str
    plain: bool
    role: str


def begin(setting: Setting) -> int:
    """A new session; nothing is stored until the first answer. Returns the exit status."""
    opening = _opening(setting)
    _write(opening.paragraphs(), setting)
    log = open_store(setting.store)
    with ThreadPoolExecutor(1) as pool:
        loading = pool.submit(_new_talk, setting, log)
        return _talk_from_first_line(opening, loading, setting)


def _opening(setting: Setting) -> Opening:
    rules, words = fingerprint(setting.rules), fingerprint(setting.locales, "*.ftl")
    kept = opening_file(setting.cache, combined(rules, words, setting.lang, setting.region))
    opening = read_opening(kept)
    if opening is None:
        from assistant.chat.pages import Pages

        _, languages = _load(setting)
        opening = Pages(languages.sentences(setting.lang, setting.region)).opening()
        keep_opening(kept, opening)
    return opening


def _write(paragraphs: list[Paragraph], setting: Setting) -> None:
    write(sys.stdout, paragraphs, colour=not setting.plain and wants_colour(sys.stdout, os.environ))


def _talk_from_first_line(opening: Opening, loading: "Future[Talk]", setting: Setting) -> int:
    """Take the first line while the rest loads, then let the talk go on."""
    terminal = _terminal(setting)
    try:
        line = terminal.ask(opening.completions)
    except (EOFError, KeyboardInterrupt):
        _write([Paragraph(opening.goodbye)], setting)
        return 0
    talk = loading.result()
    talk.terminal = terminal
    talk.run(line)
    return 0


def _terminal(setting: Setting) -> "Terminal":
    from assistant.chat.terminal import terminal_for

    return terminal_for(plain=setting.plain)


def _load(setting: Setting) -> "tuple[Script, Languages]":
    from assistant.interview.script import script_of
    from assistant.knowledge.load import load_knowledge
    from assistant.wording.languages import Languages

    knowledge = load_knowledge(setting.rules, setting.cache)
    return script_of(knowledge), Languages(setting.locales, knowledge)


def _new_talk(setting: Setting, log: "EventLog") -> "Talk":
    import secrets
    from uuid import uuid4

    from assistant.interview.access_code import hash_code, new_code
    from assistant.interview.commands import Start
    from assistant.interview.conversation import Conversation, utc_now
    from assistant.interview.log import SessionRecord

    script, languages = _load(setting)
    code = new_code(secrets.token_bytes)
    record = SessionRecord(session_id=uuid4().hex, code_hash=hash_code(code), name=None, created_at=utc_now())
    conversation = Conversation(script, log, record)
    conversation.start(Start(setting.role, setting.region, setting.lang, "single"), keep_at_once=False)
    return _talk(conversation, languages, setting, code)


def _talk(conversation: "Conversation", languages: "Languages", setting: Setting, code: str | None) -> "Talk":
    from assistant.chat.talk import Talk

    state = conversation.state
    return Talk(
        conversation=conversation,
        sentences=languages.sentences(state.lang, state.region),
        listener=languages.listener(state.lang),
        terminal=_terminal(setting),
        code=code,
    )


def resume(setting: Setting, typed_code: str) -> int:
    """Go on with a session: by its code, or with the latest one in this store. Returns the exit status."""
    from assistant.interview.conversation import Conversation

    log = open_store(setting.store)
    script, languages = _load(setting)
    record = _record(log, typed_code)
    conversation = Conversation.resume(script, log, record)
    talk = _talk(conversation, languages, setting, typed_code or None)
    talk.welcome_back()
    talk.run()
    return 0


def _record(log: "EventLog", typed_code: str) -> "SessionRecord":
    """Raises SessionUnknown."""
    if typed_code:
        return log.find_by_code(typed_code)
    latest = log.sessions(limit=1)
    if not latest:
        raise SessionUnknown("none saved")
    return log.find_by_id_prefix(latest[0].session_id)
