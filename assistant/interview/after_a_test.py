"""What each reading of a planned test would speak for."""

from collections.abc import Mapping
from dataclasses import dataclass

from assistant.belief.posterior import posterior
from assistant.interview.assess import Assessment
from assistant.interview.script import Script
from assistant.interview.verdict import named_causes


@dataclass(frozen=True)
class Reading:
    """One way for a test to come out: its `code`; what is then likeliest of all; and the named cause that it makes
    more probable than any other, with what that was before. `causes`: how probable each cause is then.
    """

    code: str
    leading: str
    probability: float
    raised: str
    raised_to: float
    raised_from: float
    causes: Mapping[str, float]


def after_a_test(
    script: Script, assessment: Assessment, test_id: str, made: Mapping[str, str] | None = None
) -> tuple[Reading, ...]:
    """One for each choice of the test, in the order of the rules. `made`: tests made before it, with their readings."""
    told = {**assessment.evidence, **(made or {})}
    before = dict(posterior(script.evidence_model, told, assessment.not_fitted).causes())
    found = []
    for code in script.knowledge.questions[test_id].choices:
        evidence = {**told, test_id: code}
        belief = posterior(script.evidence_model, evidence, assessment.not_fitted)
        leading, probability = named_causes(belief)[0]
        after = dict(belief.causes())
        raised = max(after, key=lambda cause: round(after[cause] - before[cause], 12))
        found.append(Reading(code, leading, probability, raised, after[raised], before[raised], after))
    return tuple(found)
