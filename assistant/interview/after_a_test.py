"""What each reading of a planned test would leave as the likeliest."""

from dataclasses import dataclass

from assistant.belief.posterior import posterior
from assistant.interview.assess import Assessment
from assistant.interview.script import Script
from assistant.interview.verdict import named_causes


@dataclass(frozen=True)
class Reading:
    """One way for a test to come out: its `code`, and what is then likeliest, with its probability."""

    code: str
    leading: str
    probability: float


def after_a_test(script: Script, assessment: Assessment, test_id: str) -> tuple[Reading, ...]:
    """One for each choice of the test, in the order of the rules; each as if it were the only test made."""
    found = []
    for code in script.knowledge.questions[test_id].choices:
        evidence = {**assessment.evidence, test_id: code}
        belief = posterior(script.evidence_model, evidence, assessment.not_fitted)
        leading, probability = named_causes(belief)[0]
        found.append(Reading(code, leading, probability))
    return tuple(found)
