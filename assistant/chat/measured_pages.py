"""What a measurement shows: what was noted so far, and at its end a chart or the same in words."""

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from assistant.interview.assess import answers_behind
from assistant.interview.thermometer import bias_k, how_far_off
from assistant.knowledge.readings import LampLog, minutes_and_seconds, put_right
from assistant.reports.screen import BLANK, Paragraph, width_of_screen
from assistant.wording.sentences import Sentences

if TYPE_CHECKING:
    from assistant.interview.assess import Assessment
    from assistant.interview.script import Script
    from assistant.interview.state import Measuring, State
    from assistant.interview.view import QuestionView

ENOUGH_TIMES_OUT = 3
"""Two whole cycles: more of them tell little more."""
LATEST_LINES = 4


class MeasuredPages:
    """Lays out measurements; `plain` screens are told in words what others see in a chart."""

    def __init__(self, sentences: Sentences, *, plain: bool) -> None:
        self._sentences = sentences
        self._plain = plain
        self._say = sentences.wording.say

    def so_far(
        self, question: "QuestionView", now: "Measuring", *, all_of_them: bool = False, resumed: bool = False
    ) -> Iterator[Paragraph]:
        """The latest lines, or all of them, and what is still wanted; after a pause how many were kept."""
        shown = now.lines if all_of_them else now.lines[-LATEST_LINES:]
        yield BLANK
        if resumed:
            yield Paragraph(self._say("measuring-kept", number=len(now.lines)), "strong")
        for line in shown:
            at, what = line.split(" ", 1)
            yield Paragraph(self._noted(what), "plain", f"  {at:>6}  ")
        if len(shown) < len(now.lines):
            yield Paragraph(self._say("measuring-latest_lines", shown=len(shown), number=len(now.lines)), "quiet")
        if question.kind == "lamp_log":
            out = sum(line.endswith(" out") for line in now.lines)
            yield Paragraph(self._say("measuring-lamp_more", left=max(ENOUGH_TIMES_OUT - out, 0)), "quiet")
        elif now.lines or not resumed:
            yield Paragraph(self._say("measuring-readings_more", readings=len(now.lines)), "quiet")

    def _noted(self, what: str) -> str:
        if what in ("lit", "out", "opened"):
            return self._say(f"measuring-{what}")
        return what.replace(" C", " °C").replace(" F", " °F").replace(" ?", "")

    def outcome(self, script: "Script", state: "State", question_id: str, lines: Sequence[str]) -> Iterator[Paragraph]:
        """The chart of what was measured, where there is room for it; else the same in words.

        Readings are shown as they are weighed: less the bias of a thermometer that was checked.
        """
        from assistant.reports.measured import chart_of, described_in_words, instrument_of, usual_first_out_s, words_of
        from assistant.reports.terminal_chart import NARROWEST, terminal_chart

        instrument = instrument_of(script, question_id)
        if instrument is None:
            return
        bias = bias_k(script.knowledge, question_id, state.answers)
        chart = chart_of(instrument, put_right(lines, bias) if bias is not None else lines)
        width = width_of_screen()
        yield BLANK
        if bias is not None:
            yield self._put_right(bias)
        if width >= NARROWEST and not self._plain:
            drawn = terminal_chart(chart, words_of(self._sentences, question_id, chart), width=width)
            yield from map(Paragraph, drawn)
            if chart.band is not None:
                yield Paragraph(self._say("measured-band"), "quiet")
        else:
            yield from map(Paragraph, described_in_words(self._sentences, chart))
        if chart.lamp is not None:
            yield from self._beside_the_usual(chart.lamp, usual_first_out_s(instrument))

    def _beside_the_usual(self, lamp: LampLog, usual_s: tuple[float, float] | None) -> Iterator[Paragraph]:
        """The household's own time beside those of sound ovens, where all of these go out."""
        from assistant.reports.described import first_out_s

        if usual_s is None:
            return
        own_s = first_out_s(lamp)
        times = (*usual_s, own_s if own_s is not None else lamp.ended_s)
        early, late, own = map(minutes_and_seconds, times)
        message = "measured-usual_out" if own_s is not None else "measured-usual_not_out"
        yield Paragraph(self._say(message, early=early, late=late, own=own), "quiet")

    def checked(self, script: "Script", assessment: "Assessment", question_id: str) -> Iterator[Paragraph]:
        """After a thermometer was read in water: what that means for the measurement with it."""
        point = script.knowledge.questions[question_id].fixed_point
        bias = bias_k(script.knowledge, point.checks, assessment.state.answers) if point is not None else None
        if point is None or bias is None:
            return
        barred = assessment.trace.concluded.intersection(script.knowledge.questions[point.checks].not_when)
        behind = {a.question_id for f in barred for a in answers_behind(f, assessment.trace, assessment.state)}
        yield Paragraph(self._say("thermometer-no_good"), "strong") if question_id in behind else self._put_right(bias)

    def _put_right(self, bias_k: float) -> Paragraph:
        off, kelvins = how_far_off(bias_k)
        return Paragraph(self._say("thermometer-checked", off=off, kelvins=f"{kelvins:g}"), "quiet")
