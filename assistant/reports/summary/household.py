"""What the household keeps until the visit: no screws, no test points, no readings, no figures."""

from collections.abc import Iterator

from assistant.reports.summary.session import Told
from assistant.reports.summary.value import Block, Items, Page, Pairs, Paragraph, Summary


def household_summary(told: Told) -> Summary:
    """What was found, what to do until somebody comes, and how to use the oven well."""
    text = told.sentences.verdict(told.verdict)
    danger = bool(told.assessment.danger.stops)
    sections = (
        told.section("found", (Paragraph(text.explanation, "danger" if danger else "plain"),)),
        told.section("steps", (Items(text.steps, numbered=True),) if text.steps else ()),
        told.section("may_be", (Items(text.likely),) if text.likely else ()),
        told.section("until_then" if told.somebody_comes else "from_now_on", _until_then(told)),
        told.section("use_it_well", (Items(text.tips),) if text.tips else ()),
        told.section("to_hand", _to_hand(told)),
        told.section("you_said", _you_said(told)),
    )
    return Summary(
        reader="household",
        lang=told.sentences.wording.lang,
        title=told.say("title_household"),
        about=text.headline,
        session=told.session,
        written_at=told.latest,
        pages=(Page(tuple(each for each in sections if each.blocks)),),
        facts=told.facts(),
    )


def _until_then(told: Told) -> Iterator[Block]:
    """Never a hand at the oven's inside; and what would make it urgent."""
    action, details = told.verdict.action, told.verdict.details
    if told.assessment.danger.stops:
        yield Paragraph(told.say("leave_off", who=told.sentences.who(told.verdict)), "strong")
    elif details.get("who") == "registered_gas_engineer":
        yield Paragraph(told.say("gas", **told.sentences.lines), "strong")
    else:
        yield Items((told.say("watch_for"), told.say("no_panel"), told.say("in_doubt_off")))
    if action not in ("all_normal", "outside"):
        yield Paragraph(told.say("food"))


def _to_hand(told: Told) -> Iterator[Block]:
    """What whoever comes, or whoever orders parts, will ask for. After a stop nobody goes back to look."""
    if told.assessment.danger.stops:
        yield Items((told.say("hand_receipt"), told.say("hand_way")))
    elif told.somebody_comes:
        yield Items((told.say("hand_plate"), told.say("hand_receipt"), told.say("hand_way")))


def _you_said(told: Told) -> Iterator[Block]:
    said = [each for each in told.answered("complaint", "oven", "visit") if each.status == "answered"]
    yield Pairs(tuple((told.label(each.question_id), told.given(each)) for each in said))
