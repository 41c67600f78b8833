"""Writing down what a hot oven does: the clock, the lines as they come, and the ways out, each with 'off now'."""

from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass, field
from datetime import datetime
from threading import Thread

from assistant.chat.late import NEVER_MIND_S, cut_to, fits, lamp_now, parted
from assistant.chat.longest_time import longest_s, run_of
from assistant.chat.measured_pages import MeasuredPages
from assistant.chat.screen import Paragraph
from assistant.interview.commands import (
    BeginMeasuring,
    Command,
    GiveAnswer,
    HearDanger,
    LeaveMeasuring,
    NoteLine,
    TakeBackLine,
)
from assistant.interview.conversation import Conversation
from assistant.interview.measuring import TOO_HOT
from assistant.interview.state import Measuring
from assistant.interview.thermometer import low_k
from assistant.interview.view import QuestionView
from assistant.knowledge.model import MEASUREMENTS, Kind, Question
from assistant.knowledge.readings import (
    LEAST_WATCHED_S,
    Scale,
    in_scale,
    latest_s,
    minutes_and_seconds,
)
from assistant.knowledge.scale import in_one_scale, reading_to_ask_about, runs_away, with_known_scale
from assistant.wording.locale import Wording
from assistant.wording.sentences import Sentences
from assistant.wording.typed import is_word
from assistant.wording.typed_lines import no_shades, typed_lines, typed_scale, typed_unchanged

Do = Callable[..., bool]
Write = Callable[[list[Paragraph]], None]


@dataclass
class MeasuringTalk:
    """Takes lines for a measuring question; what was noted is kept line by line.

    `clock` gives the time of day; `plain` screens are told in words what others see in a chart.
    """

    conversation: Conversation
    sentences: Sentences
    do: Do
    write: Write
    clock: Callable[[], datetime]
    plain: bool
    _in_doubt: dict[str, tuple[str, ...]] = field(default_factory=dict, init=False)
    """Question -> what was typed afterwards and doesn't count before it is known in which scale."""
    _until_asked: datetime | None = field(default=None, init=False)
    """Which watch, by its beginning, was asked whether it went on until its longest time."""
    _been_hot: bool = field(default=False, init=False)
    """Whether a test with a hot oven was left in this sitting, so that the next one needs it cold again."""

    def __post_init__(self) -> None:
        self._pages = MeasuredPages(self.sentences, plain=self.plain)

    @property
    def wording(self) -> Wording:
        return self.sentences.wording

    def handles(self, question: QuestionView | None) -> bool:
        return question is not None and question.kind in MEASUREMENTS

    def say_checked(self, question: QuestionView) -> None:
        """Where the question was about a thermometer in water: what was found."""
        conversation = self.conversation
        self.write(list(self._pages.checked(conversation.script, conversation.assessment, question.id)))

    def under_way(self, question: QuestionView | None) -> Measuring | None:
        return self.conversation.state.measuring.get(question.id) if question is not None else None

    def prepare(self, question: QuestionView) -> None:
        """Simulate in the background what such an oven would show, while the person reads and watches."""
        if self._been_hot and self.under_way(question) is None:
            self._say("measuring-cold_again", style="danger")
        instrument = self.conversation.script.evidence_model.instruments.get(question.id)
        if instrument is not None and not instrument.ready:
            Thread(target=_prepared, args=(instrument.prepare,), daemon=True).start()

    def understands(self, line: str, question: QuestionView) -> bool:
        """Whether the line is plainly of the measurement, and needn't be listened to for danger."""
        now = self.under_way(question)
        words = ("measuring_begin",) if now is None else ("measuring_end", "measuring_undo")
        if not line.strip() or any(is_word(line, word, self.wording) for word in words):
            return True
        if self._scale_told(line, question) is not None or self._unchanged(line, question):
            return True
        elapsed_s = self._elapsed_s(now) if now is not None else None
        return typed_lines(line, self._kind(question), self.wording, elapsed_s) is not None

    def unclear(self, line: str, question: QuestionView) -> str:
        """What to say to a line that wasn't understood: before the start, how to begin."""
        if question.kind != "browning":
            begun = self.under_way(question) is not None
            if not begun:
                return self.wording.say("measuring-not_begun")
            unclear, stay = f"measuring-unclear_{question.kind}", "measuring-stay_with_it"
            return f"{self.wording.say(unclear)} {self.wording.say(stay)}"
        wrong = no_shades(line)
        if not wrong:
            return self.wording.say("measuring-unclear_browning")
        return self.wording.say("measuring-no_shade", figures=", ".join(wrong), number=len(wrong))

    def take(self, line: str, question: QuestionView) -> bool:
        """Whether the line was understood as part of the measurement."""
        now = self.under_way(question)
        if now is None:
            return self._take_before(line, question)
        scale = self._scale_told(line, question)
        if scale is not None:
            self._note(question, now, in_one_scale(now.lines, scale))
            return self._end_if_late(question)
        if self._late(now, question):
            return self._end_late(line, question, now)
        if self._unchanged(line, question):
            self._say("measuring-unchanged", light=lamp_now(now.lines))
            return True
        if question.kind == "lamp_log" and is_word(line, "light_or_oven", self.wording):
            self._say("measuring-light_or_oven")
            return True
        if is_word(line, "measuring_end", self.wording):
            return self._ask_scale(question) or self._end(question, now)
        if is_word(line, "measuring_undo", self.wording):
            return self._did(TakeBackLine(question.id)) and self.show(question)
        if not line.strip() and question.kind == "lamp_log":
            line = self._other_than(now)
        return self._take_lines(line, question, now)

    def _end_late(self, line: str, question: QuestionView, now: Measuring) -> bool:
        """What was being typed when the time ran out still counts, if it tells a time before that, or soon after; or
        of danger.
        """
        lines = typed_lines(line, self._kind(question), self.wording, self._elapsed_s(now)) or ()
        longest_s = self._longest_s(question)
        late = parted(lines, longest_s)
        lamp = question.kind == "lamp_log"
        kept = late.before if lamp else (*late.before, *cut_to(late.soon, longest_s))
        kept = lines if self._tells_of_danger(question, lines) else kept
        if kept:
            self._note(question, now, self._settled(question, (*now.lines, *kept)))
        if kept or self._open_reading(question) is None:
            self._end_if_late(question, line, late.soon)
        else:
            self._end(question, now)
        if (late.soon or late.far) and not any(each.endswith(" end") for each in late.soon):
            which = "dropped" if lamp or late.far else "cut"
            self._say(f"measuring-late_{which}", "quiet", minutes=longest_s / 60)
        return True

    def _end_if_late(self, question: QuestionView, line: str = "", soon: tuple[str, ...] = ()) -> bool:
        """A reading in doubt is asked about before."""
        now = self.under_way(question)
        if now is None or not self._late(now, question) or self._open_reading(question) is not None:
            return True
        if question.kind != "lamp_log":
            return self._end(question, now)
        return self._end_watch_late(line, question, now, soon)

    def _end_watch_late(self, line: str, question: QuestionView, now: Measuring, soon: tuple[str, ...]) -> bool:
        """Whether it was watched until the longest time is asked, unless what is typed soon after it shows so."""
        asked, longest_s = self._until_asked == now.begun_at, self._longest_s(question)
        present = bool(soon) or self._elapsed_s(now) <= longest_s + NEVER_MIND_S
        unchanged = asked and self._unchanged(line, question) == lamp_now(now.lines)
        if asked and is_word(line, "no", self.wording):
            return self._end(question, now, latest_s(now.lines))
        if (present and fits(now.lines, soon)) or unchanged or (asked and is_word(line, "yes", self.wording)):
            return self._end(question, now, longest_s)
        self._until_asked = now.begun_at
        self._say("measuring-time_is_up", style="danger")
        self._say("measuring-off_now", style="danger")
        since = minutes_and_seconds(latest_s(now.lines))
        self._say("measuring-until_up", minutes=longest_s / 60, light=lamp_now(now.lines), since=since)
        return True

    def _unchanged(self, line: str, question: QuestionView) -> str | None:
        """What the small light is said to be still, while it is watched: `lit` or `out`; None for any other line."""
        if self.under_way(question) is None or question.kind != "lamp_log":
            return None
        return typed_unchanged(line, self.wording)

    def unsure_until_when(self, question: QuestionView) -> bool:
        """'Not sure' to whether it was watched until its longest time: it counts until its last change. False where
        that wasn't asked.
        """
        now = self.under_way(question)
        if now is None or self._until_asked != now.begun_at:
            return False
        return self._end(question, now, latest_s(now.lines))

    def _take_lines(self, line: str, question: QuestionView, now: Measuring) -> bool:
        lines = typed_lines(line, self._kind(question), self.wording, self._elapsed_s(now))
        if lines is None or any(each.endswith(" end") for each in lines):
            return self._ask_scale(question)
        if latest_s(lines) > self._elapsed_s(now) + 1 and not self._tells_of_danger(question, lines):
            self._say("measuring-not_yet", now=minutes_and_seconds(self._elapsed_s(now)))
            return True
        return self._note(question, now, self._settled(question, (*now.lines, *lines)))

    def _note(self, question: QuestionView, now: Measuring, lines: tuple[str, ...]) -> bool:
        """Note the lines that are new; where one before is read in another way now, all of them anew.

        All or none; but a reading far too hot ends the test, whatever is wrong with those beside it.
        """
        kept = len(now.lines) if lines[: len(now.lines)] == now.lines else 0
        anew = [TakeBackLine(question.id)] * (len(now.lines) - kept)
        asked, too_low_k = self._question(question), self._low_k(question.id)
        hot = next((n for n in range(kept, len(lines)) if runs_away(asked, lines[: n + 1], too_low_k)), None)
        told = lines[kept:] if hot is None else lines[kept : hot + 1]
        done = self.do(*anew, *(NoteLine(question.id, each) for each in told))
        if hot is not None:
            if self.under_way(question) is not None:
                done = self.do(NoteLine(question.id, lines[hot]))
            self._say("measuring-too_hot", style="danger")
        if self.under_way(question) is not None:
            self.show(question)
        elif done:
            self._say("measuring-off_now", style="danger")
        return True

    def _open_reading(self, question: QuestionView) -> str | None:
        """The reading of which it has to be known whether it is in Celsius or in Fahrenheit. Counts as the former."""
        now = self.under_way(question)
        lines = now.lines if now is not None else self._in_doubt.get(question.id, ())
        return reading_to_ask_about(self._question(question), lines, self._low_k(question.id))

    def _tells_of_danger(self, question: QuestionView, lines: tuple[str, ...]) -> bool:
        """A reading far too hot, or one that may be, whatever its time is."""
        asked, too_low_k = self._question(question), self._low_k(question.id)
        return runs_away(asked, lines, too_low_k) or reading_to_ask_about(asked, lines, too_low_k) is not None

    def _ask_scale(self, question: QuestionView) -> bool:
        """True if it has to be asked."""
        reading = self._open_reading(question)
        if reading is not None:
            self._say("measuring-which_scale", style="danger", reading=reading)
        return reading is not None

    def _scale_told(self, line: str, question: QuestionView) -> Scale | None:
        reading = self._open_reading(question)
        return typed_scale(line, reading, self.wording) if reading is not None else None

    def leave(self, question: QuestionView | None = None) -> bool:
        """Every way out of a test with a hot oven says that it is to be turned off; of `question`, which is open and
        has no clock that runs, too, for the oven may be on for it all the same. True if danger is in doubt now: a
        reading whose scale wasn't told, which is asked about.
        """
        questions, under_way = self.conversation.script.knowledge.questions, self.conversation.state.measuring
        logs = [(questions[each], now.lines, self._low_k(each)) for each, now in under_way.items() if each in questions]
        doubt = bool(self._in_doubt) or any(reading_to_ask_about(*log) for log in logs)
        self._in_doubt.clear()
        if under_way or doubt:
            self._say("measuring-off_now", style="danger")
            self._been_hot = True
            if any(now.lines for now in under_way.values()):
                self._say("measuring-not_kept", style="quiet")
            if doubt:
                self._say("measuring-doubt")
            self.do(*map(LeaveMeasuring, under_way), *[HearDanger(TOO_HOT, clear=False)] * doubt)
        elif self.handles(question):
            self._say("measuring-off_if_on", style="danger")
        return doubt

    def leave_for_now(self) -> None:
        """What is under way may be gone on with; what was typed afterwards isn't kept, but a doubt is."""
        if self._in_doubt:
            self._in_doubt.clear()
            self._say("measuring-off_now", style="danger")
            self.do(HearDanger(TOO_HOT, clear=False))

    def _take_before(self, line: str, question: QuestionView) -> bool:
        scale = self._scale_told(line, question)
        if scale is not None:
            self._give(question, in_one_scale(self._in_doubt[question.id], scale))
            return True
        if question.kind != "browning" and is_word(line, "measuring_begin", self.wording):
            return self._ask_scale(question) or self._begin(question)
        if question.kind == "browning" and is_word(line, "measuring_begin", self.wording):
            self._say("measuring-no_clock", minutes=run_of(self._question(question)).longest.value)
            return True
        lines = typed_lines(line, self._kind(question), self.wording)
        if lines is None:
            return self._ask_scale(question)
        if question.kind == "lamp_log" and len(lines) == 1:
            self._say("measuring-until_when")
            return True
        self._in_doubt[question.id] = self._settled(question, lines)
        if not self._ask_scale(question):
            self._give(question, self._in_doubt[question.id])
        return True

    def _begin(self, question: QuestionView) -> bool:
        if self._did(BeginMeasuring(question.id)):
            minutes = run_of(self._question(question)).longest.value
            self._say(f"measuring-begun_{question.kind}", minutes=minutes)
        return True

    def _give(self, question: QuestionView, lines: tuple[str, ...]) -> bool:
        lines = in_scale(lines, "C")
        self._in_doubt.pop(question.id, None)
        if question.kind == "lamp_log" and not lines[-1].endswith(" end"):
            lines = (*lines, f"{lines[-1].split(' ')[0]} end")
        self._say("measuring-off_now", style="danger")
        instrument = self.conversation.script.evidence_model.instruments.get(question.id)
        if instrument is not None and not instrument.ready:
            self._say("measured-compared", style="quiet")
        heard = self.conversation.state.heard
        if not self._did(GiveAnswer(question.id, list(lines))):
            return False
        script, state = self.conversation.script, self.conversation.state
        if state.heard != heard:
            self._say("measuring-too_hot", style="danger")
            return True
        self.write(list(self._pages.outcome(script, state, question.id, lines)))
        return True

    def _end(self, question: QuestionView, now: Measuring, until_s: float | None = None) -> bool:
        """Use what was noted, up to now; or, where the time is up, until `until_s`."""
        lines = now.lines
        if question.kind == "lamp_log":
            ended_s = max(self._elapsed_s(now) if until_s is None else until_s, latest_s(lines))
            lines = (*(lines or ("0:00 lit",)), f"{minutes_and_seconds(ended_s)} end")
        if self._late(now, question):
            self._say("measuring-time_is_up", style="danger")
        if _too_short(self._kind(question), lines):
            self.leave()
            self._say("measuring-too_early")
        elif not self._give(question, lines):
            self.leave()
        return True

    def _did(self, *commands: Command) -> bool:
        """True also where nothing could be taken back: the reason was said, and the clock runs on."""
        done = self.do(*commands)
        return done or isinstance(commands[0], TakeBackLine)

    def _other_than(self, now: Measuring) -> str:
        """Enter alone: the lamp changed. At the start it is lit, for the oven was just switched on."""
        lit = not now.lines or now.lines[-1].endswith(" lit")
        return self.wording.say("words-lamp_out" if lit else "words-lamp_lit").split("|")[0].strip()

    def show(self, question: QuestionView) -> bool:
        """What was noted so far, and what is still wanted or has to be asked."""
        now = self.under_way(question)
        if now is not None:
            self.write(list(self._pages.so_far(question, now)))
            self._ask_scale(question)
        return True

    def _late(self, now: Measuring, question: QuestionView) -> bool:
        return self._elapsed_s(now) > self._longest_s(question)

    def _elapsed_s(self, now: Measuring) -> float:
        return max((self.clock() - now.begun_at).total_seconds(), 0.0)

    def _longest_s(self, question: QuestionView) -> float:
        return longest_s(self._question(question))

    def _kind(self, question: QuestionView) -> Kind:
        return self._question(question).kind

    def _settled(self, question: QuestionView, lines: tuple[str, ...]) -> tuple[str, ...]:
        return with_known_scale(self._question(question), lines, self._low_k(question.id))

    def _low_k(self, question_id: str) -> float:
        return low_k(self.conversation.script.knowledge, question_id, self.conversation.state.answers)

    def _question(self, question: QuestionView) -> Question:
        return self.conversation.script.knowledge.questions[question.id]

    def _say(self, message_id: str, style: str = "strong", **arguments: str | float) -> None:
        self.write([Paragraph(self.wording.say(message_id, **arguments), style)])  # type: ignore[arg-type]


def _too_short(kind: Kind, lines: tuple[str, ...]) -> bool:
    return kind == "lamp_log" and latest_s(lines) < LEAST_WATCHED_S


def _prepared(prepare: Callable[[], object]) -> None:
    with suppress(Exception):  # the turn that needs it does it again, and says what went wrong
        prepare()
