"""The project's own rules: sound, sourced, and beside them the schemas by which an editor checks them."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml

from assistant.authoring.schema import schema_text, schemas

RULES = Path(__file__).parent.parent / "rules"


@pytest.mark.parametrize(("name", "schema"), list(schemas()), ids=lambda given: given if isinstance(given, str) else "")
def test_the_schemas_beside_the_rules_are_current(name: str, schema: dict[str, Any]) -> None:
    assert (RULES / "schema" / name).read_text("utf-8") == schema_text(schema), "run: ovenside rules schema"


def figures(data: Any, path: str) -> Iterator[tuple[str, dict[str, Any]]]:
    if isinstance(data, dict):
        if "value" in data and "unit" in data:
            yield path, data
        for key, value in data.items():
            yield from figures(value, f"{path}.{key}")
    elif isinstance(data, list):
        for index, value in enumerate(data):
            yield from figures(value, f"{path}[{index}]")


def test_every_number_has_a_source_or_is_marked_assumed_with_a_range() -> None:
    found = [
        figure
        for path in sorted(RULES.rglob("*.yaml"))
        for figure in figures(yaml.safe_load(path.read_text("utf-8")), path.stem)
    ]
    assert len(found) > 100
    assert [place for place, figure in found if not figure.get("source")] == []
    assert [
        place for place, figure in found if figure["source"] == "assumed" and len(figure.get("range", [])) != 2
    ] == []
