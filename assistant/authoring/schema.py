"""The JSON Schemas of the rule files, made from the model, so that an editor completes and checks them."""

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any, TextIO

from pydantic import TypeAdapter

from assistant.knowledge.rules_folder import ENTRY_FOLDERS, SINGLE_FILES
from assistant.wording.locale import Wording

DIALECT = "https://json-schema.org/draft/2020-12/schema"


def schemas() -> Iterator[tuple[str, dict[str, Any]]]:
    """File name -> schema, one for each kind of rule file."""
    for kind, form in (ENTRY_FOLDERS | SINGLE_FILES).items():
        name = kind.removesuffix(".yaml")
        schema = _closed(TypeAdapter(form).json_schema(by_alias=True))
        yield f"{name}.schema.json", {"$schema": DIALECT, "title": f"rules/{kind}", **schema}


def _closed(node: Any) -> Any:
    """Keys that don't have the form of an id are refused, as `rules check` refuses them."""
    if isinstance(node, list):
        return [_closed(item) for item in node]
    if not isinstance(node, dict):
        return node
    closed = {key: _closed(value) for key, value in node.items()}
    return {**closed, "additionalProperties": False} if "patternProperties" in closed else closed


def schema_text(schema: dict[str, Any]) -> str:
    return json.dumps(schema, indent=1, ensure_ascii=False) + "\n"


def write_schemas(folder: Path, wording: Wording, out: TextIO) -> int:
    """Write them into the folder's `schema`. Returns the exit status."""
    target = folder / "schema"
    try:
        target.mkdir(exist_ok=True)
        for name, schema in schemas():
            (target / name).write_text(schema_text(schema), "utf-8")
    except OSError as error:
        out.write(wording.say("rules-schema_not_written", reason=error.strerror or str(error)) + "\n")
        return 1
    out.write(wording.say("rules-schema_written", where=str(target)) + "\n")
    return 0
