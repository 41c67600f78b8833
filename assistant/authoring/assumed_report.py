"""`ovenside rules assumed`: which assumed numbers decide how cases end, in words and as JSON."""

import json
from collections.abc import Iterator
from dataclasses import asdict
from pathlib import Path
from typing import Any, TextIO

from assistant.authoring.assumed import Assumed, End, Swayed, assumed, processes_for, steps
from assistant.authoring.assumed_cases import Ended
from assistant.authoring.cases import NotACase, read_cases
from assistant.authoring.comparison_report import cases_beside, said_of
from assistant.authoring.progress import progress
from assistant.errors import Refused
from assistant.knowledge.model import Knowledge
from assistant.wording.locale import Wording

FIELDS = ("action", "first", "stop", "who")


def report(
    rules: Path,
    knowledge: Knowledge,
    cases_folder: Path | None,
    region: str,
    most: int,
    wording: Wording,
    out: TextIO,
    *,
    as_json: bool = False,
) -> int:
    """Print the numbers that change most. Returns the exit status. Raises Refused."""
    if region not in knowledge.regions:
        raise Refused("unknown_region", {"found": region, "valid": ", ".join(knowledge.regions)})
    where = cases_folder or cases_beside(rules)
    if where is None:
        out.write(wording.say("assumed-no_cases", where=str(rules)) + "\n")
        return 1
    try:
        cases = read_cases(where)
    except NotACase as error:
        out.write(said_of(error, wording) + "\n")
        return 1
    total = steps(knowledge, cases, region)
    with progress(wording.say("assumed-working"), total) as done:
        found = assumed(knowledge, cases, region, processes_for(total), done)
    if as_json:
        out.write(json.dumps(_as_data(found), indent=1, ensure_ascii=False) + "\n")
    else:
        out.writelines(line + "\n" for line in lines(found, where, most, wording))
    return 0


def lines(found: Assumed, where: Path, most: int, wording: Wording) -> Iterator[str]:
    say = wording.say
    changing = [each for each in found.swayed if each.cases]
    numbers, cases = str(len(found.swayed)), str(len(found.as_it_is))
    impossible = sum(not end.possible for each in found.swayed for end in each.ends)
    yield say("assumed-method")
    yield say("assumed-numbers", numbers=numbers, cases=cases, where=str(where), asking=str(found.asking_only))
    if impossible:
        yield say("assumed-impossible", count=impossible)
    yield say("assumed-found", count=len(changing)) if changing else say("assumed-none")
    for each in changing[:most]:
        yield ""
        yield from _number(each, found, wording)
    if len(changing) > most:
        yield ""
        yield say("assumed-more", count=len(changing) - most)


def _number(each: Swayed, found: Assumed, wording: Wording) -> Iterator[str]:
    figure = each.number.figure
    least, most = (f"{end:g}" for end in figure.range or (figure.value, figure.value))
    widest = max(each.ends, key=lambda end: end.moved)
    details: dict[str, str | int] = {
        "file": each.number.file,
        "path": ".".join(each.number.path),
        "value": f"{figure.value:g}",
        "unit": "%" if figure.unit == "percent" else figure.unit,
        "least": least,
        "most": most,
        "cases": len(each.cases),
    }
    if widest.moved_most:
        moved = f"{100 * widest.moved:.1f}"
        yield wording.say("assumed-number", moved=moved, case=widest.moved_most, **details)
    else:
        yield wording.say("assumed-number_still", **details)
    for end in each.ends:
        if end.otherwise:
            yield "  " + wording.say("assumed-end", value=f"{end.value:g}", cases=_cases(end, found, wording))


def _cases(end: End, found: Assumed, wording: Wording) -> str:
    said = []
    for name, ended in end.otherwise.items():
        changes = "; ".join(_changes(found.as_it_is[name], ended, wording))
        said.append(wording.say("assumed-case", case=name, changes=changes))
    return ", ".join(said)


def _changes(before: Ended, after: Ended, wording: Wording) -> Iterator[str]:
    for name in FIELDS:
        old, new = getattr(before, name), getattr(after, name)
        if old != new:
            old, new = (
                (", ".join(each) if isinstance(each, tuple) else each) or wording.say("assumed-nothing")
                for each in (old, new)
            )
            yield wording.say("assumed-change", before=old, after=new)


def _as_data(found: Assumed) -> dict[str, Any]:
    """Every number that was moved, in the same order."""
    return {
        "asking_only": found.asking_only,
        "cases": {name: asdict(ended) for name, ended in found.as_it_is.items()},
        "numbers": [_number_as_data(each) for each in found.swayed],
    }


def _number_as_data(each: Swayed) -> dict[str, Any]:
    return {
        "file": each.number.file,
        "path": list(each.number.path),
        "value": each.number.figure.value,
        "unit": each.number.figure.unit,
        "range": list(each.number.figure.range or ()),
        "cases": list(each.cases),
        "moved": round(each.moved, 6),
        "ends": [
            {
                "value": end.value,
                "possible": end.possible,
                "moved": round(end.moved, 6),
                "moved_most": end.moved_most,
                "otherwise": {name: asdict(ended) for name, ended in end.otherwise.items()},
            }
            for end in each.ends
        ],
    }
