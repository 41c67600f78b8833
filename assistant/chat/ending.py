"""How a measurement ends: it is used, or left, and in either case the oven is to be turned off."""

from dataclasses import dataclass, field

from assistant.chat.at_the_oven import AtTheOven
from assistant.errors import Refused
from assistant.interview.commands import GiveAnswer, HearDanger, LeaveMeasuring
from assistant.interview.measuring import TOO_HOT
from assistant.interview.state import Measuring
from assistant.interview.view import QuestionView
from assistant.knowledge.readings import LEAST_WATCHED_S, READ, in_scale, latest_s, minutes_and_seconds
from assistant.knowledge.scale import reading_to_ask_about


@dataclass
class Ending:
    """`been_hot`: a test with a hot oven was left in this sitting, so that the next one needs it cold again."""

    at: AtTheOven
    been_hot: bool = field(default=False, init=False)

    def use(self, question: QuestionView, now: Measuring, until_s: float | None = None) -> None:
        """Use what was noted, up to now; or, where the time is up, until `until_s`."""
        lines = now.lines
        if question.kind == "lamp_log":
            ended_s = max(self.at.elapsed_s(now) if until_s is None else until_s, latest_s(lines))
            lines = (*(lines or ("0:00 lit",)), f"{minutes_and_seconds(ended_s)} end")
        if self.at.late(now, question):
            self.at.say("measuring-time_is_up", "danger")
        self.at.say("measuring-off_now", "danger")
        if question.kind == "lamp_log" and latest_s(lines) < LEAST_WATCHED_S:
            self.leave_all()
            self.at.say("measuring-too_early")
        elif not self.give(question, lines, off=None):
            self.leave_all()

    def in_doubt(self) -> bool:
        """Whether a reading is noted whose scale wasn't told, though that may be danger."""
        questions = self.at.conversation.script.knowledge.questions
        logs = [(each, now) for each, now in self.at.conversation.state.measuring.items() if each in questions]
        return any(
            reading_to_ask_about(questions[each], now.lines, self.at.low_k(each)) is not None for each, now in logs
        )

    def leave_all(self, *, doubt: bool = False) -> None:
        """What is under way is dropped, and danger in doubt is asked about; `doubt`: also where nothing is noted.

        That the oven is to be turned off is said before.
        """
        under_way, doubt = self.at.conversation.state.measuring, doubt or self.in_doubt()
        self.been_hot = True
        if any(now.lines for now in under_way.values()):
            self.at.say("measuring-not_kept", "quiet")
        if doubt:
            self.at.say("measuring-doubt")
        self.at.do(*map(LeaveMeasuring, under_way), *[HearDanger(TOO_HOT, clear=False)] * doubt)

    def give(self, question: QuestionView, lines: tuple[str, ...], off: str | None = "measuring-off_now") -> bool:
        """The lines as the answer; what can't be is said before anything else. `off`: what is said of the oven, unless
        one of the readings is far too hot.
        """
        lines = in_scale(lines, "C")
        if question.kind == "lamp_log" and not lines[-1].endswith(" end"):
            lines = (*lines, f"{lines[-1].split(' ')[0]} end")
        hot = question.kind == "temperature_log" and self.at.runs_away(question, lines)
        refused = None if hot else self._refused(question, lines)
        if refused is not None:
            self.at.say_refused(refused)
            return False
        if off is not None:
            self.at.say("measuring-off_now" if hot else off, "danger")
        self._say_it_takes_time(question)
        heard = self.at.conversation.state.heard
        if not self.at.did(GiveAnswer(question.id, list(lines))):
            return False
        script, state = self.at.conversation.script, self.at.conversation.state
        if state.heard != heard:
            self.at.say("measuring-too_hot", "danger")
            return True
        self.at.write(list(self.at.pages.outcome(script, state, question.id, lines)))
        return True

    def _refused(self, question: QuestionView, lines: tuple[str, ...]) -> Refused | None:
        try:
            READ[self.at.question(question).kind](lines)
        except Refused as refused:
            return refused
        return None

    def _say_it_takes_time(self, question: QuestionView) -> None:
        instrument = self.at.conversation.script.evidence_model.instruments.get(question.id)
        if instrument is not None and not instrument.ready:
            self.at.say("measured-compared", "quiet")
