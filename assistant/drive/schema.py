"""The protocol's JSON Schema: what may go in, what comes out, and what a value of each kind of question is."""

from typing import Any, get_args

from assistant.drive.protocol import CAVITIES, FIELDS, MOST_NAME_CHARACTERS
from assistant.interview.answers import MOST_CHARACTERS
from assistant.interview.choice import ACTIONS, URGENCIES
from assistant.knowledge.model import Care, Kind
from assistant.knowledge.readings import MOST_LINES

DIALECT = "https://json-schema.org/draft/2020-12/schema"

Schema = dict[str, Any]

NAME: Schema = {"type": "string", "minLength": 1, "maxLength": MOST_NAME_CHARACTERS}
PROBABILITY: Schema = {"type": "number", "minimum": 0, "maximum": 1}
TEXT_OR_NULL: Schema = {"type": ["string", "null"]}


def _lines(pattern: str, description: str) -> Schema:
    """Lines as they are written down at the oven."""
    items = {"type": "string", "pattern": f"^{pattern}$"}
    return {"type": "array", "items": items, "minItems": 1, "maxItems": MOST_LINES, "description": description}


VALUES: dict[str, Schema] = {
    "choice": {"type": "string", "description": "the id of one choice"},
    "choices": {"type": "array", "items": {"type": "string"}, "minItems": 1, "uniqueItems": True},
    "number": {"type": "number", "description": "in the question's unit, or in the unit given"},
    "text": {"type": "string", "minLength": 1, "maxLength": MOST_CHARACTERS},
    "lamp_log": _lines(
        r"\d{1,3}:[0-5]\d (lit|out|end)", "the lamp's changes since the oven was switched on, then the end"
    ),
    "temperature_log": _lines(
        r"\d{1,3}:[0-5]\d (-?\d{1,4}(\.\d{1,2})? [CF]|opened)", "readings, and when the door opened"
    ),
    "browning": _lines(r"(top|underside)( [0-5-]{3}){3}", "shades of nine slices, row by row from the back left"),
}
assert set(VALUES) == set(get_args(Kind))


TEXTS: Schema = {"type": "array", "items": {"type": "string"}}
DETAILS: dict[str, Schema] = {
    "headline": {"type": "string"},
    "explanation": {"type": "string"},
    "step_texts": TEXTS,
    "who": {"type": "string"},
    "urgency": {"enum": list(URGENCIES)},
    "first": {"enum": ["maker", "seller", "landlord"]},
    "act": {"type": "string"},
    "advice": {"type": "string"},
    "steps": TEXTS,
    "off_confirmed": {"type": "boolean"},
    "then": {"type": "string"},
    "withdrawn_signs": TEXTS,
    "tips": TEXTS,
    "little_known": {"type": "boolean"},
    "may_not_be_worth_mending": {"type": "boolean"},
    "kit": TEXTS,
    "tests": TEXTS,
    "test_plan": TEXTS,
}


def protocol_schema() -> Schema:
    return {
        "$schema": DIALECT,
        "title": "One line of the protocol",
        "oneOf": [{"$ref": "#/$defs/in"}, {"$ref": "#/$defs/out"}],
        "$defs": {
            "in": {"oneOf": [_in(type_) for type_ in FIELDS]},
            "out": {"oneOf": [_question(), _verdict(), _problem()]},
            "values": VALUES,
        },
    }


def _object(properties: Schema, required: list[str]) -> Schema:
    return {"type": "object", "properties": properties, "required": required, "additionalProperties": False}


def _all_of(properties: Schema) -> Schema:
    return _object(properties, list(properties))


def _in(type_: str) -> Schema:
    required, optional = FIELDS[type_]
    forms: Schema = {
        "value": {"anyOf": [{"$ref": f"#/$defs/values/{kind}"} for kind in VALUES]},
        "cavity": {"enum": list(CAVITIES)},
    }
    properties: Schema = {
        "session": NAME,
        "type": {"const": type_},
        "message_id": {**NAME, "type": ["string", "null"]},
    }
    properties |= {field: forms.get(field, NAME) for field in (*required, *optional)}
    return _object(properties, ["session", "type", *required])


def _question() -> Schema:
    return _all_of(
        {
            "type": {"const": "question"},
            "session": {"type": "string"},
            "id": {"type": "string"},
            "kind": {"enum": list(VALUES)},
            "text": {"type": "string"},
            "choices": {
                "type": "array",
                "items": _all_of({"id": {"type": "string"}, "text": {"type": "string"}}),
            },
            "unit": TEXT_OR_NULL,
            "care": {"enum": [care.value for care in Care]},
            "open_danger": {"type": "boolean"},
        }
    )


def _verdict() -> Schema:
    hypotheses = {"causes": {"type": "array", "items": {"type": "string"}}, "probability": PROBABILITY}
    reason = {
        "kind": {"enum": ["answer", "finding", "sign"]},
        "id": {"type": "string"},
        "value": {"type": ["string", "number", "array", "null"]},
        "decibans": {"type": ["number", "null"]},
        "without": {"oneOf": [{"type": "null"}, PROBABILITY]},
        "text": {"type": "string"},
    }
    change = {
        "id": {"type": "string"},
        "value": TEXT_OR_NULL,
        "action": {"enum": list(ACTIONS)},
        "text": {"type": "string"},
    }
    stop = _all_of(
        {"source": {"enum": ["sign", "finding", "belief"]}, "ids": {"type": "array", "items": {"type": "string"}}}
    )
    return _all_of(
        {
            "type": {"const": "verdict"},
            "session": {"type": "string"},
            "action": {"enum": list(ACTIONS)},
            "details": _object(DETAILS, ["headline", "explanation", "step_texts"]),
            "stop": {"oneOf": [{"type": "null"}, stop]},
            "causes": _list(_all_of({"id": {"type": "string"}, "probability": PROBABILITY})),
            "hypotheses": _list(_all_of(hypotheses)),
            "because": _list(_all_of(reason)),
            "would_change": _list(_all_of(change)),
        }
    )


def _list(item: Schema) -> Schema:
    return {"type": "array", "items": item}


def _problem() -> Schema:
    return _all_of(
        {
            "type": {"const": "problem"},
            "session": TEXT_OR_NULL,
            "code": {"type": "string"},
            "text": {"type": "string"},
            "open": TEXT_OR_NULL,
        }
    )
