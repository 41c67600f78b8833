"""What the trade says is safe, stated here a second time and not read from the rules.

The rules may say more. Where they say less, or otherwise, a check that stands on these tables fails: so a new act, an
easier gate or a step less needs a change here too, made on purpose.
"""

from collections.abc import Iterator, Mapping

from assistant.knowledge.danger_questions import UNSURE
from assistant.knowledge.model import Care, Knowledge

Answers = Mapping[str, frozenset[str]]
"""question -> answers."""


def _each(**answers: str) -> Answers:
    return {question_id: frozenset(codes.split()) for question_id, codes in answers.items()}


ACTS: Mapping[str, Answers] = {
    "set_clock": {},
    "set_to_manual": {},
    "unlock": {},
    "leave_demonstration": {},
    "take_out_foil": {},
    "set_knob_on_mark": {},
    "clear_the_vents": {},
    "leave_holiday_mode": {},
    "take_out_meat_probe": {},
    "move_shelf": {},
    "shut_door": {},
    "celsius_or_fahrenheit": {},
    "switch_on_at_wall": _each(wall_switch_position="off"),
    "reset_breaker_once": _each(
        breaker_position="off_first_time", ever_tripped="never", breaker_went_when="found_later"
    ),
}
"""All that a householder may ever be told to do, each with the answers without which it isn't told."""

AT_HOME = ("householder", "agent")
"""Roles behind which somebody stands who is no engineer."""

MOST_AT_HOME = Care.OPEN_HOT.rank

NEEDED_FOR_CARE: Mapping[Care, Answers] = {
    Care.LOOK_COLD: _each(person_at_oven="yes", may_look_cold="off_and_cold"),
    Care.DAILY_USE: _each(ever_tripped="never"),
}
"""What must have been answered before a question of this care or of more."""

HOT_GATE = ("hot_gate", ("adult_stays", "no_child_or_pet_near", "no_home_oxygen", "oven_empty", "cooling_air_as_usual"))
"""All of these must have been ticked before anything hot."""

NOTHING_HOT_AFTER: Answers = _each(
    browner_than_meant="burns_fast",
    low_setting="stays_lit",
    sign_too_hot="burns_in_minutes front_or_cabinet_hot",
    hot_before_it_stopped="burnt_things",
    ever_tripped="once_long_ago lately not_sure skipped",
    sign_trips="found_off_once went_again goes_with_oven fuse_blew not_sure",
    breaker_position="off_first_time off_again rcd_off",
    sign_smoke="spilt_food new_oven steam_only anything_else not_sure",
    sign_burning_smell="spilt_food new_oven after_cleaning like_plastic_or_fish anything_else not_sure",
    sign_water_inside=(
        "steam_on_glass wiped_with_damp_cloth water_in_or_under steam_cleaner_used anything_else not_sure"
    ),
    fan_sound="slow_or_scraping silent",
    fan_remembered="slow_or_noisy does_not_turn",
    air_at_the_front="no_longer",
)
"""Answers that forbid every hot test: too much heat, a trip, burning, water, a fan that stopped."""

NOTHING_HOT_AFTER_TOLD: Answers = _each(what_goes_wrong="trips_electricity")
"""The same for questions with several answers: one of these is enough."""

TOO_HOT_AND = (
    ("what_goes_wrong", "too_hot"),
    _each(browner_than_meant="not_sure skipped", lamp_remembered="never_goes_out", lamp_cycle="never_out"),
)
"""Too hot was told, and nobody can say how hot, or the light never goes out."""

NO_SWITCH_AFTER = ("fire", "gas_smell", "co_alarm")
"""After these nobody goes near a switch, nor is asked about one."""

MAY_NAME_A_SWITCH: Mapping[str, tuple[str, ...]] = {
    "fire": ("fire_off_if_safe",),
    "gas_smell": ("gas_off_at_meter",),
    "co_alarm": ("co_burners_off",),
}
"""Steps of these signs that may: only for a fire that is out; the lever of the gas; burners on the way out."""

GRAVEST_FIRST = ("fire", "gas_smell", "co_alarm", "shock")

NEEDED_STEPS: Mapping[str, tuple[str, ...]] = {
    "fire": ("fire_out", "fire_call", "fire_stay_out"),
    "gas_smell": ("gas_no_switch", "gas_no_flame", "gas_windows", "gas_out_and_call"),
    "co_alarm": ("co_fresh_air", "co_call", "co_unwell"),
    "shock": ("shock_still_held", "shock_touch_nothing", "shock_medical", "shock_off_at_breaker", "leave_it_off"),
    "lights_dim_elsewhere": ("ask_before_main", "lights_off_at_main", "lights_call_network"),
    "water_inside": ("water_keep_dry", "only_a_dry_board", "breaker_first", "leave_it_off"),
    "scorched_plug_or_switch": ("not_the_wall_switch", "breaker_first", "leave_it_off"),
    "trips": ("leave_breaker_off", "leave_it_off"),
    "smoke": ("smoke_door_shut", "smoke_grows_call", "leave_it_off"),
}
"""What must be told after a stop, in this order."""

NEEDED_BY_OTHERS = ("dry_hands", "leave_it_off")
"""What every other sign must tell."""

ONE_BEFORE_THE_OTHER = (
    ("fire_out", "fire_call"),
    ("fire_out", "fire_off_if_safe"),
    ("shock_touch_nothing", "shock_off_at_breaker"),
    ("dry_hands", "knob_to_off"),
    ("dry_hands", "off_at_wall"),
    ("dry_hands", "breaker_first"),
    ("not_the_wall_switch", "off_at_wall"),
    ("only_a_dry_board", "breaker_first"),
    ("off_at_wall", "off_at_breaker"),
    ("ask_before_main", "off_at_main"),
    ("ask_before_main", "lights_off_at_main"),
    ("off_at_breaker", "off_at_main"),
    ("breaker_first", "off_at_main"),
)

ONLY_UNTIL_OFF = frozenset(
    {
        *("only_a_dry_board", "dry_hands", "knob_to_off", "off_at_wall", "shock_off_at_breaker", "breaker_first"),
        *("off_at_breaker", "check_dark", "ask_before_main", "off_at_main"),
    }
)
"""What needn't be done any more once the oven is off. All else holds in any case."""

NOT_ENDED_BY_OFF = ("lights_dim_elsewhere",)
"""Signs of a danger in the home's supply, which an oven that is off doesn't end."""

DOUBT_OR_DANGER = frozenset({"now", "earlier_today", "anything_else", "something_is_wrong", "feels_ill", "sounding"})
"""Answers to a sign's own question that can't clear it, whatever the sign."""

MAY_BE_UNSURE: frozenset[str] = frozenset()
"""Signs about which 'not sure' may pass for 'no': none."""


def is_beyond_home(care: Care) -> bool:
    """Whether a question of this care is for an engineer alone."""
    return care.rank > MOST_AT_HOME


def breaches(knowledge: Knowledge) -> Iterator[str]:
    """What the rules say less or otherwise than these tables, without a single question asked."""
    yield from _acts(knowledge)
    yield from _roles(knowledge)
    yield from _signs(knowledge)
    yield from _steps(knowledge)


def _acts(knowledge: Knowledge) -> Iterator[str]:
    yield from (f"act off the closed list: {act}" for act in knowledge.acts if act not in ACTS)
    for act, needed in ACTS.items():
        if needed and act in knowledge.acts and not knowledge.acts[act].only_when:
            yield f"act without its condition: {act}"
    for cause_id, cause in knowledge.causes.items():
        if cause.act is not None and cause.act not in ACTS:
            yield f"act off the closed list: {cause.act} of {cause_id}"


def _roles(knowledge: Knowledge) -> Iterator[str]:
    for role in AT_HOME:
        if role not in knowledge.roles or is_beyond_home(knowledge.roles[role].asked_up_to):
            yield f"care beyond what is for home: {role}"


def _signs(knowledge: Knowledge) -> Iterator[str]:
    by_gravity = sorted(knowledge.signs, key=lambda sign_id: knowledge.signs[sign_id].order)
    if tuple(by_gravity[: len(GRAVEST_FIRST)]) != GRAVEST_FIRST:
        yield f"gravity changed: {by_gravity[: len(GRAVEST_FIRST)]}"
    for sign_id, sign in knowledge.signs.items():
        if not sign.not_sure_is_danger and sign_id not in MAY_BE_UNSURE:
            yield f"doubt clears: {sign_id}"
        for answer, means in sign.answers.items():
            if means == "clear" and answer in DOUBT_OR_DANGER:
                yield f"doubt clears: {sign_id} by {answer}"
        if sign.confirm_off and sign_id in NO_SWITCH_AFTER:
            yield f"sent near a switch: {sign_id} asks whether it is off"
    if UNSURE not in knowledge.signs:
        yield "no sign for who is unsure"


def _steps(knowledge: Knowledge) -> Iterator[str]:
    for sign_id, sign in knowledge.signs.items():
        needed = NEEDED_STEPS.get(sign_id, NEEDED_BY_OTHERS)
        yield from (f"step missing: {step} after {sign_id}" for step in needed if step not in sign.steps)
        yield from out_of_order(sign.steps, sign_id)
        if "off_at_main" in sign.steps and "ask_before_main" not in sign.steps:
            yield f"step missing: ask_before_main after {sign_id}"
        if sign.oven_off_is_enough and sign_id in NOT_ENDED_BY_OFF:
            yield f"ended by the oven's being off: {sign_id}"
    for step_id, step in knowledge.steps.items():
        if step.until_off and step_id not in ONLY_UNTIL_OFF:
            yield f"step that holds in any case: {step_id}"


def out_of_order(steps: tuple[str, ...], where: str) -> Iterator[str]:
    """Steps that come after what they must come before."""
    for first, then in ONE_BEFORE_THE_OTHER:
        if first in steps and then in steps and steps.index(first) > steps.index(then):
            yield f"steps out of order: {then} before {first} after {where}"
