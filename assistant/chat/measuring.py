"""A talk about a measurement: to whom each line goes, and the ways out, each with 'off now'."""

from collections.abc import Callable
from contextlib import suppress
from threading import Thread

from assistant.chat.afterwards import Afterwards
from assistant.chat.at_the_oven import AtTheOven
from assistant.chat.ending import Ending
from assistant.chat.late import lamp_now
from assistant.chat.longest_time import run_of
from assistant.chat.noting import Noting
from assistant.chat.time_is_up import TimeIsUp
from assistant.chat.tray import Tray
from assistant.interview.commands import BeginMeasuring, HearDanger, TakeBackLine
from assistant.interview.measuring import TOO_HOT
from assistant.interview.state import Measuring
from assistant.interview.view import QuestionView
from assistant.knowledge.model import MEASUREMENTS
from assistant.knowledge.readings import Scale
from assistant.knowledge.scale import in_one_scale
from assistant.wording.typed import is_word
from assistant.wording.typed_lines import typed_lines, typed_off, typed_scale, typed_unchanged

BEFORE_THE_START = ("measuring_begin",)
WHILE_THE_CLOCK_RUNS = ("measuring_end", "measuring_undo", "measuring_lines")


class MeasuringTalk:
    """Takes lines for a measuring question; what was noted is kept line by line."""

    def __init__(self, at: AtTheOven) -> None:
        self._at = at
        self._ending = Ending(at)
        self._noting = Noting(at)
        self._time_is_up = TimeIsUp(at, self._noting, self._ending)
        self._afterwards = Afterwards(at, self._ending)
        self._tray = Tray(at, self._ending)

    def handles(self, question: QuestionView | None) -> bool:
        return question is not None and question.kind in MEASUREMENTS

    def say_checked(self, question: QuestionView) -> None:
        """Where the question was about a thermometer in water: what was found."""
        conversation = self._at.conversation
        self._at.write(list(self._at.pages.checked(conversation.script, conversation.assessment, question.id)))

    def under_way(self, question: QuestionView | None) -> Measuring | None:
        return self._at.under_way(question)

    def prepare(self, question: QuestionView) -> None:
        """Simulate in the background what such an oven would show, while the person reads and watches."""
        if self._ending.been_hot and self.under_way(question) is None:
            self._at.say("measuring-cold_again", "danger")
        instrument = self._at.conversation.script.evidence_model.instruments.get(question.id)
        if instrument is not None and not instrument.ready:
            Thread(target=_prepared, args=(instrument.prepare,), daemon=True).start()

    def understands(self, line: str, question: QuestionView) -> bool:
        """Whether the line is plainly of the measurement, and needn't be listened to for danger."""
        now = self.under_way(question)
        words = BEFORE_THE_START if now is None else WHILE_THE_CLOCK_RUNS
        if not line.strip() or any(is_word(line, word, self._at.wording) for word in words):
            return True
        if question.kind == "browning":
            return self._tray.understands(line)
        if self._scale_told(line, question) is not None or self._unchanged(line, question):
            return True
        if now is None and self._afterwards.understands(line, question):
            return True
        elapsed_s = self._at.elapsed_s(now) if now is not None else None
        kind = self._at.question(question).kind
        lines = typed_lines(line, kind, self._at.wording, elapsed_s)
        return lines is not None or (question.kind == "lamp_log" and typed_off(line, self._at.wording))

    def unclear(self, line: str, question: QuestionView) -> str:
        """What to say to a line that wasn't understood: before the start, how to begin."""
        if question.kind == "browning":
            return self._tray.unclear(line)
        if self.under_way(question) is None:
            return self._at.wording.say("measuring-not_begun")
        unclear, stay = f"measuring-unclear_{question.kind}", "measuring-stay_with_it"
        return f"{self._at.wording.say(unclear)} {self._at.wording.say(stay)}"

    def take(self, line: str, question: QuestionView) -> bool:
        """Whether the line was understood as part of the measurement."""
        now = self.under_way(question)
        if now is None:
            return self._take_before(line, question)
        scale = self._scale_told(line, question)
        if scale is not None:
            self._noting.note(question, now, in_one_scale(now.lines, scale))
            return self._time_is_up.end_if_late(question)
        if is_word(line, "measuring_lines", self._at.wording):
            return self._noting.show(question, all_of_them=True)
        if self._at.late(now, question):
            return self._time_is_up.take(line, question, now)
        return self._take_in_time(line, question, now)

    def _take_in_time(self, line: str, question: QuestionView, now: Measuring) -> bool:
        if self._unchanged(line, question):
            self._at.say("measuring-unchanged", light=lamp_now(now.lines))
            return True
        if question.kind == "lamp_log" and typed_off(line, self._at.wording):
            self._at.say("measuring-light_or_oven")
            return True
        if is_word(line, "measuring_end", self._at.wording):
            if not self._noting.ask_scale(question):
                self._ending.use(question, now)
            return True
        if is_word(line, "measuring_undo", self._at.wording):
            return self._at.did(TakeBackLine(question.id)) and self._noting.show(question)
        return self._noting.take(line, question, now)

    def _take_before(self, line: str, question: QuestionView) -> bool:
        begins = is_word(line, "measuring_begin", self._at.wording)
        if question.kind == "browning":
            if begins:
                minutes = run_of(self._at.question(question)).longest.value
                self._at.say("measuring-no_clock", minutes=minutes)
            return begins or self._tray.take(line, question)
        if begins:
            return self._afterwards.ask_scale(question) or self._begin(question)
        return self._afterwards.take(line, question)

    def _begin(self, question: QuestionView) -> bool:
        if self._at.did(BeginMeasuring(question.id)):
            minutes = run_of(self._at.question(question)).longest.value
            self._at.say(f"measuring-begun_{question.kind}", minutes=minutes)
        return True

    def show_after_the_pause(self, question: QuestionView) -> None:
        """How many lines were kept, and the last of them."""
        self._noting.show(question, resumed=True)

    def unsure_until_when(self, question: QuestionView) -> bool:
        """Whether 'not sure' answered the question until when it was watched."""
        return self._time_is_up.unsure_until_when(question)

    def leave(self, question: QuestionView | None = None) -> bool:
        """Every way out of a test with a hot oven says that it is to be turned off; of `question`, which is open and
        has no clock that runs, too, for the oven may be on for it all the same. True if danger is in doubt now: a
        reading whose scale wasn't told, which is asked about.
        """
        doubt = bool(self._afterwards.in_doubt) or self._ending.in_doubt()
        self._afterwards.forget()
        self._tray.forget()
        if self._at.conversation.state.measuring or doubt:
            self._at.say("measuring-off_now", "danger")
            self._ending.leave_all(doubt=doubt)
        elif self.handles(question):
            self._at.say("measuring-off_if_on", "danger")
        return doubt

    def leave_for_now(self) -> None:
        """What is under way may be gone on with; what was typed afterwards isn't kept, but a doubt is."""
        if self._afterwards.in_doubt:
            self._afterwards.forget()
            self._at.say("measuring-off_now", "danger")
            self._at.do(HearDanger(TOO_HOT, clear=False))

    def _scale_told(self, line: str, question: QuestionView) -> Scale | None:
        under_way = self.under_way(question) is not None
        reading = (self._noting if under_way else self._afterwards).open_reading(question)
        return typed_scale(line, reading, self._at.wording) if reading is not None else None

    def _unchanged(self, line: str, question: QuestionView) -> str | None:
        """What the small light is said to be still, while it is watched: `lit` or `out`; None for any other line."""
        if self.under_way(question) is None or question.kind != "lamp_log":
            return None
        return typed_unchanged(line, self._at.wording)


def _prepared(prepare: Callable[[], object]) -> None:
    with suppress(Exception):  # the turn that needs it does it again, and says what went wrong
        prepare()
