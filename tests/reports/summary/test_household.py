"""The household's page: what was found and what to do, and nothing for an engineer's hands."""

import re
from dataclasses import replace

import pytest

from assistant.interview.script import Script
from assistant.knowledge.care import Care
from assistant.reports.summary.as_text import as_text
from assistant.reports.summary.household import household_summary
from assistant.reports.summary.session import Told
from assistant.reports.summary.value import Items, Paragraph, Section
from assistant.wording.languages import Languages
from assistant.wording.sentences import Sentences
from tests.reports.summary.samples import FOOTING
from tests.reports.summary.test_engineer import BASE_DEAD, IDENTIFIED, WATCHED
from tests.reports.summary.told_cases import names, pairs, paragraphs, section, told_case, told_with

ENDINGS = {
    "base_and_grill_dead": "book_visit",
    "base_dead_in_a_rented_flat": "maker_seller_or_landlord_first",
    "agent_hears_of_burning_plastic_late": "stop_and_isolate",
    "bakers_door_opened_every_five_minutes": "use_differently",
    "agent_unlocks_a_childs_lock": "do_one_thing",
    "always_a_little_uneven_at_the_back": "all_normal",
    "gas_oven": "outside",
}
MEASURED = {
    **IDENTIFIED,
    **{name: value for name, value in WATCHED.items() if name != "lamp_watch"},
    "thermometer_kind": "hanging_or_standing",
    "thermometer_log": ("2:00 60 C", "5:00 95 C", "10:00 130 C", "12:30 opened", "20:00 150 C", "30:00 155 C"),
    "lamp_watch": ("0:00 lit", "17:10 out", "21:40 lit", "28:00 out", "30:00 end"),
    "bread_tray": ("top 333 332 22-", "underside 110 100 00-"),
}
MEASURES = ("thermometer_log", "lamp_watch", "bread_tray")
FOR_ENGINEERS = re.compile(
    r"Ω|\bohms?\b|\bV\b|\bvolts?\b|decibans|\d+\s%|terminal|isolat|continuity|insulation|multimeter|\bscrews\b", re.I
)


@pytest.mark.parametrize("case", ENDINGS)
def test_no_ending_shows_the_household_test_points_readings_or_figures(
    script: Script, sentences: Sentences, case: str
) -> None:
    told = told_case(script, sentences, case)
    assert told.verdict.action == ENDINGS[case]
    summary = household_summary(told)
    assert FOR_ENGINEERS.findall(as_text(summary, FOOTING)) == []
    assert summary.about == sentences.headline(told.verdict)
    assert summary.facts.causes == ()
    assert summary.facts.tests == ()
    assert summary.facts.kit == ()


@pytest.mark.parametrize("case", ENDINGS)
def test_every_ending_says_what_was_found_and_what_to_mind(script: Script, sentences: Sentences, case: str) -> None:
    (page,) = names(household_summary(told_case(script, sentences, case)))
    comes = ENDINGS[case] in ("book_visit", "maker_seller_or_landlord_first", "stop_and_isolate")
    assert page[0] == "found"
    assert ("until_then" in page, "from_now_on" in page) == (comes, not comes)
    assert ("to_hand" in page) == comes


def lists(of: Section) -> list[Items]:
    return [block for block in of.blocks if isinstance(block, Items)]


def words_of(told: Told) -> str:
    """The whole page on one line."""
    return " ".join(as_text(household_summary(told), FOOTING).split())


def test_the_steps_after_a_stop_keep_their_order_and_switching_off_stands_apart(
    script: Script, sentences: Sentences
) -> None:
    told = told_with(script, sentences, {"danger_now": ["shock"]})
    steps = section(household_summary(told), "steps")
    assert paragraphs(steps) == [
        "First, in any case",
        "Only if it is not off yet, in this order",
        "After that, in any case",
    ]
    first, off, then = lists(steps)
    assert all(each.numbered for each in (first, off, then))
    assert (*first.items, *off.items, *then.items) == sentences.verdict(told.verdict).steps
    assert any("medical advice" in each for each in first.items)
    assert off.items[0] == "Use dry hands for any switch."
    assert "stairlift" in off.items[-2]
    assert "main switch comes last" in off.items[-1]
    assert any("Tell everybody" in each for each in then.items)


def test_who_said_that_it_is_off_is_not_told_to_switch_it_off(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, {"danger_now": ["shock"], "oven_is_off": "off_at_breaker"})
    steps = section(household_summary(told), "steps")
    is_off, in_any_case, still_lit = paragraphs(steps)
    assert is_off.startswith("You told us that it is off: “Off at its breaker in the fuse box” (2")
    assert in_any_case == "In any case"
    assert "still lit after all, it is not off" in still_lit
    (items,) = lists(steps)
    assert any("medical advice" in each for each in items.items)
    assert not any("dry hands" in each or "main switch" in each or "breaker marked" in each for each in items.items)


def test_an_oven_that_is_off_does_not_end_a_danger_in_the_homes_supply(script: Script, sentences: Sentences) -> None:
    told = told_with(
        script,
        sentences,
        {
            "danger_now": ["lights_dim_elsewhere"],
            "sign_lights_dim_elsewhere": "bright_and_dim",
            "oven_is_off": "off_at_switch",
        },
    )
    assert told.assessment.danger.off_confirmed
    (items,) = lists(section(household_summary(told), "steps"))
    assert items.items == sentences.verdict(told.verdict).steps
    assert any("switch off at the main switch" in each for each in items.items)


@pytest.mark.parametrize("sign", ["fire", "gas_smell"])
def test_with_fire_or_gas_no_word_of_switching_off_stands_apart(
    script: Script, sentences: Sentences, sign: str
) -> None:
    told = told_with(script, sentences, {"danger_now": [sign]})
    steps = section(household_summary(told), "steps")
    assert paragraphs(steps) == ["In any case"]
    assert "clock or a light is still lit" not in words_of(told)


@pytest.mark.parametrize(("region", "line"), [("great_britain", "999"), ("germany", "112")])
def test_who_leaves_the_main_switch_alone_hears_what_to_do_if_it_goes_on_smelling(
    script: Script, languages: Languages, region: str, line: str
) -> None:
    told = told_with(
        script,
        languages.sentences("en-GB", region),
        {"danger_now": ["burning_smell"], "sign_burning_smell": "like_plastic_or_fish"},
        region=region,
    )
    first, off, _ = lists(section(household_summary(told), "steps"))
    (asked,) = [each for each in off.items if "stairlift" in each]
    assert "leave the main switch alone" in asked
    for each in (first.items[0], asked):
        assert "smoke" in each
        assert "grows" in each
        assert "get everybody out" in each
        assert f"call {line}" in each
        assert each.lower().count("door behind you") == 1


@pytest.mark.parametrize("sign", ["shock", "burning_smell", "trips"])
def test_every_stop_says_once_or_oftener_what_to_do_about_flames(
    script: Script, sentences: Sentences, sign: str
) -> None:
    stops = {"burning_smell": "like_plastic_or_fish", "trips": "went_again", "shock": "tingle"}
    told = told_with(script, sentences, {"danger_now": [sign], f"sign_{sign}": stops[sign]})
    smells = "If you see flames or smoke, or if a smell grows: get everybody out."
    others = "If you see flames, or if smoke or a smell goes on or grows: get everybody out"
    assert (smells if sign == "burning_smell" else others) in words_of(told)
    off = told_with(
        script, sentences, {"danger_now": [sign], f"sign_{sign}": stops[sign], "oven_is_off": "off_at_switch"}
    )
    assert words_of(off).count("If you see flames") == 1


@pytest.mark.parametrize(("region", "line"), [("great_britain", "999"), ("germany", "112")])
@pytest.mark.parametrize(
    "answers", [BASE_DEAD, {"danger_now": ["burning_smell"], "sign_burning_smell": "like_plastic_or_fish"}]
)
def test_a_tingle_sends_for_medical_advice_and_nobody_touches_who_cannot_let_go(
    script: Script, languages: Languages, answers: dict[str, object], region: str, line: str
) -> None:
    words = words_of(told_with(script, languages.sentences("en-GB", region), answers, region=region))
    _, _, told = words.partition("feels a tingle or a shock: nobody touches the oven, or metal near it, again.")
    assert "Get medical advice at once." in told
    assert f"or if somebody cannot let go, call {line}. Do not touch somebody who cannot let go" in told


@pytest.mark.parametrize("sign", ["fire", "gas_smell"])
def test_who_stays_outside_is_sent_to_no_fuse_box_for_a_shock(script: Script, sentences: Sentences, sign: str) -> None:
    assert "feels a tingle" not in words_of(told_with(script, sentences, {"danger_now": [sign]}))


def test_a_switch_that_sparks_or_lies_beyond_a_hot_hob_is_left_for_the_fuse_box(
    script: Script, sentences: Sentences
) -> None:
    words = words_of(told_with(script, sentences, BASE_DEAD))
    assert "switch it off at the wall with dry hands" in words
    assert "sparks, is hot or looks brown, or you would reach over a hot hob, leave it and use the fuse box" in words
    assert "do not switch the oven’s breaker on again" in words


@pytest.mark.parametrize(
    ("how", "first"),
    [
        ("off_at_switch", "Switch off its breaker at the fuse box, with dry hands."),
        ("off_by_plug", "Switch off its breaker at the fuse box, with dry hands."),
        ("off_at_breaker", "You have been to its breaker already: touch nothing more there"),
        ("off_at_main", "You have been to the main switch already: touch nothing more there"),
    ],
)
def test_an_oven_still_lit_is_left_by_who_can_do_no_more(
    script: Script, sentences: Sentences, how: str, first: str
) -> None:
    told = told_with(script, sentences, {"danger_now": ["shock"], "oven_is_off": how})
    still_lit = paragraphs(section(household_summary(told), "steps"))[-1]
    assert first in still_lit
    assert "never try breakers one after another" in still_lit
    assert "keep everybody out, and call an electrician, or 105" in still_lit
    assert "call 999 from outside" in still_lit


def test_after_a_stop_there_is_one_order_of_whom_to_ring(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, {"danger_now": ["shock"]})
    (ring,) = lists(section(household_summary(told), "ring"))
    assert ring.numbered
    assert ring.items[0] == "If anybody is hurt, or if anything burns: 999."
    assert "medical advice at once" in ring.items[1]
    assert ring.items[2] == "To look at it: an electrician."
    assert ring.items[3].startswith("Afterwards, if it is under a guarantee")
    words = words_of(told)
    assert "First to look at it" not in words
    assert "ring the maker, the seller or the plan first" not in words


def test_after_a_stop_the_landlord_stands_among_those_to_ring(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, {"danger_now": ["shock"], "whose_oven": "rented"})
    (ring,) = lists(section(household_summary(told), "ring"))
    assert "tell your landlord at once, in writing" in ring.items[-1]
    assert words_of(told).count("landlord") == 1


@pytest.mark.parametrize(
    ("sign", "line"), [("gas_smell", "0800 111 999, from outside"), ("lights_dim_elsewhere", "emergency line: 105.")]
)
def test_an_emergency_line_that_is_to_be_rung_stands_with_its_number(
    script: Script, sentences: Sentences, sign: str, line: str
) -> None:
    answers = {"danger_now": [sign], "sign_lights_dim_elsewhere": "bright_and_dim"}
    (ring,) = lists(section(household_summary(told_with(script, sentences, answers)), "ring"))
    assert line in ring.items[2]


def test_what_was_told_begins_with_the_danger_and_how_it_was_switched_off(script: Script, sentences: Sentences) -> None:
    answers = {**BASE_DEAD, "danger_now": ["burning_smell"]}
    then = {"sign_burning_smell": "like_plastic_or_fish", "oven_is_off": "off_at_switch"}
    said = pairs(section(household_summary(told_with(script, sentences, answers, then=then)), "you_said"))
    assert list(said)[:3] == ["The danger", "How it was switched off", "What goes wrong"]
    assert said["The danger"] == "A burning smell: “It is like plastic, rubber or fish”"
    assert said["How it was switched off"].startswith("Off at its switch on the wall (2")


def test_who_cannot_let_go_is_helped_in_one_step(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, {"danger_now": ["shock"]})
    assert lists(section(household_summary(told), "steps"))[0].items[0] == (
        "If somebody cannot let go: do not touch them. Switch off at the fuse box at once, then call 999."
    )


def test_a_window_is_opened_only_where_nothing_smokes_and_the_smell_fades(script: Script, sentences: Sentences) -> None:
    answers = {"danger_now": ["burning_smell"], "sign_burning_smell": "like_plastic_or_fish"}
    words = words_of(told_with(script, sentences, answers))
    assert "Only if there is no smoke and the smell is fading: open a window." in words
    assert "get everybody out. Do so too if a smell does not begin to fade within a few minutes of the oven" in words


@pytest.mark.parametrize(
    ("answers", "finish"),
    [
        (BASE_DEAD, "Finish them at once on a hob or in another oven that works well, or throw them away."),
        ({"danger_now": ["gas_smell"]}, "Finish them at once in another kitchen, or throw them away."),
        ({"danger_now": ["shock"]}, "Finish them at once in another kitchen, or throw them away."),
    ],
)
def test_every_page_says_what_not_to_eat(
    script: Script, sentences: Sentences, answers: dict[str, object], finish: str
) -> None:
    words = words_of(told_with(script, sentences, answers))
    assert f"Do not eat meat, poultry, fish or eggs that are not cooked through. {finish} Food that stood" in words
    assert "infants" in words


def test_after_a_stop_food_stays_in_the_oven_and_is_not_eaten(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, {"danger_now": ["shock"]})
    assert "Leave food that is in the oven where it is, and do not eat it later." in words_of(told)


def test_a_sign_that_was_told_and_not_asked_about_comes_first(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, {**BASE_DEAD}, then={"danger_now": ["smoke"]})
    assert told.open_signs == ("smoke",)
    assert not told.verdict.stops
    first, *others = section(household_summary(told), "found").blocks
    assert isinstance(first, Paragraph)
    assert first.style == "danger"
    assert "Smoke from the oven" in first.words
    assert not any(
        "no hurry" in each.words or "no danger" in each.words for each in others if isinstance(each, Paragraph)
    )
    assert "may be used" not in words_of(told)
    assert "look_yet" not in names(household_summary(told))[0]


def test_what_was_found_before_a_visit_is_short_and_each_caution_stands_once(
    script: Script, sentences: Sentences
) -> None:
    told = told_case(script, sentences, "base_and_grill_dead")
    found = paragraphs(section(household_summary(told), "found"))
    assert found == [
        "Your answers point to something inside the oven that has to be measured or mended. "
        "That is for an appliance engineer, not for you.",
        "You told us of no danger, and there is no hurry.",
    ]
    whole = words_of(told)
    for caution in ("no panel off", "If it sparks", "tingle or a shock", "If you see flames", "What works may be used"):
        assert whole.count(caution) == 1, caution


def test_a_tenant_hears_first_what_was_found_and_then_whom_to_tell(script: Script, sentences: Sentences) -> None:
    told = told_case(script, sentences, "base_dead_in_a_rented_flat")
    what, whom, hurry = paragraphs(section(household_summary(told), "found"))
    assert "inside the oven that has to be measured or mended" in what
    assert "an appliance engineer" in what
    assert whom.startswith("It may cost you nothing if you do that first.")
    assert words_of(told).count("Before you book anybody, tell your landlord, in writing.") == 1
    assert "no hurry" in hurry


def test_ways_of_heating_that_need_what_may_have_failed_are_named(script: Script, sentences: Sentences) -> None:
    words = words_of(told_case(script, sentences, "base_dead_in_a_rented_flat"))
    assert "they need what may have failed: heat from above and below; bottom heat alone." in words


def test_ways_of_heating_that_cook_well_may_be_used_with_an_adult_near(script: Script, sentences: Sentences) -> None:
    words = words_of(told_with(script, sentences, BASE_DEAD))
    assert "What works may be used, with an adult near: fan with the heater at the back." in words
    assert "they need what may have failed: heat from above and below; bottom heat alone." in words
    weak = words_of(told_with(script, sentences, {**BASE_DEAD, "fan_cooks": "cooks_weakly"}))
    assert "What works may be used" not in weak
    assert "fan with the heater at the back" in weak.partition("they need what may have failed:")[2].partition(".")[0]


def test_where_no_way_of_heating_is_known_to_work_the_oven_stays_off_unless_one_plainly_does(
    script: Script, sentences: Sentences
) -> None:
    words = words_of(told_with(script, sentences, {**BASE_DEAD, "fan_cooks": "blows_cold"}))
    assert "Leave the oven off, unless one plainly works; use that only with an adult near." in words


def test_two_faults_that_may_be_there_at_once_are_told_as_such(script: Script, sentences: Sentences) -> None:
    may_be = section(household_summary(told_case(script, sentences, "base_and_grill_dead")), "may_be")
    assert paragraphs(may_be) == [
        "Perhaps both at once: the heater below has stopped working, and the grill heater has stopped working."
    ]
    assert "Or something that we could not put a name to" in lists(may_be)[0].items
    alone = section(household_summary(told_case(script, sentences, "base_dead_in_a_rented_flat")), "may_be")
    assert paragraphs(alone) == []


def test_looks_that_would_change_the_verdict_are_named_with_what_they_would_lead_to(
    script: Script, sentences: Sentences
) -> None:
    told = told_case(script, sentences, "bakers_door_opened_every_five_minutes")
    looks = section(household_summary(told), "look_yet")
    assert any(
        "Is anything on the floor of the oven" in each and "we would say: One small thing to do: " in each
        for each in lists(looks)[0].items
    )
    assert "come back and tell us" in paragraphs(looks)[0]


def test_no_page_sends_anybody_to_a_hot_oven(script: Script, sentences: Sentences) -> None:
    told = told_case(script, sentences, "bakers_door_opened_every_five_minutes")
    cared_for = {care: _asking(told, care) for care in Care}
    offered = {care for care, each in cared_for.items() if "look_yet" in names(household_summary(each))[0]}
    assert offered == {Care.TALK, Care.LOOK_COLD, Care.DAILY_USE}


def _asking(told: Told, care: Care) -> Told:
    """As though every question whose answer would change the verdict asked that care."""
    knowledge = told.script.knowledge
    asked = {change.question_id for change in told.verdict.would_change}
    assert asked
    questions = {
        q: question.model_copy(update={"care": care}) if q in asked else question
        for q, question in knowledge.questions.items()
    }
    changed = replace(
        told, script=replace(told.script, knowledge=knowledge.model_copy(update={"questions": questions}))
    )
    for name in ("state", "assessment", "verdict"):
        changed.__dict__[name] = getattr(told, name)
    return changed


def test_own_measurements_are_told_in_plain_words(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, MEASURED)
    light, thermometer, bread = lists(section(household_summary(told), "own_measurements"))[0].items
    assert light.startswith("With the oven set to 180 °C, the small light on the front first went out after 17:10 ")
    assert light.endswith("So your oven takes longer to get hot.")
    assert thermometer.startswith(
        "Your oven was set to 180 °C. Your thermometer showed 155 °C at the end, after 30 min"
    )
    assert re.search(r"would show 1\d\d to 1\d\d °C by then", thermometer)
    assert "stays too cool" in thermometer
    assert bread.startswith("Your bread came to 2.6 on top and 0.4 underneath")
    assert "So far behind the top the underside seldom stays" in bread
    assert FOR_ENGINEERS.findall(words_of(told)) == []


@pytest.mark.parametrize(
    ("question", "lines", "said"),
    [
        ("lamp_watch", ("0:00 lit", "30:00 end"), "did not go out in 30:00"),
        ("lamp_watch", ("0:00 lit", "4:00 out", "6:00 lit", "30:00 end"), "stops heating sooner"),
        ("lamp_watch", ("0:00 lit", "12:30 out", "14:00 lit", "30:00 end"), "Yours fits that."),
        ("bread_tray", ("top 333 333 333", "underside 333 333 333"), "Much the same happens in a sound oven"),
        ("bread_tray", ("top 000 000 000", "underside 444 444 444"), "So far behind the underside the top"),
        ("bread_tray", ("top 000 000 000", "underside 000 000 000"), "hardly browned at all"),
    ],
)
def test_each_thing_that_can_be_seen_is_told_beside_sound_ovens(
    script: Script, sentences: Sentences, question: str, lines: tuple[str, ...], said: str
) -> None:
    at_home = {name: value for name, value in MEASURED.items() if name not in MEASURES}
    told = told_with(script, sentences, {**at_home, question: lines})
    (item,) = lists(section(household_summary(told), "own_measurements"))[0].items
    assert said in item


def test_after_a_stop_nobody_measures_again(script: Script, sentences: Sentences) -> None:
    stopped = told_with(script, sentences, MEASURED, then={"danger_now": ["shock"]})
    assert "own_measurements" not in {each.name for page in household_summary(stopped).pages for each in page.sections}
    assert "Do not measure again: the oven stays off." in words_of(stopped)
    assert "Do not measure again" not in words_of(told_with(script, sentences, MEASURED))


def test_only_what_is_missing_is_to_be_had_ready(script: Script, sentences: Sentences) -> None:
    nothing_known = words_of(told_with(script, sentences, BASE_DEAD))
    assert "Maker, model and serial number." in nothing_known
    assert "How to get in" in nothing_known
    model_known = {**BASE_DEAD, "make_and_model": "Ovenmaker 60"}
    assert " The serial number. It is on a plate" in words_of(told_with(script, sentences, model_known))
    all_known = {
        **model_known,
        "serial_number": "0001 2345",
        "guarantee": "no",
        "access_for_visit": "Second floor, ring at the green door.",
    }
    ready = section(household_summary(told_with(script, sentences, all_known)), "to_hand")
    assert lists(ready)[0].items == ("Ask what coming out costs before you agree to it.",)


def test_nobody_has_papers_ready_for_an_emergency_line(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, {"danger_now": ["fire"]})
    assert "to_hand" not in names(household_summary(told))[0]


def test_where_nothing_was_said_nobody_is_sent_to_what_was(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, {})
    assert "you_said" not in names(household_summary(told))[0]
    assert paragraphs(section(household_summary(told), "to_hand")) == ["They will ask for this:"]


def test_with_gas_nobody_goes_back_before_it_is_safe(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, {"danger_now": ["gas_smell"]})
    (stay_out,) = lists(section(household_summary(told), "until_then"))[0].items
    assert stay_out.startswith("Stay outside until those whom you called say that it is safe.")


def test_what_was_said_is_read_back_to_the_reader_complaint_first(script: Script, sentences: Sentences) -> None:
    said = pairs(section(household_summary(told_with(script, sentences, BASE_DEAD)), "you_said"))
    assert list(said)[:2] == ["What goes wrong", "In your own words"]
    assert said["Which oven"].startswith("One electric oven in a cupboard")
    assert not {"Complaint", "Kind", "In their own words", "What else they said"} & said.keys()


def test_a_gas_oven_that_burns_badly_is_left_and_the_gas_line_called(script: Script, sentences: Sentences) -> None:
    told = told_case(script, sentences, "gas_oven")
    words = words_of(told)
    for sign in ("yellow or lazy", "soot", "headache", "carbon monoxide alarm"):
        assert sign in words
    for deed in (
        "turn the oven off and open the windows on your way out, go outside with everybody, and call 0800 111 999",
        "Who feels sick needs medical help at once. If they are faint, or if there is a fire, call 999.",
        "leave it off until a registered gas engineer has looked at it",
        "take no panel off",
        "They will ask what you noticed and since when",
    ):
        assert deed in words
    assert "landlord" not in words
    rented = told_with(script, sentences, {"whose_oven": "rented", "which_appliance": "gas_oven"})
    assert "tell your landlord at once, in writing" in words_of(rented)


@pytest.mark.parametrize(
    ("case", "said"),
    [
        ("agent_unlocks_a_childs_lock", "Once that is done, you may use the oven."),
        ("always_a_little_uneven_at_the_back", "You may go on using the oven."),
        ("bakers_door_opened_every_five_minutes", "You may use the oven in the way that stands above."),
        ("base_and_grill_dead", "What works may be used"),
        ("agent_hears_of_burning_plastic_late", "Leave the oven off"),
    ],
)
def test_every_page_says_whether_the_oven_may_be_used(
    script: Script, sentences: Sentences, case: str, said: str
) -> None:
    assert said in words_of(told_case(script, sentences, case))


def test_an_oven_whose_danger_was_taken_back_stays_off(script: Script, sentences: Sentences) -> None:
    told = told_with(
        script,
        sentences,
        {**BASE_DEAD, "danger_now": ["sparks"]},
        then={"danger_now": ["none"], "sign_sparks": "no", "sign_split_element": "no"},
    )
    assert "sparks" in told.assessment.danger.withdrawn
    assert not told.assessment.danger.open
    words = words_of(told)
    assert "pointed to danger, and no longer does" in words
    assert "Leave the oven off until then." in words
    assert "may be used" not in words
    assert "no danger, and there is no hurry" not in words


def test_after_a_stop_nobody_is_sent_back_to_read_the_plate(script: Script, sentences: Sentences) -> None:
    stopped = as_text(household_summary(told_with(script, sentences, {"danger_now": ["shock"]})), FOOTING)
    assert "serial number" not in stopped
    assert "serial number" in as_text(household_summary(told_case(script, sentences, "base_and_grill_dead")), FOOTING)


def test_a_gas_oven_gets_the_line_for_gas_and_no_word_of_electricity(script: Script, sentences: Sentences) -> None:
    summary = household_summary(told_case(script, sentences, "gas_oven"))
    assert "0800 111 999" in paragraphs(section(summary, "from_now_on"))[0]
    assert "fuse box" not in as_text(summary, FOOTING)


def test_food_that_stayed_lukewarm_is_never_called_safe(script: Script, sentences: Sentences) -> None:
    words = paragraphs(section(household_summary(told_case(script, sentences, "base_and_grill_dead")), "until_then"))
    assert any("in doubt, throw it away" in each for each in words)
    assert not any("safe" in each for each in words)


def test_only_what_was_answered_is_read_back(script: Script, sentences: Sentences) -> None:
    told = told_case(script, sentences, "base_and_grill_dead")
    assert "not sure" not in as_text(household_summary(told), FOOTING)


def test_a_tenant_in_danger_is_told_to_tell_the_landlord_and_not_to_pay(script: Script, sentences: Sentences) -> None:
    told = told_with(script, sentences, {"danger_now": ["shock"], "whose_oven": "rented"})
    words = as_text(household_summary(told), FOOTING)
    assert "tell your landlord at once, in writing" in " ".join(words.split())
    assert "costs before you agree" not in words


@pytest.mark.parametrize("case", ["base_dead_in_a_rented_flat", "agent_hears_of_burning_plastic_late"])
def test_whoever_waits_for_somebody_is_told_to_leave_panels_on(script: Script, sentences: Sentences, case: str) -> None:
    words = " ".join(as_text(household_summary(told_case(script, sentences, case)), FOOTING).split())
    assert "take no panel off" in words


def test_what_a_look_may_lead_to_is_said_with_the_very_thing_to_do(script: Script, sentences: Sentences) -> None:
    words = words_of(told_case(script, sentences, "base_and_grill_dead"))
    assert "one small thing to do yourself" not in words
    assert "we would say: One small thing to do: " in words
