"""The curves that the household measured, and how its bread browned."""

from collections.abc import Iterator

from assistant.errors import Refused
from assistant.knowledge.readings import BrownedBread, browned_bread
from assistant.reports.measured import charts_of, described_in_words, put_right_in_words, words_of
from assistant.reports.summary.session import Told
from assistant.reports.summary.value import Block, Drawing, Paragraph, Table
from assistant.reports.svg_chart import NARROW, svg_chart

ROWS = ("back", "centre", "front")
COLUMNS = ("left", "centre", "right")


def measured(told: Told) -> Iterator[Block]:
    """Curves, with what sound ovens would have shown behind them, also in words; and the shades of bread."""
    for question_id, chart, bias in charts_of(told.script, told.state.answers):
        described = (*put_right_in_words(told.sentences, bias), *described_in_words(told.sentences, chart))
        words = words_of(told.sentences, question_id, chart, bias)
        in_words = " ".join((words.title + ".", *described))
        yield Drawing(svg_chart(chart, words), in_words, narrow=svg_chart(chart, words, form=NARROW))
    for bread in _breads(told):
        yield Paragraph(told.say("bread"))
        yield _shades(told, bread)


def _breads(told: Told) -> Iterator[BrownedBread]:
    for answer in told.answered("signs"):
        if told.script.knowledge.questions[answer.question_id].kind == "browning" and isinstance(answer.value, tuple):
            try:
                yield browned_bread(answer.value)
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
