"""Many sessions over one pair of streams: each line in is answered by exactly one line out, after the commit."""

import json
from collections import OrderedDict
from collections.abc import Callable, Mapping
from datetime import datetime
from secrets import token_bytes
from typing import BinaryIO
from uuid import uuid4

from assistant.drive.lines import Line, line_of_view, problem_line
from assistant.drive.protocol import MOST_BYTES, START_DEFAULTS, Message, read_message
from assistant.drive.repeated import says_the_same
from assistant.errors import OvensideError, Refused, SessionMovedOn, SessionUnknown, StoreUnreadable, WordingBroken
from assistant.interview.access_code import hash_code, new_code
from assistant.interview.commands import (
    Command,
    Finish,
    GiveAnswer,
    HearDanger,
    SayNotSure,
    SkipQuestion,
    Start,
    WithdrawAnswer,
)
from assistant.interview.conversation import Conversation, utc_now
from assistant.interview.events import Event
from assistant.interview.log import EventLog, SessionRecord
from assistant.interview.next_question import choose_next
from assistant.interview.script import Script
from assistant.wording.languages import Languages
from assistant.wording.locale import Wording
from assistant.wording.reasons import reason_in_words

MOST_SESSIONS_IN_MEMORY = 200


class Driver:
    """Answers the protocol's lines. Sessions leave memory when many others were used since; the log keeps them."""

    def __init__(
        self,
        script: Script,
        log: EventLog,
        languages: Languages,
        defaults: Mapping[str, str],
        clock: Callable[[], datetime] = utc_now,
    ) -> None:
        self._script = script
        self._log = log
        self._languages = languages
        self._defaults = {**START_DEFAULTS, **defaults}
        self._clock = clock
        self._open: OrderedDict[str, Conversation] = OrderedDict()

    def answer_line(self, line: bytes) -> Line:
        """Never raises for what a line says or for a store that can't be used."""
        session: str | None = None
        try:
            message = read_message(line)
            session = message.session
            return self._answer(message) | {"session": session}
        except OvensideError as error:
            return self._problem(error, session) | {"session": session}

    def _answer(self, message: Message) -> Line:
        conversation = self._start(message) if message.type == "start" else self._known(message.session)
        if message.type != "start":
            self._take(message, conversation)
        state = conversation.state
        sentences = self._languages.sentences_of_session(state.lang, state.region)
        return line_of_view(conversation.view(), sentences)

    def _take(self, message: Message, conversation: Conversation) -> None:
        """Listen first and keep what was heard, whatever becomes of the rest; then do what the message says."""
        heard = self._heard(message, conversation)
        try:
            self._take_both(message, conversation, heard)
        except SessionMovedOn:
            conversation.refresh()
            conversation.do(*heard)
            raise

    def _take_both(self, message: Message, conversation: Conversation, heard: list[HearDanger]) -> None:
        earlier = self._earlier(message, conversation)
        if earlier is not None:
            conversation.refresh()
            conversation.do(*heard)
            if not says_the_same(earlier.happening, message, {h.sign_id for h in heard}):
                raise Refused("message_id_reused", {"message_id": str(message.message_id)})
            return
        command = _command(message)
        if heard and isinstance(command, GiveAnswer) and self._only_words(command):
            conversation.do(*heard, message_id=message.message_id)
            return
        conversation.do(*heard)
        conversation.do(command, message_id=message.message_id)

    def _earlier(self, message: Message, conversation: Conversation) -> Event | None:
        """The event that a message of that id became before."""
        session_id = conversation.record.session_id
        if message.message_id is None or not self._log.seen_message(session_id, message.message_id):
            return None
        events = self._log.read(session_id)
        return next((event for event in events if event.message_id == message.message_id), None)

    def _heard(self, message: Message, conversation: Conversation) -> list[HearDanger]:
        """The danger that any words of an answer speak of; the ids of choices are not words."""
        if message.type != "answer":
            return []
        value = message.fields["value"]
        question = self._script.knowledge.questions.get(message.fields["id"])
        choices = question.choices if question is not None else {}
        words = [item for item in (value if isinstance(value, list) else [value]) if isinstance(item, str)]
        listener = self._languages.listener(conversation.state.lang)
        heard = [h for line in words if line not in choices for h in listener.hear(line)]
        return [HearDanger(h.sign_id, h.clear) for h in heard]

    def _only_words(self, answer: GiveAnswer) -> bool:
        """Words where a choice was wanted: what they tell of danger is all that can be taken."""
        question = self._script.knowledge.questions.get(answer.question_id)
        return question is not None and question.kind != "text" and isinstance(answer.value, str)

    def _start(self, message: Message) -> Conversation:
        self._open.pop(message.session, None)
        known = self._find(message.session)
        if known is not None:
            role = message.fields.get("role")
            if role is not None and role != known.state.role:
                raise Refused("role_differs", {"found": known.state.role})
            return known
        fields = self._defaults | message.fields
        self._languages.require_words_for_rules(fields["lang"])
        record = SessionRecord(
            session_id=uuid4().hex,
            code_hash=hash_code(new_code(token_bytes)),
            name=message.session,
            created_at=self._clock(),
        )
        conversation = Conversation(self._script, self._log, record, clock=self._clock)
        conversation.start(Start(**fields), message.message_id)
        self._remember(message.session, conversation)
        return conversation

    def _find(self, session: str) -> Conversation | None:
        if session in self._open:
            self._open.move_to_end(session)
            return self._open[session]
        record = self._log.find_by_name(session)
        if record is None:
            return None
        conversation = Conversation.resume(self._script, self._log, record, self._clock)
        self._remember(session, conversation)
        return conversation

    def _known(self, session: str) -> Conversation:
        conversation = self._find(session)
        if conversation is None:
            raise Refused("not_started")
        return conversation

    def _remember(self, session: str, conversation: Conversation) -> None:
        self._open[session] = conversation
        while len(self._open) > MOST_SESSIONS_IN_MEMORY:
            self._open.popitem(last=False)

    def _problem(self, error: OvensideError, session: str | None) -> Line:
        conversation = self._open.get(session) if session is not None else None
        if isinstance(error, SessionUnknown) and session is not None:
            conversation = None
            self._open.pop(session, None)
        lang = conversation.state.lang if conversation else self._defaults["lang"]
        sentences = self._languages.sentences_of_session(lang, "")
        code, details = _code_of(error, sentences.wording)
        open_question = choose_next(self._script, conversation.assessment) if conversation else None
        return problem_line(code, sentences.problem(code, details), open_question)


def _code_of(error: OvensideError, wording: Wording) -> tuple[str, dict[str, str | float]]:
    if isinstance(error, StoreUnreadable):
        return "store", {"reason": reason_in_words(error, wording)}
    if isinstance(error, Refused):
        return error.code, error.details
    if isinstance(error, SessionMovedOn):
        return "session_moved_on", {}
    if isinstance(error, SessionUnknown):
        return "not_started", {}
    if isinstance(error, WordingBroken):
        return "language_incomplete", {"reason": str(error)}
    raise error


def _command(message: Message) -> Command:
    fields = message.fields
    match message.type:
        case "answer":
            return GiveAnswer(fields["id"], fields["value"], fields.get("unit"))
        case "not_sure":
            return SayNotSure(fields["id"])
        case "skip":
            return SkipQuestion(fields["id"])
        case "withdraw":
            return WithdrawAnswer(fields["id"])
    return Finish()


def serve(driver: Driver, lines_in: BinaryIO, lines_out: BinaryIO) -> None:
    """Answer until the input ends. A line longer than allowed is read to its end and refused."""
    while line := lines_in.readline(MOST_BYTES + 1):
        while len(line) > MOST_BYTES and not line.endswith(b"\n"):
            rest = lines_in.readline(MOST_BYTES)
            if not rest:
                break
            line = line[: MOST_BYTES + 1] + rest[-1:]
        answer = json.dumps(driver.answer_line(line), ensure_ascii=True, allow_nan=False)
        lines_out.write(answer.encode() + b"\n")
        lines_out.flush()
