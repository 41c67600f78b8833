import io

import pytest

from assistant.authoring.outcome_form import MOST_SHOWN, Form, search
from assistant.interview.commands import RecordOutcome
from tests.authoring.visited import Typed

LIKELIEST = ("base_element_open", "foil_or_stone_on_floor", "shelf_position", "ring_element_open")


@pytest.fixture
def filled(knowledge, sentences):
    """What comes of lines typed into the form, what it printed, and the lines that it left."""

    def filled(*lines, told=RecordOutcome(), likeliest=LIKELIEST):  # noqa: B008 - it is never changed
        out, typed = io.StringIO(), Typed(*lines)
        form = Form(knowledge, sentences.wording, typed, out, lambda: likeliest)
        return form.filled(told), out.getvalue(), typed.left

    return filled


def test_one_question_comes_after_the_other(filled):
    told, text, left = filled("mended", "1", "1", "1", "40", "it hummed")
    assert told == RecordOutcome(
        "mended", "base_element_open", "foil_or_stone_on_floor", "base_element", "40", "it hummed"
    )
    assert left == []
    headings = ["How did it end?", "Which cause was found?", "Was there a second", "Which part", "How many", "A note"]
    places = [text.index(heading) for heading in headings]
    assert places == sorted(places)


@pytest.mark.parametrize("typed", ["4", "no fault found", "no_fault_found", "NO FAULT", "fault found"])
def test_a_result_is_told_by_its_number_or_by_words(filled, typed):
    assert filled(typed, "", "", "")[0] == RecordOutcome("no_fault_found")


@pytest.mark.parametrize(
    ("result", "asked"),
    [("mended", 6), ("advised", 6), ("no_fault_found", 4), ("not_fixed", 4), ("no_access", 2), ("cancelled", 2)],
)
def test_nothing_is_asked_that_the_result_leaves_no_room_for(filled, result, asked):
    lines = [result, *(["1"] if asked == 6 else []), *[""] * 9]
    assert len(lines) - len(filled(*lines)[2]) == asked


def test_a_cause_that_is_needed_is_asked_for_again(filled):
    told, text, _ = filled("mended", "", "something else", "", "", "", "")
    assert told.cause_found == "something_else"
    assert "With “mended” name the cause that was found." in text


def test_any_cause_is_found_by_words_of_its_name(filled):
    told, text, _ = filled("mended", "drifted low", "", "", "", "")
    assert told.cause_found == "thermostat_drifted_low"
    assert "  the heat control turns the heat off too early\n" in text


def test_among_several_of_a_name_one_is_chosen_from_the_new_list(filled):
    told, text, _ = filled("mended", "drifted", "2", "", "", "", "")
    assert told.cause_found.startswith("thermostat_drifted")
    assert "Several are called like that." in text


def test_what_is_called_nothing_like_it_leaves_the_list_as_it_was(filled):
    told, text, _ = filled("mended", "qqqq", "99", "0", "1", "", "", "", "")
    assert told.cause_found == LIKELIEST[0]
    assert "Nothing is called like that." in text
    assert text.count("There is no such number in the list.") == 2


def test_the_cause_found_first_is_not_offered_again_and_two_habits_are_refused(filled):
    told, text, _ = filled("advised", "2", "2", "", "", "", "")
    assert (told.cause_found, told.second_cause) == ("foil_or_stone_on_floor", "")
    assert "Both causes are habits." in text
    second = text[text.index("Was there a second") :]
    assert "  1  the heater below has stopped working\n  2  the shelf is too high" in second


def test_the_parts_of_the_causes_found_come_first(filled):
    assert filled("mended", "1", "3", "2", "", "")[0].part_fitted == "ring_element"
    assert filled("mended", "1", "", "fan inside the", "", "")[0].part_fitted == "oven_fan"


def test_minutes_and_a_note_that_can_not_be_are_asked_for_again(filled):
    told, text, _ = filled("no_access", "paid by 4111 1111 1111 1111", "nobody in")
    assert told == RecordOutcome("no_access", note="nobody in")
    assert "Please leave that out." in text
    told, text, _ = filled("not_fixed", "", "an hour", "60", "")
    assert told.minutes == "60"
    assert "“an hour” can't be the minutes." in text


def test_what_was_told_is_not_asked(filled):
    told, _, left = filled("", told=RecordOutcome("mended", "base_element_open", "shelf_position", "knob", "5"))
    assert (told.part_fitted, left) == ("knob", [])


@pytest.mark.parametrize(
    ("given", "typed", "said"),
    [
        ({"cause_found": "base_element_open"}, "no access", "With “no_access” no cause can be said to be found."),
        ({"cause_found": "base_element_open"}, "no fault found", "With “no_fault_found” no cause can be said"),
        ({"part_fitted": "base_element"}, "cancelled", "With “cancelled” nobody was at the oven"),
    ],
)
def test_a_result_that_contradicts_what_was_told_is_asked_for_again_at_once(filled, given, typed, said):
    first = "" if "cause_found" in given else "1"
    told, text, left = filled(typed, "mended", first, "", "", "", told=RecordOutcome(**given))
    assert left == []
    assert told == RecordOutcome("mended", **{"cause_found": LIKELIEST[0], **given})
    before, after = text.split(said)
    assert before.count("How did it end?") == after.count("How did it end?") == 1
    assert "A note" not in before


def test_a_second_cause_is_asked_for_only_where_something_was_found(filled):
    told = RecordOutcome("no_fault_found", "base_element_open")
    assert "second cause" not in filled("", "", "", told=told)[1]


def test_a_first_cause_that_does_not_go_with_the_second_one_told_is_asked_for_again(filled):
    told, text, _ = filled(
        "base element open", "ring element open", "", "", "", told=RecordOutcome("mended", "", "base_element_open")
    )
    assert (told.cause_found, told.second_cause) == ("ring_element_open", "base_element_open")
    assert "The second cause is the same as the first one." in text


def test_a_result_told_in_other_letters_opens_the_same_questions(filled):
    assert filled("1", "", "", "", "", told=RecordOutcome("Mended"))[0].cause_found == LIKELIEST[0]
    assert filled("nobody in", told=RecordOutcome("No access"))[0].note == "nobody in"


def test_a_number_is_the_same_with_noughts_before_it_and_none_with_more_than_four_digits(filled):
    assert filled("00004", "", "", "")[0].result == "no_fault_found"
    told, text, _ = filled("00012", "10001", "1" * 5000, "0" * 5000, "4", "", "", "")
    assert (told.result, text.count("There is no such number")) == ("no_fault_found", 4)


def test_the_likeliest_causes_are_not_called_for_where_no_cause_is_asked_after(knowledge, sentences):
    def never():
        raise AssertionError

    form = Form(knowledge, sentences.wording, Typed("cancelled", ""), io.StringIO(), never)
    assert form.filled(RecordOutcome()) == RecordOutcome("cancelled")


def test_an_end_of_input_gives_it_up(filled):
    with pytest.raises(EOFError):
        filled("mended", "1")


def test_every_cause_and_every_part_is_found_by_its_id_and_by_its_name(knowledge, sentences):
    for kind, ids in (("cause", [*knowledge.causes, "something_else"]), ("part", list(knowledge.ovens.parts))):
        names = {each: sentences.wording.say(f"{kind}-{each}") for each in ids}
        assert [each for each in ids if search(each.replace("_", " "), names)[:1] != [each]] == []
        assert [each for each in ids if each not in search(names[each], names)] == []


def test_a_search_is_forgiving_and_never_long():
    names = {f"c{number}": f"the heater number {number} is broken" for number in range(20)}
    assert search("heater", names) == [f"c{number}" for number in range(MOST_SHOWN)]
    assert search("heeter number 7 broken", names)[0] == "c7"
    assert search("", names) == search("?!", names) == []
