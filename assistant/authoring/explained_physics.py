"""What a cause or an effect changes in the oven model, in words; and what measurements then show, as simulated."""

from collections.abc import Iterator, Mapping, Sequence

from assistant.authoring.explained import Book, listed, percent
from assistant.belief.outcomes_ahead import NOTHING_CHANGED, named_ways
from assistant.belief.physical import behaves
from assistant.knowledge.model import Foreseen, Physical, PhysicalChange, Question
from assistant.knowledge.report_checks import LAMP_STAYS

YES_OR_NO = frozenset({"never_opens", "never_closes", "heats_regardless", "cut_out_resets"})
"""Parameters that are either so or not: so from a half on."""
LEAST_TOLD = 1.0
"""Percent: what didn't happen in any simulated oven is foreseen with less."""
LEAST_APART = 2.0
"""Points of percent: what differs less from sound ovens may be chance."""


def changes(book: Book, physical: Physical, of_effect: Physical | None = None, effect: str = "") -> Iterator[str]:
    """Each change with how much, how widely and who says so; of a cause, those that come from its effect are named."""
    for name, change in physical.items():
        said = book.say("change_source", change=_change(book, name, change), source=change.source)
        taken_over = of_effect is not None and of_effect.get(name) == change
        yield book.say("from_effect", row=said, effect=effect) if taken_over else said
    if not physical and book.script.knowledge.foreseen:
        yield book.say("change_none")


def _change(book: Book, name: str, change: PhysicalChange) -> str:
    what = book.told(f"explain-parameter_{name}")
    if change.to is not None:
        return _becomes(book, name, what, change.to, change.spread)
    if change.by is not None:
        return book.say("change_by", what=what, **_range(book, name, change.by, change.spread, sign="+"))
    middle = change.times or 0.0
    if not change.spread and middle in (0, 1):
        return book.say("change_nothing_left" if middle == 0 else "change_kept", what=what)
    return book.say("change_times", what=what, **_range(book, "", middle, change.spread))


def _becomes(book: Book, name: str, what: str, value: float, spread: float) -> str:
    if name == LAMP_STAYS:
        return book.say("change_lamp_lit" if value > 0 else "change_lamp_dark")
    if name in YES_OR_NO:
        share = (value + spread - 0.5) / (2 * spread) if spread else float(value > 0.5)
        return book.say("change_share", what=what, percent=percent(min(max(share, 0.0), 1.0)))
    return book.say("change_to", what=what, **_range(book, name, value, spread))


def _range(book: Book, name: str, middle: float, spread: float, sign: str = "") -> Mapping[str, str]:
    """Least and most, shares in a hundred; `amounts` tells whether there is more than one."""
    unit = "K" if sign and _unit(book, name) == "°C" else _unit(book, name)
    scale = 100 if unit == "%" else 1
    low, high = (f"{scale * end:{sign}.4g}".replace("-", "−") for end in (middle - spread, middle + spread))
    return {"low": low, "high": high, "amounts": "several" if spread else "one", "unit": unit}


def _unit(book: Book, name: str) -> str:
    return book.told(f"explain-parameter_{name}", "unit") if name else ""


def measured(book: Book, physical: Physical) -> Iterator[str]:
    """Of each measurement what ovens that are changed so come to, beside sound ones; none where nothing is changed."""
    knowledge = book.script.knowledge
    way = {behaviour: name for name, behaviour in named_ways(knowledge).items()}.get(behaves([physical]))
    if way == NOTHING_CHANGED:
        return
    as_sound, told = [], False
    for question_id, each in knowledge.foreseen.items():
        if question_id not in knowledge.questions or NOTHING_CHANGED not in each.ways or way not in each.ways:
            yield book.say("measured_unknown", question=question_id)
        elif _alike(each.ways[way], each.ways[NOTHING_CHANGED]):
            as_sound.append(question_id)
        else:
            told |= knowledge.questions[question_id].kind == "lamp_log"
            yield _outcomes(book, question_id, knowledge.questions[question_id], each, way)
    if as_sound:
        yield book.say("measured_as_sound", names=listed(as_sound))
    if told:
        yield book.say("measured_usual")


def _alike(changed: Sequence[float], sound: Sequence[float]) -> bool:
    return all(abs(one - other) < LEAST_APART for one, other in zip(changed, sound, strict=True))


def _outcomes(book: Book, question_id: str, question: Question, each: Foreseen, way: str) -> str:
    """What the changed ovens come to, the most frequent first, beside the sound ones."""
    rows = sorted(zip(each.ways[way], each.ways[NOTHING_CHANGED], each.outcomes, strict=True), reverse=True)
    told = [
        book.say(
            "measured_outcome", outcome=book.told(f"explain-outcome_{outcome}"), percent=f"{now:g}", sound=f"{sound:g}"
        )
        for now, sound, outcome in rows
        if now >= LEAST_TOLD
    ]
    run = {"way": question.run.way, "setting": f"{question.run.setting.value:g}"} if question.run else {}
    return book.say("measured", question=question_id, outcomes="; ".join(told), **run)
