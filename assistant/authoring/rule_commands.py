"""The commands that show what a change of the rules does: their options, and what they start."""

import argparse
import sys
from pathlib import Path

from assistant.authoring.outcome_commands import Commands, Options, Places, add_command

FOLDER_OPTION: Options = (
    ("folder", {"nargs": "?", "type": Path, "help": "the folder of rules (default: the rules in use)"}),
)
JSON_OPTION: Options = (("--json", {"action": "store_true", "help": "print JSON, for other programs"}),)


def _count(written: str) -> int:
    """A whole number from 1 on, or a sentence about what it should have been."""
    if not (written.isascii() and written.isdigit() and 1 <= int(written[:9]) <= 1_000_000):
        raise argparse.ArgumentTypeError(f"{written!r} isn't a whole number from 1 on")
    return int(written)


def _seed(written: str) -> int:
    if not (written.isascii() and written.isdigit() and len(written) <= 9):
        raise argparse.ArgumentTypeError(f"{written!r} isn't a whole number of at most nine digits")
    return int(written)


def _share(written: str) -> float:
    """`0.05` or `5%`, as a share of one."""
    number = written.removesuffix("%").strip()
    try:
        share = float(number) / (100 if written.endswith("%") else 1)
    except ValueError:
        share = -1.0
    if not 0 <= share <= 1:
        raise argparse.ArgumentTypeError(f"{written!r} isn't a share: write 0.05 or 5%%".replace("%%", "%"))
    return share


COVERAGE_OPTIONS: Options = (
    ("--ovens", {"type": _count, "metavar": "N", "default": 20, "help": "simulated ovens of each cause (default: 20)"}),
    ("--seed", {"type": _seed, "metavar": "S", "default": 1, "help": "another seed draws other ovens (default: 1)"}),
    ("--cause", {"action": "append", "metavar": "ID", "help": "only this cause; repeat it for several"}),
    (
        "--mistakes",
        {"type": _share, "metavar": "SHARE", "default": 0.0, "help": "mistaken answers on top, such as 0.05 or 5%%"},
    ),
    ("--picture", {"type": Path, "metavar": "FILE.svg", "help": "also draw it"}),
)
ID_OPTION: Options = (("id", {"metavar": "ID", "help": "a cause, question, observable, finding, sign, act, …"}),)
COMPARE_OPTIONS: Options = (
    ("before", {"type": Path, "metavar": "BEFORE", "help": "the folder of rules as it was"}),
    ("after", {"type": Path, "metavar": "AFTER", "help": "the folder of rules as it is now"}),
)
CASES_OPTION: Options = (
    ("--cases", {"type": Path, "metavar": "FOLDER", "help": "the cases (default: tests/cases beside the rules)"}),
)
TRY_OPTIONS: Options = (
    ("--role", {"default": argparse.SUPPRESS, "help": "who answers: householder, agent or engineer"}),
    ("--answers", {"type": Path, "metavar": "FILE", "help": "a case whose answers are given where it has some"}),
)
MOST_OPTION: Options = (
    ("--most", {"type": _count, "metavar": "N", "default": 20, "help": "so many numbers are shown (default: 20)"}),
)
WHAT: dict[str, str] = {
    "coverage": "what simulated interviews make of each cause, and which causes are hard to tell apart",
    "compare": "what moves between two folders of rules, over all cases",
    "try": "an interview with its trace on, in the terminal; nothing of it is kept",
    "assumed": "which assumed numbers decide how cases end, each moved to the ends of its range",
    "foresee": "simulate what each measurement may come to, and write it beside the rules",
    "explain": "one entry of the rules in sentences: what it says, its numbers, where it is used",
}
OPTIONS: dict[str, Options] = {
    "coverage": (*FOLDER_OPTION, *COVERAGE_OPTIONS, *JSON_OPTION),
    "compare": (*COMPARE_OPTIONS, *CASES_OPTION, *JSON_OPTION),
    "try": (*FOLDER_OPTION, *TRY_OPTIONS),
    "assumed": (*FOLDER_OPTION, *CASES_OPTION, *MOST_OPTION, *JSON_OPTION),
    "foresee": FOLDER_OPTION,
    "explain": (*ID_OPTION, *FOLDER_OPTION),
}


def add_rule_tools(tools: Commands, shared: argparse.ArgumentParser) -> None:
    for name, options in OPTIONS.items():
        add_command(tools, name, WHAT[name], shared, options)


def use_rules(arguments: argparse.Namespace, places: Places) -> int:
    """The exit status of the tool that was named."""
    return _TOOLS[arguments.tool](arguments, places)


def _coverage(arguments: argparse.Namespace, places: Places) -> int:
    from assistant.authoring.coverage import Plan
    from assistant.authoring.coverage_report import report
    from assistant.knowledge.load import load_knowledge
    from assistant.wording.locale import load_wording

    knowledge = load_knowledge(places.rules, places.cache)
    plan = Plan(
        causes=tuple(dict.fromkeys(arguments.cause or knowledge.causes)),
        ovens=arguments.ovens,
        seed=arguments.seed,
        mistakes=arguments.mistakes,
        region=arguments.region,
    )
    wording = load_wording(places.locales, arguments.lang)
    return report(knowledge, plan, arguments.picture, wording, sys.stdout, as_json=arguments.json)


def _compare(arguments: argparse.Namespace, places: Places) -> int:
    from assistant.authoring.comparison_report import report
    from assistant.interview.script import script_of
    from assistant.knowledge.load import load_knowledge
    from assistant.wording.locale import load_wording

    wording = load_wording(places.locales, arguments.lang)
    folders = arguments.before, arguments.after
    before, after = (script_of(load_knowledge(folder, places.cache), places.cache) for folder in folders)
    region = arguments.region
    return report(folders, (before, after), arguments.cases, region, wording, sys.stdout, as_json=arguments.json)


def _explain(arguments: argparse.Namespace, places: Places) -> int:
    from assistant.authoring.explain import explain
    from assistant.interview.script import script_of
    from assistant.knowledge.load import load_knowledge
    from assistant.wording.locale import load_wording

    script = script_of(load_knowledge(places.rules, places.cache), places.cache)
    return explain(places.rules, script, arguments.id, load_wording(places.locales, arguments.lang), sys.stdout)


def _foresee(arguments: argparse.Namespace, places: Places) -> int:
    from assistant.authoring.foresee import foresee_all
    from assistant.knowledge.load import load_knowledge
    from assistant.wording.locale import load_wording

    knowledge = load_knowledge(places.rules, places.cache)
    return foresee_all(knowledge, places.rules, load_wording(places.locales, arguments.lang), sys.stdout)


def _try(arguments: argparse.Namespace, places: Places) -> int:
    from assistant.authoring.cases import NotACase, answers_of, begin, read_case
    from assistant.authoring.comparison_report import said_of
    from assistant.authoring.trial import Trial
    from assistant.interview.script import script_of
    from assistant.knowledge.load import load_knowledge
    from assistant.wording.languages import Languages

    knowledge = load_knowledge(places.rules, places.cache)
    languages = Languages(places.locales, knowledge)
    languages.require_words_for_rules(arguments.lang)
    sentences = languages.sentences(arguments.lang, arguments.region)
    conversation = begin(script_of(knowledge, places.cache), arguments.region, arguments.role)
    try:
        answers = answers_of(read_case(arguments.answers)) if arguments.answers else {}
    except NotACase as error:
        sys.stdout.write(said_of(error, sentences.wording) + "\n")
        return 1
    trial = Trial(
        conversation,
        sentences,
        languages.listener(arguments.lang),
        sys.stdin,
        sys.stdout,
        answers,
        str(arguments.answers),
        echo=not sys.stdin.isatty(),
    )
    return trial.run(str(places.rules))


def _assumed(arguments: argparse.Namespace, places: Places) -> int:
    from assistant.authoring.assumed_report import report
    from assistant.knowledge.load import load_knowledge
    from assistant.wording.locale import load_wording

    knowledge = load_knowledge(places.rules, places.cache)
    return report(
        places.rules,
        knowledge,
        arguments.cases,
        arguments.region,
        arguments.most,
        load_wording(places.locales, arguments.lang),
        sys.stdout,
        as_json=arguments.json,
    )


_TOOLS = {
    "coverage": _coverage,
    "compare": _compare,
    "try": _try,
    "assumed": _assumed,
    "foresee": _foresee,
    "explain": _explain,
}
