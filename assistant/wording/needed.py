"""The messages that a set of rules calls for, and which rule file calls for each."""

from collections.abc import Iterator
from dataclasses import dataclass

from assistant.knowledge.kinds import MEASURED_CODES
from assistant.knowledge.model import Knowledge
from assistant.wording.locale import Wording


@dataclass(frozen=True)
class Needed:
    """A message, or one of its attributes, and the file in the rules folder without which nobody would need it."""

    message: str
    attribute: str | None
    file: str

    @property
    def name(self) -> str:
        return self.message if self.attribute is None else f"{self.message}.{self.attribute}"


def needed_messages(knowledge: Knowledge) -> Iterator[Needed]:
    yield from _for_questions(knowledge)
    yield from _for_signs(knowledge)
    for cause_id, cause in knowledge.causes.items():
        file = f"causes/{cause_id}.yaml"
        yield Needed(f"cause-{cause_id}", None, file)
        yield from (Needed(f"cause-{cause_id}", attribute, file) for attribute in ("explain", "trade"))
        if cause.kind == "fault":
            yield Needed(f"who-{cause.mended_by}", None, file)
    for finding_id, finding in knowledge.findings.items():
        yield Needed(f"finding-{finding_id}", None, f"findings/{finding_id}.yaml")
        if finding.then.hands_on_to is not None:
            yield Needed(f"who-{finding.then.hands_on_to}", None, f"findings/{finding_id}.yaml")
    for kind, ids, file in (
        ("act", knowledge.acts, "acts.yaml"),
        ("advice", knowledge.advice, "advice.yaml"),
        ("step", knowledge.steps, "steps.yaml"),
        ("part", knowledge.ovens.parts, "ovens.yaml"),
        ("function", knowledge.ovens.functions, "ovens.yaml"),
    ):
        yield from (Needed(f"{kind}-{entry_id}", None, file) for entry_id in ids)
    yield from (Needed(f"part-{part}", "trade", "ovens.yaml") for part in knowledge.ovens.parts)
    yield from (Needed(f"observable-{name}", None, f"observables/{name}.yaml") for name in knowledge.observables)


def _for_questions(knowledge: Knowledge) -> Iterator[Needed]:
    sign_of = {f"sign_{sign}": sign for sign in knowledge.signs}
    for question_id, question in knowledge.questions.items():
        message = f"question-{question_id}"
        file = f"danger/{sign_of[question_id]}.yaml" if question_id in sign_of else f"questions/{question_id}.yaml"
        yield from (Needed(message, attribute, file) for attribute in (None, "how", "why"))
        for choice in question.choices:
            if choice not in knowledge.signs:
                yield from (Needed(message, attribute, file) for attribute in (choice, f"{choice}-words"))
        if question.stage == "tests":
            yield from (Needed(message, attribute, file) for attribute in ("label", "where", "expected"))
        if question.speaks_of is not None:
            codes = (*question.choices, *MEASURED_CODES.get(question.kind, ()))
            yield from (Needed(message, f"{code}-short", file) for code in codes)


def _for_signs(knowledge: Knowledge) -> Iterator[Needed]:
    for sign_id, sign in knowledge.signs.items():
        file = f"danger/{sign_id}.yaml"
        yield Needed(f"sign-{sign_id}", None, file)
        yield Needed(f"who-{sign.who}", None, file)
        if sign.on_screen:
            yield Needed(f"sign-{sign_id}", "phrases", file)


def missing_messages(knowledge: Knowledge, wording: Wording) -> Iterator[Needed]:
    """Those that the language lacks, each once."""
    seen: set[str] = set()
    for needed in needed_messages(knowledge):
        if needed.name not in seen and not wording.has(needed.message, needed.attribute):
            seen.add(needed.name)
            yield needed
