"""A desk on so many columns and rows: what is read out on the left, what isn't on the right, what is typed below."""

from collections.abc import Sequence
from dataclasses import dataclass

from assistant.desk import panels
from assistant.desk.desk import Desk
from assistant.knowledge.danger_questions import DANGER_NOW
from assistant.reports.screen import BLANK, Paragraph, Style, laid_out, without_controls

FEWEST_COLUMNS = 40
SIDE_BY_SIDE_FROM = 72
"""With fewer columns the right side is shown alone, when it is asked for."""
RIGHT = 34
NOTICE_ROWS = 2

Line = tuple[Style, str]
EMPTY: Line = ("plain", "")


@dataclass(frozen=True)
class Laid:
    """`rows`: each a row of one or several styled pieces. `above` and `below`: how many lines don't fit."""

    rows: tuple[tuple[Line, ...], ...]
    above: int
    below: int


def laid_desk(desk: Desk, columns: int, rows: int, scrolled: int = 0) -> Laid:
    """All but the line that is typed. `scrolled`: how many lines further up the left side is looked at."""
    columns = max(columns, FEWEST_COLUMNS)
    head = [_row("strong", panels.header(desk), columns)]
    banner = panels.danger_banner(desk)
    if banner is not None:
        head += [_row(*line, columns) for line in laid_out([Paragraph(banner, "danger")], columns)]
    notices = _notices(desk, columns)
    height = max(rows - len(head) - len(notices), 3)
    body, above, below = _body(desk, columns, height, scrolled)
    return Laid((*head, *body, *notices), above, below)


def _notices(desk: Desk, columns: int) -> list[tuple[Line, ...]]:
    paragraphs = [Paragraph(each.text, "danger" if each.urgent else "strong") for each in desk.notices]
    lines = laid_out(paragraphs, columns) if paragraphs else []
    return [_row(*line, columns) for line in lines[:6]]


def _body(desk: Desk, columns: int, height: int, scrolled: int) -> tuple[list[tuple[Line, ...]], int, int]:
    left, block, right = sides(desk)
    beside = bool(right) and columns >= SIDE_BY_SIDE_FROM
    width = columns - RIGHT - 3 if beside else columns
    before, now = laid_out(left, width), laid_out(block, width)
    lines: list[Line] = [*before, *now]
    first = min(len(before), max(0, len(lines) - height))
    first = max(0, min(first - scrolled, len(lines) - height))
    pinned = _pinned(desk, columns) if first + height < len(lines) else []
    shown = lines[first : first + height - len(pinned)]
    above, below = first, len(lines) - first - len(shown)
    shown += pinned
    filled: list[Line] = [*shown, *[EMPTY] * (height - len(shown))]
    if not beside:
        return [_row(style, text, columns) for style, text in filled], above, below
    others: list[Line] = laid_out(right, RIGHT)
    if len(others) > height:
        more = desk.own.wording.say("desk-more_beside", lines=len(others) - height + 1)
        others = [*others[: height - 1], ("quiet", more)]
    others += [EMPTY] * (height - len(others))
    rows: list[tuple[Line, ...]] = [
        ((style, text.ljust(width)), ("quiet", " │ "), other)
        for (style, text), other in zip(filled, others, strict=True)
    ]
    return rows, above, below


def _pinned(desk: Desk, columns: int) -> list[Line]:
    """What is asked, in one line, where the steps before it take the whole height."""
    call = desk.call
    if call is None or call.question is None or desk.picking or desk.shows_calls:
        return []
    question = call.own.question(call.question).text
    return [("strong", without_controls(desk.own.wording.say("desk-then_ask", question=question))[:columns])]


def sides(desk: Desk) -> tuple[list[Paragraph], list[Paragraph], list[Paragraph]]:
    """What was said, what is to be read now, and what stands beside. A list to pick from takes it all."""
    call = desk.call
    if desk.shows_calls:
        return [], panels.calls(desk), []
    if call is None:
        return [], [BLANK, Paragraph(desk.own.wording.say("desk-idle")), BLANK, *words(desk)], []
    if desk.picking:
        return [], panels.picks(desk), []
    if desk.shows_why:
        return [], [*panels.to_read_out(call), BLANK, *panels.why(call)], _right(desk)
    return [*panels.conversation(call), BLANK], panels.to_read_out(call), _right(desk)


def _right(desk: Desk) -> list[Paragraph]:
    """Nothing before danger was asked about, and nothing but facts until what stands was isolated."""
    call = desk.call
    if call is None or DANGER_NOW not in call.conversation.state.answers:
        return []
    danger = call.conversation.assessment.danger
    if danger.stops and not danger.off_confirmed and desk.panel == "causes":
        return []
    return panels.facts(call) if desk.panel == "facts" else panels.causes(call)


def words(desk: Desk) -> list[Paragraph]:
    """What may be typed after a full stop."""
    return [Paragraph(desk.own.wording.say("desk-all_words"), "quiet")]


def _row(style: Style, text: str, columns: int) -> tuple[Line, ...]:
    return ((style, text[:columns]),)


def as_text(rows: Sequence[Sequence[Line]]) -> str:
    return "\n".join("".join(text for _, text in row).rstrip() for row in rows)
