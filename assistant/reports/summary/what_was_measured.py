"""The curves that the household measured, and how its bread browned."""

from collections.abc import Iterator, Mapping, Sequence

from assistant.errors import Refused
from assistant.knowledge.readings import BrownedBread, browned_bread
from assistant.reports.chart import Chart
from assistant.reports.described import described
from assistant.reports.measured import as_shown, charts_of, described_in_words, put_right_in_words, words_of
from assistant.reports.summary.grid import in_a_word
from assistant.reports.summary.session import Told
from assistant.reports.summary.value import Block, Drawing, Paragraph, Table
from assistant.reports.svg_chart import NARROW, svg_chart

ROWS = ("back", "centre", "front")
COLUMNS = ("left", "centre", "right")
IN_SHORT = ("lamp_first_out", "lamp_in_all", "hottest_reading", "last_expected")
"""Of what a chart shows, what page one has room for."""


def measured(told: Told) -> Iterator[Block]:
    """Curves, with what sound ovens would have shown behind them, also in words; and the shades of bread."""
    for question_id, chart, bias in charts_of(told.script, told.state.answers):
        described = (*put_right_in_words(told.sentences, bias), *described_in_words(told.sentences, chart))
        words = words_of(told.sentences, question_id, chart, bias)
        in_words = " ".join((words.title + ".", *described))
        yield Drawing(svg_chart(chart, words), in_words, narrow=svg_chart(chart, words, form=NARROW))
    for _, bread in _breads(told):
        yield Paragraph(told.say("bread"))
        yield _shades(told, bread)


def results(told: Told) -> Mapping[str, str]:
    """Measuring question -> in a line what was found there; of what can't be read anew, nothing."""
    found = {
        question_id: _in_short(told, question_id, chart)
        for question_id, chart, _ in charts_of(told.script, told.state.answers)
    }
    return found | {question_id: _shades_in_short(told, bread) for question_id, bread in _breads(told)}


def _in_short(told: Told, question_id: str, chart: Chart) -> str:
    """The one word that the grid has for it, and its main figures."""
    word = in_a_word(told, question_id, told.state.answers[question_id])
    figures = [each for each in described(chart) if each.what in IN_SHORT]
    return "; ".join(
        (*((word,) if word else ()), *(told.say(f"short_{each.what}", **as_shown(each.values)) for each in figures))
    )


def _shades_in_short(told: Told, bread: BrownedBread) -> str:
    def rows(shades: Sequence[float]) -> str:
        wide = len(COLUMNS)
        return " / ".join(" ".join(map(_shade, shades[at : at + wide])) for at in range(0, len(shades), wide))

    return told.say("short_bread", top=rows(bread.top), beneath=rows(bread.underside))


def _breads(told: Told) -> Iterator[tuple[str, BrownedBread]]:
    for answer in told.answered("signs"):
        if told.script.knowledge.questions[answer.question_id].kind == "browning" and isinstance(answer.value, tuple):
            try:
                yield answer.question_id, browned_bread(answer.value)
            except Refused:
                continue


def _shades(told: Told, bread: BrownedBread) -> Table:
    """Each place's shade on top and beneath, 0 to 5, seen from the door; no slice is a dash."""
    cells = [f"{_shade(top)} / {_shade(below)}" for top, below in zip(bread.top, bread.underside, strict=True)]
    rows = [
        (told.say(f"bread_{row}"), *cells[number * len(COLUMNS) : (number + 1) * len(COLUMNS)])
        for number, row in enumerate(ROWS)
    ]
    columns = (told.say("bread_seen_from"), *(told.say(f"bread_{column}") for column in COLUMNS))
    return Table(columns, tuple(rows), compact=True)


def _shade(shade: float) -> str:
    return "–" if shade != shade else f"{shade:g}"
