"""`ovenside rules foresee`: simulates what each measurement may come to, and writes it beside the rules."""

from collections.abc import Mapping
from pathlib import Path
from typing import TextIO

from assistant.belief.outcomes_ahead import foresee, mark_of
from assistant.knowledge.foreseen import FORESEEN_FILE, Foreseen
from assistant.knowledge.model import Knowledge
from assistant.knowledge.rules_folder import RulesFolder
from assistant.wording.locale import Wording

HEAD = "# Simulated by `ovenside rules foresee`. Don't edit it: run that again after a change of what causes do.\n"


def foresee_all(knowledge: Knowledge, folder: Path, wording: Wording, out: TextIO) -> int:
    """Write the file anew; exit status 1 if that can't be done."""
    found = {
        question_id: foresee(knowledge, question.kind, question.run)
        for question_id, question in knowledge.questions.items()
        if question.run is not None
    }
    try:
        (folder / FORESEEN_FILE).write_text(written(found), encoding="utf-8")
    except OSError as error:
        out.write(wording.say("rules-foreseen_not_written", reason=error.strerror or str(error)) + "\n")
        return 1
    out.write(wording.say("rules-foreseen_written", count=len(found), where=str(folder / FORESEEN_FILE)) + "\n")
    return 0


def written(foreseen: Mapping[str, Foreseen]) -> str:
    """One line for each way an oven behaves."""
    lines = [HEAD]
    for question_id, each in foreseen.items():
        lines += [f"{question_id}:", f'  drawn_from: "{each.drawn_from}"', f"  outcomes: [{', '.join(each.outcomes)}]"]
        lines += ["  ways:", *(f"    {name}: [{', '.join(map(str, row))}]" for name, row in each.ways.items())]
    return "\n".join(lines) + "\n"


def check_foreseen(read: RulesFolder, knowledge: Knowledge) -> None:
    """What is foreseen was simulated from the rules as they are."""
    for question_id, question in knowledge.questions.items():
        if question.run is None:
            continue
        each = knowledge.foreseen.get(question_id)
        if each is None or each.drawn_from != mark_of(knowledge, question.run):
            read.add_problem(FORESEEN_FILE, (question_id,) if each else (), "not_foreseen", name=question_id)
    for question_id in knowledge.foreseen:
        if question_id not in knowledge.questions or knowledge.questions[question_id].run is None:
            read.add_problem(FORESEEN_FILE, (question_id,), "foreseen_of_nothing", found=question_id)
