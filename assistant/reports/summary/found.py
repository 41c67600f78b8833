"""What was found, for the household: in a few words, and whether there is any hurry."""

from collections.abc import Iterator

from assistant.reports.summary.session import Told
from assistant.reports.summary.value import Block, Paragraph
from assistant.wording.sentences import VerdictText, kind_of_explanation

GAS_ENGINEER = "registered_gas_engineer"


def found(told: Told, text: VerdictText) -> Iterator[Block]:
    """What was found before anything else, then whom to tell first, then whether it is urgent."""
    verdict = told.verdict
    for sign_id in told.open_signs:
        sign = told.sentences.wording.say(f"sign-{sign_id}", **told.sentences.lines)
        yield Paragraph(told.say("told_not_asked", sign=sign), "danger")
    if verdict.stops:
        yield Paragraph(text.explanation, "danger")
        yield Paragraph(told.say("hurry", urgency=str(verdict.details["urgency"])), "strong")
    elif verdict.action in ("book_visit", "maker_seller_or_landlord_first"):
        yield from _of_a_visit(told)
    elif verdict.details.get("who") == GAS_ENGINEER:
        yield Paragraph(told.say("found_gas", who=told.sentences.who(verdict)))
    else:
        yield Paragraph(text.explanation)


def _of_a_visit(told: Told) -> Iterator[Block]:
    verdict, details = told.verdict, told.verdict.details
    who = told.sentences.who(verdict)
    kind = kind_of_explanation(verdict)
    if kind == "explain" and details["who"] == "electrician":
        kind = "supply"
    yield Paragraph(told.say("found_visit", kind=kind, who=who))
    if verdict.action == "maker_seller_or_landlord_first":
        yield Paragraph(told.say("found_first"))
    if not told.assessment.danger.open:
        yield Paragraph(told.say("hurry", urgency=str(details["urgency"])))
    if details.get("may_not_be_worth_mending"):
        yield Paragraph(told.sentences.wording.say("verdict-may_not_be_worth_mending"))
