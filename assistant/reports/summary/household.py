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
        told.section("steps", _steps(told, text.steps)),
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


def _steps(told: Told, steps: tuple[str, ...]) -> Iterator[Block]:
    if steps and told.assessment.danger.off_confirmed:
        yield Paragraph(told.say("already_off"), "strong")
    if steps:
        yield Items(steps, numbered=True)


def _until_then(told: Told) -> Iterator[Block]:
    """Never a hand at the oven's inside; and what would make it urgent."""
    action = told.verdict.action
    if told.verdict.details.get("who") in ("gas_emergency", "registered_gas_engineer"):
        yield Paragraph(told.say("gas", **told.sentences.lines), "strong")
    elif told.assessment.danger.stops:
        yield Paragraph(told.say("leave_off", who=told.sentences.who(told.verdict)), "strong")
        yield Items((told.say("no_panel"), *((told.say("landlord"),) if told.is_rented else ())))
    elif told.somebody_comes:
        yield Items((told.say("no_panel"), told.say("in_doubt_off")))
    else:
        yield Items((told.say("watch_for"), told.say("no_panel"), told.say("in_doubt_off")))
    if told.somebody_comes or action == "use_differently":
        yield Paragraph(told.say("food"))


def _to_hand(told: Told) -> Iterator[Block]:
    """What whoever comes, or whoever orders parts, will ask for. After a stop nobody goes back to look."""
    if not told.somebody_comes:
        return
    plate = () if told.assessment.danger.stops else ("hand_plate",)
    guarantee = () if told.answer("guarantee") is not None or not told.was_due("guarantee") else ("hand_guarantee",)
    others = told.verdict.action == "maker_seller_or_landlord_first" or told.is_rented
    receipt, fee = ((), ()) if told.is_rented else (("hand_receipt",), () if others else ("hand_fee",))
    yield Items(tuple(map(told.say, (*plate, *receipt, *guarantee, "hand_way", *fee))))


def _you_said(told: Told) -> Iterator[Block]:
    said = [each for each in told.answered("complaint", "oven", "visit") if each.status == "answered"]
    yield Pairs(tuple((told.label(each.question_id), told.given(each)) for each in said))
