"""Writing down what a hot oven does: the clock, the lines as they come, and the ways out, each with 'off now'."""

from collections.abc import Callable, Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass
from datetime import datetime
from threading import Thread

from assistant.chat.screen import BLANK, Paragraph, width_of_screen
from assistant.errors import Refused
from assistant.interview.commands import (
    BeginMeasuring,
    Command,
    GiveAnswer,
    LeaveMeasuring,
    NoteLine,
    TakeBackLine,
)
from assistant.interview.conversation import Conversation
from assistant.interview.state import Measuring
from assistant.interview.view import QuestionView
from assistant.knowledge.model import MEASUREMENTS, HotRun, Kind, Question
from assistant.knowledge.readings import (
    far_too_hot,
    latest_s,
    minutes_and_seconds,
    reading_c,
)
from assistant.wording.locale import Wording
from assistant.wording.sentences import Sentences
from assistant.wording.typed import is_word
from assistant.wording.typed_lines import typed_lines

NEVER_MIND_S = 120.0
"""An end that is typed later than this after the longest time says nothing of the time between."""
ENOUGH_TIMES_OUT = 3
"""Two whole cycles: more of them tell little more."""

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

    @property
    def wording(self) -> Wording:
        return self.sentences.wording

    def handles(self, question: QuestionView | None) -> bool:
        return question is not None and question.kind in MEASUREMENTS

    def under_way(self, question: QuestionView | None) -> Measuring | None:
        return self.conversation.state.measuring.get(question.id) if question is not None else None

    def prepare(self, question: QuestionView) -> None:
        """Simulate in the background what such an oven would show, while the person reads and watches."""
        instrument = self.conversation.script.evidence_model.instruments.get(question.id)
        if instrument is not None and not instrument.ready:
            Thread(target=_prepared, args=(instrument.prepare,), daemon=True).start()

    def understands(self, line: str, question: QuestionView) -> bool:
        """Whether the line is plainly of the measurement, and needn't be listened to for danger."""
        now = self.under_way(question)
        words = ("measuring_begin",) if now is None else ("measuring_end", "measuring_undo")
        if not line.strip() or any(is_word(line, word, self.wording) for word in words):
            return True
        elapsed_s = self._elapsed_s(now) if now is not None else None
        return typed_lines(line, self._kind(question), self.wording, elapsed_s) is not None

    def unclear(self, question: QuestionView) -> str:
        """The message for a line that wasn't understood: before the start, how to begin."""
        begins = question.kind != "browning" and self.under_way(question) is None
        return "measuring-not_begun" if begins else f"measuring-unclear_{question.kind}"

    def take(self, line: str, question: QuestionView) -> bool:
        """Whether the line was understood as part of the measurement."""
        now = self.under_way(question)
        if now is None:
            return self._take_before(line, question)
        if self._late(now, question):
            return self._end(question, now)
        if is_word(line, "measuring_end", self.wording):
            return self._end(question, now)
        if is_word(line, "measuring_undo", self.wording):
            return self._did(TakeBackLine(question.id)) and self.show(question)
        if not line.strip() and question.kind == "lamp_log":
            line = self._other_than(now)
        lines = typed_lines(line, self._kind(question), self.wording, self._elapsed_s(now))
        if lines is None or any(each.endswith(" end") for each in lines):
            return False
        if latest_s(lines) > self._elapsed_s(now) + 1:
            self._say("measuring-not_yet", now=minutes_and_seconds(self._elapsed_s(now)))
            return True
        self._note(question, lines)
        return True

    def _note(self, question: QuestionView, lines: Sequence[str]) -> None:
        """All of the lines or none; but a reading far too hot ends the test, whatever is wrong with those beside it."""
        hot = [number for number, line in enumerate(lines) if self._is_far_too_hot(question, line)]
        told = lines[: hot[0] + 1] if hot else lines
        done = self.do(*(NoteLine(question.id, line) for line in told))
        if hot and self.under_way(question) is not None:
            done = self.do(NoteLine(question.id, told[-1]))
        if hot:
            self._say("measuring-too_hot", style="danger")
        if self.under_way(question) is not None:
            self.show(question)
        elif done:
            self._say("measuring-off_now", style="danger")

    def _is_far_too_hot(self, question: QuestionView, line: str) -> bool:
        try:
            read = reading_c(line)
        except Refused:  # no oven comes to that
            return False
        return read is not None and far_too_hot(self._question(question), [read])

    def _take_before(self, line: str, question: QuestionView) -> bool:
        if question.kind != "browning" and is_word(line, "measuring_begin", self.wording):
            if self._did(BeginMeasuring(question.id)):
                self._say(f"measuring-begun_{question.kind}", minutes=self._run(question).longest.value)
            return True
        lines = typed_lines(line, self._kind(question), self.wording)
        if lines is None:
            return False
        if question.kind == "lamp_log" and len(lines) == 1:
            self._say("measuring-until_when")
        else:
            self._give(question, lines)
        return True

    def _give(self, question: QuestionView, lines: tuple[str, ...]) -> bool:
        if question.kind == "lamp_log" and not lines[-1].endswith(" end"):
            lines = (*lines, f"{lines[-1].split(' ')[0]} end")
        self._say("measuring-off_now", style="danger")
        instrument = self.conversation.script.evidence_model.instruments.get(question.id)
        if instrument is not None and not instrument.ready:
            self._say("measured-compared", style="quiet")
        if not self._did(GiveAnswer(question.id, list(lines))):
            return False
        self._draw(question, lines)
        return True

    def _draw(self, question: QuestionView, lines: tuple[str, ...]) -> None:
        """The chart of what was measured, where there is room for it; else the same in words."""
        from assistant.reports.measured import chart_of, described_in_words, instrument_of, usual_first_out_s, words_of
        from assistant.reports.terminal_chart import NARROWEST, terminal_chart

        instrument = instrument_of(self.conversation.script, question.id)
        if instrument is None:
            return
        chart = chart_of(instrument, lines)
        width = width_of_screen()
        if width >= NARROWEST and not self.plain:
            drawn = terminal_chart(chart, words_of(self.sentences, question.id, chart), width=width)
            self.write([BLANK, *(Paragraph(line) for line in drawn)])
        else:
            self.write([BLANK, *(Paragraph(said) for said in described_in_words(self.sentences, chart))])
        usual = usual_first_out_s(instrument) if question.kind == "lamp_log" else None
        if usual is not None:
            early, late = map(minutes_and_seconds, usual)
            self._say("measured-usual_out", style="quiet", early=early, late=late)

    def _end(self, question: QuestionView, now: Measuring) -> bool:
        """Use what was noted, up to now or to the longest that it may take."""
        lines = now.lines
        if question.kind == "lamp_log":
            lines = (*(lines or ("0:00 lit",)), f"{minutes_and_seconds(self._watched_s(now, question))} end")
        if self._late(now, question):
            self._say("measuring-time_is_up", style="danger")
        if not self._give(question, lines):
            self._did(LeaveMeasuring(question.id))
        return True

    def _watched_s(self, now: Measuring, question: QuestionView) -> float:
        """Until when the lamp was watched: until it is said, or, long after the longest time, its last change."""
        elapsed_s, longest_s, latest = self._elapsed_s(now), self._longest_s(question), latest_s(now.lines)
        return latest if elapsed_s > longest_s + NEVER_MIND_S else max(min(elapsed_s, longest_s), latest)

    def _did(self, *commands: Command) -> bool:
        """True also where nothing could be taken back: the reason was said, and the clock runs on."""
        done = self.do(*commands)
        return done or isinstance(commands[0], TakeBackLine)

    def _other_than(self, now: Measuring) -> str:
        """Enter alone: the lamp changed. At the start it is lit, for the oven was just switched on."""
        lit = not now.lines or now.lines[-1].endswith(" lit")
        return self.wording.say("words-lamp_out" if lit else "words-lamp_lit").split("|")[0].strip()

    def show(self, question: QuestionView) -> bool:
        """What was noted so far, and what is still wanted."""
        self.write(list(self._status(question)))
        return True

    def _status(self, question: QuestionView) -> Iterator[Paragraph]:
        now = self.under_way(question)
        if now is None:
            return
        yield BLANK
        for line in now.lines[-4:]:
            at, what = line.split(" ", 1)
            known = what in ("lit", "out", "opened")
            said = self.wording.say(f"measuring-{what}") if known else what.replace(" C", " °C").replace(" F", " °F")
            yield Paragraph(said, "plain", f"  {at:>6}  ")
        if question.kind == "lamp_log":
            out = sum(line.endswith(" out") for line in now.lines)
            left = max(ENOUGH_TIMES_OUT - out, 0)
            yield Paragraph(self.wording.say("measuring-lamp_more", left=left), "quiet")
        else:
            yield Paragraph(self.wording.say("measuring-readings_more", readings=len(now.lines)), "quiet")

    def _late(self, now: Measuring, question: QuestionView) -> bool:
        return self._elapsed_s(now) > self._longest_s(question)

    def _elapsed_s(self, now: Measuring) -> float:
        return max((self.clock() - now.begun_at).total_seconds(), 0.0)

    def _longest_s(self, question: QuestionView) -> float:
        return self._run(question).longest.value * 60

    def _run(self, question: QuestionView) -> HotRun:
        run = self._question(question).run
        assert run is not None
        return run

    def _kind(self, question: QuestionView) -> Kind:
        return self._question(question).kind

    def _question(self, question: QuestionView) -> Question:
        return self.conversation.script.knowledge.questions[question.id]

    def _say(self, message_id: str, style: str = "strong", **arguments: str | float) -> None:
        self.write([Paragraph(self.wording.say(message_id, **arguments), style)])  # type: ignore[arg-type]


def _prepared(prepare: Callable[[], object]) -> None:
    with suppress(Exception):  # the turn that needs it does it again, and says what went wrong
        prepare()
