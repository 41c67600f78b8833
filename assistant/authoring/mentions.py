"""Where an entry of the rules is named by others."""

from collections.abc import Iterator, Mapping
from typing import Any

from assistant.knowledge.figures import Entry, Figure

NAMED_UNDER: Mapping[str, frozenset[str]] = {
    "causes": frozenset({"causes", "look_alikes", "excludes"}),
    "observables": frozenset({"observable", "observables", "shows", "said_when", "masks"}),
    "questions": frozenset({"question", "asks", "withdraws", "tests_first"}),
    "findings": frozenset({"finding", "unless", "ask_when", "not_when", "only_when"}),
    "danger": frozenset({"danger", "stops", "signals"}),
    "acts.yaml": frozenset({"act"}),
    "advice.yaml": frozenset({"advice", "advises"}),
    "steps.yaml": frozenset({"steps", "rules_out"}),
    "parts": frozenset({"part", "needs", "uses", "has", "has_not"}),
    "functions": frozenset({"choices"}),
    "effects": frozenset({"effect", "effects"}),
}
"""Kind -> the keys under which its entries are named."""

Entries = Mapping[str, Mapping[str, Any]]


def mentions(entries: Entries, kind: str, entry_id: str) -> dict[tuple[str, str], list[str]]:
    """(kind, key) -> the entries that name it there, in the order of the rules; each once."""
    found: dict[tuple[str, str], list[str]] = {}
    for other_kind, of_kind in entries.items():
        for other_id, entry in of_kind.items():
            for key in dict.fromkeys(_keys_naming(entry, NAMED_UNDER.get(kind, frozenset()), entry_id)):
                found.setdefault((other_kind, key), []).append(other_id)
    return found


def _keys_naming(thing: object, keys: frozenset[str], name: str) -> Iterator[str]:
    for key, inner in _inside(thing):
        if key in keys and _holds(inner, name):
            yield key
        elif key != "examples":
            yield from _keys_naming(inner, keys, name)


def _inside(thing: object) -> Iterator[tuple[str, object]]:
    if isinstance(thing, Entry) and not isinstance(thing, Figure):
        for field in type(thing).model_fields:
            yield field, getattr(thing, field)
    elif isinstance(thing, dict):
        yield from ((str(key), inner) for key, inner in thing.items())
    elif isinstance(thing, list | tuple):
        yield from (("", inner) for inner in thing)


def _holds(thing: object, name: str) -> bool:
    """As the value itself, as one of a list, or as a key."""
    return thing == name or (isinstance(thing, dict | list | tuple) and name in thing)
