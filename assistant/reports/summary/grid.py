"""What was said of each way of heating, place by place: the pattern by which a dead part shows."""

from collections.abc import Iterable, Mapping

from assistant.interview.answers import still_fits
from assistant.interview.assess import kind_of_oven
from assistant.interview.state import Answer
from assistant.knowledge.kinds import MEASURED_CODES
from assistant.knowledge.model import Question
from assistant.knowledge.readings import summary
from assistant.reports.summary.session import Told
from assistant.reports.summary.value import Table

PLACES = ("top", "base", "rear", "fan", "lamp")
_PARTS: Mapping[str, frozenset[str]] = {
    "top": frozenset({"top_element", "grill_element"}),
    "base": frozenset({"base_element"}),
    "rear": frozenset({"ring_element"}),
    "fan": frozenset({"oven_fan"}),
}


def grid(told: Told) -> Table | None:
    """A row for each way of heating that anything was said of; None without any.

    A place that a way of heating doesn't use is marked; one that nothing was said of says so.
    """
    said = _said(told)
    ways = [way for way in told.script.knowledge.ovens.functions if any(key[0] == way for key in said)]
    if not ways:
        return None
    columns = (told.say("column_way"), *(told.say(f"place_{place}") for place in PLACES))
    return Table(columns, tuple(_row(told, way, said) for way in ways), compact=True)


def _said(told: Told) -> dict[tuple[str, str], list[str]]:
    found: dict[tuple[str, str], list[str]] = {}
    for question_id, question in told.script.knowledge.questions.items():
        answer = told.state.answers.get(question_id)
        if question.speaks_of is None or answer is None or answer.status != "answered":
            continue
        code = _code(question, answer)
        if code is not None:
            word = told.sentences.wording.say(f"question-{question_id}", f"{code}-short")
            found.setdefault((question.speaks_of.way, question.speaks_of.place), []).append(word)
    return found


def _code(question: Question, answer: Answer) -> str | None:
    """What was chosen, or the one word of what was measured; None where today's rules no longer know it."""
    if not still_fits(question, answer.value):
        return None
    if question.kind in MEASURED_CODES:
        return summary(question, [str(line) for line in _listed(answer.value)])
    return answer.value if isinstance(answer.value, str) else None


def _listed(value: object) -> Iterable[object]:
    return value if isinstance(value, tuple | list) else ()


def _row(told: Told, way: str, said: Mapping[tuple[str, str], list[str]]) -> tuple[str, ...]:
    used = set(told.script.knowledge.ovens.uses(way, kind_of_oven(told.state.answers, told.script.knowledge)))
    cells = [told.sentences.wording.say(f"function-{way}")]
    for place in PLACES:
        words = said.get((way, place))
        if words:
            cells.append("; ".join(dict.fromkeys(words)))
        elif place != "lamp" and used.isdisjoint(_PARTS[place]):
            cells.append(told.say("cell_not_used"))
        else:
            cells.append(told.say("cell_not_told"))
    return tuple(cells)
