"""Typed words find one choice, or none: never a guess, and never against a denial."""

import pytest

from assistant.wording.matching import Match, Unclear, Vocabulary, match_choice, match_choices

LAMP = Vocabulary(
    {
        "yes": ("yes it does", "yes", "yeah", "yep", "it does"),
        "no": ("no it doesnt", "no", "nope", "it doesnt", "not at all"),
        "top_only": ("brown on top pale underneath", "on top only", "only the top", "pale underneath"),
    },
    frozenset({"no", "not", "doesnt", "never"}),
    frozenset({"and"}),
)


@pytest.mark.parametrize(
    ("typed", "choice"),
    [
        ("2", "no"),
        ("b", "no"),
        ("B.", "no"),
        ("yeah", "yes"),
        ("  YES! ", "yes"),
        ("on top only", "top_only"),
        ("only on top", "top_only"),
        ("it's pale underneath", "top_only"),
        ("pale undernaeth", "top_only"),
        ("it doesnt", "no"),
        ("it doesn’t", "no"),
    ],
)
def test_a_person_is_understood(typed: str, choice: str) -> None:
    assert match_choice(typed, LAMP) == Match((choice,))


@pytest.mark.parametrize("typed", ["", "4", "0", "z", "99", "purple", "maybe", "asdf jkl", "१"])
def test_nonsense_is_unclear(typed: str) -> None:
    assert isinstance(match_choice(typed, LAMP), Unclear)


def test_a_denial_does_not_match_what_it_denies() -> None:
    assert match_choice("it is not pale underneath", LAMP) != Match(("top_only",))
    assert match_choice("it never does", LAMP) != Match(("yes",))
    assert match_choice("no it doesn't come out pale underneath", LAMP) != Match(("top_only",))


def test_a_phrase_inside_a_longer_story_is_no_answer() -> None:
    assert isinstance(match_choice("my sister says hers is pale underneath but mine isn't", LAMP), Unclear)


def test_exact_takes_nothing_near() -> None:
    assert match_choice("pale undernaeth", LAMP, exact=True) == Unclear(())
    assert match_choice("pale underneath", LAMP, exact=True) == Match(("top_only",))


def test_two_choices_equally_near_are_asked_back() -> None:
    vocabulary = Vocabulary({"first": ("the left side",), "second": ("the deft side",)}, frozenset())
    unclear = match_choice("the heft side", vocabulary)
    assert isinstance(unclear, Unclear)
    assert set(unclear.candidates) == {"first", "second"}


@pytest.mark.parametrize("typed", ["1, 3", "3 1", "1 and 3", "a c", "yes, on top only", "yes and only the top"])
def test_several_choices_at_once(typed: str) -> None:
    assert match_choices(typed, LAMP) == Match(("yes", "top_only"))


def test_one_part_not_understood_spoils_the_whole() -> None:
    assert isinstance(match_choices("yes, purple", LAMP), Unclear)
