"""Names of time zones, where there is a database of them and where there is none."""

import zoneinfo
from datetime import UTC, datetime

import pytest

from assistant.knowledge.model import Knowledge
from assistant.knowledge.time_zones import may_be_time_zone, time_zone

WRONG = ("", "London", "europe/london", "Europe", "Europe/Nowhere", "../Europe/London", "posix/Europe/London", "BST")


@pytest.fixture
def no_database(monkeypatch: pytest.MonkeyPatch) -> None:
    """As on a system without one, and without the package that stands in for it."""

    def nothing(name: str) -> zoneinfo.ZoneInfo:
        raise zoneinfo.ZoneInfoNotFoundError(name)

    monkeypatch.setattr("assistant.knowledge.time_zones.ZoneInfo", nothing)


def test_a_name_of_the_database_has_its_summer_time() -> None:
    london = time_zone("Europe/London")
    winter, summer = (datetime(2026, month, 1, tzinfo=UTC).astimezone(london) for month in (1, 7))
    assert (winter.hour, winter.tzname(), summer.hour, summer.tzname()) == (0, "GMT", 1, "BST")


@pytest.mark.parametrize("name", WRONG)
def test_no_other_name_is_one(name: str) -> None:
    assert time_zone(name) is None
    assert not may_be_time_zone(name)


@pytest.mark.usefixtures("no_database")
def test_without_a_database_no_name_is_a_mistake_that_could_be_one() -> None:
    assert time_zone("Europe/London") is None
    assert may_be_time_zone("Europe/Nowhere")
    assert not may_be_time_zone("London")


def test_every_region_has_its_own(knowledge: Knowledge) -> None:
    zones = {name: region.time_zone for name, region in knowledge.regions.items()}
    assert zones == {"great_britain": "Europe/London", "germany": "Europe/Berlin"}
