"""`ovenside rules check`: every mistake in a folder of rules, one line each, and a count."""

from collections.abc import Iterable, Iterator, Mapping
from datetime import UTC, datetime
from pathlib import Path
from typing import TextIO

from assistant.authoring.foresee import check_foreseen
from assistant.engine.limits import limit_problems
from assistant.engine.naive import NaiveEvaluator
from assistant.interview.assess import facts_of
from assistant.interview.script import crisp_rules, keys_read
from assistant.interview.state import Answer, Status
from assistant.knowledge.load import knowledge_of, read_checked
from assistant.knowledge.model import Kind, Knowledge
from assistant.knowledge.problems import Problem
from assistant.knowledge.rules_folder import RulesFolder
from assistant.wording.locale import Wording
from assistant.wording.needed import missing_messages

LIMIT = "limit_"
_WITHOUT_ANSWER: Mapping[str | tuple[str, ...], Status] = {"not_sure": "not_sure", "skipped": "skipped"}


def check(folder: Path, wording: Wording, out: TextIO, *, with_words: bool = False) -> int:
    """Print every problem; exit status 1 if there is one. `with_words`: also what the language has no words for."""
    read = read_checked(folder)
    if not read.problems:
        check_as_a_whole(read)
        if with_words:
            check_words(read, wording)
        read.problems.sort()
    for line in problem_lines(read.problems, wording):
        out.write(_in_encoding_of(out, line) + "\n")
    if not read.problems:
        out.write(wording.say("rules-sound", count=len(read.texts)) + "\n")
    return 1 if read.problems else 0


def _in_encoding_of(out: TextIO, line: str) -> str:
    """The line with '?' for what a terminal of few characters can't show."""
    encoding = getattr(out, "encoding", None) or "utf-8"
    return line.encode(encoding, "replace").decode(encoding)


def problem_lines(problems: Iterable[Problem], wording: Wording) -> Iterator[str]:
    """One printable line for each problem, then the count; nothing for none."""
    count = 0
    for problem in problems:
        count += 1
        yield problem_line(problem, wording)
    if count:
        yield wording.say("rules-count", count=count)


def problem_line(problem: Problem, wording: Wording) -> str:
    """`file:line:column: where: what was found, what was expected; did you mean …`."""
    said = wording.say(f"rules-{problem.code}", **_worded(problem, wording))
    if problem.nearest is not None:
        said += wording.say("rules-did_you_mean", nearest=problem.nearest)
    return _on_one_line(f"{problem.file}:{problem.line}:{problem.column}: {problem.where}: {said}")


def _worded(problem: Problem, wording: Wording) -> dict[str, str | int]:
    """The details, with what was found in quotation marks, or named where it isn't a plain value."""
    details = dict(problem.details)
    if "found" in details and not problem.code.startswith(LIMIT):
        shape = details.pop("shape", "text")
        details["found"] = wording.say(f"rules-found_{shape}", found=details["found"])
    return details


def _on_one_line(text: str) -> str:
    return "".join(c if c.isprintable() else "\N{REPLACEMENT CHARACTER}" for c in text)


def check_words(read: RulesFolder, wording: Wording) -> None:
    """Without its words a question would end the conversation in which it is asked."""
    for needed in missing_messages(knowledge_of(read, ""), wording):
        read.add_problem(needed.file, (), "message_missing", message=needed.name, lang=wording.lang)


def check_as_a_whole(read: RulesFolder) -> None:
    """What only a folder without mistakes can be asked: the engine's limits, and the findings' own examples."""
    knowledge = knowledge_of(read, "")
    rules = crisp_rules(knowledge)
    limits = limit_problems(rules, keys_read(rules))
    for problem in limits:
        finding_id = problem.rule_id.split("__")[0]
        file = f"findings/{finding_id}.yaml" if finding_id else "findings"
        details = {name: str(value) for name, value in problem.details.items()}
        read.add_problem(file, (), LIMIT + problem.code, None, **details)
    if not limits:
        _check_examples(read, knowledge)
    check_foreseen(read, knowledge)


def _check_examples(read: RulesFolder, knowledge: Knowledge) -> None:
    evaluator = NaiveEvaluator(crisp_rules(knowledge))
    for finding_id, finding in knowledge.findings.items():
        for kind, wanted in (("fires", True), ("stays_quiet", False)):
            for index, example in enumerate(getattr(finding.examples, kind)):
                facts = facts_of(example_answers(example, knowledge), knowledge)
                if (finding_id in evaluator.evaluate(facts).concluded) != wanted:
                    path = ("examples", kind, index)
                    read.add_problem(f"findings/{finding_id}.yaml", path, f"example_not_{kind}")


def example_answers(example: Mapping[str, str | tuple[str, ...]], knowledge: Knowledge) -> dict[str, Answer]:
    """An example's answers as a session would hold them; a number's answer is written as text.

    The example is one that the folder's checks had nothing against.
    """
    return {q: _answer(q, value, knowledge.questions[q].kind) for q, value in example.items()}


def _answer(question_id: str, value: str | tuple[str, ...], kind: Kind) -> Answer:
    then = datetime(2000, 1, 1, tzinfo=UTC)
    if value in _WITHOUT_ANSWER:
        return Answer(question_id, _WITHOUT_ANSWER[value], None, 1, then)
    if kind == "number" and isinstance(value, str):
        return Answer(question_id, "answered", float(value), 1, then)
    return Answer(question_id, "answered", None if kind == "text" else value, 1, then)
