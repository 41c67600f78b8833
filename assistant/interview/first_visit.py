"""How probable it is that one visit is enough."""

from assistant.interview.assess import Assessment
from assistant.interview.script import Script

LEAST_FAULTY = 0.01
"""Below this probability of any fault there is nothing to say of mending it."""


def chance_of_first_visit(script: Script, assessment: Assessment, kit: tuple[str, ...], who: str) -> float | None:
    """The probability that one visit of that trade mends the oven with these parts, given that some fault is there.

    Every fault must be that trade's, and its part in the kit, or no part needed; something without a name isn't
    mended. By belief's own tables, so simulated. None where a fault is hardly to be expected.
    """
    causes = script.knowledge.causes
    faulty = mended = 0.0
    for hypothesis, p in assessment.posterior.ranked():
        faults = [cause for cause in hypothesis if cause not in causes or causes[cause].kind == "fault"]
        if not faults:
            continue
        faulty += p
        if all(f in causes and causes[f].mended_by == who and causes[f].part in (None, *kit) for f in faults):
            mended += p
    return mended / faulty if faulty >= LEAST_FAULTY else None
