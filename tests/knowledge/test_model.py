"""What the knowledge's own entries work out: an oven kind's parts, a cause with its physical effect."""

import pytest

from assistant.knowledge.model import Cause, Effect, Figure, Function, OvenKind, Ovens

OVENS = Ovens(
    parts={"below": "x", "above": "x", "fan": "x", "board": "x"},
    functions={
        "conventional": Function(note="x", uses=("below", "above")),
        "fan_heat": Function(note="x", uses=("below", "fan")),
    },
    kinds={
        "small": OvenKind(note="x", functions={"conventional": ("below",)}, has_not=("fan",)),
        "large": OvenKind(note="x"),
    },
)


@pytest.mark.parametrize(
    ("function", "kind", "parts"),
    [
        ("conventional", None, ("below", "above")),
        ("conventional", "large", ("below", "above")),
        ("conventional", "small", ("below",)),
        ("fan_heat", "small", ("below", "fan")),
        ("conventional", "no_kind_at_all", ("below", "above")),
    ],
)
def test_a_function_uses_the_parts_of_its_kind_of_oven(function: str, kind: str | None, parts: tuple[str, ...]) -> None:
    assert OVENS.uses(function, kind) == parts


def table(**percent: float) -> dict[str, Figure]:
    return {state: Figure(value=value, unit="percent", source="a test") for state, value in percent.items()}


NONE_BELOW = Effect(
    note="x", shows={"below": table(warm=5, cold=95), "food": table(brown=10, pale=90)}, masks=("light", "food")
)


def cause(**fields: object) -> Cause:
    rate = Figure(value=3, unit="percent", source="a test")
    known = {"note": "x", "kind": "fault", "base_rate": rate, "mended_by": "appliance_engineer", "can_mislead": "x"}
    return Cause(**{**known, "effect": "none_below", **fields})


def test_a_cause_shows_what_its_effect_shows_but_where_it_says_otherwise() -> None:
    own = {"food": table(brown=40, pale=60), "smell": table(none=80, burnt=20)}
    whole = cause(shows=own, masks=("light", "noise")).with_effect(NONE_BELOW)
    assert whole.shows == {"below": NONE_BELOW.shows["below"], **own}
    assert whole.masks == ("light", "noise", "food")
    assert cause().with_effect(NONE_BELOW).shows == NONE_BELOW.shows


def test_a_cause_shows_as_its_effect_only_what_it_does_not_say_itself() -> None:
    whole = cause(shows={"food": table(brown=40, pale=60)}).with_effect(NONE_BELOW)
    assert whole.shows_as(NONE_BELOW, "below")
    assert not whole.shows_as(NONE_BELOW, "food")
    assert not whole.shows_as(NONE_BELOW, "smell")
    assert not cause().shows_as(NONE_BELOW, "below")
