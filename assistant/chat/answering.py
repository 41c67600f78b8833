"""A typed line that is no helper word -> an answer, what was unclear about it, or danger that it speaks of."""

from dataclasses import dataclass

from assistant.chat.committing import Committing
from assistant.chat.measuring import MeasuringTalk
from assistant.chat.showing import Showing
from assistant.interview.commands import Command, GiveAnswer, HearDanger
from assistant.interview.danger import STILL_ON
from assistant.interview.thermometer import likelier_in_fahrenheit
from assistant.interview.view import QuestionView
from assistant.knowledge.danger_questions import DANGER_NOW, NONE, OVEN_IS_OFF, UNSURE, sign_question_id
from assistant.wording.listener import Listener
from assistant.wording.replies import Given, NotUnderstood, reply_to
from assistant.wording.typed import is_word
from assistant.wording.typed_lines import typed_scale

MISSES_UNTIL_SHOWN_AGAIN = 2


@dataclass
class Answering:
    """Takes lines for the question that is open."""

    showing: Showing
    committing: Committing
    measuring: MeasuringTalk
    listener: Listener

    def do(self, *commands: Command) -> bool:
        return self.committing.do(*commands)

    def take(self, line: str, question: QuestionView) -> None:
        """Exact answers count at once; any other line is listened to for danger before it counts."""
        if self.measuring.handles(question):
            self._take_measured(line, question)
            return
        reply = (
            self._suggestion(line, question)
            or self._scale_told(line, question)
            or reply_to(line, question, self.showing.sentences)
        )
        if isinstance(reply, Given) and reply.exact:
            self._give_in_its_scale(question, reply)
            return
        heard = self.hear(line)
        told_again = not heard and bool(self.listener.hear(line))
        if isinstance(reply, Given) and (question.kind == "text" or not (heard or told_again)):
            self._take_near(question, reply)
        elif not heard:
            self._say_unclear(question, reply if isinstance(reply, NotUnderstood) else NotUnderstood())

    def _take_measured(self, line: str, question: QuestionView) -> None:
        if not self.measuring.understands(line, question) and self.hear(line, question):
            return
        if not self.measuring.take(line, question):
            self.showing.place.misses += 1
            self.showing.say_what_stands(self.measuring.unclear(line, question))

    def give(self, question: QuestionView, value: object, unit: str | None) -> None:
        """Commit an exact answer, and answer to 'off' and 'still on'."""
        done = self.do(GiveAnswer(question.id, value, unit))
        if done:
            self.measuring.say_checked(question)
        if question.id == OVEN_IS_OFF and value == STILL_ON:
            self.showing.say("chat-still_on_help", "danger", **self.showing.sentences.lines)
        elif question.id == OVEN_IS_OFF:
            self.showing.say("chat-off_confirmed")

    def _give_in_its_scale(self, question: QuestionView, reply: Given) -> None:
        """What a thermometer reads in water is asked about first where it is more likely to be in °F."""
        reading = reply.value
        if (
            reply.unit is None
            and isinstance(reading, float)
            and likelier_in_fahrenheit(reading, question.should_read_c)
        ):
            self.showing.place.scale_asked = (question.id, reading)
            self.showing.say("chat-which_scale", reading=f"{reading:g}")
        else:
            self.give(question, reading, reply.unit)

    def _scale_told(self, line: str, question: QuestionView) -> Given | None:
        """`F` to 'is that 32 °C or 32 °F?'; `C` is taken for the nearest that the question takes."""
        asked, self.showing.place.scale_asked = self.showing.place.scale_asked, None
        if asked is None or asked[0] != question.id:
            return None
        scale = typed_scale(line, f"{asked[1]:g}", self.showing.wording)
        if scale == "F":
            return Given(asked[1], "degrees_fahrenheit")
        number = self.showing.conversation.script.knowledge.questions[question.id].number
        if scale is None or number is None:
            return None
        return Given(min(max(asked[1], number.least), number.most), "degrees_celsius")

    def _suggestion(self, line: str, question: QuestionView) -> Given | None:
        """'yes' to 'do you mean …?'."""
        suggested, self.showing.place.suggested = self.showing.place.suggested, None
        if suggested is None or suggested[0] != question.id or not is_word(line, "yes", self.showing.wording):
            return None
        return Given([suggested[1]] if question.kind == "choices" else suggested[1])

    def _take_near(self, question: QuestionView, reply: Given) -> None:
        if self.do(GiveAnswer(question.id, reply.value, reply.unit)) and question.kind != "text":
            chosen = reply.value if isinstance(reply.value, list) else [reply.value]
            labels = "; ".join(self.showing.sentences.choice(question.id, str(choice)) for choice in chosen)
            self.showing.say("chat-understood", "quiet", answer=labels)

    def _say_unclear(self, question: QuestionView, reply: NotUnderstood) -> None:
        self.showing.place.misses += 1
        if question.id == DANGER_NOW:
            number = question.choices.index(NONE) + 1
            self.showing.say("chat-none_of_these", number=number)
        elif question.exact_only:
            self.showing.say_what_stands(self.showing.wording.say("chat-exact_needed"))
        elif question.kind == "number":
            self.showing.say("chat-number_unclear", unit=self.showing.wording.say(f"unit-{question.unit}"))
        elif len(reply.candidates) == 1:
            (candidate,) = reply.candidates
            self.showing.place.suggested = (question.id, candidate)
            self.showing.say("chat-unclear_perhaps", candidate=self.showing.sentences.choice(question.id, candidate))
        elif reply.candidates:
            labels = " / ".join(self.showing.sentences.choice(question.id, c) for c in reply.candidates)
            self.showing.say("chat-unclear_between", candidates=labels)
        else:
            self.showing.say_what_stands(self.showing.wording.say("chat-unclear"))
        if self.showing.place.misses >= MISSES_UNTIL_SHOWN_AGAIN:
            self.showing.place.question_shown = None

    def hear(self, line: str, measured: QuestionView | None = None) -> bool:
        """Listen to a line, typed to the question that is `measured` if one is open.

        True if it spoke of danger that isn't told or asked about already.

        A sign that stands is told already, unless the oven was said to be off since: then it may be on again.
        """
        danger = self.showing.conversation.assessment.danger
        known = set() if danger.off_confirmed else {stop.sign_id for stop in danger.stops}
        vague = {UNSURE} if danger.stops else set()
        heard = [h for h in self.listener.hear(line) if h.sign_id not in known | vague]
        new = [h for h in heard if sign_question_id(h.sign_id) not in danger.open_questions]
        if not new:
            return False
        self.measuring.leave(measured)
        self.do(*(HearDanger(h.sign_id, h.clear) for h in new))
        self.showing.place.question_shown = self.showing.place.verdict_shown = None
        self.showing.say("chat-heard" if any(h.clear for h in new) else "chat-heard_unclear", "danger")
        return True
