"""Begins or resumes a chat. The first screen is shown before the rules and the rule engine are loaded."""

import os
import shlex
import sys
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.chat.opening import Opening, keep_opening, opening_file, read_opening
from assistant.errors import Refused, SessionUnknown, StoreUnreadable
from assistant.knowledge.fingerprint import combined, fingerprint
from assistant.reports.screen import Paragraph, wants_colour, write
from assistant.store import is_shared, open_store

if TYPE_CHECKING:
    from assistant.chat.talk import Talk
    from assistant.chat.terminal import Terminal
    from assistant.interview.conversation import Conversation
    from assistant.interview.log import EventLog, SessionRecord
    from assistant.knowledge.model import Knowledge
    from assistant.wording.languages import Languages


@dataclass(frozen=True)
class Setting:
    """Where rules, wording and sessions come from, and in which language and region to speak."""

    rules: Path
    locales: Path
    cache: Path | None
    store: str | None
    lang: str
    region: str
    plain: bool
    role: str


def begin(setting: Setting) -> int:
    """A new session; nothing is stored until the first answer. Returns the exit status."""
    opening, loaded = _opening(setting)
    _write(opening.paragraphs(), setting)
    log = _log_or_none(setting)
    terminal = _terminal(setting)
    with ThreadPoolExecutor(1) as pool:
        loading = pool.submit(_new_talk, setting, loaded, log, terminal)
        try:
            line = terminal.ask(opening.completions)
        except (EOFError, KeyboardInterrupt):
            _write([Paragraph(opening.goodbye)], setting)
            return 0
        talk = loading.result()
    talk.run(line)
    return 0 if log is not None and talk.conversation.saving else 1


def _opening(setting: Setting) -> "tuple[Opening, tuple[Knowledge, Languages] | None]":
    """The first screen, and what had to be loaded to make it, if it wasn't kept. Nothing is compiled for it."""
    rules, words = fingerprint(setting.rules), fingerprint(setting.locales, "*.ftl")
    kept = opening_file(setting.cache, combined(rules, words, setting.lang, setting.region))
    opening = read_opening(kept) if kept is not None else None
    if opening is not None:
        return opening, None
    from assistant.chat.pages import Pages

    knowledge, languages = _load(setting)
    opening = Pages(languages.sentences(setting.lang, setting.region)).opening()
    if kept is not None:
        keep_opening(kept, opening)
    return opening, (knowledge, languages)


def _write(paragraphs: list[Paragraph], setting: Setting) -> None:
    write(sys.stdout, paragraphs, colour=not setting.plain and wants_colour(sys.stdout, os.environ))


def _log_or_none(setting: Setting) -> "EventLog | None":
    """The store; None where it can't be opened: the conversation is held all the same, and that is said."""
    try:
        return open_store(setting.store)
    except StoreUnreadable as error:
        from assistant.wording.locale import load_wording
        from assistant.wording.reasons import reason_in_words

        wording = load_wording(setting.locales, setting.lang)
        said = wording.say("chat-not_saved", where=error.where, reason=reason_in_words(error, wording))
        _write([Paragraph(said, "strong")], setting)
        return None


def _terminal(setting: Setting) -> "Terminal":
    from assistant.chat.terminal import terminal_for

    return terminal_for(plain=setting.plain)


def _load(setting: Setting) -> "tuple[Knowledge, Languages]":
    from assistant.knowledge.load import load_knowledge
    from assistant.wording.languages import Languages

    knowledge = load_knowledge(setting.rules, setting.cache)
    languages = Languages(setting.locales, knowledge)
    languages.require_words_for_rules(setting.lang)
    return knowledge, languages


def _new_talk(
    setting: Setting,
    loaded: "tuple[Knowledge, Languages] | None",
    log: "EventLog | None",
    terminal: "Terminal",
) -> "Talk":
    import secrets
    from uuid import uuid4

    from assistant.interview.access_code import hash_code, new_code
    from assistant.interview.commands import Start
    from assistant.interview.conversation import Conversation, utc_now
    from assistant.interview.log import SessionRecord
    from assistant.interview.script import script_of
    from assistant.store.memory import MemoryStore

    knowledge, languages = loaded or _load(setting)
    code = new_code(secrets.token_bytes)
    record = SessionRecord(session_id=uuid4().hex, code_hash=hash_code(code), name=None, created_at=utc_now())
    conversation = Conversation(script_of(knowledge, setting.cache), log or MemoryStore(), record)
    conversation.start(Start(setting.role, setting.region, setting.lang, "single"), keep_at_once=False)
    if log is None:
        conversation.stop_saving()
    return _talk(conversation, languages, setting, terminal, code)


def _talk(
    conversation: "Conversation", languages: "Languages", setting: Setting, terminal: "Terminal", code: str | None
) -> "Talk":
    from assistant.chat.talk import Talk

    state = conversation.state
    return Talk(
        conversation=conversation,
        sentences=languages.sentences_of_session(state.lang, state.region),
        listener=languages.listener(state.lang),
        terminal=terminal,
        resume_command=_resume_command(code, setting.store),
    )


def _resume_command(code: str | None, store: str | None) -> str | None:
    """What to type to go on later; None without a code, or where nothing outlives the process."""
    if code is None or store == "memory:":
        return None
    return f"ovenside resume {code}" + (f" --store {shlex.quote(store)}" if store else "")


def resume(setting: Setting, typed_code: str) -> int:
    """Go on with a session: by its code, or with the latest one in this store. Returns the exit status."""
    from assistant.interview.conversation import Conversation
    from assistant.interview.on_the_telephone import role_to_go_on_in
    from assistant.interview.script import script_of

    log = open_store(setting.store)
    record = _record(log, typed_code, shared=is_shared(setting.store))
    knowledge, languages = _load(setting)
    conversation = Conversation.resume(script_of(knowledge, setting.cache), log, record)
    role = role_to_go_on_in(knowledge, conversation.state.role, setting.role)
    if role != conversation.state.role:
        conversation = Conversation.resume(conversation.script, log, record, role=role)
    talk = _talk(conversation, languages, setting, _terminal(setting), typed_code or None)
    talk.run(resumed=True)
    return 0 if conversation.saving else 1


def _record(log: "EventLog", typed_code: str, *, shared: bool) -> "SessionRecord":
    """Raises SessionUnknown, and Refused after too many codes, or for the latest one of a store that others share."""
    from assistant.interview.conversation import utc_now
    from assistant.interview.taking_up import session_by_code

    if typed_code:
        return session_by_code(log, typed_code, utc_now())
    if shared:
        raise Refused("code_wanted")
    latest = log.sessions(limit=1)
    if not latest:
        raise SessionUnknown("none saved")
    return log.find_by_id_prefix(latest[0].session_id)
