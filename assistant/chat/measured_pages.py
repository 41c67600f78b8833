"""What a measurement shows: what was noted so far, and at its end a chart or the same in words."""

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from assistant.chat.screen import BLANK, Paragraph, width_of_screen
from assistant.knowledge.readings import minutes_and_seconds
from assistant.wording.sentences import Sentences

if TYPE_CHECKING:
    from assistant.interview.script import Script
    from assistant.interview.state import Measuring
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

    def so_far(self, question: "QuestionView", now: "Measuring") -> Iterator[Paragraph]:
        """The latest lines, and what is still wanted."""
        yield BLANK
        for line in now.lines[-LATEST_LINES:]:
            at, what = line.split(" ", 1)
            yield Paragraph(self._noted(what), "plain", f"  {at:>6}  ")
        if question.kind == "lamp_log":
            out = sum(line.endswith(" out") for line in now.lines)
            yield Paragraph(self._say("measuring-lamp_more", left=max(ENOUGH_TIMES_OUT - out, 0)), "quiet")
        else:
            yield Paragraph(self._say("measuring-readings_more", readings=len(now.lines)), "quiet")

    def _noted(self, what: str) -> str:
        if what in ("lit", "out", "opened"):
            return self._say(f"measuring-{what}")
        return what.replace(" C", " °C").replace(" F", " °F").replace(" ?", "")

    def outcome(self, script: "Script", question_id: str, lines: Sequence[str]) -> Iterator[Paragraph]:
        """The chart of what was measured, where there is room for it; else the same in words."""
        from assistant.reports.measured import chart_of, described_in_words, instrument_of, usual_first_out_s, words_of
        from assistant.reports.terminal_chart import NARROWEST, terminal_chart

        instrument = instrument_of(script, question_id)
        if instrument is None:
            return
        chart = chart_of(instrument, lines)
        width = width_of_screen()
        yield BLANK
        if width >= NARROWEST and not self._plain:
            drawn = terminal_chart(chart, words_of(self._sentences, question_id, chart), width=width)
            yield from map(Paragraph, drawn)
        else:
            yield from map(Paragraph, described_in_words(self._sentences, chart))
        usual = usual_first_out_s(instrument) if chart.lamp is not None else None
        if usual is not None:
            early, late = map(minutes_and_seconds, usual)
            yield Paragraph(self._say("measured-usual_out", early=early, late=late), "quiet")
