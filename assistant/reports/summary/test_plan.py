"""What to test, in which order, what it should read at this oven, and what follows if it doesn't."""

from collections.abc import Iterator, Mapping, Sequence

from assistant.interview.after_a_test import after_a_test
from assistant.interview.plan_of_tests import BEFORE_LIVE
from assistant.interview.verdict import NONE
from assistant.reports.summary.session import Told
from assistant.reports.summary.value import Block, Items, Paragraph, Table

ELEMENT_TESTS = frozenset({"test_base_element", "test_top_element", "test_grill_element", "test_ring_element"})
STILL_OPEN = 0.25
"""Where nothing is likelier than this after a reading, it leaves the matter open."""
FAR_FETCHED = 0.01
"""A reading that speaks for something less probable isn't worth a line."""
ROWS_FIRST = 5
"""Tests on page one."""
STANDING = ("cooker_knobs", "cooker_digits")


Row = tuple[str, ...]


def rows_of(told: Told) -> tuple[Row, ...]:
    """A row for each planned test: its number, the test, what it should read and what follows."""
    planned = told.planned_tests
    rows = []
    sound: dict[str, str] = {}
    found_sound: set[str] = set()
    for number, test_id in enumerate(planned, start=1):
        follows, sound[test_id] = _follows(told, test_id, sound, found_sound, is_last=number == len(planned))
        rows.append((str(number), _named(told, test_id), told.test_words(test_id, "expected"), follows))
    return tuple(rows)


def first_tests(told: Told, rows: Sequence[Row]) -> Iterator[Block]:
    """Isolation first, then the tests in the order in which they are made: as many as page one holds."""
    if not rows:
        return
    yield Paragraph(told.say(_before(told)), "strong")
    yield _table(told, rows[:ROWS_FIRST])
    if len(rows) > ROWS_FIRST:
        yield Paragraph(told.say("rows_on_page_two", more=len(rows) - ROWS_FIRST))


def further_tests(told: Told, rows: Sequence[Row]) -> Iterator[Block]:
    """Those for which page one has no room."""
    if len(rows) > ROWS_FIRST:
        yield _table(told, rows[ROWS_FIRST:])


def _table(told: Told, rows: Sequence[Row]) -> Table:
    columns = ("column_number", "column_test", "column_expected", "column_follows")
    return Table(tuple(map(told.say, columns)), tuple(rows))


def _before(told: Told) -> str:
    """What holds before any of the tests, by how they are made."""
    if told.assessment.danger.stops:
        return "before_dead_tests"
    questions = told.script.knowledge.questions
    return (
        "before_only_dead" if all(questions[each].made == "dead" for each in told.planned_tests) else "before_any_test"
    )


def _named(told: Told, test_id: str) -> str:
    """The test; one that is made live or with the oven heating says so."""
    made = told.script.knowledge.questions[test_id].made
    words = told.test_words(test_id, "label")
    return words if made == "dead" else told.say(f"made_{made}", test=words)


def _follows(
    told: Told, test_id: str, sound_before: Mapping[str, str], found_sound: set[str], *, is_last: bool
) -> tuple[str, str]:
    """What is likeliest after the sound reading, and what each other one speaks for that isn't far-fetched; and the
    code of the sound reading. The tests before it are taken to have read well. Of readings that speak for one cause
    the plainest is told. That earth and insulation are sound says nothing of the trouble, nor is a cause named after
    one that this test or an earlier one has `found_sound`, to which the causes of this test are added.
    """
    sound, *others = after_a_test(told.script, told.assessment, test_id, sound_before)
    plain = [each for each in others if each.raised_from >= FAR_FETCHED and each.raised_to >= STILL_OPEN]
    best = {each.raised: each for each in sorted(plain, key=lambda each: each.raised_to)}
    telling = [each for each in plain if best[each.raised] is each]
    said = [
        _leads_to(told, test_id, each.code, each.raised, each.raised_to, "follows_unsound", "follows_fault")
        for each in telling or others[:1]
    ]
    found_sound.update(each.raised for each in telling)
    if is_last or test_id not in BEFORE_LIVE:
        otherwise = "follows_end" if is_last else "follows_open"
        probability = 0.0 if sound.leading in found_sound else sound.probability
        said.insert(0, _leads_to(told, test_id, sound.code, sound.leading, probability, "follows", otherwise))
    return " ".join(said), sound.code


def _leads_to(told: Told, test_id: str, code: str, cause: str, probability: float, likely: str, otherwise: str) -> str:
    """What the reading leads to: the message `likely`; `otherwise` where that isn't likely enough to name."""
    reading = told.sentences.choice(test_id, code)
    stopped = bool(told.assessment.danger.stops)
    if probability < STILL_OPEN or (stopped and cause == NONE):
        return told.say(otherwise, reading=reading)
    return told.say(likely, reading=reading, cause=told.cause(cause), percent=told.percent(probability))


def how_to_test(told: Told) -> Iterator[Block]:
    """Of the same tests where, how, and how long; and what a heater without a marking may read."""
    questions = told.script.knowledge.questions
    rows = [
        (
            str(number),
            told.test_words(test_id, "where"),
            told.sentences.question_by_id(test_id).how,
            f"{questions[test_id].minutes.value:g}",
        )
        for number, test_id in enumerate(told.planned_tests, start=1)
    ]
    if rows:
        columns = ("column_number", "column_where", "column_how", "column_minutes")
        yield Table(tuple(map(told.say, columns)), tuple(rows))
    if not ELEMENT_TESTS.isdisjoint(told.planned_tests):
        yield Paragraph(told.say("unmarked", **told.readings), "quiet")


def after_repair(told: Told) -> Iterator[Block]:
    """Whatever was mended. Common practice; local rules come first."""
    if not told.planned_tests:
        return
    names = ["after_earth", "after_insulation", "after_polarity", "after_functions", "after_put_back"]
    if told.has("thermostat"):
        names.append("after_phial")
    if told.has("temperature_sensor"):
        names.append("after_sensor")
    if told.kind in STANDING:
        names.append("after_bracket")
    yield Items(tuple(told.say(name, **told.readings) for name in names))
    yield Paragraph(told.say("local_rules"), "quiet")
