"""A rules folder -> typed entries with their places, or every mistake in it."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from pydantic import TypeAdapter, ValidationError
from pydantic_core import ErrorDetails

from assistant.knowledge import model
from assistant.knowledge.problems import Problem, nearest_name, where_in_file
from assistant.knowledge.yaml_text import PathInFile, YamlText, read_yaml

MOST_BYTES = 1_000_000

ENTRY_FOLDERS: dict[str, Any] = {
    "observables": model.Observable,
    "questions": model.Question,
    "causes": model.Cause,
    "findings": model.Finding,
    "danger": model.Sign,
    "regions": model.Region,
}
SINGLE_FILES: dict[str, Any] = {
    "belief.yaml": model.BeliefSettings,
    "ovens.yaml": model.Ovens,
    "roles.yaml": dict[model.Id, model.Role],
    "acts.yaml": dict[model.Id, model.Listed],
    "advice.yaml": dict[model.Id, model.Listed],
    "steps.yaml": dict[model.Id, model.Listed],
}
ANY = "*"
"""Among `ids`: the file that lists them couldn't be read, so any id may exist."""

OTHER_ENTRIES = frozenset({"schema", "README.md"})

_id_adapter = TypeAdapter(model.Id)
_adapters = {kind: TypeAdapter(type_) for kind, type_ in (ENTRY_FOLDERS | SINGLE_FILES).items()}


@dataclass
class RulesFolder:
    """What was read. `entries[kind][id]` are the sound ones; `ids[kind]` also holds those with mistakes."""

    shown_as: str
    entries: dict[str, dict[str, Any]] = field(default_factory=dict)
    ids: dict[str, set[str]] = field(default_factory=dict)
    texts: dict[str, YamlText] = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)

    def add_problem(
        self, file: str, path: PathInFile, code: str, nearest: str | None = None, **details: str | int
    ) -> None:
        text = self.texts.get(file)
        place = text.place_of(path) if text else None
        self.problems.append(
            Problem(
                f"{self.shown_as}/{file}",
                place.line if place else 1,
                place.column if place else 1,
                where_in_file(path),
                code,
                details,
                nearest,
            )
        )


def read_folder(folder: Path) -> RulesFolder:
    """Read every file of the folder. Mistakes are in `problems`; nothing is raised for what files say."""
    read = RulesFolder(str(folder))
    read.ids = {kind: set() for kind in (*ENTRY_FOLDERS, *SINGLE_FILES)}
    read.entries = {kind: {} for kind in (*ENTRY_FOLDERS, *SINGLE_FILES)}
    if not folder.is_dir():
        read.add_problem("", (), "no_folder")
        return read
    for entry in sorted(folder.iterdir()):
        _read_top_entry(read, folder, entry)
    for name in SINGLE_FILES:
        if not (folder / name).exists():
            read.add_problem(name, (), "file_missing")
            read.ids[name].add(ANY)
    return read


def _read_top_entry(read: RulesFolder, folder: Path, entry: Path) -> None:
    name = entry.name
    if name in OTHER_ENTRIES or name.startswith("."):
        return
    if name in ENTRY_FOLDERS and entry.is_dir():
        for path in sorted(entry.iterdir()):
            _read_entry_file(read, folder, name, path)
    elif name in SINGLE_FILES and entry.is_file():
        _read_single_file(read, name, entry)
    else:
        valid = [*ENTRY_FOLDERS, *SINGLE_FILES]
        read.add_problem(name, (), "unknown_entry", nearest_name(name, valid), found=name)


def _read_text(read: RulesFolder, file: str, path: Path) -> bool:
    """Read one file into `texts`; False if it can't be used any further."""
    try:
        if path.stat().st_size > MOST_BYTES:
            read.add_problem(file, (), "file_too_large", most=MOST_BYTES)
            return False
        content = path.read_bytes()
    except OSError as error:
        read.add_problem(file, (), "file_unreadable", reason=error.strerror or str(error))
        return False
    text = read.texts[file] = read_yaml(content)
    for mistake in text.mistakes:
        read.problems.append(
            Problem(
                f"{read.shown_as}/{file}",
                mistake.place.line,
                mistake.place.column,
                "file",
                mistake.code,
                mistake.details,
            )
        )
    return not text.mistakes


def _read_entry_file(read: RulesFolder, folder: Path, kind: str, path: Path) -> None:
    file = path.relative_to(folder).as_posix()
    if path.name.startswith(".") or path.name == "README.md":
        return
    if path.suffix != ".yaml" or not path.is_file():
        read.add_problem(file, (), "not_a_yaml_file")
        return
    entry_id = path.stem
    read.ids[kind].add(entry_id)
    try:
        _id_adapter.validate_python(entry_id)
    except ValidationError:
        read.add_problem(file, (), "file_name_not_an_id", found=entry_id)
        return
    if _read_text(read, file, path):
        entry = _typed(read, file, kind)
        if entry is not None:
            read.entries[kind][entry_id] = entry


def _read_single_file(read: RulesFolder, name: str, path: Path) -> None:
    if not _read_text(read, name, path):
        read.ids[name].add(ANY)
        return
    data = read.texts[name].data
    if isinstance(data, dict):
        read.ids[name].update(data)
    entry = _typed(read, name, name)
    if entry is not None:
        read.entries[name] = entry if isinstance(entry, dict) else {"": entry}


def _typed(read: RulesFolder, file: str, kind: str) -> Any | None:
    data = read.texts[file].data
    try:
        return _adapters[kind].validate_python(data)
    except ValidationError as error:
        for found in _distinct(error):
            _add_validation_problem(read, file, kind, found)
        return None


def _distinct(error: ValidationError) -> Iterator[ErrorDetails]:
    """One problem for a place: the first said there."""
    seen: set[tuple[str | int, ...]] = set()
    for found in error.errors(include_url=False):
        if found["loc"] not in seen:
            seen.add(found["loc"])
            yield found


def path_of_location(loc: tuple[str | int, ...], data: Any) -> PathInFile:
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


# Validation codes whose sentence needs no more than what was found.
_RENAMED = {
    "float_parsing": "not_a_number",
    "int_parsing": "not_a_whole_number",
    "finite_number": "not_a_number",
    "bool_parsing": "not_true_or_false",
    "string_type": "not_text",
    "string_too_short": "empty_text",
    "string_too_long": "id_too_long",
    "string_pattern_mismatch": "not_an_id",
    "model_type": "not_a_block",
    "model_attributes_type": "not_a_block",
    "dict_type": "not_a_block",
    "list_type": "not_a_list",
    "tuple_type": "not_a_list",
    "float_type": "not_a_number",
    "int_type": "not_a_whole_number",
    "int_from_float": "not_a_whole_number",
    "bool_type": "not_true_or_false",
    "too_short": "too_few_entries",
    "too_long": "too_many_entries",
}


# Codes raised by the model's own validators.
OWN_CODES = frozenset(
    {
        "assumed_without_range",
        "value_outside_range",
        "not_a_percentage",
        "choices_for_kind",
        "number_for_kind",
        "kind_cannot_report",
        "question_or_finding",
        "one_way_to_hold",
        "when_or_any_of",
        "habit_mended_by_householder",
        "habit_needs_remedy",
    }
)


def _add_validation_problem(read: RulesFolder, file: str, kind: str, found: ErrorDetails) -> None:
    data = read.texts[file].data
    path = path_of_location(found["loc"], data)
    code = found["type"]
    context = found.get("ctx", {})
    said = _short(found["input"])
    if code == "missing":
        read.add_problem(file, path, "missing_key", key=str(found["loc"][-1]))
    elif code == "extra_forbidden":
        key = str(found["loc"][-1])
        keys = _valid_keys(kind, found["loc"][:-1])
        read.add_problem(file, path, "unknown_key", nearest_name(key, keys), key=key, valid=", ".join(keys))
    elif code in ("literal_error", "enum"):
        valid = context["expected"].replace("'", "").replace(" or ", ", ").split(", ")
        nearest = nearest_name(said, valid) or nearest_name(said.replace("_", " "), valid)
        read.add_problem(file, path, "not_in_list", nearest, found=said, valid=", ".join(valid))
    elif code in ("greater_than_equal", "less_than_equal"):
        bound = context.get("ge", context.get("le", 0))
        read.add_problem(file, path, f"not_{code}", found=said, bound=f"{bound:g}")
    elif code in _RENAMED:
        read.add_problem(file, path, _RENAMED[code], found=said)
    elif code in OWN_CODES:
        read.add_problem(file, path, code)
    else:
        read.add_problem(file, path, "other", found=said, reason=found["msg"])


def _short(value: object) -> str:
    text = value if isinstance(value, str) else type(value).__name__
    text = {"dict": "{…}", "list": "[…]"}.get(text, text)
    return text if len(text) <= 60 else text[:57] + "..."


def _valid_keys(kind: str, loc: tuple[str | int, ...]) -> list[str]:
    """The keys allowed where an unknown one was found."""
    schema = _adapters[kind].json_schema(by_alias=True)
    node: dict[str, Any] = schema
    for step in loc:
        node = _step_into(_resolved(node, schema), step)
    return sorted(_resolved(node, schema).get("properties", {}))


def _resolved(node: dict[str, Any], schema: dict[str, Any]) -> dict[str, Any]:
    while True:
        if "$ref" in node:
            node = schema["$defs"][node["$ref"].rsplit("/", 1)[1]]
        elif "anyOf" in node or "oneOf" in node:
            options = [_resolved(option, schema) for option in node.get("anyOf", node.get("oneOf", []))]
            with_keys = [o for o in options if "properties" in o or "items" in o or "additionalProperties" in o]
            node = with_keys[0] if with_keys else {}
        else:
            return node


def _step_into(node: dict[str, Any], step: str | int) -> dict[str, Any]:
    if isinstance(step, int):
        items = node.get("items", {})
        return items if isinstance(items, dict) else {}
    found = node.get("properties", {}).get(step) or node.get("additionalProperties", node)
    return found if isinstance(found, dict) else {}
