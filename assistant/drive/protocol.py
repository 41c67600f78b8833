"""The JSON Lines protocol: a line in -> a message, or a refusal that names the field."""

import json
from dataclasses import dataclass
from typing import Any

from assistant.errors import Refused
from assistant.knowledge.problems import nearest_name

MOST_BYTES = 65_536
MOST_NAME_CHARACTERS = 100

START_DEFAULTS = {"role": "householder", "region": "great_britain", "lang": "en-GB", "cavity": "single"}
CAVITIES = ("single", "upper", "lower")

# type -> required fields, optional fields; every message also has session and type, and may have message_id.
FIELDS: dict[str, tuple[tuple[str, ...], tuple[str, ...]]] = {
    "start": ((), tuple(START_DEFAULTS)),
    "answer": (("id", "value"), ("unit",)),
    "not_sure": (("id",), ()),
    "skip": (("id",), ()),
    "withdraw": (("id",), ()),
    "finish": ((), ()),
}


@dataclass(frozen=True)
class Message:
    """One line understood; `fields` are those of its type."""

    session: str
    type: str
    message_id: str | None
    fields: dict[str, Any]


def read_message(line: bytes) -> Message:
    """Raises Refused for anything that isn't a message of the protocol."""
    data = _object(line)
    session = _name(data, "session")
    type_ = data.get("type")
    if "type" not in data:
        raise Refused("field_missing", {"field": "type"})
    if not isinstance(type_, str) or type_ not in FIELDS:
        near = nearest_name(str(type_)[:60], FIELDS) or ""
        raise Refused("unknown_type", {"found": str(type_)[:60], "valid": ", ".join(FIELDS), "nearest": near})
    required, optional = FIELDS[type_]
    for field in required:
        if field not in data:
            raise Refused("field_missing", {"field": field})
    for field in data:
        if field not in ("session", "type", "message_id", *required, *optional):
            raise Refused("unknown_field", {"field": field[:60]})
    message_id = _name(data, "message_id") if data.get("message_id") is not None else None
    fields = {f: data[f] if f == "value" else _name(data, f) for f in (*required, *optional) if f in data}
    if fields.get("cavity", "single") not in CAVITIES:
        raise Refused("field_wrong", {"field": "cavity", "wanted": ", ".join(CAVITIES)})
    return Message(session, type_, message_id, fields)


def _object(line: bytes) -> dict[str, Any]:
    if len(line) > MOST_BYTES:
        raise Refused("line_too_long", {"most": MOST_BYTES})
    try:
        text = line.decode("utf-8").strip()
    except UnicodeDecodeError:
        raise Refused("not_utf8") from None
    if not text:
        raise Refused("empty_line")
    try:
        data = json.loads(text)
    except json.JSONDecodeError as error:
        raise Refused("not_json", {"reason": f"{error.msg}, column {error.colno}"}) from None
    except (RecursionError, ValueError) as error:
        raise Refused("not_json", {"reason": "nested too deeply or a number too long"}) from error
    if not isinstance(data, dict):
        raise Refused("not_an_object")
    return data


def _name(data: dict[str, Any], field: str) -> str:
    """A short, printable text field."""
    if field not in data:
        raise Refused("field_missing", {"field": field})
    value = data[field]
    if not isinstance(value, str) or not 0 < len(value) <= MOST_NAME_CHARACTERS or not value.isprintable():
        wanted = f"text, 1-{MOST_NAME_CHARACTERS}"
        raise Refused("field_wrong", {"field": field, "wanted": wanted})
    return value
