"""When something was, as clocks show it where the oven stands; programs read UTC."""

import json
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from assistant.interview.script import Script
from assistant.reports.summary.as_json import as_json
from assistant.reports.summary.engineer import engineer_summary
from assistant.reports.summary.footing import footing_of
from assistant.reports.summary.session import Told
from assistant.wording.sentences import Sentences
from tests.reports.summary.told_cases import section, table, told_with

SUMMER = datetime(2026, 7, 1, 22, 30, tzinfo=UTC)
CLOCKS_GO_BACK = datetime(2026, 10, 25, 0, 30, tzinfo=UTC)
"""In Great Britain they do at 01:00 UTC."""


def told_from(script: Script, sentences: Sentences, first: datetime, region: str = "great_britain") -> Told:
    """An event every quarter of an hour."""
    told = told_with(script, sentences, {"which_appliance": "built_in_knobs", "since_when": "this_week"}, region=region)
    events = [replace(e, recorded_at=first + timedelta(minutes=15) * n) for n, e in enumerate(told.events)]
    return replace(told, events=tuple(events))


def whens(told: Told) -> list[str]:
    return [row[0] for row in table(section(engineer_summary(told), "answers")).rows]


@pytest.mark.parametrize(
    ("region", "times"),
    [
        ("great_britain", ["2026-07-01 23:45 BST", "2026-07-02 00:00 BST", "00:15"]),
        ("germany", ["2026-07-02 00:45 CEST", "01:00", "01:15"]),
        ("a_region_of_earlier_rules", ["2026-07-01 22:45 UTC", "23:00", "23:15"]),
    ],
)
def test_times_are_those_of_the_oven_s_region(
    script: Script, sentences: Sentences, region: str, times: list[str]
) -> None:
    told = told_from(script, sentences, SUMMER, "great_britain")
    begun = replace(told.events[0].happening, region=region)
    told = replace(told, events=(replace(told.events[0], happening=begun), *told.events[1:]))
    assert whens(told) == times


def test_an_hour_that_comes_twice_is_told_with_its_zone(script: Script, sentences: Sentences) -> None:
    assert whens(told_from(script, sentences, CLOCKS_GO_BACK)) == [
        "2026-10-25 01:45 BST",
        "2026-10-25 01:00 GMT",
        "01:15",
    ]


def test_beneath_every_page_it_is_local_and_in_json_utc(script: Script, sentences: Sentences) -> None:
    summary = engineer_summary(told_from(script, sentences, SUMMER))
    assert footing_of(summary, sentences.wording).session.endswith("as of 2026-07-02 00:15 BST")
    assert json.loads(as_json(summary))["written_at"] == "2026-07-01T23:15:00+00:00"
