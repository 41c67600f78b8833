"""The chat: shows the view, takes a typed line, and turns it into commands."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import datetime

from assistant.chat.ahead import Ahead
from assistant.chat.measuring import MeasuringTalk
from assistant.chat.pages import Pages
from assistant.chat.screen import Paragraph
from assistant.chat.terminal import Terminal
from assistant.errors import Refused, SessionMovedOn, SessionUnknown, StoreUnreadable
from assistant.interview.answers import still_fits
from assistant.interview.commands import (
    Command,
    Finish,
    GiveAnswer,
    HearDanger,
    LeaveMeasuring,
    SayNotSure,
    SkipQuestion,
    WithdrawAnswer,
)
from assistant.interview.conversation import Conversation, utc_now
from assistant.interview.danger import STILL_ON
from assistant.interview.verdict import Verdict, give_verdict
from assistant.interview.view import QuestionView, question_view
from assistant.interview.way import may_ask
from assistant.knowledge.danger_questions import (
    DANGER_NOW,
    NONE,
    OVEN_IS_OFF,
    UNSURE,
    is_danger_question,
    sign_question_id,
)
from assistant.knowledge.model import Care
from assistant.wording.listener import Listener
from assistant.wording.reasons import reason_in_words
from assistant.wording.replies import Given, NotUnderstood, reply_to
from assistant.wording.sentences import Sentences
from assistant.wording.typed import HelperWord, first_words, helper_word, is_word

MISSES_UNTIL_SHOWN_AGAIN = 2


class _Left(Exception):
    """The person leaves; the session is saved as it stands."""


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
        self._wording = self.sentences.wording
        role = self.conversation.script.knowledge.roles.get(self.conversation.state.role)
        self._pages = Pages(self.sentences, in_figures=role is not None and role.sees_probabilities)
        self._reopened: str | None = None
        self._suggested: tuple[str, str] | None = None
        self._verdict_shown: tuple[Verdict, int] | None = None
        self._question_shown: tuple[str, int] | None = None
        self._misses = 0
        self._ahead = Ahead(self.conversation.script)
        self._measuring = MeasuringTalk(
            self.conversation, self.sentences, self._do, self.terminal.write, self.clock, self.terminal.plain
        )
        self._tell_command = self.resume_command is not None and not self.conversation.stored
        self._helpers: dict[HelperWord, Callable[[QuestionView | None], None]] = {
            "why": self._why,
            "how": self._how,
            "not_sure": self._not_sure,
            "skip": self._skip,
            "back": self._back,
            "change": self._change,
            "stop": self._stop,
        }

    def run(self, first_line: str | None = None, *, resumed: bool = False) -> None:
        """Until the person leaves. `first_line` was typed to the first screen before this began."""
        if self.conversation.script.evaluator.name == "naive":
            self._say("chat-engine_naive", "quiet")
        try:
            if resumed:
                self.welcome_back()
            if first_line is not None:
                question = self._open_question()
                self._question_shown = self._mark(question)
                self._take(first_line, question)
            while True:
                question = self._show()
                self._take(self._ask(question), question)
        except (_Left, EOFError, KeyboardInterrupt):
            self._say_goodbye()
        finally:
            self._ahead.end()

    def welcome_back(self) -> None:
        """The first words after a pause; a danger sign told before is not forgotten."""
        self._say("chat-welcome_back")
        if self.conversation.assessment.danger.stops:
            self._say("chat-still_off", "danger")
        self._ask_about_the_pause()

    def _ask_about_the_pause(self) -> None:
        """Before a measurement goes on: whether the oven is on, somebody with it, anything unusual."""
        while self.conversation.state.measuring:
            self.terminal.write(self._pages.after_the_pause())
            line = self.terminal.ask([])
            if line.strip() == "1":
                self._show_measuring()
                return
            if helper_word(line, self._wording) == "stop":
                raise _Left
            if line.strip() in ("2", "3"):
                self._leave_measuring()
            if line.strip() == "3":
                self._do(HearDanger(UNSURE, clear=False))
            elif line.strip() != "2" and not self._hear(line):
                self._say("chat-exact_needed")

    def _show_measuring(self) -> None:
        question = self._open_question()
        if question is not None and self._measuring.under_way(question) is not None:
            self._measuring.show(question)

    def _leave_measuring(self) -> None:
        """Every way out of a test with a hot oven says that it is to be turned off."""
        under_way = list(self.conversation.state.measuring)
        if under_way:
            self._say("measuring-off_now", "danger")
            self._do(*map(LeaveMeasuring, under_way))

    # -- showing

    def _open_question(self) -> QuestionView | None:
        """The question to be answered now, or None at the end of the interview.

        While something is written down, that is it, unless it may no longer be asked.
        """
        for question_id in self.conversation.state.measuring:
            if may_ask(self.conversation.script, self.conversation.assessment, question_id):
                return self._view_of(question_id)
            self._leave_measuring()
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
        if isinstance(view, Verdict) and self._reopened is None:
            self._show_verdict(view)
        question = self._open_question()
        if question is None:
            self.terminal.write(self._pages.after_verdict())
        elif self._mark(question) != self._question_shown:
            if self._measuring.under_way(question) is None:
                self.terminal.write(self._pages.question(question))
            if self._measuring.handles(question):
                self._measuring.prepare(question)
            self._misses = 0
        self._question_shown = self._mark(question)
        return question

    def _show_verdict(self, verdict: Verdict) -> None:
        """In full when it reads differently; in a word when something changed and it doesn't."""
        page = self._pages.verdict(verdict)
        before, now = self._verdict_shown, self.conversation.state.sequence
        self._verdict_shown = (verdict, now)
        if before is None or self._pages.verdict(before[0]) != page:
            self.terminal.write(page)
        elif before[1] != now:
            self._say("chat-verdict_stays", headline=self.sentences.headline(verdict))

    def _mark(self, question: QuestionView | None) -> tuple[str, int] | None:
        """Tells whether a question was shown since anything changed."""
        return (question.id, self.conversation.state.sequence) if question else None

    def _ask(self, question: QuestionView | None) -> str:
        labels = [label for _, label in self.sentences.question(question).choices] if question else []
        if question is not None:
            self._ahead.begin(self.conversation.assessment, question.id)
        try:
            return self.terminal.ask([*labels, *first_words(self._wording)])
        finally:
            self._ahead.end()

    def _say(self, message_id: str, style: str = "strong", **arguments: str | float) -> None:
        self.terminal.write([Paragraph(self._wording.say(message_id, **arguments), style)])  # type: ignore[arg-type]

    # -- taking a line

    def _take(self, line: str, question: QuestionView | None) -> None:
        word = helper_word(line, self._wording)
        if word is not None:
            self._helpers[word](question)
        elif self._measuring.under_way(question) is None and not line.strip():
            self._take_nothing(question)
        elif question is None:
            self._take_after_the_verdict(line)
        else:
            self._take_answer(line, question)

    def _take_nothing(self, question: QuestionView | None) -> None:
        if question is None:
            raise _Left
        if question.standing is None:
            self._say("chat-nothing_typed")
        elif self._reopened is not None:
            self._reopened = None
        else:
            self._give(question, question.standing, None)

    def _take_after_the_verdict(self, line: str) -> None:
        if is_word(line, "done", self._wording):
            raise _Left
        if not self._hear(line):
            self._say_what_stands("chat-nothing_more_asked")

    def _say_what_stands(self, otherwise: str) -> None:
        """While danger stands, whatever wasn't understood is answered with what matters."""
        stop = self._standing_stop()
        if stop is not None:
            self.terminal.write([Paragraph(self.sentences.meanwhile(stop), "danger")])
        else:
            self._say(otherwise)

    def _standing_stop(self) -> Verdict | None:
        """The verdict of a stop that stands, even while questions go on after it."""
        if not self.conversation.assessment.danger.stops:
            return None
        return give_verdict(self.conversation.script, self.conversation.assessment)

    def _take_answer(self, line: str, question: QuestionView) -> None:
        """Exact answers count at once; any other line is listened to for danger before it counts."""
        if self._measuring.handles(question):
            self._take_measured(line, question)
            return
        reply = self._suggestion(line, question) or reply_to(line, question, self.sentences)
        if isinstance(reply, Given) and reply.exact:
            self._give(question, reply.value, reply.unit)
            return
        heard = self._hear(line)
        told_again = not heard and bool(self.listener.hear(line))
        if isinstance(reply, Given) and (question.kind == "text" or not (heard or told_again)):
            self._take_near(question, reply)
        elif not heard:
            self._say_unclear(question, reply if isinstance(reply, NotUnderstood) else NotUnderstood())

    def _take_measured(self, line: str, question: QuestionView) -> None:
        if not self._measuring.understands(line, question) and self._hear(line):
            return
        if not self._measuring.take(line, question):
            self._misses += 1
            self._say_what_stands(self._measuring.unclear(question))

    def _give(self, question: QuestionView, value: object, unit: str | None) -> None:
        """Commit an exact answer, and answer to 'off' and 'still on'."""
        self._do(GiveAnswer(question.id, value, unit))
        if question.id == OVEN_IS_OFF and value == STILL_ON:
            self._say("chat-still_on_help", "danger", **self.sentences.lines)
        elif question.id == OVEN_IS_OFF:
            self._say("chat-off_confirmed")

    def _suggestion(self, line: str, question: QuestionView) -> Given | None:
        """'yes' to 'do you mean …?'."""
        suggested, self._suggested = self._suggested, None
        if suggested is None or suggested[0] != question.id or not is_word(line, "yes", self._wording):
            return None
        return Given([suggested[1]] if question.kind == "choices" else suggested[1])

    def _take_near(self, question: QuestionView, reply: Given) -> None:
        if self._do(GiveAnswer(question.id, reply.value, reply.unit)) and question.kind != "text":
            chosen = reply.value if isinstance(reply.value, list) else [reply.value]
            labels = "; ".join(self.sentences.choice(question.id, str(choice)) for choice in chosen)
            self._say("chat-understood", "quiet", answer=labels)

    def _say_unclear(self, question: QuestionView, reply: NotUnderstood) -> None:
        self._misses += 1
        if question.id == DANGER_NOW:
            number = question.choices.index(NONE) + 1
            self._say("chat-none_of_these", number=number)
        elif question.exact_only:
            self._say_what_stands("chat-exact_needed")
        elif question.kind == "number":
            self._say("chat-number_unclear", unit=self._wording.say(f"unit-{question.unit}"))
        elif len(reply.candidates) == 1:
            (candidate,) = reply.candidates
            self._suggested = (question.id, candidate)
            self._say("chat-unclear_perhaps", candidate=self.sentences.choice(question.id, candidate))
        elif reply.candidates:
            labels = " / ".join(self.sentences.choice(question.id, c) for c in reply.candidates)
            self._say("chat-unclear_between", candidates=labels)
        else:
            self._say_what_stands("chat-unclear")
        if self._misses >= MISSES_UNTIL_SHOWN_AGAIN:
            self._question_shown = None

    def _hear(self, line: str) -> bool:
        """Listen to a line. True if it spoke of danger that isn't told or asked about already.

        A sign that stands is told already, unless the oven was said to be off since: then it may be on again.
        """
        danger = self.conversation.assessment.danger
        known = set() if danger.off_confirmed else {stop.sign_id for stop in danger.stops}
        vague = {UNSURE} if danger.stops else set()
        heard = [h for h in self.listener.hear(line) if h.sign_id not in known | vague]
        new = [h for h in heard if sign_question_id(h.sign_id) not in danger.open_questions]
        if not new:
            return False
        self._leave_measuring()
        self._do(*(HearDanger(h.sign_id, h.clear) for h in new))
        self._question_shown = self._verdict_shown = None
        self._say("chat-heard" if any(h.clear for h in new) else "chat-heard_unclear", "danger")
        return True

    def _do(self, *commands: Command) -> bool:
        """Commit the commands; a refusal is said, and the question stays open."""
        try:
            self.conversation.do(*commands)
        except Refused as refused:
            self._say_text(self.sentences.problem(refused.code, refused.details))
            return False
        except SessionMovedOn:
            return self._go_on_from_the_others(commands)
        except (StoreUnreadable, SessionUnknown) as error:
            return self._go_on_unsaved(error, commands)
        if commands:
            self._reopened = self._suggested = None
        if self._tell_command and self.conversation.stored:
            self._tell_command = False
            self.terminal.write(self._pages.saved_as_you_go(str(self.resume_command)))
        return True

    def _go_on_from_the_others(self, commands: Sequence[Command]) -> bool:
        """Show how the session stands now. Of what was typed only danger counts; the rest is asked again.

        A measurement that was ended elsewhere ends here too.
        """
        measuring = bool(self.conversation.state.measuring)
        try:
            self.conversation.refresh()
        except (StoreUnreadable, SessionUnknown) as error:
            return self._go_on_unsaved(error, commands)
        if measuring and not self.conversation.state.measuring:
            self._say("measuring-off_now", "danger")
        self._reopened = self._suggested = None
        self._say("chat-moved_on")
        danger = [c for c in commands if isinstance(c, HearDanger) or _answers_danger(c)]
        if danger:
            self._do(*danger)
        return False

    def _go_on_unsaved(self, error: StoreUnreadable | SessionUnknown, commands: Sequence[Command]) -> bool:
        """Safety advice doesn't end with the store, nor with a session that somebody erased."""
        self.conversation.stop_saving()
        if isinstance(error, StoreUnreadable):
            self._say("chat-no_longer_saved", reason=reason_in_words(error, self._wording))
        else:
            self._say("chat-erased_meanwhile")
        return self._do(*commands)

    def _say_text(self, text: str) -> None:
        self.terminal.write([Paragraph(text, "strong")])

    # -- helper words

    def _why(self, question: QuestionView | None) -> None:
        shown = self._verdict_shown[0] if self._verdict_shown else None
        self.terminal.write(self._pages.why(question, shown))

    def _how(self, question: QuestionView | None) -> None:
        if question is None:
            self._say("chat-nothing_open")
        else:
            self.terminal.write(self._pages.how(question))

    def _not_sure(self, question: QuestionView | None) -> None:
        if question is None:
            self._say("chat-nothing_open")
        else:
            self._leave_measuring()
            self._do(SayNotSure(question.id))

    def _skip(self, question: QuestionView | None) -> None:
        if question is None:
            self._say("chat-nothing_open")
        elif question.about_danger or question.id == OVEN_IS_OFF:
            self._say("chat-danger_not_skipped")
        else:
            self._leave_measuring()
            self._do(SkipQuestion(question.id))

    def _answered(self) -> list[str]:
        """Questions with an answer that today's rules still know, the latest first."""
        questions = self.conversation.script.knowledge.questions
        answers = self.conversation.state.answers.values()
        known = [a for a in answers if still_fits(questions.get(a.question_id), a.value)]
        return [a.question_id for a in sorted(known, key=lambda answer: -answer.sequence)]

    def _back(self, question: QuestionView | None) -> None:
        self._leave_measuring()
        earlier = self._answered()
        if self._reopened in earlier:
            earlier = earlier[earlier.index(self._reopened) + 1 :]
        if not earlier:
            self._say("chat-nothing_before")
            return
        self._reopen(earlier[0])

    def _change(self, question: QuestionView | None) -> None:
        self._leave_measuring()
        answered = self._answered()[::-1]
        if not answered:
            self._say("chat-nothing_before")
            return
        self.terminal.write(self._pages.answers(self.conversation.state, answered))
        self._question_shown = None
        line = self.terminal.ask([]).strip()
        if helper_word(line, self._wording) == "stop":
            raise _Left
        if line.isascii() and line.isdigit() and 1 <= int(line[:6]) <= len(answered):
            self._reopen(answered[int(line) - 1])
        elif line and not self._hear(line):
            self._say("chat-change_no_such", most=len(answered))

    def _reopen(self, question_id: str) -> None:
        """Ask a question again; one that may not be asked now can only be taken back."""
        care = self.conversation.script.knowledge.questions[question_id].care
        if care.rank <= self.conversation.assessment.allowed_care.rank:
            self._reopened = question_id
            return
        self._say("chat-take_back", question=self.sentences.question_by_id(question_id).text)
        line = self.terminal.ask([])
        if is_word(line, "yes", self._wording):
            self._do(WithdrawAnswer(question_id))
        else:
            self._hear(line)

    def _stop(self, question: QuestionView | None) -> None:
        raise _Left

    def _say_goodbye(self) -> None:
        at_verdict = isinstance(self.conversation.view(), Verdict)
        stopped = bool(self.conversation.assessment.danger.stops)
        if at_verdict and self.conversation.stored and not stopped:
            self._do(Finish())
        questions = self.conversation.script.knowledge.questions
        hot = any(questions[q].care.rank >= Care.WATCH_HOT.rank for q in self._answered())
        self.terminal.write(
            self._pages.goodbye(
                stored=self.conversation.stored,
                answered=self._anything_told(),
                resume_command=self.resume_command,
                keep_off=self._keep_off(),
                hot=(hot or bool(self.conversation.state.measuring)) and not stopped,
            )
        )

    def _keep_off(self) -> str | None:
        """The last words where danger was told, taken back or not."""
        danger = self.conversation.assessment.danger
        stop = self._standing_stop()
        if stop is not None:
            return self.sentences.meanwhile(stop)
        if (danger.open and self._anything_told()) or danger.withdrawn:
            return self._wording.say("chat-keep_off")
        return None

    def _anything_told(self) -> bool:
        return bool(self.conversation.state.answers or self.conversation.state.heard)


def _answers_danger(command: Command) -> bool:
    return isinstance(command, GiveAnswer | SayNotSure) and is_danger_question(command.question_id)
