"""What the household minds until somebody comes, or from now on: what may be used, what not, and when it gets worse."""

from collections.abc import Iterator

from assistant.reports.summary.found import GAS_ENGINEER
from assistant.reports.summary.own_measurements import were_made
from assistant.reports.summary.session import Told
from assistant.reports.summary.value import Block, Items, Paragraph
from assistant.reports.summary.ways import ways_told

STEP_FOR_SHOCK = "shock_medical"
STEPS_FOR_FLAMES = frozenset({"fire_call", "smoke_grows_call"})


def meanwhile(told: Told) -> Iterator[Block]:
    """Each thing once; never a hand at the oven's inside."""
    who, stops = told.verdict.details.get("who"), told.assessment.danger.stops
    if who == GAS_ENGINEER and not told.somebody_comes:
        yield Paragraph(told.say("gas", **told.sentences.lines), "strong")
        yield Paragraph(told.say("gas_burns_badly", **told.sentences.lines), "strong")
        yield Items(tuple(_gas_oven(told)))
    elif who == "gas_emergency":
        yield Items((told.say("gas_stay_out"),))
    elif stops:
        yield Paragraph(told.say("leave_off"), "strong")
        again = (told.say("own_do_not_repeat"),) if were_made(told) else ()
        yield Items((told.say("no_panel"), *again, *_flames(told), *_shock_after_a_stop(told)))
    else:
        yield Items(tuple(_while_waiting(told) if told.somebody_comes else _from_now_on(told)))
    if stops:
        yield Paragraph(told.say("food_inside"))
    yield Paragraph(told.say("food", finish="elsewhere" if stops or who == GAS_ENGINEER else "here"))


def _gas_oven(told: Told) -> Iterator[str]:
    yield told.say("gas_leave_off", who=told.sentences.who(told.verdict))
    yield told.say("gas_no_panel")
    if told.is_rented:
        yield told.say("gas_landlord")
    yield told.say("gas_they_ask")


def _flames(told: Told) -> Iterator[str]:
    """What to do about flames, where no step has said it."""
    steps = told.verdict.details.get("steps", ())
    if not isinstance(steps, tuple) or STEPS_FOR_FLAMES.isdisjoint(steps):
        yield told.say("worse", **told.sentences.lines)


def _shock_after_a_stop(told: Told) -> Iterator[str]:
    """Where no step has said it, and somebody may still go to the fuse box."""
    steps = told.verdict.details.get("steps", ())
    said = isinstance(steps, tuple) and STEP_FOR_SHOCK in steps
    if told.assessment.danger.ask_whether_off and not said:
        yield told.say("watch_for_shock", oven="stopped", **told.sentences.lines)


def _while_waiting(told: Told) -> Iterator[str]:
    """Until a visit: what works may be used where there is no hurry."""
    if _must_stay_off(told):
        yield told.say("stays_off")
    else:
        ways = ways_told(told)
        yield told.say("ways_to_use", ways=_named(told, ways.to_use)) if ways.to_use else told.say("ways_unknown")
        if ways.to_leave:
            yield told.say("ways_to_leave", ways=_named(told, ways.to_leave))
    yield told.say("no_panel")
    yield from _when_it_gets_worse(told)


def _must_stay_off(told: Told) -> bool:
    danger = told.assessment.danger
    return bool(danger.open or danger.withdrawn) or told.verdict.details.get("urgency") != "routine"


def _from_now_on(told: Told) -> Iterator[str]:
    danger = told.assessment.danger
    if danger.open:
        yield told.say("stays_off")
    elif told.verdict.action != "outside" and not danger.withdrawn:
        yield told.say("may_be_used", action=told.verdict.action)
    yield told.say("no_panel")
    yield from _when_it_gets_worse(told)


def _when_it_gets_worse(told: Told) -> Iterator[str]:
    put_back = told.verdict.details.get("act") == "reset_breaker_once"
    yield told.say("watch_for", breaker="put_back" if put_back else "left")
    yield told.say("watch_for_shock", oven="in_use", **told.sentences.lines)
    yield told.say("worse", **told.sentences.lines)
    yield told.say("in_doubt_off")


def _named(told: Told, ways: tuple[str, ...]) -> str:
    return "; ".join(told.sentences.wording.say(f"function-{way}") for way in ways)
