"""One customer on the line: the interview, what was said at this desk, and where it stands."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from assistant.desk.notice import Notice
from assistant.desk.others import BETWEEN_NOTES, go_on_from_the_others
from assistant.errors import Refused, SessionMovedOn, SessionUnknown
from assistant.interview.answers import still_fits
from assistant.interview.assess import Assessment
from assistant.interview.commands import Command, Finish, GiveAnswer, HearDanger, SayNotSure, SkipQuestion
from assistant.interview.conversation import Conversation
from assistant.interview.danger import STILL_ON
from assistant.interview.on_the_telephone import (
    CALL_ENDED,
    HURT,
    NOTES,
    OFF_AT_THE_END,
    SPEAKER,
    closing_question,
    opening_question,
)
from assistant.interview.supposed import weigh_ahead
from assistant.interview.verdict import NONE, Verdict, give_verdict, named_causes
from assistant.interview.view import QuestionView, question_view
from assistant.interview.way import may_ask
from assistant.knowledge.danger_questions import DANGER_NOW, OVEN_IS_OFF, UNSURE, is_danger_question, sign_question_id
from assistant.knowledge.model import Care
from assistant.wording.listener import Listener
from assistant.wording.replies import Given, NotUnderstood, reply_to
from assistant.wording.sentences import Sentences
from assistant.wording.typed import is_word
from assistant.wording.typed_lines import typed_lines

ID_SHOWN = 12
BY_ELECTRICITY = "by_electricity"
HURT_OTHERWISE = "otherwise"
LEFT_ON = "left_on"
SHOCK = "shock"
COMES = ("book_visit", "stop_and_isolate")
"""Verdicts after which somebody may come and be paid."""
OFF_ASKED_AT_MOST = 2
"""Whether the oven is off, to somebody who can't say so; then the call goes on, and it is taken to be on."""


@dataclass
class Call:
    """`read_out` words what is read to the customer, `own` what is the agent's; `code` gives the call to others, None
    where it was taken by its id.

    `reopened`: a question that is asked out of order or again. `before`: the causes' probabilities before the latest
    line that changed something. `said`: what was said when a question was asked, where danger was heard instead.
    `off_in_vain`: how often nobody could say that the oven is off. `clock_said`: that the clock went back.
    `left_on_told`: that an oven mustn't be left on. `suggested`: a question and the one choice that was asked back.
    """

    conversation: Conversation
    read_out: Sentences
    own: Sentences
    listeners: Sequence[Listener]
    hurt_listeners: Sequence[Listener]
    code: str | None
    reopened: str | None = None
    said: dict[str, str] = field(default_factory=dict)
    off_in_vain: int = 0
    clock_said: bool = False
    left_on_told: bool = False
    suggested: tuple[str, str] | None = None
    before: Mapping[str, float] = field(default_factory=dict)
    _judged: tuple[Assessment, Verdict] | None = field(default=None, repr=False)

    @property
    def question(self) -> QuestionView | None:
        """What is asked now; None where nothing is left to ask or tell."""
        if self.reopened is not None:
            return self._view_of(self.reopened)
        script, assessment = self.conversation.script, self.conversation.assessment
        opening = opening_question(script, assessment, off_given_up=self.off_given_up)
        if opening is not None:
            return self._view_of(opening)
        view = self.conversation.view()
        if isinstance(view, QuestionView):
            return view
        then = None if self.off_given_up else view.details.get("then")
        due = str(then) if then else self._closing_question()
        return self._view_of(due) if due else None

    def _closing_question(self) -> str | None:
        return closing_question(
            self.conversation.script,
            self.conversation.assessment,
            somebody_comes=self.verdict.action in COMES,
            off_given_up=self.off_given_up,
        )

    @property
    def off_given_up(self) -> bool:
        return self.off_in_vain >= OFF_ASKED_AT_MOST

    @property
    def at_verdict(self) -> bool:
        """Whether the interview itself asks nothing more."""
        script, assessment = self.conversation.script, self.conversation.assessment
        opening = opening_question(script, assessment, off_given_up=self.off_given_up)
        return opening is None and isinstance(self.conversation.view(), Verdict)

    @property
    def verdict(self) -> Verdict:
        """As things stand, also in the middle of the interview; what would change it only once it was thought of."""
        assessment = self.conversation.assessment
        if self._judged is None or self._judged[0] is not assessment:
            self._judged = (assessment, give_verdict(self.conversation.script, assessment, with_changes=False))
        return self._judged[1]

    def thinking(self) -> Iterator[None]:
        """Find what would change the verdict, then weigh what may be asked after the open question; pauses often.

        Nothing but what is shown beside, and its speed, depends on it.
        """
        assessment, script = self.conversation.assessment, self.conversation.script
        self._judged = (assessment, give_verdict(script, assessment))
        yield
        question = self.question
        if question is not None:
            yield from weigh_ahead(script, assessment, question.id)

    @property
    def ended(self) -> bool:
        return self.conversation.state.finished

    @property
    def causes(self) -> tuple[tuple[str, float], ...]:
        """The causes with their probabilities; while danger is open, not that nothing is wrong."""
        assessment = self.conversation.assessment
        return tuple(
            each for each in named_causes(assessment.posterior) if each[0] != NONE or not assessment.danger.open
        )

    @property
    def answered(self) -> list[str]:
        """Questions with an answer that today's rules still know, in the order in which they were answered first."""
        questions = self.conversation.script.knowledge.questions
        answers = self.conversation.state.answers.values()
        return [each.question_id for each in answers if still_fits(questions.get(each.question_id), each.value)]

    def take(self, line: str) -> list[Notice]:
        """A line that answers what is open, or that speaks of danger or of somebody who is hurt."""
        question = self.question
        if question is None:
            return self.hear(line) or self._noted(line)
        suggested, self.suggested = self.suggested, None
        if suggested is not None and suggested[0] == question.id and is_word(line, "yes", self.own.wording):
            return self.give(question.id, Given(_of_kind(question, suggested[1])))
        reply = self._reply(line, question)
        if isinstance(reply, Given) and reply.exact:
            return self.give(question.id, reply)
        hurt = self._hear_who_is_hurt(line, question)
        heard = [*hurt, *self.hear(line)]
        if isinstance(reply, Given) and (question.kind == "text" or not heard):
            given = self.give(question.id, reply)
            if not heard or not any(notice.line_stays for notice in given):
                return [*heard, *given]
        if not heard:
            return [self._unclear(question, reply)]
        if question.id == HURT:
            return heard
        self.said[question.id] = line
        return [*heard, *(notice for notice in self._noted(line) if notice.line_stays)]

    def _hear_who_is_hurt(self, line: str, question: QuestionView) -> list[Notice]:
        """At whatever question; a shock counts as an injury where it is asked who is hurt."""
        if self.somebody_is_hurt:
            return []
        if any(listener.hear(line) for listener in self.hurt_listeners):
            return self.give(HURT, Given(HURT_OTHERWISE))
        shocked = any(
            each.sign_id == SHOCK and each.clear for listener in self.listeners for each in listener.hear(line)
        )
        return self.give(HURT, Given(BY_ELECTRICITY)) if shocked and question.id == HURT else []

    def answers_exactly(self, line: str) -> bool:
        """Whether the line is the number or the listed words of a choice that is open about danger."""
        question = self.question
        if question is None or not question.about_danger:
            return False
        reply = self._reply(line, question)
        return isinstance(reply, Given) and reply.exact

    def _reply(self, line: str, question: QuestionView) -> Given | NotUnderstood:
        """In the agent's words, or in the customer's."""
        if self.conversation.script.knowledge.questions[question.id].is_measurement:
            return self._written(line, question)
        replies = [reply_to(line, question, each) for each in (self.own, self.read_out)]
        exact = next((each for each in replies if isinstance(each, Given) and each.exact), None)
        return exact or next((each for each in replies if isinstance(each, Given)), replies[0])

    def _written(self, line: str, question: QuestionView) -> Given | NotUnderstood:
        kind = self.conversation.script.knowledge.questions[question.id].kind
        lines = typed_lines(line, kind, self.own.wording)
        return Given(list(lines)) if lines is not None else NotUnderstood()

    def give(self, question_id: str, reply: Given) -> list[Notice]:
        notices = self.do(GiveAnswer(question_id, reply.value, reply.unit))
        if question_id == HURT and self.somebody_is_hurt:
            return [*notices, self.notice("hurt", urgent=True, **self.read_out.lines)]
        if question_id == OFF_AT_THE_END and reply.value == LEFT_ON and not self.left_on_told:
            self.left_on_told, self.reopened = True, OFF_AT_THE_END
            return [*notices, self.notice("left_on", urgent=True)]
        if reply.exact or question_id == NOTES or notices:
            return notices
        given = self.conversation.state.answers[question_id].value
        if given is None:
            return []
        return [self.notice("taken_as", answer=self.own.given(question_id, given))]

    @property
    def speaker(self) -> str:
        """As they told; empty before."""
        return self.conversation.state.texts.get(SPEAKER) or ""

    @property
    def way_back(self) -> str:
        """What to type to take the call up: its code, or the beginning of its id, which only desks take."""
        return self.code or self.conversation.record.session_id[:ID_SHOWN]

    @property
    def somebody_is_hurt(self) -> bool:
        answer = self.conversation.state.answers.get(HURT)
        return answer is not None and answer.status == "answered" and answer.value != "nobody"

    @property
    def danger_unsettled(self) -> bool:
        """Whether danger is still to be asked about, or stands and isn't said to be isolated."""
        danger = self.conversation.assessment.danger
        return bool(danger.open_questions or (danger.stops and not danger.off_confirmed))

    def is_behind(self) -> bool:
        """Whether there is something to see that somebody else did. Changes nothing. Raises StoreUnreadable."""
        try:
            return self.conversation.is_behind()
        except SessionUnknown:
            return True

    def look_again(self) -> list[Notice]:
        """See what somebody else changed meanwhile, if anything."""
        try:
            return go_on_from_the_others(self, ()) if self.conversation.is_behind() else []
        except SessionUnknown:
            self.conversation.stop_saving()
            return [self.notice("erased", urgent=True)]

    def not_sure(self) -> list[Notice]:
        question = self.question
        if question is None:
            return [self.notice("nothing_open")]
        notices = self.do(SayNotSure(question.id))
        return [*notices, self.notice("hurt", urgent=True, **self.read_out.lines)] if question.id == HURT else notices

    def skip(self) -> list[Notice]:
        """A question about danger isn't passed over."""
        question = self.question
        if question is None:
            return [self.notice("nothing_open")]
        if question.about_danger or question.id == OVEN_IS_OFF:
            return [self.notice("danger_not_skipped", urgent=True)]
        return self.do(SkipQuestion(question.id))

    def note(self, text: str) -> list[Notice]:
        """Add to the notes of the call; danger is heard there too."""
        return [*self._noted(text), *self.hear(text)]

    def _noted(self, text: str) -> list[Notice]:
        earlier = self.conversation.state.texts.get(NOTES)
        return self.do(GiveAnswer(NOTES, f"{earlier}{BETWEEN_NOTES}{text}" if earlier else text)) or [
            self.notice("noted")
        ]

    def reopen(self, question_id: str) -> list[Notice]:
        """Ask it now, whatever would come next; one that may not be asked now isn't."""
        if not self.may_reopen(question_id):
            return [self.notice("not_now", question=self.own.question_by_id(question_id).text)]
        self.reopened = question_id
        return []

    def may_be_read_out(self, question_id: str) -> bool:
        """Whether it is for the customer: neither an engineer's test nor the agent's own notes."""
        care = self.conversation.script.knowledge.questions[question_id].care
        return question_id != NOTES and care.rank < Care.ENGINEER.rank

    def may_reopen(self, question_id: str) -> bool:
        """What was answered may be changed and danger told at any time; anything else only where it may be asked."""
        script, assessment = self.conversation.script, self.conversation.assessment
        if is_danger_question(question_id):
            return True
        if question_id in assessment.state.answers:
            return script.knowledge.questions[question_id].care.rank <= assessment.allowed_care.rank
        return may_ask(script, assessment, question_id)

    def hear(self, line: str) -> list[Notice]:
        """Danger that a line speaks of and that isn't told or asked about yet is recorded; what to do is shown."""
        danger = self.conversation.assessment.danger
        known = set() if danger.off_confirmed else {stop.sign_id for stop in danger.stops}
        vague = {UNSURE} if danger.stops else set()
        heard = {each.sign_id: each for listener in self.listeners for each in listener.hear(line)}
        new = [
            each
            for sign_id, each in heard.items()
            if sign_id not in known | vague and sign_question_id(sign_id) not in danger.open_questions
        ]
        if not new:
            return []
        self.reopened = None
        notices = self.do(*(HearDanger(each.sign_id, each.clear) for each in new))
        clear = any(each.clear for each in new)
        asked = {sign_question_id(each.sign_id) for each in new} & {*self.conversation.assessment.danger.open_questions}
        now = self.question is not None and self.question.id in asked
        kind = "heard" if not asked else "heard_later" if not now else "heard_ask" if clear else "heard_unclear"
        return [*notices, self.notice(kind, urgent=True)]

    def do(self, *commands: Command) -> list[Notice]:
        """Commit; what can't be taken is said, and the question stays open."""
        before = dict(self.causes)
        was_open = self.reopened
        if any(isinstance(each, GiveAnswer) and each.question_id == CALL_ENDED for each in commands):
            commands = (*commands, Finish())
        try:
            self.conversation.do(*commands)
        except Refused as refused:
            return [Notice(self.own.problem(refused.code, refused.details), line_stays=True)]
        except SessionMovedOn:
            return go_on_from_the_others(self, commands)
        except SessionUnknown:
            self.conversation.stop_saving()
            return [self.notice("erased", urgent=True), *self.do(*commands)]
        self.before = before
        in_vain = sum(map(_cannot_tell_off, commands))
        self.off_in_vain = 0 if self.conversation.assessment.danger.off_confirmed else self.off_in_vain + in_vain
        for each in commands:
            self.said.pop(getattr(each, "question_id", ""), None)
        if was_open in {getattr(each, "question_id", None) for each in commands}:
            self.reopened = None
        still_on = [self.notice("still_on", urgent=True, **self.read_out.lines)] if in_vain else []
        return [*still_on, *self._clock_notice(), *self._unsaved_notice()]

    def _unsaved_notice(self) -> list[Notice]:
        waiting = len(self.conversation.unsaved)
        return [self.notice("unsaved", urgent=True, number=waiting)] if waiting else []

    def _clock_notice(self) -> list[Notice]:
        """Said once for each time the clock went back."""
        behind, said = self.conversation.clock_behind, self.clock_said
        self.clock_said = behind is not None
        if behind is None or said:
            return []
        return [self.notice("clock_went_back", minutes=round(behind.total_seconds() / 60))]

    def save(self) -> list[Notice]:
        """Write what waits."""
        if not self.conversation.saving:
            return [self.notice("erased", urgent=True)]
        try:
            done = self.conversation.save()
        except SessionMovedOn:
            return go_on_from_the_others(self, ())
        except SessionUnknown:
            self.conversation.stop_saving()
            return [self.notice("erased", urgent=True)]
        waiting = len(self.conversation.unsaved)
        return [self.notice("all_saved") if done else self.notice("unsaved", urgent=True, number=waiting)]

    def _unclear(self, question: QuestionView, reply: Given | NotUnderstood) -> Notice:
        candidates = reply.candidates if isinstance(reply, NotUnderstood) else ()
        if candidates:
            named = " / ".join(self.own.choice(question.id, each) for each in candidates)
            self.suggested = (question.id, candidates[0]) if len(candidates) == 1 else None
            notice = self.notice("unclear_between" if len(candidates) > 1 else "unclear_one", candidates=named)
        elif question.kind == "number":
            notice = self.notice("number_unclear", unit=self.own.wording.say(f"unit-{question.unit}"))
        elif question.id == HURT:
            notice = self.notice("unclear_hurt", urgent=True, **self.read_out.lines)
        elif question.about_danger and question.id != DANGER_NOW:
            notice = self.notice("unclear_in_danger", question=self.own.question(question).text)
        else:
            notice = self.notice("unclear")
        return replace(notice, line_stays=True)

    def _view_of(self, question_id: str) -> QuestionView:
        danger_open = self.conversation.assessment.danger.open
        view = question_view(self.conversation.script.knowledge, question_id, self.conversation.state, danger_open)
        return replace(view, standing=None) if question_id == OVEN_IS_OFF else view

    def notice(self, name: str, /, *, urgent: bool = False, **arguments: str | float) -> Notice:
        return Notice(self.own.wording.say(f"desk-{name}", **arguments), urgent)


def _of_kind(question: QuestionView, choice: str) -> str | list[str]:
    return [choice] if question.kind == "choices" else choice


def _cannot_tell_off(command: Command) -> bool:
    if isinstance(command, SayNotSure):
        return command.question_id == OVEN_IS_OFF
    return isinstance(command, GiveAnswer) and (command.question_id, command.value) == (OVEN_IS_OFF, STILL_ON)
