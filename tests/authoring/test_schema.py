"""The JSON Schemas, against the validator and the YAML reading that an editor has."""

import io
import re

import jsonschema
import pytest
import yaml

from assistant.authoring.schema import schema_text, schemas, write_schemas
from tests.knowledge.broken import BROKEN, SOUND, copy_of_sound_rules, english, make_changes, read_example

SCHEMAS = dict(schemas())


class EditorLoader(yaml.SafeLoader):
    """Scalars as YAML 1.2's core schema (YAML 1.2.2, 10.3.2) resolves them."""


EditorLoader.yaml_implicit_resolvers = {}
for tag, pattern, first in (
    ("bool", r"true|True|TRUE|false|False|FALSE", "tTfF"),
    ("null", r"~|null|Null|NULL|", ["~", "n", "N", ""]),
    ("int", r"[-+]?[0-9]+", "-+0123456789"),
    ("float", r"[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?", "-+.0123456789"),
):
    EditorLoader.add_implicit_resolver(f"tag:yaml.org,2002:{tag}", re.compile(rf"(?:{pattern})\Z"), list(first))
EditorLoader.add_constructor("tag:yaml.org,2002:int", lambda loader, node: int(node.value))
EditorLoader.add_constructor("tag:yaml.org,2002:float", lambda loader, node: float(node.value))


def as_an_editor_reads(path):
    return yaml.load(path.read_text("utf-8"), Loader=EditorLoader)  # noqa: S506 - a kind of safe loader


def schema_of(path, folder):
    name = path.stem if path.parent == folder else path.parent.name
    return SCHEMAS[f"{name}.schema.json"]


def complaints(path, folder):
    validator = jsonschema.Draft202012Validator(schema_of(path, folder))
    return [error.message for error in validator.iter_errors(as_an_editor_reads(path))]


def test_the_editor_reads_scalars_by_the_core_schema():
    read = yaml.load("[on, yes, 010, 1:30, 1.5, true, ~, 1_0, x]", Loader=EditorLoader)  # noqa: S506 - as above
    assert read == ["on", "yes", 10, "1:30", 1.5, True, None, "1_0", "x"]


@pytest.mark.parametrize("name", SCHEMAS)
def test_every_schema_is_a_valid_schema(name):
    jsonschema.Draft202012Validator.check_schema(SCHEMAS[name])
    assert SCHEMAS[name]["$schema"] == jsonschema.Draft202012Validator.META_SCHEMA["$id"]


@pytest.mark.parametrize("path", sorted(SOUND.rglob("*.yaml")), ids=lambda path: path.stem)
def test_every_sound_file_fits_its_schema(path):
    assert complaints(path, SOUND) == []


@pytest.mark.parametrize(
    "name",
    [
        "missing_key",
        "unknown_key",
        "unknown_key_of_the_model_itself",
        "not_in_list",
        "not_in_list_likelihood",
        "not_in_list_key",
        "not_greater_than_equal",
        "not_less_than_equal",
        "not_a_number",
        "not_a_number_minutes_and_seconds",
        "not_a_whole_number",
        "not_true_or_false_yes",
        "not_text",
        "not_an_id",
        "not_an_id_key",
        "id_too_long",
        "not_a_block",
        "not_a_list",
        "too_few_entries",
        "too_few_entries_empty_group",
        "not_a_pair",
        "missing_key_learned",
        "unknown_key_learned",
        "not_greater_than_equal_count",
        "not_a_whole_number_count",
        "not_in_list_group",
    ],
)
def test_an_editor_sees_what_a_schema_can_see(tmp_path, name):
    folder = copy_of_sound_rules(tmp_path)
    changes = read_example(BROKEN / f"{name}.yaml")["changes"]
    make_changes(folder, changes)
    assert complaints(folder / changes[0]["file"], folder)


def test_schemas_are_written_beside_the_rules_and_are_no_mistake_there(tmp_path):
    folder = copy_of_sound_rules(tmp_path)
    out = io.StringIO()
    assert write_schemas(folder, english(), out) == 0
    written = {path.name: path.read_text("utf-8") for path in (folder / "schema").iterdir()}
    assert written == {name: schema_text(schema) for name, schema in SCHEMAS.items()}
    assert out.getvalue() == f"The schemas are in {folder / 'schema'}.\n"


def test_schemas_that_can_not_be_written_are_said_to_be_so(tmp_path):
    out = io.StringIO()
    assert write_schemas(tmp_path / "nowhere", english(), out) == 1
    assert out.getvalue() == "The schemas couldn't be written: No such file or directory.\n"
