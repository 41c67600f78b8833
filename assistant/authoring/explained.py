"""What every explanation of an entry is made of: a place in the rules, words, numbers, and parts under headings."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from assistant.authoring.mentions import Entries, mentions
from assistant.authoring.places import Path
from assistant.interview.script import Script
from assistant.knowledge.figures import Distribution, Entry, Figure
from assistant.knowledge.likelihoods import Words, shares
from assistant.wording.locale import Wording

Parts = Iterator[tuple[str, Iterable[str]]]
"""Heading -> its lines."""


@dataclass(frozen=True)
class Book:
    """The rules as they are explained from. `entries`: kind -> id -> entry, parts and functions as kinds too."""

    script: Script
    entries: Entries
    wording: Wording
    region_lines: Mapping[str, str] = field(default_factory=dict)

    @property
    def words(self) -> Words:
        return self.script.knowledge.settings.words

    def say(self, name: str, /, **details: str) -> str:
        return self.wording.say(f"explain-{name}", **details)

    def told(self, message: str, attribute: str | None = None) -> str:
        """What people read, empty where the language has no words for it."""
        if not self.wording.has(message, attribute):
            return ""
        return self.wording.say(message, attribute, **self.region_lines)

    def who(self, name: str) -> str:
        return self.told(f"who-{name}") or name


def listed(names: Iterable[str]) -> str:
    return ", ".join(names)


def percent(share: float) -> str:
    """In a hundred, with two digits where they say more than a whole number."""
    value = 100 * share
    if value >= 99:
        return f"{value:.1f}".removesuffix(".0")
    return f"{value:.0f}" if value >= 10 else f"{value:.2g}"


def says(book: Book, note: str | None, message: str, *attributes: str) -> Iterator[str]:
    """The note of the rules, then what people read of it."""
    if note:
        yield book.say("note", note=note)
    for attribute in (None, *attributes) if message else ():
        words = book.told(message, attribute)
        if words:
            yield book.say(f"told_{attribute}" if attribute else "told", words=words)


def distribution(
    book: Book, name: str, of: Distribution, states: Sequence[str], normal: Distribution | None = None
) -> str:
    """The shares of the states as they are taken, beside what is normal."""
    taken = shares(of, states, book.words)
    usual = shares(normal, states, book.words) if normal is not None else None
    shown = [
        book.say("state", state=state, percent=percent(taken[number]))
        if usual is None
        else book.say("state_against", state=state, percent=percent(taken[number]), normal=percent(usual[number]))
        for number, state in enumerate(states)
    ]
    return book.say("distribution", name=name, states=listed(shown))


def numbers(book: Book, entry: object) -> Iterator[str]:
    """Every figure with its place, unit, source and range, and what the words for likelihood mean here."""
    words: dict[str, None] = {}
    count = 0
    for path, thing in _leaves(entry):
        if isinstance(thing, Figure):
            count += 1
            least, most = (f"{end:g}" for end in thing.range or (0, 0))
            yield book.say(
                "number",
                path=".".join(path),
                value=f"{thing.value:g}",
                unit=_unit(thing),
                range="given" if thing.range else "none",
                least=least,
                most=most,
                source=thing.source,
            )
        elif thing in book.words:
            words[str(thing)] = None
    for word, figure in book.words.items():
        if word in words:
            yield book.say("word", word=word, percent=f"{figure.value:g}")
    if not count and not words:
        yield book.say("number_none")


def _unit(figure: Figure) -> str:
    return "%" if figure.unit == "percent" else figure.unit


def texts(book: Book, entry: object) -> Iterator[str]:
    """Every plain text with its place."""
    for path, thing in _leaves(entry):
        if isinstance(thing, str) and thing not in book.words:
            yield book.say("text", path=".".join(path), text=thing)


def _leaves(thing: object, path: Path = ()) -> Iterator[tuple[Path, Any]]:
    """Figures and plain texts below an entry."""
    if isinstance(thing, Figure | str):
        yield path, thing
    elif isinstance(thing, Entry):
        for name in type(thing).model_fields:
            if name not in ("note", "can_mislead", "examples"):
                yield from _leaves(getattr(thing, name), (*path, name))
    elif isinstance(thing, dict):
        for name, inner in thing.items():
            yield from _leaves(inner, (*path, str(name)))


def used(book: Book, kind: str, entry_id: str) -> Iterator[str]:
    """Who names it, and under which key."""
    found = mentions(book.entries, kind, entry_id)
    for (other, key), names in found.items():
        yield book.say("used", kind=other, key=key, names=listed(name or other for name in names))
    if not found:
        yield book.say("used_none")
