"""The listener hears what a tired person types inside another sentence, and not what they deny."""

import pytest

from assistant.wording.listener import Heard, Listener
from assistant.wording.locale import Wording

MESSAGES = """
listener-negations = no | not | never | without | isn't | doesn't | didn't | haven't | won't | nothing
listener-between = any | a | the | sign | of | or | seen | had
listener-lifting_after = like this
listener-double = stop | only | just
listener-never_stretched = smoked
sign-smoke = Smoke
    .phrases = smoke | smoking
sign-shock = A shock
    .phrases = got a shock | tingle | tingling
    .ending = shock | a shock
sign-burning_smell = A smell
    .phrases = burning smell | smells of burning
    .unclear = funny smell | smells odd
"""


@pytest.fixture
def listener() -> Listener:
    return Listener(Wording("en-GB", [MESSAGES]), ("shock", "smoke", "burning_smell"))


@pytest.mark.parametrize(
    ("line", "signs"),
    [
        ("there is smoke coming out", ["smoke"]),
        ("SMOKE!!", ["smoke"]),
        ("it was smokng a bit", ["smoke"]),
        ("it was smokin' and the bread was raw", ["smoke"]),
        ("I got a shock off the door, and there’s smoke", ["shock", "smoke"]),
        ("no smoke", []),
        ("there isn’t any smoke", []),
        ("I haven't seen smoke", []),
        ("no flames, smoke though", ["smoke"]),
        ("no flames but smoke", ["smoke"]),
        ("it won't stop smoking", ["smoke"]),
        ("not only smoke", ["smoke"]),
        ("a burnig smell", ["burning_smell"]),
        ("it never smells of burning", []),
        ("I felt a tinglin when I touched it", ["shock"]),
        ("smoked salmon for tea", []),
        ("they spoke of it", []),
        ("no idea why there is smoke", ["smoke"]),
        ("I am not sure if I got a shock", ["shock"]),
        ("not heating up and smoke", ["smoke"]),
        ("not the first time I got a shock", ["shock"]),
        ("no sign of any smoke", []),
        ("no smoke or burning smell", []),
        ("never smoke like this", ["smoke"]),
        ("there is a lot of smoek", ["smoke"]),
        ("they spoke", []),
        ("it went bang, a shock", ["shock"]),
        ("it was a shock to see the bill", []),
        ("", []),
    ],
)
def test_a_line_is_heard_as_a_person_would_mean_it(listener: Listener, line: str, signs: list[str]) -> None:
    assert [heard.sign_id for heard in listener.hear(line)] == signs


def test_an_unclear_phrase_is_heard_as_unclear(listener: Listener) -> None:
    assert listener.hear("there is a funny smell") == (Heard("burning_smell", clear=False),)


def test_a_clear_phrase_beside_an_unclear_one_counts(listener: Listener) -> None:
    assert listener.hear("funny smell, burning smell really") == (Heard("burning_smell", clear=True),)


def test_a_negation_far_before_does_not_reach(listener: Listener) -> None:
    assert listener.hear("I do not bake bread any more since there was smoke")
