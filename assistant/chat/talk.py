"""The chat: shows the view, takes a typed line, and turns it into commands."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime

from assistant.chat.ahead import Ahead
from assistant.chat.answering import Answering
from assistant.chat.at_the_oven import AtTheOven
from assistant.chat.committing import Committing
from assistant.chat.helping import Helping, Left
from assistant.chat.longest_time import LongestTime
from assistant.chat.measuring import MeasuringTalk
from assistant.chat.showing import Showing
from assistant.chat.terminal import Terminal
from assistant.interview.commands import Finish, HearDanger
from assistant.interview.conversation import Conversation, utc_now
from assistant.interview.measuring import left_as_unfit
from assistant.interview.verdict import Verdict
from assistant.interview.view import QuestionView
from assistant.knowledge.danger_questions import UNSURE
from assistant.knowledge.model import Care
from assistant.wording.listener import Listener
from assistant.wording.sentences import Sentences
from assistant.wording.typed import first_words, helper_word, is_word


@dataclass
class Talk:
    """One conversation on one terminal.

    `resume_command` is what to type to go on later; None where it was resumed without a code, or isn't kept.
    """

    conversation: Conversation
    sentences: Sentences
    listener: Listener
    terminal: Terminal
    resume_command: str | None
    clock: Callable[[], datetime] = utc_now

    def __post_init__(self) -> None:
        self._ahead = Ahead(self.conversation.script)
        self._showing = Showing(self.conversation, self.sentences, self.terminal)
        self._committing = Committing(self.conversation, self._showing, self.resume_command)
        self._measuring = MeasuringTalk(
            AtTheOven(
                self.conversation,
                self.sentences,
                self._committing.do,
                self.terminal.write,
                self.clock,
                self.terminal.plain,
            )
        )
        self._longest_time = LongestTime(self.conversation, self.sentences.wording, self.clock)
        self._answering = Answering(self._showing, self._committing, self._measuring, self.listener)
        self._helping = Helping(self._showing, self._answering, self._measuring)

    def run(self, first_line: str | None = None, *, resumed: bool = False) -> None:
        """Until the person leaves. `first_line` was typed to the first screen before this began."""
        if self.conversation.script.evaluator.name == "naive":
            self._showing.say("chat-engine_naive", "quiet")
        try:
            if resumed:
                self.welcome_back()
            if first_line is not None:
                question = self._open_question()
                self._showing.place.question_shown = self._showing.mark(question)
                self._take(first_line, question)
            while True:
                question = self._show()
                self._take(self._ask(question), question)
        except (Left, EOFError, KeyboardInterrupt):
            self._say_goodbye()
        finally:
            self._ahead.end()

    def welcome_back(self) -> None:
        """The first words after a pause; a danger sign told before is not forgotten."""
        self._showing.say("chat-welcome_back")
        if self.conversation.under_other_rules:
            self._showing.say("chat-other_rules", "quiet")
        if self.conversation.assessment.danger.stops:
            self._showing.say("chat-still_off", "danger")
        self._leave_what_is_unfit()
        self._ask_about_the_pause()

    def _ask_about_the_pause(self) -> None:
        """Before a measurement goes on: whether the oven is on, somebody with it, anything unusual."""
        while self.conversation.state.measuring:
            self.terminal.write(self._showing.pages.after_the_pause())
            line = self.terminal.ask([], self._longest_time.alarm())
            if line.strip() == "1":
                self._show_measuring()
                return
            if helper_word(line, self._showing.wording) == "stop":
                raise Left
            unsure = helper_word(line, self._showing.wording) == "not_sure"
            if line.strip() in ("2", "3") or unsure:
                self._measuring.leave()
            if line.strip() == "3":
                self._committing.do(HearDanger(UNSURE, clear=False))
            elif line.strip() != "2" and not unsure and not self._answering.hear(line):
                self._showing.say("measuring-pause_unclear", "danger")

    def _leave_what_is_unfit(self) -> None:
        """Such as a measurement that the rules no longer know, or whose gate they have shut since."""
        if left_as_unfit(self.conversation.script, self.conversation.assessment):
            self._measuring.leave()

    def _show_measuring(self) -> None:
        question = self._open_question()
        if question is not None and self._measuring.under_way(question) is not None:
            self._measuring.show_after_the_pause(question)

    def _open_question(self) -> QuestionView | None:
        """The question to be answered now, or None at the end of the interview.

        While something is written down, that is it, unless it may no longer be asked.
        """
        self._leave_what_is_unfit()
        for question_id in self.conversation.state.measuring:
            return self._showing.view_of(question_id)
        if self._showing.place.reopened is not None:
            return self._showing.view_of(self._showing.place.reopened)
        view = self.conversation.view()
        if isinstance(view, QuestionView):
            return view
        then = view.details.get("then")
        return self._showing.view_of(str(then)) if then else None

    def _show(self) -> QuestionView | None:
        view = self.conversation.view()
        if isinstance(view, Verdict) and self._showing.place.reopened is None:
            self._showing.verdict(view)
        question = self._open_question()
        if question is None:
            self.terminal.write(self._showing.pages.after_verdict())
        elif self._showing.mark(question) != self._showing.place.question_shown:
            if self._measuring.under_way(question) is None:
                self.terminal.write(self._showing.pages.question(question))
            if self._measuring.handles(question):
                self._measuring.prepare(question)
            self._showing.place.misses = 0
        self._showing.place.question_shown = self._showing.mark(question)
        return question

    def _ask(self, question: QuestionView | None) -> str:
        labels = [label for _, label in self.sentences.question(question).choices] if question else []
        if question is not None:
            self._ahead.begin(self.conversation.assessment, question.id)
        try:
            return self.terminal.ask([*labels, *first_words(self._showing.wording)], self._longest_time.alarm())
        finally:
            self._ahead.end()

    def _take(self, line: str, question: QuestionView | None) -> None:
        word = helper_word(line, self._showing.wording)
        if word is not None:
            self._helping.with_word(word, question)
        elif self._measuring.under_way(question) is None and not line.strip():
            self._take_nothing(question)
        elif question is None:
            self._take_after_the_verdict(line)
        else:
            self._answering.take(line, question)

    def _take_nothing(self, question: QuestionView | None) -> None:
        if question is None:
            raise Left
        if question.standing is None:
            self._showing.say("chat-nothing_typed")
        elif self._showing.place.reopened is not None:
            self._showing.place.reopened = None
        else:
            self._answering.give(question, question.standing, None)

    def _take_after_the_verdict(self, line: str) -> None:
        if is_word(line, "done", self._showing.wording):
            raise Left
        if not self._answering.hear(line):
            self._showing.say_what_stands(self._showing.wording.say("chat-nothing_more_asked"))

    def _say_goodbye(self) -> None:
        self._measuring.leave_for_now()
        at_verdict = isinstance(self.conversation.view(), Verdict)
        stopped = bool(self.conversation.assessment.danger.stops)
        if at_verdict and self.conversation.stored and not stopped:
            self._committing.do(Finish())
        questions = self.conversation.script.knowledge.questions
        hot = any(questions[q].care.rank >= Care.WATCH_HOT.rank for q in self._showing.answered())
        self.terminal.write(
            self._showing.pages.goodbye(
                stored=self.conversation.stored,
                answered=self._anything_told(),
                resume_command=self.resume_command,
                keep_off=self._keep_off(),
                hot=(hot or bool(self.conversation.state.measuring) or self._measuring.handles(self._open_question()))
                and not stopped,
            )
        )

    def _keep_off(self) -> str | None:
        """The last words where danger was told, taken back or not."""
        danger = self.conversation.assessment.danger
        stop = self._showing.standing_stop()
        if stop is not None:
            return self.sentences.meanwhile(stop)
        if (danger.open and self._anything_told()) or danger.withdrawn:
            return self._showing.wording.say("chat-keep_off")
        return None

    def _anything_told(self) -> bool:
        return bool(self.conversation.state.answers or self.conversation.state.heard)
