"""`ovenside rules coverage`: what simulated interviews make of each cause, in words, as JSON and as a picture."""

import json
from collections.abc import Iterator, Sequence
from math import sqrt
from pathlib import Path
from typing import Any, TextIO

from assistant.authoring.coverage import LEADS_ENOUGH, Coverage, Covered, Plan, coverage, processes_for
from assistant.authoring.coverage_picture import Labels, coverage_picture
from assistant.authoring.progress import progress
from assistant.authoring.separation import HARD_TO_TELL, Pair
from assistant.belief.scores import NORMAL_95
from assistant.errors import Refused
from assistant.knowledge.model import Knowledge
from assistant.knowledge.problems import nearest_name
from assistant.wording.locale import Wording

MOST_INSTEAD = 4
BETWEEN = 2


def report(
    knowledge: Knowledge, plan: Plan, picture: Path | None, wording: Wording, out: TextIO, *, as_json: bool = False
) -> int:
    """Simulate, then print, and draw where `picture` says so. Returns the exit status. Raises Refused."""
    mistake = _mistake_in(plan, knowledge, wording)
    if mistake is not None:
        out.write(mistake + "\n")
        return 1
    interviews = len(plan.causes) * plan.ovens
    with progress(wording.say("coverage-working"), interviews) as done:
        found = coverage(knowledge, plan, processes_for(interviews), done)
    if as_json:
        out.write(json.dumps(as_data(found, wording), indent=1, ensure_ascii=False) + "\n")
    else:
        out.writelines(line + "\n" for line in lines(found, wording))
    return 0 if picture is None else _draw(found, picture, wording, out, quiet=as_json)


def _mistake_in(plan: Plan, knowledge: Knowledge, wording: Wording) -> str | None:
    if plan.region not in knowledge.regions:
        valid = ", ".join(knowledge.regions)
        raise Refused("unknown_region", {"found": plan.region, "valid": valid})
    for cause in plan.causes:
        if cause not in knowledge.causes:
            said = wording.say("coverage-cause_unknown", found=cause)
            near = nearest_name(cause, knowledge.causes)
            return said if near is None else f"{said} {wording.say('problem-did_you_mean', nearest=near)}"
    return None


def lines(found: Coverage, wording: Wording) -> Iterator[str]:
    """The whole report, the warning first."""
    yield wording.say("coverage-simulated")
    yield _plan_line(found.plan, wording)
    for part in (_causes(found, wording), _instead(found, wording), _pairs(found, wording), _questions(found, wording)):
        yield ""
        yield from part


def _plan_line(plan: Plan, wording: Wording) -> str:
    return wording.say(
        "coverage-plan",
        causes=len(plan.causes),
        ovens=str(plan.ovens),
        seed=str(plan.seed),
        mistakes=f"{100 * plan.mistakes:g}",
        off=f"{100 * NORMAL_95 * sqrt(0.25 / plan.ovens):.0f}",
    )


def worst_first(causes: Sequence[Covered]) -> list[Covered]:
    return sorted(causes, key=lambda c: (c.leads / c.ovens, c.in_three / c.ovens))


def _causes(found: Coverage, wording: Wording) -> Iterator[str]:
    yield wording.say("coverage-causes")
    heads = [wording.say(f"coverage-columns_{name}") for name in ("first", "three", "served", "stopped", "questions")]
    rows = [
        [each.cause, *(_share(count, each.ovens, wording) for count in counts), asked]
        for each in worst_first(found.causes)
        for counts in [(each.leads, each.in_three, each.served, each.stopped)]
        for asked in [f"{each.questions_median:g}, {each.questions_most}"]
    ]
    yield from table([["", *heads], *rows])
    for each in found.causes:
        if each.region != found.plan.region:
            yield wording.say("coverage-elsewhere", cause=each.cause, region=each.region)


def table(rows: Sequence[Sequence[str]]) -> Iterator[str]:
    """Columns side by side, the first one's words to the left, figures to the right."""
    widths = [max(len(row[column]) for row in rows) for column in range(len(rows[0]))]
    for row in rows:
        cells = [row[0].ljust(widths[0]), *(cell.rjust(width) for cell, width in zip(row[1:], widths[1:], strict=True))]
        yield (" " * BETWEEN).join(cells).rstrip()


def _share(count: int, of: int, wording: Wording) -> str:
    return wording.say("coverage-share", percent=f"{100 * count / of:.0f}")


def _instead(found: Coverage, wording: Wording) -> Iterator[str]:
    least = f"{100 * LEADS_ENOUGH:.0f}"
    seldom = [each for each in worst_first(found.causes) if each.leads_too_seldom]
    if not seldom:
        yield wording.say("coverage-instead_none", least=least)
        return
    yield wording.say("coverage-instead", least=least)
    width = max(len(each.cause) for each in seldom)
    for each in seldom:
        names = [wording.say("coverage-instead_name", cause=c, count=n) for c, n in each.instead[:MOST_INSTEAD]]
        leads = f"{100 * each.leads / each.ovens:.0f}".rjust(3)
        why = _why(found, each, wording)
        row = {"cause": each.cause.ljust(width), "leads": leads, "names": ", ".join(names), "why": why}
        yield wording.say("coverage-instead_row", **row)


def _why(found: Coverage, each: Covered, wording: Wording) -> str:
    """The nearest twin, and whether a householder can see the difference; and how often danger ended it first."""
    said = []
    if each.stopped:
        said.append(wording.say("coverage-why_stopped", percent=f"{100 * each.stopped / each.ovens:.0f}"))
    pair = found.nearest(each.cause)
    if pair is not None:
        (twin,) = (name for name in pair.causes if name != each.cause)
        seen = "yes" if pair.least >= HARD_TO_TELL else "no"
        said.append(wording.say("coverage-why_twin", cause=twin, decibans=f"{pair.least:.1f}", seen=seen))
    return "; ".join(said)


def hard_pairs(found: Coverage) -> list[Pair]:
    """Those below HARD_TO_TELL with a cause of the plan."""
    return [p for p in found.pairs if p.least < HARD_TO_TELL and not set(p.causes).isdisjoint(found.plan.causes)]


def _pairs(found: Coverage, wording: Wording) -> Iterator[str]:
    least = f"{HARD_TO_TELL:g}"
    hard = hard_pairs(found)
    if not hard:
        yield wording.say("coverage-pairs_none", least=least)
        return
    yield wording.say("coverage-pairs", least=least)
    for pair in hard:
        one, other = (f"{decibans:.1f}" for decibans in pair.decibans)
        yield wording.say(
            "coverage-pair_row",
            least=f"{pair.least:.1f}".rjust(4),
            first=pair.causes[0],
            second=pair.causes[1],
            one=one,
            other=other,
            told_by=pair.told_by,
            same="yes" if pair.same_ending else "no",
        )


def _questions(found: Coverage, wording: Wording) -> Iterator[str]:
    if found.never_asked:
        yield wording.say("coverage-never_asked", questions=", ".join(found.never_asked))
    else:
        yield wording.say("coverage-never_asked_none")
    yield wording.say("coverage-never_asked_danger")


def as_data(found: Coverage, wording: Wording) -> dict[str, Any]:
    """The same for other programs; every pair stands there, not only the hard ones."""
    plan = found.plan
    return {
        "simulated": wording.say("coverage-simulated"),
        "ovens": plan.ovens,
        "seed": plan.seed,
        "mistakes": plan.mistakes,
        "region": plan.region,
        "causes": [
            {
                "id": each.cause,
                "leads": each.leads,
                "in_three": each.in_three,
                "served": each.served,
                "questions": {"median": each.questions_median, "most": each.questions_most},
                "stopped": each.stopped,
                "region": each.region,
                "leads_too_seldom": each.leads_too_seldom,
                "instead": dict(each.instead),
                "nearest": pair
                and {
                    "id": next(name for name in pair.causes if name != each.cause),
                    "decibans": round(pair.least, 2),
                    "hard_to_tell": pair.least < HARD_TO_TELL,
                },
            }
            for each in found.causes
            for pair in [found.nearest(each.cause)]
        ],
        "hard_to_tell_below_decibans": HARD_TO_TELL,
        "pairs": [
            {
                "causes": list(pair.causes),
                "decibans": [round(weight, 2) for weight in pair.decibans],
                "told_by": pair.told_by,
                "same_ending": pair.same_ending,
            }
            for pair in found.pairs
        ],
        "never_asked": list(found.never_asked),
    }


def _draw(found: Coverage, picture: Path, wording: Wording, out: TextIO, *, quiet: bool) -> int:
    say = wording.say
    keys = ("leads", "three", "neither", "median", "most")
    labels = Labels(
        title=say("coverage-title"),
        description="\n".join(lines(found, wording)),
        note=say("coverage-picture_note", ovens=str(found.plan.ovens), seed=str(found.plan.seed)),
        first=say("coverage-heading_first"),
        shares=say("coverage-axis_shares", ovens=str(found.plan.ovens)),
        questions=say("coverage-axis_questions"),
        served=say("coverage-heading_served"),
        keys={key: say(f"coverage-key_{key}") for key in keys},
        causes={each.cause: _in_words(each.cause, wording) for each in found.causes},
    )
    try:
        picture.write_text(coverage_picture(worst_first(found.causes), labels), "utf-8")
    except OSError as error:
        out.write(say("coverage-not_written", where=str(picture), reason=error.strerror or str(error)) + "\n")
        return 1
    if not quiet:
        out.write(say("coverage-drawn", where=str(picture)) + "\n")
    return 0


def _in_words(cause: str, wording: Wording) -> str:
    return wording.say(f"cause-{cause}") if wording.has(f"cause-{cause}") else cause
