"""A typed line -> a helper word, or a number with its unit."""

import re
from dataclasses import dataclass
from typing import Literal

from assistant.interview.answers import CONVERSIONS
from assistant.wording.locale import Wording
from assistant.wording.words import normalised, phrases

HelperWord = Literal["why", "how", "not_sure", "skip", "back", "change", "stop"]
HELPER_WORDS: tuple[HelperWord, ...] = ("why", "how", "not_sure", "skip", "back", "change", "stop")

_NUMBER = re.compile(r"(?P<sign>[-−]?)\s*(?P<number>\d{1,9}(?:[.,]\d{1,2})?)\s*(?P<unit>.*)", re.DOTALL)


def helper_word(typed: str, wording: Wording) -> HelperWord | None:
    """The helper word that was typed, as a whole line."""
    said = normalised(typed)
    for word in HELPER_WORDS:
        if said in phrases(wording.say(f"words-{word}")):
            return word
    return None


def is_word(typed: str, listed: str, wording: Wording) -> bool:
    """Whether the whole line is one of the words listed as `words-LISTED`."""
    return normalised(typed) in phrases(wording.say(f"words-{listed}"))


def first_words(wording: Wording) -> tuple[str, ...]:
    """The helper words as they are shown and completed: the first of each list."""
    return tuple(wording.say(f"words-{word}").split("|")[0].strip() for word in HELPER_WORDS)


@dataclass(frozen=True)
class TypedNumber:
    value: float
    unit: str | None


def typed_number(typed: str, own_unit: str, wording: Wording) -> TypedNumber | None:
    """`about 20 min` -> 20 minutes; None if it isn't a number with a unit known for the question."""
    text = typed.strip().casefold()
    for word in phrases(wording.say("words-about")):
        text = text.removeprefix(word).strip()
    found = _NUMBER.fullmatch(text)
    if found is None:
        return None
    value = float(found["number"].replace(",", ".")) * (-1 if found["sign"] else 1)
    said = found["unit"].strip().rstrip(".")
    if not said:
        return TypedNumber(value, None)
    for unit in CONVERSIONS.get(own_unit, {own_unit: (1, 0)}):
        listed = [name.strip().casefold() for name in wording.say(f"unit-{unit}", "also").split("|")]
        if said in listed:
            return TypedNumber(value, unit)
    return None
