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
    "plug_or_wired",
    "how_connected",
    "age_of_oven",
    "guarantee",
    "whose_oven",
)
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


def _comes_out(told: Told) -> Iterator[str]:
    """How such an oven commonly comes out of its place; common practice, the maker's sheet decides."""
    kind = kind_of_oven(told.state.answers, told.script.knowledge)
    fitted = told.state.answers.get("how_fitted")
    known = fitted is not None and fitted.status == "answered"
    yield told.say(f"comes_out_{_COMES_OUT.get(kind or '', 'built_in' if known else 'unknown')}")
    if fitted is not None and fitted.value == "tiled_in":
        yield told.say("comes_out_tiled_in")
