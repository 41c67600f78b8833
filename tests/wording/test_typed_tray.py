"""How brown bread became, as people type it."""

import pytest

from assistant.wording.sentences import Sentences
from assistant.wording.typed_lines import typed_lines
from assistant.wording.typed_tray import TypedSide, no_shades, typed_sides


@pytest.mark.parametrize(
    "typed",
    [
        "top 333 332 222, underside 110 100 000",
        "Top: 3 3 3 3 3 2 2 2 2; Bottoms 1 1 0 1 0 0 0 0 0",
        "tops 333332222 undersides 110100000",
    ],
)
def test_shades_may_stand_apart_or_together(typed: str, sentences: Sentences) -> None:
    assert typed_lines(typed, "browning", sentences.wording) == ("top 333 332 222", "underside 110 100 000")


@pytest.mark.parametrize("typed", ["top 333 332", "brown on top", "333 332 222", "top 333 332 229 under 000 000 000"])
def test_shades_that_are_not_nine_are_not_guessed(typed: str, sentences: Sentences) -> None:
    assert typed_lines(typed, "browning", sentences.wording) is None


@pytest.mark.parametrize(("typed", "none"), [("99", ("9",)), ("top 337 332 682", ("7", "6", "8")), ("top 012 345", ())])
def test_figures_that_are_no_shade_are_named(typed: str, none: tuple[str, ...]) -> None:
    assert no_shades(typed) == none


TOP, UNDER = "333332222", "110100000"


@pytest.mark.parametrize(
    ("typed", "sides"),
    [
        (f"{TOP} {UNDER}", [(None, TOP), (None, UNDER)]),
        (f"{TOP}{UNDER}", [(None, TOP), (None, UNDER)]),
        (f"{TOP}/{UNDER}", [(None, TOP), (None, UNDER)]),
        ("333 332 222 / 110 100 000", [(None, TOP), (None, UNDER)]),
        ("333/332/222/110/100/000", [(None, TOP), (None, UNDER)]),
        ("333 332 222 - 110 100 000", [(None, TOP), (None, UNDER)]),
        ("333 332 22 / 2 110 100 000", [(None, TOP + UNDER)]),
        ("3333 322221 10100000", [(None, TOP + UNDER)]),
        ("333 332 222", [(None, TOP)]),
        ("top - 333 332 222", [("top", TOP)]),
        ("the tops: 333 33- 222; underneath 110 10- 000", [("top", "33333-222"), ("underside", "11010-000")]),
        ("top 333 332, underside 110 100 000", [("top", "333332"), ("underside", UNDER)]),
        ("top 333 332 222 2", [("top", TOP + "2")]),
        ("110 top 333", [(None, "110"), ("top", "333")]),
        ("top", [("top", "")]),
    ],
)
def test_sides_are_told_apart_by_names_and_marks(
    typed: str, sides: list[tuple[str | None, str]], sentences: Sentences
) -> None:
    assert typed_sides(typed, sentences.wording) == tuple(TypedSide(*side) for side in sides)


@pytest.mark.parametrize("typed", ["brown on top", "top 333 332 222 (roughly)", "", "   ", "top 337 332 222"])
def test_whatever_else_is_typed_is_no_side(typed: str, sentences: Sentences) -> None:
    assert typed_sides(typed, sentences.wording) is None


@pytest.mark.parametrize("typed", [f"{TOP} {UNDER}", f"{TOP}/{UNDER}", f"top {TOP} {UNDER}"])
def test_which_side_is_which_is_not_guessed(typed: str, sentences: Sentences) -> None:
    assert typed_lines(typed, "browning", sentences.wording) is None
