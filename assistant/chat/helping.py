"""The helper words: why, how, not sure, skip, back, change, stop."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from assistant.chat.answering import Answering
from assistant.chat.measuring import MeasuringTalk
from assistant.chat.showing import Showing
from assistant.interview.commands import Command, SayNotSure, SkipQuestion, WithdrawAnswer
from assistant.interview.view import QuestionView
from assistant.knowledge.danger_questions import OVEN_IS_OFF
from assistant.wording.typed import HelperWord, helper_word, is_word

LONGEST_NUMBER = 6
"""No list of answers is longer than what so many digits can number."""


class Left(Exception):
    """The person leaves; the session is saved as it stands."""


@dataclass
class Helping:
    """Does what a helper word asks for, for the question that is open, or for none."""

    showing: Showing
    answering: Answering
    measuring: MeasuringTalk

    def __post_init__(self) -> None:
        self._words: Mapping[HelperWord, Callable[[QuestionView | None], None]] = {
            "why": self._why,
            "how": self._how,
            "not_sure": self._not_sure,
            "skip": self._skip,
            "back": self._back,
            "change": self._change,
            "stop": self._stop,
        }

    def with_word(self, word: HelperWord, question: QuestionView | None) -> None:
        """Raises Left."""
        self._words[word](question)

    def do(self, *commands: Command) -> bool:
        return self.answering.do(*commands)

    def _why(self, question: QuestionView | None) -> None:
        shown = self.showing.place.verdict_shown[0] if self.showing.place.verdict_shown else None
        self.showing.terminal.write(self.showing.pages.why(question, shown))

    def _how(self, question: QuestionView | None) -> None:
        if question is None:
            self.showing.say("chat-nothing_open")
        else:
            self.showing.terminal.write(self.showing.pages.how(question))

    def _not_sure(self, question: QuestionView | None) -> None:
        if question is None:
            self.showing.say("chat-nothing_open")
        elif not self.measuring.unsure_until_when(question):
            self.measuring.leave(question)
            self.do(SayNotSure(question.id))
            if question.id == OVEN_IS_OFF:
                self.showing.say("chat-not_sure_if_off", "danger", **self.showing.sentences.lines)

    def _skip(self, question: QuestionView | None) -> None:
        if question is None:
            self.showing.say("chat-nothing_open")
        elif question.about_danger or question.id == OVEN_IS_OFF:
            self.showing.say("chat-danger_not_skipped")
        else:
            self.measuring.leave(question)
            self.do(SkipQuestion(question.id))

    def _back(self, question: QuestionView | None) -> None:
        if self.measuring.leave(question):
            return
        earlier = self.showing.answered()
        if self.showing.place.reopened in earlier:
            earlier = earlier[earlier.index(self.showing.place.reopened) + 1 :]
        if not earlier:
            self.showing.say("chat-nothing_before")
            return
        self._reopen(earlier[0])

    def _change(self, question: QuestionView | None) -> None:
        if self.measuring.leave(question):
            return
        answered = self.showing.answered()[::-1]
        if not answered:
            self.showing.say("chat-nothing_before")
            return
        self.showing.terminal.write(self.showing.pages.answers(self.showing.conversation.state, answered))
        self.showing.place.question_shown = None
        number = self._number_from_list(len(answered))
        if number is not None:
            self._reopen(answered[number - 1])

    def _number_from_list(self, most: int) -> int | None:
        """Which answer is to be changed; None where all is left as it is, or danger was told instead."""
        while line := self.showing.terminal.ask([]).strip():
            if helper_word(line, self.showing.wording) == "stop":
                raise Left
            if line.isascii() and line.isdigit() and len(line) <= LONGEST_NUMBER and 1 <= int(line) <= most:
                return int(line)
            if self.answering.hear(line):
                return None
            self.showing.say("chat-change_no_such", most=most)
        return None

    def _reopen(self, question_id: str) -> None:
        """Ask a question again; one that may not be asked now can only be taken back."""
        care = self.showing.conversation.script.knowledge.questions[question_id].care
        if care.rank <= self.showing.conversation.assessment.allowed_care.rank:
            self.showing.place.reopened = question_id
            return
        self.showing.say("chat-take_back", question=self.showing.sentences.question_by_id(question_id).text)
        line = self.showing.terminal.ask([])
        if is_word(line, "yes", self.showing.wording):
            self.do(WithdrawAnswer(question_id))
        else:
            self.answering.hear(line)

    def _stop(self, question: QuestionView | None) -> None:
        raise Left
