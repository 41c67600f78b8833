"""The chat: shows the view, takes a typed line, and turns it into commands."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from assistant.chat.pages import Pages
from assistant.chat.screen import Paragraph
from assistant.chat.terminal import Terminal
from assistant.chat.typed import HelperWord, first_words, helper_word, typed_number
from assistant.errors import Refused
from assistant.interview.answers import still_fits
from assistant.interview.commands import Command, Finish, GiveAnswer, HearDanger, SayNotSure, SkipQuestion
from assistant.interview.conversation import Conversation
from assistant.interview.verdict import Verdict
from assistant.interview.view import QuestionView, question_view
from assistant.knowledge.danger_questions import OVEN_IS_OFF
from assistant.wording.listener import Listener
from assistant.wording.matching import Match, Unclear, match_choice, match_choices
from assistant.wording.sentences import Sentences
from assistant.wording.words import normalised, phrases


class _Left(Exception):
    """The person leaves; the session is saved as it stands."""


@dataclass
class Talk:
    """One conversation on one terminal. `code` is None where the session was resumed without it."""

    conversation: Conversation
    sentences: Sentences
    listener: Listener
    terminal: Terminal
    code: str | None

    def __post_init__(self) -> None:
        self._wording = self.sentences.wording
        role = self.conversation.script.knowledge.roles[self.conversation.state.role]
        self._pages = Pages(self.sentences, in_figures=role.sees_probabilities)
        self._reopened: str | None = None
        self._verdict_shown: Verdict | None = None
        self._question_shown: tuple[str, int] | None = None
        self._suggested: str | None = None
        self._tell_code = self.code is not None and not self.conversation.stored
        self._helpers: dict[HelperWord, Callable[[QuestionView | None], None]] = {
            "why": self._why,
            "how": self._how,
            "not_sure": self._not_sure,
            "skip": self._skip,
            "back": self._back,
            "change": self._change,
            "stop": self._stop,
        }

    def run(self, first_line: str | None = None) -> None:
        """Until the person leaves. `first_line` was typed to the first screen before this began."""
        if self.conversation.script.evaluator.name == "naive":
            self.terminal.write([Paragraph(self._wording.say("chat-engine_naive"), "quiet")])
        try:
            if first_line is not None:
                question = self._open_question()
                self._question_shown = self._mark(question)
                self._take(first_line, question)
            while True:
                question = self._show()
                self._take(self._ask(question), question)
        except (_Left, EOFError, KeyboardInterrupt):
            self._say_goodbye()

    def welcome_back(self) -> None:
        """The first words after a pause; a danger sign told before is not forgotten."""
        page = [Paragraph(self._wording.say("chat-welcome_back"), "strong")]
        if self.conversation.assessment.danger.stops:
            page.append(Paragraph(self._wording.say("chat-still_off"), "danger"))
        self.terminal.write(page)

    # -- showing

    def _open_question(self) -> QuestionView | None:
        """The question to be answered now, or None at the end of the interview."""
        if self._reopened is not None:
            return self._view_of(self._reopened)
        view = self.conversation.view()
        if isinstance(view, QuestionView):
            return view
        then = view.details.get("then")
        return self._view_of(str(then)) if then else None

    def _view_of(self, question_id: str) -> QuestionView:
        state = self.conversation.state
        danger_open = self.conversation.assessment.danger.open
        return question_view(self.conversation.script.knowledge, question_id, state, danger_open)

    def _show(self) -> QuestionView | None:
        view = self.conversation.view()
        if isinstance(view, Verdict) and view != self._verdict_shown and self._reopened is None:
            self.terminal.write(self._pages.verdict(view))
            self._verdict_shown = view
        question = self._open_question()
        if question is None:
            self.terminal.write(self._pages.after_verdict())
        elif self._mark(question) != self._question_shown:
            self.terminal.write(self._pages.question(question))
        self._question_shown = self._mark(question)
        return question

    def _mark(self, question: QuestionView | None) -> tuple[str, int] | None:
        """Tells whether a question was shown since anything changed."""
        return (question.id, self.conversation.state.sequence) if question else None

    def _ask(self, question: QuestionView | None) -> str:
        labels = [label for _, label in self.sentences.question(question).choices] if question else []
        return self.terminal.ask([*labels, *first_words(self._wording)])

    def _say(self, message_id: str, **arguments: str | float) -> None:
        self.terminal.write([Paragraph(self._wording.say(message_id, **arguments), "strong")])

    # -- taking a line

    def _take(self, line: str, question: QuestionView | None) -> None:
        word = helper_word(line, self._wording)
        if word is not None:
            self._helpers[word](question)
        elif not line.strip():
            self._take_nothing(question)
        elif question is None:
            self._hear(line, [])
        else:
            self._take_answer(line, question)

    def _take_nothing(self, question: QuestionView | None) -> None:
        if question is None:
            raise _Left
        self._say("chat-nothing_typed")

    def _take_answer(self, line: str, question: QuestionView) -> None:
        """Exact answers count at once; any other line is listened to for danger before it is matched."""
        exact = self._matched(line, question, exact=True)
        if isinstance(exact, Match):
            self._give(question, self._value(question, exact))
        elif question.kind == "text":
            self._hear(line, [GiveAnswer(question.id, line)])
        elif self._hear(line, []):
            return
        elif question.kind == "number":
            self._take_number(line, question)
        else:
            self._take_words(line, question)

    def _matched(self, line: str, question: QuestionView, *, exact: bool) -> Match | Unclear:
        if not question.choices:
            return Unclear(())
        vocabulary = self.sentences.vocabulary(question.id)
        match = match_choices if question.kind == "choices" else match_choice
        return match(line, vocabulary, exact=exact)

    @staticmethod
    def _value(question: QuestionView, match: Match) -> str | list[str]:
        return list(match.choices) if question.kind == "choices" else match.choices[0]

    def _take_words(self, line: str, question: QuestionView) -> None:
        if question.about_danger or question.id == OVEN_IS_OFF:
            self._say("chat-exact_needed")
            return
        matched = self._matched(line, question, exact=False)
        if self._suggested is not None and normalised(line) in phrases(self._wording.say("words-yes")):
            matched = Match((self._suggested,))
        self._suggested = None
        if isinstance(matched, Match):
            labels = "; ".join(self.sentences.choice(question.id, c) for c in matched.choices)
            if self._give(question, self._value(question, matched)):
                self.terminal.write([Paragraph(self._wording.say("chat-understood", answer=labels), "quiet")])
        elif len(matched.candidates) == 1:
            (self._suggested,) = matched.candidates
            self._say("chat-unclear_perhaps", candidate=self.sentences.choice(question.id, self._suggested))
        elif matched.candidates:
            labels = " / ".join(self.sentences.choice(question.id, c) for c in matched.candidates)
            self._say("chat-unclear_between", candidates=labels)
        else:
            self._say("chat-unclear")

    def _take_number(self, line: str, question: QuestionView) -> None:
        number = typed_number(line, str(question.unit), self._wording)
        if number is None:
            self._say("chat-number_unclear", unit=self._wording.say(f"unit-{question.unit}"))
        else:
            self._give(question, number.value, number.unit)

    def _give(self, question: QuestionView, value: object, unit: str | None = None) -> bool:
        return self._do(GiveAnswer(question.id, value, unit))

    def _hear(self, line: str, with_it: Sequence[Command]) -> bool:
        """Listen to a line, and keep what goes with it in the same breath. True if danger was heard."""
        known = {stop.sign_id for stop in self.conversation.assessment.danger.stops}
        heard = [h for h in self.listener.hear(line) if h.sign_id not in known]
        self._do(*with_it, *(HearDanger(h.sign_id, h.clear) for h in heard))
        if heard:
            self._reopened = None
            self.terminal.write([Paragraph(self._wording.say("chat-heard"), "danger")])
        elif not with_it and self._open_question() is None:
            self._say("chat-unclear")
        return bool(heard)

    def _do(self, *commands: Command) -> bool:
        """Commit the commands; a refusal is said, and the question stays open."""
        try:
            self.conversation.do(*commands)
        except Refused as refused:
            self._say_problem(refused)
            return False
        if commands:
            self._reopened = self._suggested = None
        if self._tell_code and self.conversation.stored:
            self._tell_code = False
            told = self._wording.say("chat-saved_as_you_go", code=str(self.code))
            self.terminal.write([Paragraph(told, "quiet")])
        return True

    def _say_problem(self, refused: Refused) -> None:
        text = self.sentences.problem(refused.code, refused.details)
        self.terminal.write([Paragraph(text, "strong")])

    # -- helper words

    def _why(self, question: QuestionView | None) -> None:
        self.terminal.write(self._pages.why(question, self._verdict_shown))

    def _how(self, question: QuestionView | None) -> None:
        if question is None:
            self._say("chat-nothing_open")
        else:
            self.terminal.write(self._pages.how(question))

    def _not_sure(self, question: QuestionView | None) -> None:
        if question is None:
            self._say("chat-nothing_open")
        else:
            self._do(SayNotSure(question.id))

    def _skip(self, question: QuestionView | None) -> None:
        if question is None:
            self._say("chat-nothing_open")
        elif question.about_danger or question.id == OVEN_IS_OFF:
            self._say("chat-danger_not_skipped")
        else:
            self._do(SkipQuestion(question.id))

    def _answered(self) -> list[str]:
        """Questions with an answer that today's rules still know, the latest first."""
        questions = self.conversation.script.knowledge.questions
        answers = self.conversation.state.answers.values()
        known = [a for a in answers if still_fits(questions.get(a.question_id), a.value)]
        return [a.question_id for a in sorted(known, key=lambda answer: -answer.sequence)]

    def _back(self, question: QuestionView | None) -> None:
        earlier = self._answered()
        if self._reopened in earlier:
            earlier = earlier[earlier.index(self._reopened) + 1 :]
        if not earlier:
            self._say("chat-nothing_before")
            return
        self._reopened = earlier[0]

    def _change(self, question: QuestionView | None) -> None:
        answered = self._answered()[::-1]
        if not answered:
            self._say("chat-nothing_before")
            return
        self.terminal.write(self._pages.answers(self.conversation.state, answered))
        self._question_shown = None
        line = self.terminal.ask([]).strip()
        if line.isascii() and line.isdigit() and 1 <= int(line[:6]) <= len(answered):
            self._reopened = answered[int(line) - 1]
        elif not self._hear(line, []) and line:
            self._say("chat-change_which")

    def _stop(self, question: QuestionView | None) -> None:
        raise _Left

    def _say_goodbye(self) -> None:
        at_verdict = isinstance(self.conversation.view(), Verdict)
        stopped = bool(self.conversation.assessment.danger.stops)
        if at_verdict and self.conversation.stored and not stopped:
            self._do(Finish())
        hot = [
            q
            for q in self._answered()
            if self.conversation.script.knowledge.questions[q].care.value in ("watch_hot", "open_hot")
        ]
        self.terminal.write(
            self._pages.goodbye(
                stored=self.conversation.stored,
                code=self.code,
                keep_off=self.conversation.assessment.danger.open and self.conversation.stored,
                hot=bool(hot) and not stopped,
            )
        )
