"""What to test, in which order, what it should read at this oven, and what follows if it doesn't."""

from collections.abc import Iterator, Mapping, Sequence

from assistant.belief.hypotheses import SOMETHING_ELSE
from assistant.interview.after_a_test import Reading, after_a_test
from assistant.interview.plan_of_tests import BEFORE_LIVE
from assistant.interview.verdict import NONE
from assistant.reports.summary.session import Told
from assistant.reports.summary.value import Block, Items, Paragraph, Table

ELEMENT_TESTS = frozenset({"test_base_element", "test_top_element", "test_grill_element", "test_ring_element"})
STILL_OPEN = 0.25
"""Where nothing is likelier than this after a reading, it leaves the matter open."""
FAR_FETCHED = 0.01
"""A reading that speaks for something less probable isn't worth a line."""
CLEARS = 10.0
"""A sound reading that makes the odds of a cause this many times smaller clears it: as a direct reading of a part does,
allowing for slips of one in thirty."""
NO_CAUSE = (SOMETHING_ELSE, NONE)
ROWS_FIRST = 4
"""Tests on page one, besides earth and insulation."""
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
    first = rows_first(told)
    yield _table(told, rows[:first])
    if len(rows) > first:
        yield Paragraph(told.say("rows_on_page_two", more=len(rows) - first))


def rows_first(told: Told) -> int:
    """How many rows page one holds."""
    return ROWS_FIRST + len([each for each in told.planned_tests if each in BEFORE_LIVE])


def further_tests(told: Told, rows: Sequence[Row]) -> Iterator[Block]:
    """Those for which page one has no room."""
    first = rows_first(told)
    if len(rows) > first:
        yield _table(told, rows[first:])


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
    """What the sound reading clears and leaves likeliest, then what each other one finds that isn't far-fetched; and
    the code of the sound reading. The tests before it are taken to have read well. Of readings that speak for one
    cause the plainest is told. That earth and insulation are sound says nothing of the trouble, but each reading of
    theirs that names no cause is a fault by itself. No cause is named as next after this test or an earlier one has
    `found_sound` it; to these the causes of this test are added.
    """
    sound, *others = after_a_test(told.script, told.assessment, test_id, sound_before)
    plain = [each for each in others if _finds_a_cause(each)]
    best = {each.raised: each for each in sorted(plain, key=lambda each: each.raised_to)}
    telling = [each for each in plain if best[each.raised] is each]
    found_sound.update(each.raised for each in telling)
    is_safety = test_id in BEFORE_LIVE
    said = [_sound(told, test_id, sound, telling, found_sound, is_last=is_last)] if is_last or not is_safety else []
    if is_safety or not telling:
        said += [_fault(told, test_id, each) for each in others if each not in plain][:1]
    said += [_unsound(told, test_id, each) for each in telling]
    return " ".join(said), sound.code


def _finds_a_cause(each: Reading) -> bool:
    return each.raised_from >= FAR_FETCHED and each.raised_to >= STILL_OPEN and each.raised not in NO_CAUSE


def _unsound(told: Told, test_id: str, each: Reading) -> str:
    """A direct reading of a part is a finding, whatever was probable before: so no percentage."""
    return told.say("follows_unsound", reading=told.sentences.choice(test_id, each.code), cause=told.cause(each.raised))


def _fault(told: Told, test_id: str, each: Reading) -> str:
    return told.say("follows_fault", reading=told.sentences.choice(test_id, each.code))


def _sound(
    told: Told, test_id: str, sound: Reading, telling: Sequence[Reading], found_sound: set[str], *, is_last: bool
) -> str:
    """What the sound reading clears of what the others would have found; then what is likeliest next."""
    gone = [told.cause(each.raised) for each in telling if _clears(sound, each)]
    stands_out = (
        sound.probability >= STILL_OPEN
        and sound.leading not in found_sound
        and sound.leading != SOMETHING_ELSE
        and not (sound.leading == NONE and told.assessment.danger.stops)
    )
    then = "follows" if stands_out else "follows_end" if is_last else "follows_open"
    return told.say(
        f"{then}_cleared" if gone else then,
        reading=told.sentences.choice(test_id, sound.code),
        cleared="; ".join(gone),
        cause=told.cause(sound.leading),
        percent=told.percent(sound.probability),
    )


def _clears(sound: Reading, finding: Reading) -> bool:
    """Whether the sound reading speaks plainly against what the other one would have found."""
    before, after = finding.raised_from, sound.causes[finding.raised]
    return after * (1 - before) * CLEARS <= before * (1 - after)


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
