"""`ovenside rules explain`: one entry of the rules in sentences, or what is called nearly so."""

from collections.abc import Callable, Iterator
from difflib import get_close_matches
from pathlib import Path
from typing import Any, TextIO

from assistant.authoring.explained import Book, Parts, listed, numbers, says, texts, used
from assistant.authoring.explained_causes import explain_cause, explain_effect, explain_observable, explain_pair
from assistant.authoring.explained_questions import explain_finding, explain_question, explain_sign
from assistant.interview.script import Script
from assistant.knowledge.rules_folder import ENTRY_FOLDERS, read_folder
from assistant.wording.locale import Wording
from assistant.wording.sentences import Sentences

MOST_NEAR = 5

Explainer = Callable[[Book, str, Any], Parts]

EXPLAINERS: dict[str, Explainer] = {
    "causes": explain_cause,
    "effects": explain_effect,
    "observables": explain_observable,
    "questions": explain_question,
    "findings": explain_finding,
    "danger": explain_sign,
    "pairs": explain_pair,
}
MESSAGES = {"acts.yaml": "act", "advice.yaml": "advice", "steps.yaml": "step", "parts": "part", "functions": "function"}
IN_OVENS = ("parts", "functions")
NOT_ENTRIES = frozenset({"belief.yaml", "ovens.yaml", "learned.yaml", "foreseen.yaml"})


def explain(folder: Path, script: Script, wanted: str, wording: Wording, out: TextIO) -> int:
    """Print everything that is called so. Returns the exit status: 1 where nothing is."""
    book = book_of(folder, script, wording)
    said = list(explanation(book, wanted))
    for line in said or _unknown(book, folder, wanted):
        out.write(line + "\n")
    return 0 if said else 1


def explanation(book: Book, wanted: str) -> Iterator[str]:
    """The lines about every entry of that name, an empty one between two; none where nothing is called so."""
    found = [(kind, entries[wanted]) for kind, entries in book.entries.items() if wanted in entries]
    for number, (kind, entry) in enumerate(found):
        if number:
            yield ""
        yield from _lines(book, kind, wanted, entry)


def book_of(folder: Path, script: Script, wording: Wording) -> Book:
    """The folder's own entries, with the danger questions that are made from its signs."""
    knowledge = script.knowledge
    read = {kind: entries for kind, entries in read_folder(folder).entries.items() if kind not in NOT_ENTRIES}
    entries = {
        **read,
        "causes": knowledge.causes,
        "questions": knowledge.questions,
        "parts": knowledge.ovens.parts,
        "functions": knowledge.ovens.functions,
    }
    region = next(iter(knowledge.regions))
    return Book(script, entries, wording, Sentences(wording, knowledge, region).lines)


def _unknown(book: Book, folder: Path, wanted: str) -> Iterator[str]:
    yield book.say("unknown", found=wanted, where=str(folder))
    names = list(dict.fromkeys(name for entries in book.entries.values() for name in entries))
    within = [name for name in names if wanted and wanted in name]
    near = dict.fromkeys((*get_close_matches(wanted, names, MOST_NEAR), *within))
    if near:
        yield book.say("near", names=listed(list(near)[:MOST_NEAR]))


def _lines(book: Book, kind: str, entry_id: str, entry: Any) -> Iterator[str]:
    yield book.say("title", id=entry_id, kind=_kind_in_words(book, kind), file=_file(kind, entry_id))
    explainer = EXPLAINERS.get(kind, _explain_other)
    parts = _explain_listed(book, kind, entry_id, entry) if kind in MESSAGES else explainer(book, entry_id, entry)
    for heading, lines in parts:
        said = list(lines)
        if said:
            yield book.say(f"heading_{heading}")
            yield from (f"  {line}" for line in said)


def _kind_in_words(book: Book, kind: str) -> str:
    name = f"kind_{kind.removesuffix('.yaml')}"
    return book.say(name if book.wording.has(f"explain-{name}") else "kind_other")


def _file(kind: str, entry_id: str) -> str:
    if kind in IN_OVENS:
        return "ovens.yaml"
    return f"{kind}/{entry_id}.yaml" if kind in ENTRY_FOLDERS else kind


def _explain_listed(book: Book, kind: str, entry_id: str, entry: Any) -> Parts:
    """Acts, advice, steps, parts and ways of heating."""
    yield "says", _listed_says(book, kind, entry_id, entry)
    yield "used", used(book, kind, entry_id)


def _listed_says(book: Book, kind: str, entry_id: str, entry: Any) -> Iterator[str]:
    note = entry if isinstance(entry, str) else entry.note
    yield from says(book, note, f"{MESSAGES[kind]}-{entry_id}")
    source = getattr(entry, "source", None)
    if source:
        yield book.say("source", source=source)
    for name, field in (("only_when", "only_when"), ("uses", "uses")):
        names = getattr(entry, field, ())
        if names:
            yield book.say(name, names=listed(names))
    if getattr(entry, "until_off", False):
        yield book.say("until_off")


def _explain_other(book: Book, entry_id: str, entry: Any) -> Parts:
    """What has no account of its own: its note and its numbers."""
    note = getattr(entry, "note", None)
    yield "says", [*([book.say("note", note=note)] if note else []), *texts(book, entry)]
    yield "numbers", numbers(book, entry)
