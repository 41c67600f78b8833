"""YAML text -> plain data with the position of every part.

Scalars stay text (`on` stays "on", `010` stays "010"): the model decides what they are. Refused, each with its
place: invisible characters, keys written twice, aliases and tags, nesting beyond MAX_DEPTH, more than one document.
"""

import re
import unicodedata
from codecs import BOM_UTF8
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

import yaml

MAX_DEPTH = 24
MOST_SHOWN = 60

PathInFile = tuple[str | int, ...]

# What YAML itself refuses, and what can't be seen on screen: control and format characters (a byte order mark
# inside the text, soft hyphens), every space but the ordinary one, and line ends that editors don't count.
_NOT_ALLOWED = re.compile(
    "[^\t\n\r -~\u00a1-\u00ac\u00ae-\u1fff\u2010-\u2027\u2030-\u205e\u2070-\u2fff\u3001-\ud7ff\ue000-\ufefe"
    "\uff00-\ufffd\U00010000-\U0010ffff]|[\u1680\u180e]"
)
_LINE_END = re.compile("\r\n|[\n\r]")


@dataclass(frozen=True, order=True)
class Place:
    """A place in a file, counted from 1; columns count characters."""

    line: int
    column: int


@dataclass(frozen=True)
class YamlMistake:
    """What isn't right in the text itself; `code` is worded by the wording layer."""

    place: Place
    code: str
    details: Mapping[str, str | int] = field(default_factory=dict)


@dataclass(frozen=True)
class YamlText:
    """`data` is nested dicts, lists and strings; `places` leads from a path to where its key or item starts."""

    data: Any
    places: Mapping[PathInFile, Place]
    mistakes: tuple[YamlMistake, ...]

    def place_of(self, path: PathInFile) -> Place:
        """Where the key or list item starts, or its nearest parent that exists."""
        while path not in self.places and path:
            path = path[:-1]
        return self.places.get(path, Place(1, 1))


def read_yaml(text: bytes) -> YamlText:
    """Never raises for what the text says: mistakes come back in the value."""
    text = text.removeprefix(BOM_UTF8)
    try:
        decoded = text.decode("utf-8")
    except UnicodeDecodeError as error:
        before = text[: error.start].decode("utf-8")
        return _unread(YamlMistake(_place_after(before), "not_utf8"))
    invisible = _NOT_ALLOWED.search(decoded)
    if invisible is not None:
        return _unread(_character_not_allowed(decoded, invisible.start()))
    reader = _Reader()
    loader = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
    try:
        data = reader.read(iter(yaml.parse(decoded, Loader=loader)))
    except yaml.MarkedYAMLError as error:
        reader.mistakes.append(_not_yaml(decoded, error))
        data = {}
    except _Stop:
        data = {}
    return YamlText(data, reader.places, tuple(reader.mistakes))


def shortened(text: str) -> str:
    """Text of a file as it may be shown in a message."""
    return text if len(text) <= MOST_SHOWN else text[: MOST_SHOWN - 3] + "..."


def _unread(mistake: YamlMistake) -> YamlText:
    return YamlText({}, {}, (mistake,))


def _place_after(before: str) -> Place:
    ends = list(_LINE_END.finditer(before))
    return Place(len(ends) + 1, len(before) - (ends[-1].end() if ends else 0) + 1)


def _character_not_allowed(decoded: str, position: int) -> YamlMistake:
    character = decoded[position]
    name = unicodedata.name(character, "control character").lower()
    details = {"found": f"U+{ord(character):04X}", "name": name}
    return YamlMistake(_place_after(decoded[:position]), "character_not_allowed", details)


# Parts of the parser's own reasons -> our code for them. The first that fits counts.
_CODES_OF_REASONS = {
    "maximum nesting": "too_deep",
    "mapping values are not allowed": "colon_not_expected",
    "cannot start any token": "marks_needed",
    "could not find expected ':'": "no_colon",
    "expected ',' or": "comma_missing",
    "did not find expected key": "does_not_fit",
    "did not find expected '-'": "does_not_fit",
    "expected <document start>": "does_not_fit",
}


def _not_yaml(decoded: str, error: yaml.MarkedYAMLError) -> YamlMistake:
    reason = str(error.problem or error.context)
    place = _place_of_mark(error.problem_mark or error.context_mark)
    begun = _place_of_mark(error.context_mark or error.problem_mark)
    found = _line_from(decoded, place)
    if found.startswith("\t"):
        return YamlMistake(place, "tab")
    code = next((code for part, code in _CODES_OF_REASONS.items() if part in reason), "not_yaml")
    if code == "no_colon":
        return YamlMistake(begun, code)
    if code in ("comma_missing", "not_yaml") and _is_at_end(decoded, place):
        return YamlMistake(begun, "never_closed")
    details: Mapping[str, dict[str, str | int]] = {
        "too_deep": {"most": MAX_DEPTH},
        "marks_needed": {"found": found[:1]},
        "not_yaml": {"reason": reason},
    }
    return YamlMistake(place, code, details.get(code, {}))


def _place_of_mark(mark: Any) -> Place:
    return Place(mark.line + 1, mark.column + 1) if mark else Place(1, 1)


def _line_from(decoded: str, place: Place) -> str:
    lines = _LINE_END.split(decoded)
    return lines[place.line - 1][place.column - 1 :] if place.line <= len(lines) else ""


def _is_at_end(decoded: str, place: Place) -> bool:
    return not _line_from(decoded, place).strip() and not any(map(str.strip, _LINE_END.split(decoded)[place.line :]))


class _Stop(Exception):
    """Reading can't go on; the reason is already among the mistakes."""


def _place(event: yaml.Event) -> Place:
    return _place_of_mark(event.start_mark)


class _Reader:
    """Builds data from the parser's events; recursion is bounded by MAX_DEPTH."""

    def __init__(self) -> None:
        self.places: dict[PathInFile, Place] = {}
        self.mistakes: list[YamlMistake] = []

    def read(self, events: Iterator[yaml.Event]) -> Any:
        data: Any = ""
        documents = 0
        for event in events:
            if isinstance(event, yaml.DocumentStartEvent):
                documents += 1
                if documents > 1:
                    self._stop(event, "second_document")
            elif isinstance(event, yaml.NodeEvent):
                self.places[()] = _place(event)
                data = self._node(event, events, ())
        if data == "":
            self.mistakes.append(YamlMistake(Place(1, 1), "empty_file"))
        return data

    def _stop(self, event: yaml.Event, code: str, **details: str | int) -> None:
        self.mistakes.append(YamlMistake(_place(event), code, details))
        raise _Stop

    def _node(self, event: yaml.Event, events: Iterator[yaml.Event], path: PathInFile) -> Any:
        if len(path) > MAX_DEPTH:
            self._stop(event, "too_deep", most=MAX_DEPTH)
        if isinstance(event, yaml.AliasEvent):
            self._stop(event, "alias")
        tag = getattr(event, "tag", None)
        if tag not in (None, "!"):
            self._stop(event, "tag", found=shortened(str(tag)))
        if isinstance(event, yaml.MappingStartEvent):
            return self._mapping(events, path)
        if isinstance(event, yaml.SequenceStartEvent):
            return self._sequence(events, path)
        return event.value if isinstance(event, yaml.ScalarEvent) else ""

    def _mapping(self, events: Iterator[yaml.Event], path: PathInFile) -> dict[str, Any]:
        data: dict[str, Any] = {}
        for key_event in events:
            if isinstance(key_event, yaml.MappingEndEvent):
                break
            if isinstance(key_event, yaml.CollectionStartEvent):
                self._stop(key_event, "key_not_text")
            key: str = self._node(key_event, events, path)
            if key in data:
                self._repeated_key(key_event, key, events, path)
            else:
                self.places[(*path, key)] = _place(key_event)
                data[key] = self._node(next(events), events, (*path, key))
        return data

    def _repeated_key(self, key_event: yaml.Event, key: str, events: Iterator[yaml.Event], path: PathInFile) -> None:
        """Say it and read past its value, whose places are those of no data."""
        details: dict[str, str | int] = {"found": shortened(key), "first": str(self.places[(*path, key)].line)}
        self.mistakes.append(YamlMistake(_place(key_event), "key_twice", details))
        kept, self.places = self.places, {}
        self._node(next(events), events, (*path, key))
        self.places = kept

    def _sequence(self, events: Iterator[yaml.Event], path: PathInFile) -> list[Any]:
        data: list[Any] = []
        for event in events:
            if isinstance(event, yaml.SequenceEndEvent):
                break
            item_path = (*path, len(data))
            self.places[item_path] = _place(event)
            data.append(self._node(event, events, item_path))
        return data
