"""Lines that are noted while the clock runs: which are taken, what is wrong with the others, and what stands so far."""

from dataclasses import dataclass

from assistant.chat.at_the_oven import AtTheOven
from assistant.chat.late import lamp_now
from assistant.chat.slips import example, in_words
from assistant.errors import Refused
from assistant.interview.commands import NoteLine, TakeBackLine
from assistant.interview.state import Measuring
from assistant.interview.view import QuestionView
from assistant.knowledge.readings import check_so_far, in_order, latest_s, minutes_and_seconds
from assistant.knowledge.scale import that_can_be
from assistant.wording.typed_lines import typed_lines

Lines = tuple[str, ...]


@dataclass
class Noting:
    """Notes lines of what is under way."""

    at: AtTheOven

    def take(self, line: str, question: QuestionView, now: Measuring) -> bool:
        if not line.strip() and question.kind == "lamp_log":
            line = self._other_than(now)
        lines = typed_lines(line, self.at.question(question).kind, self.at.wording, self.at.elapsed_s(now))
        if lines is None or any(each.endswith(" end") for each in lines):
            return self.ask_scale(question)
        if latest_s(lines) > self.at.elapsed_s(now) + 1 and not self.tells_of_danger(question, lines):
            self.at.say("measuring-not_yet", now=minutes_and_seconds(self.at.elapsed_s(now)))
            return True
        self.note(question, now, self.at.settled(question, (*now.lines, *lines)))
        return True

    def note(self, question: QuestionView, now: Measuring, lines: Lines) -> None:
        """Note the lines that are new; where one before is read in another way now, all of them anew.

        All or none; but a reading that no oven comes to is left out, where others are beside it, and one far too hot
        ends the test, whatever is wrong with those beside it.
        """
        hot = self._first_hot(question, now, lines)
        slips = () if hot is not None else tuple(line for line in lines if line not in that_can_be(lines))
        if slips and that_can_be(lines) != now.lines:
            lines = that_can_be(lines)
        if hot is None and self._say_repeated(question, now, lines):
            self.show(question)
            return
        kept = _unchanged(now.lines, lines)
        anew = [TakeBackLine(question.id)] * (len(now.lines) - kept)
        told = lines[kept:] if hot is None else lines[kept : hot + 1]
        done = self.at.do(*anew, *(NoteLine(question.id, each) for each in told))
        if hot is not None:
            if self.at.under_way(question) is not None:
                done = self.at.do(NoteLine(question.id, lines[hot]))
            self.at.say("measuring-too_hot", "danger")
        if self.at.under_way(question) is not None:
            if done and slips:
                self.at.say("measuring-slips", readings=in_words(slips), number=len(slips), example=example(slips[0]))
            self.show(question)
        elif done:
            self.at.say("measuring-off_now", "danger")

    def _first_hot(self, question: QuestionView, now: Measuring, lines: Lines) -> int | None:
        """Which of the new lines is the first with which the oven runs away."""
        new = range(_unchanged(now.lines, lines), len(lines))
        return next((n for n in new if self.at.runs_away(question, lines[: n + 1])), None)

    def _say_repeated(self, question: QuestionView, now: Measuring, lines: Lines) -> bool:
        """Whether the light is told to do what it did before: then which of the two is kept is said, and none noted."""
        if question.kind != "lamp_log":
            return False
        try:
            check_so_far(self.at.question(question).kind, in_order(lines))
        except Refused as refused:
            if refused.code != "lamp_change_missed":
                return False
            self.at.say("measuring-repeated", **self._kept_of_two(refused, now))
            return True
        return False

    def _kept_of_two(self, refused: Refused, now: Measuring) -> dict[str, str]:
        """Of two lines that say the same, the one that is noted is kept; of two new ones, none."""
        light, times = str(refused.details["light"]), [str(refused.details[name]) for name in ("since", "at")]
        kept = [at for at in times if f"{at} {light}" in now.lines]
        left_out = next((at for at in reversed(times) if at not in kept), times[-1])
        last = bool(kept) and f"{kept[0]} {light}" == now.last_noted
        which = "last" if last else "earlier" if kept else "neither"
        return {"kept": kept[0] if kept else times[0], "left_out": left_out, "light": light, "which": which}

    def open_reading(self, question: QuestionView) -> str | None:
        now = self.at.under_way(question)
        return self.at.in_doubt(question, now.lines) if now is not None else None

    def ask_scale(self, question: QuestionView) -> bool:
        """True if it has to be asked."""
        reading = self.open_reading(question)
        if reading is not None:
            self.at.say("measuring-which_scale", "danger", reading=reading)
        return reading is not None

    def tells_of_danger(self, question: QuestionView, lines: Lines) -> bool:
        """A reading far too hot, or one that may be, whatever its time is."""
        return self.at.runs_away(question, lines) or self.at.in_doubt(question, lines) is not None

    def show(self, question: QuestionView, *, all_of_them: bool = False, resumed: bool = False) -> bool:
        """What was noted so far, and what is still wanted or has to be asked."""
        now = self.at.under_way(question)
        if now is not None:
            self.at.write(list(self.at.pages.so_far(question, now, all_of_them=all_of_them, resumed=resumed)))
            self.ask_scale(question)
        return True

    def _other_than(self, now: Measuring) -> str:
        """Enter alone: the lamp changed. At the start it is lit, for the oven was just switched on."""
        words = "words-lamp_out" if lamp_now(now.lines) == "lit" else "words-lamp_lit"
        return self.at.wording.say(words).split("|")[0].strip()


def _unchanged(noted: Lines, lines: Lines) -> int:
    """How many lines needn't be noted anew: all that are noted, or none."""
    return len(noted) if lines[: len(noted)] == noted else 0
