"""Which oven it is, whose, and how it comes out of its place."""

from collections.abc import Iterator

from assistant.interview.assess import kind_of_oven
from assistant.reports.summary.readings import PLATE_POWER
from assistant.reports.summary.session import Told
from assistant.reports.summary.value import Block, Pairs, Paragraph

IDENTITY = ("make_and_model", "serial_number", PLATE_POWER)
ROWS = (
    *IDENTITY,
    "which_appliance",
    "how_fitted",
    "age_of_oven",
    "guarantee",
    "whose_oven",
)
SUPPLY = ("plug_or_wired", "how_connected")
"""Either tells how it gets its electricity; the first tells more of a plug."""
CANNOT_SEE = "cannot_see"
_COMES_OUT = {
    "built_in_knobs": "single",
    "built_in_digits": "single",
    "double_knobs": "double",
    "double_digits": "double",
    "cooker_knobs": "standing",
    "cooker_digits": "standing",
    "table_top": "table_top",
}


def oven(told: Told) -> Iterator[Block]:
    """What is known of it, and of what orders its parts what isn't."""
    rows = [(told.label(name), given) for name in ROWS if (given := told.answer(name)) is not None]
    if (supply := _supply(told)) is not None:
        rows.append((told.say("supply"), supply))
    if told.state.cavity in ("upper", "lower"):
        rows.append((told.say("cavity"), told.say(f"cavity_{told.state.cavity}")))
    yield Pairs(tuple(rows))
    if not told.somebody_comes:
        return
    missing = [told.label(name) for name in IDENTITY if told.answer(name) is None]
    if missing:
        yield told.listed("not_known", missing)
        yield Paragraph(told.say("ask_before_ordering"), "quiet")
    yield Paragraph(" ".join(_comes_out(told)))


def _supply(told: Told) -> str | None:
    """How it gets its electricity; where somebody comes, also that this isn't known, or was never asked."""
    found = [given for name in SUPPLY if (given := _supply_in_words(told, name)) is not None]
    if found:
        return found[0]
    if not told.somebody_comes:
        return None
    asked = any(name in told.state.answers for name in SUPPLY)
    return told.say("asked_not_known" if asked else "never_asked")


def _supply_in_words(told: Told, question_id: str) -> str | None:
    answer = told.state.answers.get(question_id)
    if answer is None or told.answer(question_id) is None or answer.value == CANNOT_SEE:
        return None
    name = f"supply_{answer.value}"
    return told.say(name) if told.sentences.wording.has(f"summary-{name}") else told.given(answer)


def _comes_out(told: Told) -> Iterator[str]:
    """How such an oven commonly comes out of its place; common practice, the maker's sheet decides."""
    kind = kind_of_oven(told.state.answers, told.script.knowledge)
    fitted = told.state.answers.get("how_fitted")
    known = fitted is not None and fitted.status == "answered"
    yield told.say(f"comes_out_{_COMES_OUT.get(kind or '', 'built_in' if known else 'unknown')}")
    if fitted is not None and fitted.value == "tiled_in":
        yield told.say("comes_out_tiled_in")
