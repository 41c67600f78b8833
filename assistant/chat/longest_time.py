"""The longest time of a measurement that is under way, and the alarm that rings when it is over."""

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import datetime

from assistant.chat.alarm import Alarm
from assistant.interview.conversation import Conversation
from assistant.interview.measuring import is_measured
from assistant.knowledge.model import HotRun, Question
from assistant.reports.screen import Paragraph
from assistant.wording.locale import Wording


def run_of(question: Question) -> HotRun:
    """How the oven is run for a measuring question."""
    assert question.run is not None
    return question.run


def longest_s(question: Question) -> float:
    return run_of(question).longest.value * 60


@dataclass
class LongestTime:
    """Gives the alarm of what is being written down: one for each measurement, so that it rings once."""

    conversation: Conversation
    wording: Wording
    clock: Callable[[], datetime]
    _alarm: tuple[str, datetime, Alarm] | None = field(default=None, init=False)

    def alarm(self) -> Alarm | None:
        for question_id, now in self.conversation.state.measuring.items():
            if not is_measured(self.conversation.script.knowledge, question_id):
                continue
            if self._alarm is None or self._alarm[:2] != (question_id, now.begun_at):
                self._alarm = (question_id, now.begun_at, self._alarm_of(question_id, now.begun_at))
            return self._alarm[2]
        return None

    def _alarm_of(self, question_id: str, begun_at: datetime) -> Alarm:
        up, off = self.wording.say("measuring-time_is_up"), self.wording.say("measuring-off_now")
        longest = longest_s(self.conversation.script.knowledge.questions[question_id])
        return Alarm(
            is_due=lambda: (self.clock() - begun_at).total_seconds() > longest,
            said=(Paragraph(f"{up} {off}", "danger"),),
        )
