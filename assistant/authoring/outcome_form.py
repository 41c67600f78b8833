"""The short form: one question after another for what wasn't told on the command line. Enter skips."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TextIO

from rapidfuzz import fuzz, process

from assistant.authoring.outcome_words import cause_name, part_name, result_name, say_misfit
from assistant.belief.hypotheses import SOMETHING_ELSE
from assistant.belief.outcomes import FOUND_SOMETHING, NO_VISIT, RESULTS
from assistant.interview.commands import RecordOutcome
from assistant.interview.visit_outcome import misfits_of
from assistant.knowledge.model import Knowledge
from assistant.wording.locale import Wording
from assistant.wording.words import normalised, tokens

FIELDS = ("result", "cause_found", "second_cause", "part_fitted", "minutes", "note")
MOST_SHOWN = 6
ALIKE = 70
MOST_DIGITS = 4

Asking = Callable[[str], str]
"""A prompt -> one typed line. Raises EOFError and KeyboardInterrupt."""


@dataclass(frozen=True)
class Choices:
    """Ids with their names. `first`: those that are shown before anything is typed; all can be searched."""

    names: Mapping[str, str]
    first: Sequence[str]


@dataclass(frozen=True)
class Form:
    """`likeliest`: causes, the likeliest first, called for only where a cause is asked after."""

    knowledge: Knowledge
    wording: Wording
    ask: Asking
    out: TextIO
    likeliest: Callable[[], Sequence[str]]

    def filled(self, told: RecordOutcome) -> RecordOutcome:
        """What was told, with answers where nothing was. Raises EOFError and KeyboardInterrupt: it is given up."""
        for field in FIELDS:
            if not getattr(told, field) and _is_open(field, told):
                told = self._fitting(field, told)
            if field == "result" and not told.result:
                raise EOFError
        return told

    def _fitting(self, field: str, told: RecordOutcome) -> RecordOutcome:
        """Asked again as long as the answer can't be so, by itself or beside what was told before."""
        before = misfits_of(self.knowledge, told)
        while True:
            changed = replace(told, **{field: self._answer(field, told)})
            wrong = [
                each
                for each in misfits_of(self.knowledge, changed)
                if each.where == field or (getattr(changed, each.where) and each not in before)
            ]
            if not wrong or (field == "result" and not changed.result):
                return changed
            self._say(say_misfit(wrong[0], self.wording))

    def _answer(self, field: str, told: RecordOutcome) -> str:
        self._say("")
        self._say(self.wording.say(f"outcome_form-{field}"))
        choices = self._choices(field, told)
        return self.ask(self.wording.say("outcome_form-prompt")) if choices is None else self._chosen(choices)

    def _choices(self, field: str, told: RecordOutcome) -> Choices | None:
        causes, parts = self.knowledge.causes, self.knowledge.ovens.parts
        if field == "result":
            return Choices({each: result_name(each, self.wording) for each in RESULTS}, RESULTS)
        if field in ("cause_found", "second_cause"):
            names = {each: cause_name(each, self.wording) for each in (*causes, SOMETHING_ELSE)}
            likeliest = [each for each in self.likeliest() if each not in (told.cause_found, SOMETHING_ELSE)]
            return Choices(names, [*likeliest[: MOST_SHOWN - 1], SOMETHING_ELSE])
        if field == "part_fitted":
            found = [causes[each].part for each in (told.cause_found, told.second_cause) if each in causes]
            first = [part for part in dict.fromkeys(found) if part is not None]
            return Choices({each: part_name(each, self.wording) for each in parts}, first)
        return None

    def _chosen(self, choices: Choices) -> str:
        """By its number, by its name, or by words of it among several."""
        listed = list(choices.first)
        while True:
            for number, each in enumerate(listed, 1):
                self._say(f"  {number}  {choices.names[each]}")
            typed = self.ask(self.wording.say("outcome_form-prompt")).strip()
            if not typed:
                return ""
            if typed.isascii() and typed.isdigit():
                number = _number(typed)
                if 1 <= number <= len(listed):
                    return listed[number - 1]
                self._say(self.wording.say("outcome_form-no_such_number"))
                continue
            found = search(typed, choices.names)
            if len(found) == 1:
                self._say(f"  {choices.names[found[0]]}")
                return found[0]
            self._say(self.wording.say("outcome_form-several" if found else "outcome_form-not_found"))
            listed = found or listed

    def _say(self, line: str) -> None:
        self.out.write(line + "\n")


def _number(digits: str) -> int:
    """0 for one of more than four digits, which no list has."""
    significant = digits.lstrip("0")
    return int(significant or 0) if len(significant) <= MOST_DIGITS else 0


def _is_open(field: str, told: RecordOutcome) -> bool:
    """Whether what was told so far leaves anything to tell there."""
    result = "_".join(tokens(told.result))
    if field == "cause_found":
        return result in FOUND_SOMETHING
    if field == "second_cause":
        return bool(told.cause_found) and result in FOUND_SOMETHING
    return field in ("result", "note") or result not in NO_VISIT


def search(typed: str, names: Mapping[str, str]) -> list[str]:
    """The ids whose names hold all the words typed, each at least by its beginning; else those alike, the nearest
    first. One alone where it is named as a whole.
    """
    said = normalised(typed)
    texts = {each: normalised(f"{name} {each}") for each, name in names.items()}
    whole = [each for each, name in names.items() if said in (normalised(name), normalised(each))]
    if len(whole) == 1:
        return whole
    holding = [each for each, text in texts.items() if said and _holds(text.split(), said.split())]
    if holding:
        return holding[:MOST_SHOWN]
    near = process.extract(said, texts, scorer=fuzz.token_set_ratio, score_cutoff=ALIKE, limit=MOST_SHOWN)
    return [each for _, _, each in near]


def _holds(words: Sequence[str], typed: Sequence[str]) -> bool:
    return all(any(word.startswith(each) for word in words) for each in typed)
