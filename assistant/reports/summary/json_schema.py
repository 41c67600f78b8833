"""The JSON Schema (draft 2020-12) of a summary as JSON."""

from typing import Any, get_args

from assistant.interview.choice import ACTIONS
from assistant.reports.summary.as_json import KIND, VERSION
from assistant.reports.summary.value import Reader, Style

DIALECT = "https://json-schema.org/draft/2020-12/schema"

Schema = dict[str, Any]

_TEXT: Schema = {"type": "string"}
_TRUTH: Schema = {"type": "boolean"}
_ID: Schema = {"type": "string", "minLength": 1}
_MOMENT: Schema = {
    "type": "string",
    "format": "date-time",
    "pattern": r"^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?\+00:00$",
    "description": "RFC 3339, in UTC",
}
_PROBABILITY: Schema = {"type": "number", "minimum": 0, "maximum": 1}


def summary_schema() -> Schema:
    """A program may rely on every key being there, and on no other."""
    return {
        "$schema": DIALECT,
        "title": "A summary of a session, before the visit",
        **_object(
            {
                "version": {"const": VERSION},
                "kind": {"const": KIND},
                "reader": {"enum": list(get_args(Reader))},
                "lang": {**_ID, "description": "of all words: a BCP 47 tag"},
                "title": _TEXT,
                "about": {**_TEXT, "description": "the verdict in a sentence"},
                "session": {**_ID, "description": "the first characters of the session's id"},
                "written_at": {**_MOMENT, "description": "of the session's latest event; RFC 3339, in UTC"},
                "pages": _list(_object({"sections": _list({"$ref": "#/$defs/section"})})),
                "facts": {"$ref": "#/$defs/facts"},
            }
        ),
        "$defs": {"section": _section(), "block": {"oneOf": _blocks()}, "facts": _facts()},
    }


def _object(properties: Schema) -> Schema:
    return {
        "type": "object",
        "properties": properties,
        "required": list(properties),
        "additionalProperties": False,
    }


def _list(item: Schema) -> Schema:
    return {"type": "array", "items": item}


def _section() -> Schema:
    name = {**_ID, "description": "the same in every language"}
    return _object({"name": name, "heading": _TEXT, "blocks": _list({"$ref": "#/$defs/block"})})


def _blocks() -> list[Schema]:
    pair = {"type": "array", "prefixItems": [_TEXT, _TEXT], "items": False, "minItems": 2}
    row = {**_list(_TEXT), "description": "as many cells as there are columns"}
    kinds: dict[str, Schema] = {
        "paragraph": {"words": _TEXT, "style": {"enum": list(get_args(Style))}},
        "items": {"items": _list(_TEXT), "numbered": _TRUTH},
        "pairs": {"rows": _list(pair)},
        "table": {"columns": _list(_TEXT), "rows": _list(row)},
        "drawing": {"svg": _TEXT, "described": _TEXT},
    }
    return [_object({"kind": {"const": kind}, **properties}) for kind, properties in kinds.items()]


def _facts() -> Schema:
    sign = _object(
        {
            "id": _ID,
            "state": {
                "enum": ["stands", "open", "taken_back"],
                "description": "open: it was told, and its own question has no answer yet",
            },
            "since": _MOMENT,
        }
    )
    cause = _object({"id": _ID, "probability": _PROBABILITY})
    chance = {
        "oneOf": [{"type": "null"}, _PROBABILITY],
        "description": "simulated, that what is in the kit mends the oven at the first visit",
    }
    return _object(
        {
            "rules_fingerprint": _TEXT,
            "action": {"enum": list(ACTIONS)},
            "off_confirmed": _TRUTH,
            "signs": _list(sign),
            "causes": {**_list(cause), "description": "most probable first; none for the household"},
            "tests": {**_list(_ID), "description": "ids of questions, in the order in which they are made"},
            "kit": {**_list(_ID), "description": "ids of parts"},
            "kit_chance": chance,
        }
    )
