"""`ovenside rules compare`: what moves between two folders of rules, in words and as JSON."""

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import asdict
from pathlib import Path
from typing import Any, TextIO

from assistant.authoring.cases import NotACase, read_cases
from assistant.authoring.comparison import FIELDS, Differing, Ending, Moved, differing, moved
from assistant.authoring.progress import progress
from assistant.interview.script import Script
from assistant.knowledge.rules_folder import read_folder
from assistant.wording.locale import Wording

CASES = ("tests", "cases")
"""Where cases stand beside a folder of rules."""


def report(
    folders: tuple[Path, Path],
    scripts: tuple[Script, Script],
    cases_folder: Path | None,
    region: str,
    wording: Wording,
    out: TextIO,
    *,
    as_json: bool = False,
) -> int:
    """Print what differs. Returns the exit status: 0, whatever moves; 1 if the cases can't be read."""
    where = cases_folder or cases_beside(folders[1])
    try:
        cases = read_cases(where) if where is not None else {}
    except NotACase as error:
        out.write(said_of(error, wording) + "\n")
        return 1
    entries = list(differing(*map(read_folder, folders)))
    with progress(wording.say("compare-working"), len(cases)) as done:
        found = list(moved(*scripts, cases, region, done))
    if as_json:
        out.write(json.dumps(_as_data(entries, found, len(cases)), indent=1, ensure_ascii=False) + "\n")
        return 0
    for line in (*_entry_lines(entries, folders, wording), "", *_case_lines(found, wording)):
        out.write(line + "\n")
    if where is None:
        out.write(wording.say("compare-no_cases", after=str(folders[1])) + "\n")
    else:
        count = wording.say("compare-count", moved=str(len(found)), cases=str(len(cases)), where=str(where))
        out.write(count + "\n")
    return 0


def cases_beside(rules: Path) -> Path | None:
    """The cases that stand beside a folder of rules, if any do."""
    folder = rules.resolve().parent.joinpath(*CASES)
    return folder if folder.is_dir() else None


def said_of(error: NotACase, wording: Wording) -> str:
    return wording.say(f"cases-{error.code}", where=error.where, reason=error.reason)


def _entry_lines(entries: Sequence[Differing], folders: tuple[Path, Path], wording: Wording) -> Iterator[str]:
    before, after = map(str, folders)
    if not entries:
        yield wording.say("compare-entries_none", before=before, after=after)
        return
    yield wording.say("compare-entries", before=before, after=after)
    for each in entries:
        changes = "; ".join(_changes(each, wording))
        yield "  " + wording.say("compare-kind", kind=each.kind, changes=changes)


def _changes(each: Differing, wording: Wording) -> Iterator[str]:
    for how in ("added", "removed", "changed"):
        names = getattr(each, how)
        if names == ("",):
            yield wording.say("compare-changed_file")
        elif names:
            yield wording.say(f"compare-{how}", names=", ".join(names))


def _case_lines(found: Sequence[Moved], wording: Wording) -> Iterator[str]:
    width = max(len(wording.say(f"compare-{field}")) for field in FIELDS)
    for each in found:
        yield each.case
        for field in each.fields:
            before, after = (_shown(field, ending, wording) for ending in (each.before, each.after))
            name = wording.say(f"compare-{field}").ljust(width)
            yield "  " + wording.say("compare-move", field=name, before=before, after=after)
        yield ""


def _shown(field: str, ending: Ending, wording: Wording) -> str:
    if field in ("first", "probability"):
        return f"{ending.first} {100 * ending.probability:.0f} %"
    value = getattr(ending, field)
    if isinstance(value, tuple):
        return (" " if field == "verdict" else ", ").join(value) or wording.say("compare-nothing")
    return str(value)


def _as_data(entries: Sequence[Differing], found: Sequence[Moved], cases: int) -> dict[str, Any]:
    return {
        "entries": [asdict(each) for each in entries],
        "cases": cases,
        "moved": [
            {"case": m.case, "fields": list(m.fields), "before": _ending(m.before), "after": _ending(m.after)}
            for m in found
        ],
    }


def _ending(ending: Ending) -> Mapping[str, Any]:
    return {**asdict(ending), "probability": round(ending.probability, 4)}
