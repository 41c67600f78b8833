"""A desk on so many columns and rows: what is read out on the left, what isn't on the right, what is typed below."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate

from assistant.desk import panels
from assistant.desk.desk import Desk
from assistant.knowledge.danger_questions import DANGER_NOW
from assistant.reports.screen import BLANK, Paragraph, Style, laid_out, without_controls

FEWEST_COLUMNS = 40
SIDE_BY_SIDE_FROM = 72
"""With fewer columns the right side is shown alone, when it is asked for."""
RIGHT = 34
FEWEST_STEPS = 6
"""Lines of what is to be done that are seen above what is asked."""

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
    page = page_of(desk, narrow=columns < SIDE_BY_SIDE_FROM)
    beside = bool(page.right) and columns >= SIDE_BY_SIDE_FROM and not _wants_all_columns(desk, page, columns, height)
    width = columns - RIGHT - 3 if beside else columns
    filled, above, below = _left(desk, page, width, height, scrolled)
    if not beside:
        return [_row(style, text, columns) for style, text in filled], above, below
    rows: list[tuple[Line, ...]] = [
        ((style, text.ljust(width)), ("quiet", " │ "), other)
        for (style, text), other in zip(filled, _right_lines(desk, page.right, height), strict=True)
    ]
    return rows, above, below


def _left(desk: Desk, page: "Page", width: int, height: int, scrolled: int) -> tuple[list[Line], int, int]:
    """So many lines, and how many more there are above and below. What is asked stays where steps are scrolled."""
    before, steps, question = (laid_out(each, width) for each in (page.said, page.to_do, page.asked))
    fixed: list[Line] = []
    if steps and len(steps) + len(question) > height and len(question) <= height - FEWEST_STEPS:
        fixed, question = question, []
    lines, room = [*before, *steps, *question], height - len(fixed)
    first = min(len(before), max(0, len(lines) - room))
    first = max(0, min(first - scrolled, len(lines) - room))
    if not fixed and first + room < len(lines):
        fixed = _in_one_line(desk, width)
    elif fixed and first + room < len(lines):
        fixed = [("strong", desk.own.wording.say("desk-more_steps")), *fixed]
    seen: list[Line] = lines[first : first + height - len(fixed)]
    if fixed and steps:
        seen = _whole(seen, len(before) - first, page.to_do, width)
    below = len(lines) - first - len(seen)
    seen += [EMPTY] * (height - len(fixed) - len(seen)) if steps else []
    seen += fixed
    return [*seen, *[EMPTY] * (height - len(seen))], first, below


def _whole(seen: list[Line], skipped: int, to_do: list[Paragraph], width: int) -> list[Line]:
    """Without a step that would end in the middle. `skipped`: how many lines stand before the first step."""
    ends = list(accumulate((len(laid_out([each], width)) for each in to_do), initial=skipped))
    whole = [end for end in ends if 0 < end <= len(seen)]
    return seen[: whole[-1]] if whole and len(seen) < ends[-1] else seen


def _wants_all_columns(desk: Desk, page: "Page", columns: int, height: int) -> bool:
    """Whether what is read out fits if nothing stands beside it, and doesn't otherwise."""
    if desk.panel != "causes":
        return False
    narrow, wide = (len(laid_out([*page.to_do, *page.asked], each)) for each in (columns - RIGHT - 3, columns))
    return wide <= height < narrow


def _right_lines(desk: Desk, right: list[Paragraph], height: int) -> list[Line]:
    lines: list[Line] = laid_out(right, RIGHT)
    if len(lines) > height:
        more = desk.own.wording.say("desk-more_beside", lines=len(lines) - height + 1)
        lines = [*lines[: height - 1], ("quiet", more)]
    return lines + [EMPTY] * (height - len(lines))


def _in_one_line(desk: Desk, width: int) -> list[Line]:
    """What is asked, where the steps before it or its own choices take the whole height."""
    call = desk.call
    if call is None or call.question is None or desk.picking or desk.shows_calls or not panels.to_do(call):
        return []
    question = call.own.question(call.question).text
    return [("strong", without_controls(desk.own.wording.say("desk-then_ask", question=question))[:width])]


@dataclass(frozen=True)
class Page:
    """What was said, what is to be done and asked now, and what stands beside. A list to pick from takes it all."""

    said: list[Paragraph]
    to_do: list[Paragraph]
    asked: list[Paragraph]
    right: list[Paragraph]


def page_of(desk: Desk, *, narrow: bool = False) -> Page:
    call = desk.call
    if desk.shows_calls:
        return Page([], [], panels.calls(desk), [])
    if call is None:
        return Page([], [], [BLANK, Paragraph(desk.own.wording.say("desk-idle")), BLANK, *words(desk)], [])
    if desk.picking:
        return Page([], [], panels.picks(desk), [])
    if desk.shows_side == "in_full" or (desk.shows_side and narrow):
        return Page([], [], _beside(desk, in_full=True), [])
    asked = panels.asked(call)
    if desk.shows_why:
        asked += [BLANK, *panels.why(call)]
    return Page([*panels.conversation(call), BLANK], panels.to_do(call), asked, _beside(desk))


def _beside(desk: Desk, *, in_full: bool = False) -> list[Paragraph]:
    """Nothing before danger was asked about, and nothing but facts until what stands was isolated."""
    call = desk.call
    if call is None or DANGER_NOW not in call.conversation.state.answers:
        return []
    danger = call.conversation.assessment.danger
    if danger.stops and not danger.off_confirmed and desk.panel == "causes":
        return []
    return panels.facts(call, in_full=in_full) if desk.panel == "facts" else panels.causes(call)


def words(desk: Desk) -> list[Paragraph]:
    """What may be typed after a full stop."""
    return [Paragraph(desk.own.wording.say("desk-all_words"), "quiet")]


def _row(style: Style, text: str, columns: int) -> tuple[Line, ...]:
    return ((style, text[:columns]),)


def as_text(rows: Sequence[Sequence[Line]]) -> str:
    return "\n".join("".join(text for _, text in row).rstrip() for row in rows)
