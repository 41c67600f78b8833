"""Plain data -> typed entries, or what isn't right with it in words of our own."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache
from typing import Any

from pydantic import TypeAdapter, ValidationError
from pydantic_core import ErrorDetails

from assistant.knowledge import model
from assistant.knowledge.foreseen import FORESEEN_FILE, Foreseen
from assistant.knowledge.learned import LEARNED_FILE
from assistant.knowledge.problems import nearest_name
from assistant.knowledge.yaml_text import PathInFile, shortened

ENTRY_FOLDERS: dict[str, Any] = {
    "observables": model.Observable,
    "questions": model.Question,
    "effects": model.Effect,
    "causes": model.Cause,
    "pairs": model.Pair,
    "findings": model.Finding,
    "danger": model.Sign,
    "regions": model.Region,
}
SINGLE_FILES: dict[str, Any] = {
    "belief.yaml": model.BeliefSettings,
    "ovens.yaml": model.Ovens,
    "roles.yaml": dict[model.Id, model.Role],
    "acts.yaml": dict[model.Id, model.Act],
    "advice.yaml": dict[model.Id, model.Listed],
    "steps.yaml": dict[model.Id, model.Step],
    LEARNED_FILE: model.Learned,
    FORESEEN_FILE: dict[model.Id, Foreseen],
}

Location = tuple[str | int, ...]

_id_adapter = TypeAdapter(model.Id)
_adapters = {kind: TypeAdapter(type_) for kind, type_ in (ENTRY_FOLDERS | SINGLE_FILES).items()}


@dataclass(frozen=True)
class Misfit:
    """Data that doesn't fit its type; the parts are those of a Problem."""

    path: PathInFile
    code: str
    details: Mapping[str, str | int] = field(default_factory=dict)
    nearest: str | None = None


def adapter(kind: str) -> TypeAdapter[Any]:
    """What checks, reads and writes the entry of that folder or single file."""
    return _adapters[kind]


def is_entry_id(name: str) -> bool:
    """Whether an entry may be called so."""
    try:
        _id_adapter.validate_python(name)
    except ValidationError:
        return False
    return True


def typed(kind: str, data: Any) -> tuple[Any | None, list[Misfit]]:
    """The entry of that folder or single file, or None and every misfit."""
    try:
        return _adapters[kind].validate_python(data), []
    except ValidationError as error:
        return None, list(_misfits(kind, error.errors(include_url=False), data))


def _misfits(kind: str, errors: list[ErrorDetails], data: Any) -> Iterator[Misfit]:
    """One for a place. A key that is only misspelt isn't also said to be missing."""
    missing = {found["loc"] for found in errors if found["type"] == "missing"}
    misspelt: set[Location] = set()
    seen: set[object] = set()
    absent: list[Misfit] = []
    for found in errors:
        path = path_of_location(found["loc"], data)
        identity = found["loc"] if _is_missing_key(found) else path
        if identity in seen or _has_enough_entries(found):
            continue
        seen.add(identity)
        if _is_missing_key(found):
            absent.append(Misfit(path, "missing_key", {"key": str(found["loc"][-1])}))
        elif found["type"] == "extra_forbidden":
            misfit = _unknown_key(kind, found["loc"], path, data, missing)
            misspelt.add((*path[:-1], misfit.nearest or ""))
            yield misfit
        else:
            yield _misfit(found, path)
    yield from (misfit for misfit in absent if (*misfit.path, misfit.details["key"]) not in misspelt)


def _is_missing_key(found: ErrorDetails) -> bool:
    return found["type"] == "missing" and isinstance(found["loc"][-1], str)


def _has_enough_entries(found: ErrorDetails) -> bool:
    """Entries with a misfit of their own aren't counted by the validation; here they are."""
    return found["type"] == "too_short" and len(found["input"]) >= found["ctx"]["min_length"]


def path_of_location(loc: Location, data: Any) -> PathInFile:
    """Keep of a validation location what exists in the data: tags of alternatives and '[key]' fall away."""
    path: list[str | int] = []
    for step in loc:
        in_block = isinstance(data, dict) and step in data
        in_list = isinstance(data, list) and isinstance(step, int) and step < len(data)
        if not (in_block or in_list):
            continue
        data = data[step]
        path.append(step)
    return tuple(path)


# Validation codes -> our own, where the sentence needs no more than what was found.
_SAYING_WHAT_WAS_FOUND = {
    "not_a_number": "not_a_number",
    "not_a_whole_number": "not_a_whole_number",
    "not_true_or_false": "not_true_or_false",
    "not_a_day": "not_a_day",
    "finite_number": "not_a_number",
    "float_type": "not_a_number",
    "int_type": "not_a_whole_number",
    "bool_type": "not_true_or_false",
    "string_type": "not_text",
    "string_too_long": "id_too_long",
    "string_pattern_mismatch": "not_an_id",
    "model_type": "not_a_block",
    "dict_type": "not_a_block",
    "tuple_type": "not_a_list",
}

# Codes raised by the model's own validators -> the key at fault within the block that they look at.
OWN_CODES: Mapping[str, str] = {
    "assumed_without_range": "source",
    "value_outside_range": "value",
    "not_a_percentage": "value",
    "wrong_unit": "unit",
    "never_or_always": "value",
    "not_above_zero": "value",
    "below_zero": "value",
    "below_one": "value",
    "not_a_count": "value",
    "words_missing": "",
    "prices_missing": "",
    "volts_not_in_order": "nominal",
    "no_time_zone": "time_zone",
    "thresholds_not_rising": "stop_above",
    "run_for_measurement": "run",
    "heights_for_boiling": "water",
    "one_way_to_change": "",
    "shares_for_outcomes": "ways",
    "pair_says_nothing": "",
    "listed_twice": "",
    "choices_for_kind": "kind",
    "number_for_kind": "kind",
    "kind_cannot_report": "observable",
    "question_or_finding": "",
    "one_way_to_hold": "",
    "when_or_any_of": "",
    "habit_mended_by_householder": "mended_by",
    "habit_needs_remedy": "kind",
    "cause_shows_nothing": "",
    "found_above_of": "found",
}


def _misfit(found: ErrorDetails, path: PathInFile) -> Misfit:
    code = found["type"]
    context = found.get("ctx", {})
    said = _said(found["input"])
    if code in OWN_CODES:
        key = OWN_CODES[code]
        at_fault = (*path, key) if key in found["input"] else path
        return Misfit(at_fault, code, {name: str(value) for name, value in context.items()})
    if found["input"] == "" and found["loc"][-1] != "[key]":
        return Misfit(path, "no_value")
    if code in ("literal_error", "enum"):
        return _not_in_list(path, context["expected"], said)
    if code in ("greater_than_equal", "less_than_equal"):
        bound = context.get("ge", context.get("le", 0))
        return Misfit(path, f"not_{code}", {**said, "bound": f"{bound:.10g}"})
    if code == "too_short":
        return Misfit(path, "too_few_entries", {"count": len(found["input"]), "least": context["min_length"]})
    if code in ("missing", "too_long"):  # of an entry in a list of fixed length: the only such lists are pairs
        return Misfit(path, "not_a_pair")
    if code in _SAYING_WHAT_WAS_FOUND:
        return Misfit(path, _SAYING_WHAT_WAS_FOUND[code], said)
    return Misfit(path, "other", {**said, "reason": found["msg"]})


def _said(value: object) -> dict[str, str | int]:
    """What was found, or the shape of what was found."""
    if isinstance(value, str):
        return {"found": shortened(value)} if value else {"found": "", "shape": "nothing"}
    return {"found": "", "shape": "block" if isinstance(value, dict) else "list"}


def _not_in_list(path: PathInFile, expected: str, said: dict[str, str | int]) -> Misfit:
    valid = expected.replace("'", "").replace(" or ", ", ").split(", ")
    found = str(said["found"])
    nearest = nearest_name(found, valid) or nearest_name(found.replace("_", " "), valid)
    return Misfit(path, "not_in_list", {**said, "valid": ", ".join(valid)}, nearest)


def _unknown_key(kind: str, loc: Location, path: PathInFile, data: Any, missing: set[Location]) -> Misfit:
    """A key that the block doesn't know. One that the block lacks is the first thing it may have meant."""
    key = str(loc[-1])
    valid = _valid_keys(kind, path_of_location(loc[:-1], data))
    lacking = [name for name in valid if (*loc[:-1], name) in missing]
    nearest = nearest_name(key, lacking) or nearest_name(key, valid)
    return Misfit(path, "unknown_key", {"key": shortened(key), "valid": ", ".join(valid)}, nearest)


@cache
def _schema(kind: str) -> dict[str, Any]:
    return _adapters[kind].json_schema(by_alias=True)


def _valid_keys(kind: str, path: PathInFile) -> list[str]:
    """The keys allowed in the block at that path."""
    schema = _schema(kind)
    node: dict[str, Any] = schema
    for step in path:
        node = _step_into(_resolved(node, schema), step)
    return sorted(_resolved(node, schema).get("properties", {}))


def _resolved(node: dict[str, Any], schema: dict[str, Any]) -> dict[str, Any]:
    """Follow references, and of alternatives the one that has parts."""
    while True:
        if "$ref" in node:
            node = schema["$defs"][node["$ref"].rsplit("/", 1)[1]]
        elif "anyOf" in node or "oneOf" in node:
            options = [_resolved(option, schema) for option in node.get("anyOf", node.get("oneOf", []))]
            with_parts = [o for o in options if o.keys() & {"properties", "items", "patternProperties"}]
            node = with_parts[0] if with_parts else {}
        else:
            return node


def _step_into(node: dict[str, Any], step: str | int) -> dict[str, Any]:
    if isinstance(step, int):
        found = node.get("items")
    else:
        by_pattern = next(iter(node.get("patternProperties", {}).values()), None)
        found = node.get("properties", {}).get(step) or by_pattern
    return found if isinstance(found, dict) else {}
