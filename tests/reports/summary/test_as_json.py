"""JSON: all of the value, by a published schema that knows nothing else."""

import json
from copy import deepcopy
from dataclasses import fields, replace
from datetime import timedelta, timezone

import jsonschema
import pytest

from assistant.reports.summary.as_json import KIND, VERSION, as_json
from assistant.reports.summary.json_schema import summary_schema
from assistant.reports.summary.session import Told
from assistant.reports.summary.value import Facts, Summary
from tests.reports.summary.samples import CHART, FACTS, NOON, PLAIN, words_in
from tests.reports.summary.sessions import both

SCHEMA = jsonschema.Draft202012Validator(summary_schema())


def words_of(read: object) -> list[str]:
    """All that a reader would read, in its order."""
    if isinstance(read, str):
        return [read]
    if isinstance(read, list):
        return [words for each in read for words in words_of(each)]
    if read.get("rows") == []:  # type: ignore[attr-defined]
        return []
    named = (
        "pages",
        "sections",
        "title",
        "about",
        "heading",
        "blocks",
        "words",
        "items",
        "columns",
        "rows",
        "described",
    )
    return [words for key, each in read.items() if key in named for words in words_of(each)]  # type: ignore[attr-defined]


def test_the_schema_is_one() -> None:
    jsonschema.Draft202012Validator.check_schema(summary_schema())


def test_every_summary_keeps_to_the_schema_and_says_all(tolds: tuple[Told, ...]) -> None:
    for summary in (PLAIN, *(summary for told in tolds for summary in both(told))):
        read = json.loads(as_json(summary))
        SCHEMA.validate(read)
        assert words_of(read) == list(words_in(summary))


def test_it_says_what_it_is() -> None:
    read = json.loads(as_json(PLAIN))
    assert (read["kind"], read["version"], read["reader"], read["session"]) == (KIND, VERSION, "engineer", "a3f9a3f9")


def test_no_field_of_the_value_is_left_out() -> None:
    read = json.loads(as_json(PLAIN))
    assert set(read) == {"version", "kind", *(field.name for field in fields(Summary))}
    assert set(read["facts"]) == {field.name for field in fields(Facts)}
    assert read["pages"][0]["sections"][0]["blocks"][-1]["svg"] == CHART
    assert read["facts"]["causes"] == [{"id": "base_element", "probability": 0.75}]
    assert read["facts"]["signs"] == [{"id": "sparks", "state": "stands", "since": "2026-03-04T12:00:00+00:00"}]
    assert read["facts"]["kit_chance"] == FACTS.kit_chance


def test_moments_are_in_utc_wherever_they_were_written() -> None:
    elsewhere = replace(PLAIN, written_at=NOON.astimezone(timezone(timedelta(hours=-5))))
    assert as_json(elsewhere) == as_json(PLAIN)


def test_the_same_value_gives_the_same_bytes() -> None:
    assert as_json(PLAIN).encode() == as_json(replace(PLAIN)).encode()


@pytest.mark.parametrize(
    ("path", "wrong"),
    [
        (("version",), 2),
        (("kind",), "other"),
        (("reader",), "seller"),
        (("written_at",), "2026-03-04"),
        (("facts", "action"), "unknown"),
        (("facts", "causes", 0, "probability"), 1.5),
        (("pages", 0, "sections", 0, "blocks", 0, "kind"), "drawing"),
        (("pages", 0, "sections", 0, "blocks", 6, "rows", 0), ["one"]),
        (("pages", 0, "sections", 0, "more"), ""),
    ],
)
def test_another_form_is_refused(path: tuple[str | int, ...], wrong: object) -> None:
    read = deepcopy(json.loads(as_json(PLAIN)))
    place = read
    for step in path[:-1]:
        place = place[step]
    place[path[-1]] = wrong
    assert not SCHEMA.is_valid(read)
