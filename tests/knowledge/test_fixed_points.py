"""Water by which a thermometer is checked: what it should read, against libraries that others wrote."""

import pytest
from CoolProp.CoolProp import AbstractState, iP, iT
from iapws import iapws97

from assistant.knowledge.fixed_points import FixedPoint
from assistant.knowledge.model import Knowledge
from assistant.knowledge.readings import put_right
from assistant.physics.boiling import standard_pressure_pa

NO_GOOD_K = 10.0
ICE, BOILING = "thermometer_in_ice", "thermometer_in_boiling_water"


def _point(knowledge: Knowledge, question_id: str) -> FixedPoint:
    point = knowledge.questions[question_id].fixed_point
    assert point is not None
    return point


@pytest.mark.parametrize("pressure_pa", [80e3, 101325.0])
def test_ice_melts_at_any_height_as_a_library_has_it(knowledge: Knowledge, pressure_pa: float) -> None:
    """Of water without air; air in it takes off another 0.002 K."""
    expected_c = AbstractState("HEOS", "Water").melting_line(iT, iP, pressure_pa) - 273.15
    assert _point(knowledge, ICE).should_read_c(None) == pytest.approx(expected_c, abs=0.01)


@pytest.mark.parametrize("height", ["low_land", "hills", "high_land", "mountains"])
def test_water_boils_where_they_live_as_a_library_has_it(knowledge: Knowledge, height: str) -> None:
    point = _point(knowledge, BOILING)
    expected_k = iapws97._TSat_P(standard_pressure_pa(point.heights[height]) / 1e6)
    assert point.should_read_c(height) == pytest.approx(expected_k - 273.15, abs=0.01)


def test_where_the_height_is_not_known_nothing_is_expected(knowledge: Knowledge) -> None:
    assert _point(knowledge, BOILING).should_read_c(None) is None
    assert _point(knowledge, BOILING).should_read_c("on_the_moon") is None


def test_every_answer_about_the_height_has_one(knowledge: Knowledge) -> None:
    assert _point(knowledge, BOILING).heights.keys() == knowledge.questions["height_above_sea"].choices.keys()


def test_a_thermometer_is_no_good_from_ten_degrees_off(knowledge: Knowledge) -> None:
    """The bounds of the finding against what the water should read."""
    bounds = {}
    for group in knowledge.findings["thermometer_no_good"].groups:
        checked, *told, read = group
        point = _point(knowledge, str(read.question))
        assert _answers_wanted(knowledge, str(checked.finding)) == point.counts_while
        expected_c = point.should_read_c(told[0].equals if told else None)
        assert expected_c is not None
        bound = read.more_than if read.more_than is not None else read.less_than
        assert bound is not None
        off_k = bound - expected_c
        assert off_k == pytest.approx(NO_GOOD_K if read.more_than is not None else -NO_GOOD_K, abs=0.1)
        bounds[str(read.question), told[0].equals if told else None, off_k > 0] = off_k
    assert len(bounds) == 2 * (1 + len(_point(knowledge, BOILING).heights))


def _answers_wanted(knowledge: Knowledge, finding_id: str) -> dict[str, tuple[str, ...]]:
    (group,) = knowledge.findings[finding_id].groups
    return {str(each.question): each.is_one_of or (str(each.equals),) for each in group}


def test_readings_are_put_right_in_either_scale() -> None:
    assert put_right(["0:30 opened", "1:00 143 C", "2:00 302 F"], 3.5) == (
        "0:30 opened",
        "1:00 139.50 C",
        "2:00 146.50 C",
    )


def test_readings_put_right_stay_readings() -> None:
    assert put_right(["1:00 -4 C", "2:00 549 C", "3:00 900 C"], 5) == ("1:00 -5.00 C", "2:00 544.00 C", "3:00 900 C")
    assert put_right(["2:00 549 C"], -5) == ("2:00 550.00 C",)
