"""What whoever comes tests: chosen by what each test tells in a minute, made in the order of the rules."""

from collections.abc import Iterator, Mapping, Sequence

from assistant.belief.posterior import posterior
from assistant.belief.value import MINUTES_BESIDES, Candidate
from assistant.interview.assess import Assessment, applies
from assistant.interview.script import Script
from assistant.interview.worth import telling_together

STAGE = "tests"
LEAST_BITS = 0.08
"""A test that tells less, after those before it, isn't named."""
MOST_ADDED = 2
"""So many more at the most are made for what sound readings leave."""
LEFT_LIKELY = 0.125
"""A fault below, after sound readings, is worth no test of its own."""
FOREMOST = 2
"""So many faults count as the likeliest ones that sound readings leave."""
SHOWS = 0.5
"""A test shows a fault that it finds more often than not."""
BEFORE_LIVE = ("test_earth", "test_insulation")
"""Both are measured, dead, at every visit that tests anything, before all the rest. Common practice."""
MADE_FIRST = ("test_earth", "test_terminals", "test_insulation")
"""The terminals, where they are planned, are looked at before heaters are measured through them."""
LEADS = 0.6
"""A fault likelier than this is tested directly, before all that isn't made first."""


def plan_of_tests(script: Script, assessment: Assessment) -> tuple[str, ...]:
    """The ids of as many tests as are planned: those that findings put first, then those that tell most in a minute;
    then those for the faults that are likeliest if all of these read sound; and earth and insulation, whatever else is.

    They are named as they are made: earth and insulation; the direct test of a fault that leads; then what is done
    dead, with the least taken apart, before what needs the oven live. While danger stands nothing is planned that does.
    """
    questions = script.knowledge.questions
    open_ones = _open_tests(script, assessment)
    direct = _of_the_leader(script, assessment, open_ones)
    asked_for = dict.fromkeys(q for q in (*_put_first(script, assessment), *direct) if q in open_ones)
    left = [each for question_id, each in open_ones.items() if question_id not in asked_for]
    most = max(0, int(script.knowledge.settings.tests_planned.value) - len(asked_for))
    planned = [*asked_for, *telling_together(script, assessment, left, most, LEAST_BITS)]
    planned += _for_what_is_left(script, assessment, planned, open_ones)
    if planned:
        planned += [each for each in BEFORE_LIVE if each in open_ones and each not in planned]

    def when_made(test_id: str) -> tuple[bool, bool, int]:
        return test_id not in MADE_FIRST, test_id not in direct, questions[test_id].order

    return tuple(sorted(planned, key=when_made))


def _of_the_leader(script: Script, assessment: Assessment, open_ones: Mapping[str, Candidate]) -> tuple[str, ...]:
    """The dead test that shows a leading fault most surely in a minute, if a fault leads and has one."""
    fault, probability = assessment.posterior.causes()[0]
    causes = script.knowledge.causes
    if probability <= LEADS or fault not in causes or causes[fault].kind != "fault":
        return ()
    dead = [each for q, each in open_ones.items() if script.knowledge.questions[q].made == "dead"]
    test_id = _test_of(script, fault, (), dead)
    return () if test_id is None else (test_id,)


def _open_tests(script: Script, assessment: Assessment) -> dict[str, Candidate]:
    """Those that this oven allows and that weren't made yet."""
    stopped = bool(assessment.danger.stops)
    return {
        question_id: Candidate(question_id, 0.0, question.minutes.value)
        for question_id, question in script.knowledge.questions.items()
        if question.stage == STAGE
        and applies(question, assessment.not_fitted)
        and assessment.trace.concluded.isdisjoint(question.not_when)
        and assessment.state.status(question_id) == "not_asked"
        and (question.made == "dead" or not stopped)
    }


def _put_first(script: Script, assessment: Assessment) -> Iterator[str]:
    """By findings, and by danger signs that stand or were taken back."""
    for effect in assessment.effects.values():
        yield from effect.tests_first
    danger = assessment.danger
    for sign_id in (*(stop.sign_id for stop in danger.stops), *danger.withdrawn):
        if sign_id in script.knowledge.signs:
            yield from script.knowledge.signs[sign_id].tests_first


def _for_what_is_left(
    script: Script, assessment: Assessment, planned: Sequence[str], open_ones: Mapping[str, Candidate]
) -> list[str]:
    """Tests of the foremost faults that sound readings leave, before anything is energised."""
    added: list[str] = []
    while len(added) < MOST_ADDED:
        tests = (*planned, *added)
        dead = [each for each in tests if script.knowledge.questions[each].made == "dead"]
        others = [each for question_id, each in open_ones.items() if question_id not in tests]
        found = (_test_of(script, fault, tests, others) for fault in faults_left(script, assessment, dead))
        test_id = next((each for each in found if each is not None), None)
        if test_id is None:
            break
        added.append(test_id)
    return added


def faults_left(script: Script, assessment: Assessment, tests: Sequence[str]) -> tuple[str, ...]:
    """The foremost faults if all of these tests read sound, likeliest first; none below LEFT_LIKELY."""
    sound = {test_id: next(iter(script.knowledge.questions[test_id].choices)) for test_id in tests}
    belief = posterior(script.evidence_model, {**assessment.evidence, **sound}, assessment.not_fitted)
    causes = script.knowledge.causes
    faults = [cause for cause, p in belief.causes() if p >= LEFT_LIKELY and causes[cause].kind == "fault"]
    return tuple(faults[:FOREMOST])


def shown_by(script: Script, test_id: str, fault: str) -> float:
    """The probability that the test reads otherwise than sound at an oven with that fault alone."""
    model = script.evidence_model
    states = model.state_given[model.observable_of[test_id]][:, model.place_of[(fault,)]]
    return 1 - float(model.report_given[test_id][0] @ states)


def _test_of(script: Script, fault: str, planned: Sequence[str], others: Sequence[Candidate]) -> str | None:
    """Of the others the one that shows the fault most surely in a minute; None where a planned one does, or none. Where
    only one under power is planned that does, one that is made dead is wanted beside it.
    """
    made = {each: script.knowledge.questions[each].made for each in planned}
    showing = {made[each] == "dead" for each in planned if shown_by(script, each, fault) > SHOWS}
    if True in showing:
        return None
    wanted = [each for each in others if shown_by(script, each.question_id, fault) > SHOWS]
    dead = [each for each in wanted if script.knowledge.questions[each.question_id].made == "dead"]

    def in_a_minute(each: Candidate) -> float:
        return round(shown_by(script, each.question_id, fault) / (each.minutes + MINUTES_BESIDES), 9)

    best = max(dead or ([] if showing else wanted), key=in_a_minute, default=None)
    return best.question_id if best is not None else None
