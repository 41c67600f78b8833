"""What is typed after the longest time of a measurement: what of it counts still, and until when it was watched."""

from dataclasses import dataclass, field
from datetime import datetime

from assistant.chat.at_the_oven import AtTheOven
from assistant.chat.ending import Ending
from assistant.chat.late import NEVER_MIND_S, Late, cut_to, fits, lamp_now, parted
from assistant.chat.longest_time import longest_s
from assistant.chat.noting import Noting
from assistant.interview.commands import TakeBackLine
from assistant.interview.state import Measuring
from assistant.interview.view import QuestionView
from assistant.knowledge.readings import latest_s, minutes_and_seconds
from assistant.wording.typed import is_word
from assistant.wording.typed_lines import typed_lines, typed_unchanged


@dataclass
class TimeIsUp:
    """Ends measurements whose time is over; a reading in doubt is asked about before."""

    at: AtTheOven
    noting: Noting
    ending: Ending
    _until_asked: datetime | None = field(default=None, init=False)
    """Which watch, by its beginning, was asked whether it went on until its longest time."""

    def take(self, line: str, question: QuestionView, now: Measuring) -> bool:
        """What was being typed when the time ran out still counts, if it tells a time before that, or soon after; or
        of danger.
        """
        if is_word(line, "measuring_undo", self.at.wording) and self.noting.open_reading(question) is None:
            return self._take_back(question)
        lines = typed_lines(line, self.at.question(question).kind, self.at.wording, self.at.elapsed_s(now)) or ()
        late = parted(lines, self._longest_s(question))
        kept = self._kept(question, lines, late)
        if kept:
            self.noting.note(question, now, self.at.settled(question, (*now.lines, *kept)))
        if kept or self.noting.open_reading(question) is None:
            self.end_if_late(question, line, late.soon)
        else:
            self.ending.use(question, now)
        self._say_what_does_not_count(question, late)
        return True

    def _kept(self, question: QuestionView, lines: tuple[str, ...], late: Late) -> tuple[str, ...]:
        if self.noting.tells_of_danger(question, lines):
            return lines
        if question.kind == "lamp_log":
            return late.before
        return (*late.before, *cut_to(late.soon, self._longest_s(question)))

    def _say_what_does_not_count(self, question: QuestionView, late: Late) -> None:
        if (late.soon or late.far) and not any(each.endswith(" end") for each in late.soon):
            which = "dropped" if question.kind == "lamp_log" or late.far else "cut"
            self.at.say(f"measuring-late_{which}", "quiet", minutes=self._longest_s(question) / 60)

    def _take_back(self, question: QuestionView) -> bool:
        """Nothing ends by it: what was taken back may be typed anew, with its time."""
        self.at.did(TakeBackLine(question.id))
        now = self.at.under_way(question)
        if now is None:
            return True
        self.noting.show(question)
        if question.kind == "lamp_log":
            self._ask_until_when(question, now)
        else:
            self.at.say("measuring-time_is_up", "danger")
            self.at.say("measuring-off_now", "danger")
            self.at.say("measuring-then_end")
        return True

    def end_if_late(self, question: QuestionView, line: str = "", soon: tuple[str, ...] = ()) -> bool:
        now = self.at.under_way(question)
        if now is None or not self.at.late(now, question) or self.noting.open_reading(question) is not None:
            return True
        if question.kind != "lamp_log":
            self.ending.use(question, now)
        else:
            self._end_watch(line, question, now, soon)
        return True

    def _end_watch(self, line: str, question: QuestionView, now: Measuring, soon: tuple[str, ...]) -> None:
        """Whether it was watched until the longest time is asked, unless what is typed soon after it shows so."""
        asked, longest = self._until_asked == now.begun_at, self._longest_s(question)
        present = not asked and self.at.elapsed_s(now) <= longest + NEVER_MIND_S
        unchanged = asked and typed_unchanged(line, self.at.wording) == lamp_now(now.lines)
        if asked and is_word(line, "no", self.at.wording):
            self.ending.use(question, now, latest_s(now.lines))
        elif (
            ((bool(soon) or present) and fits(now.lines, soon))
            or unchanged
            or (asked and is_word(line, "yes", self.at.wording))
        ):
            self.ending.use(question, now, longest)
        else:
            self._ask_until_when(question, now)

    def _ask_until_when(self, question: QuestionView, now: Measuring) -> None:
        self._until_asked = now.begun_at
        self.at.say("measuring-time_is_up", "danger")
        self.at.say("measuring-off_now", "danger")
        since, minutes = minutes_and_seconds(latest_s(now.lines)), self._longest_s(question) / 60
        self.at.say("measuring-until_up", minutes=minutes, light=lamp_now(now.lines), since=since)

    def unsure_until_when(self, question: QuestionView) -> bool:
        """'Not sure' to whether it was watched until its longest time: it counts until its last change. False where
        that wasn't asked.
        """
        now = self.at.under_way(question)
        if now is None or self._until_asked != now.begun_at:
            return False
        self.ending.use(question, now, latest_s(now.lines))
        return True

    def _longest_s(self, question: QuestionView) -> float:
        return longest_s(self.at.question(question))
