"""YAML text -> plain data with the position of every part.

Scalars stay text (`on` stays "on", `010` stays "010"): the model decides what they are. Refused, each with its
place: keys written twice, aliases and tags, nesting beyond MAX_DEPTH, more than one document.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

import yaml

MAX_DEPTH = 24

PathInFile = tuple[str | int, ...]


@dataclass(frozen=True, order=True)
class Place:
    """A place in a file, counted from 1."""

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
        """The place of the path, or of its nearest parent that exists."""
        while path not in self.places and path:
            path = path[:-1]
        return self.places.get(path, Place(1, 1))


def read_yaml(text: bytes) -> YamlText:
    """Never raises for what the text says: mistakes come back in the value."""
    try:
        decoded = text.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = text.count(b"\n", 0, error.start) + 1
        column = error.start - (text.rfind(b"\n", 0, error.start) + 1) + 1
        return YamlText({}, {}, (YamlMistake(Place(line, column), "not_utf8"),))
    reader = _Reader()
    loader = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
    try:
        data = reader.read(iter(yaml.parse(decoded, Loader=loader)))
    except yaml.reader.ReaderError as error:
        reader.mistakes.append(_unreadable_character(decoded, error))
        data = {}
    except yaml.MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        place = Place(mark.line + 1, mark.column + 1) if mark else Place(1, 1)
        reader.mistakes.append(YamlMistake(place, "not_yaml", {"reason": str(error.problem or error.context)}))
        data = {}
    except _Stop:
        data = {}
    return YamlText(data, reader.places, tuple(reader.mistakes))


def _unreadable_character(decoded: str, error: yaml.reader.ReaderError) -> YamlMistake:
    before = decoded[: error.position]
    place = Place(before.count("\n") + 1, len(before) - (before.rfind("\n") + 1) + 1)
    character = ord(error.character) if isinstance(error.character, str) else int(error.character)
    return YamlMistake(place, "character_not_allowed", {"found": f"U+{character:04X}"})


class _Stop(Exception):
    """Reading can't go on; the reason is already among the mistakes."""


def _place(event: yaml.Event) -> Place:
    mark = event.start_mark
    return Place(mark.line + 1, mark.column + 1) if mark else Place(1, 1)


class _Reader:
    """Builds data from the parser's events; recursion is bounded by MAX_DEPTH."""

    def __init__(self) -> None:
        self.places: dict[PathInFile, Place] = {}
        self.mistakes: list[YamlMistake] = []

    def read(self, events: Iterator[yaml.Event]) -> Any:
        data: Any = {}
        documents = 0
        for event in events:
            if isinstance(event, yaml.DocumentStartEvent):
                documents += 1
                if documents > 1:
                    self._stop(event, "second_document")
            elif isinstance(event, yaml.NodeEvent):
                self.places[()] = _place(event)
                data = self._node(event, events, ())
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
            self._stop(event, "tag", found=str(tag))
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
            key = self._node(key_event, events, path)
            if not isinstance(key, str):
                self._stop(key_event, "key_not_text")
            value = self._value_of_key(key_event, key, events, path)
            if key in data:
                first = self.places[(*path, key)].line
                self.mistakes.append(YamlMistake(_place(key_event), "key_twice", {"found": key, "first": first}))
            else:
                self.places[(*path, key)] = _place(key_event)
                data[key] = value
        return data

    def _value_of_key(self, key_event: yaml.Event, key: str, events: Iterator[yaml.Event], path: PathInFile) -> Any:
        known = dict(self.places) if (*path, key) in self.places else None
        value = self._node(next(events), events, (*path, key))
        if known is not None:
            self.places = known
        return value

    def _sequence(self, events: Iterator[yaml.Event], path: PathInFile) -> list[Any]:
        data: list[Any] = []
        for event in events:
            if isinstance(event, yaml.SequenceEndEvent):
                break
            item_path = (*path, len(data))
            self.places[item_path] = _place(event)
            data.append(self._node(event, events, item_path))
        return data
