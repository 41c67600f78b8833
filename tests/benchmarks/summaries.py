"""How long the forms of a summary take, and whether many of them need ever more memory.

    python -m tests.benchmarks.summaries [--batch 10000] [--anew]

Prints ms per summary in each form, also as a ratio to the text form, and what the process holds before and after a
batch that is made in all forms in turn. The values are made once: their making is measured apart. With `--anew` they
are made anew for each of the batch, from the events of one of the sessions: folded, assessed and worded again.
"""

import argparse
import gc
import time
from collections.abc import Callable, Iterator, Mapping
from itertools import cycle, islice
from pathlib import Path

from assistant.authoring.cases import begin_case, hold, read_case
from assistant.authoring.summary_forms import FORMS
from assistant.interview.script import Script, script_of
from assistant.knowledge.load import load_knowledge
from assistant.reports.summary.engineer import engineer_summary
from assistant.reports.summary.household import household_summary
from assistant.reports.summary.session import Told
from assistant.reports.summary.value import Summary
from assistant.wording.languages import Languages
from assistant.wording.sentences import Sentences
from tests.reports.summary.sessions import both, told_of

ROOT = Path(__file__).parent.parent.parent
CASES = ("base_element_dead", "relay_stuck_told_at_once", "foil_on_the_floor", "thermostat_drifted_low")
ROUNDS = 20


def main() -> None:
    options = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    options.add_argument("--batch", type=int, default=10_000)
    options.add_argument("--anew", action="store_true", help="make each value of the batch anew from its session")
    chosen = options.parse_args()
    knowledge = load_knowledge(ROOT / "rules", None)
    languages = Languages(ROOT / "locales", knowledge)
    sentences = languages.sentences("en-GB", "great_britain")
    tolds = told(script_of(knowledge), sentences)
    summaries = made(tolds)
    wording = sentences.wording
    forms = {name: timed_of(lambda s, form=form: form(s, wording), summaries) for name, form in FORMS.items()}
    print(f"{len(summaries)} summaries, {ROUNDS} rounds; the median of the rounds, ms per summary")
    for name, ms in forms.items():
        print(f"  {name:<9}{ms:9.2f}   {ms / forms['text']:7.1f} times the text form")
    values = made_anew(tolds) if chosen.anew else cycle(summaries)
    in_batch(lambda s: [form(s, wording) for form in FORMS.values()], values, chosen.batch)


def told(script: Script, sentences: Sentences) -> dict[str, Told]:
    """The interviews of the cases, held to their end."""
    found = {}
    for name in CASES:
        case = read_case(ROOT / "tests" / "cases" / f"{name}.yaml")
        conversation = begin_case(script, case, "great_britain")
        hold(conversation, case["answers"])
        found[name] = told_of(conversation, sentences)
    return found


def fresh(session: Told) -> Told:
    """The same events, of which nothing is derived yet."""
    return Told(session.script, session.sentences, session.events)


def made(tolds: Mapping[str, Told]) -> list[Summary]:
    summaries: list[Summary] = []
    for name, session in tolds.items():
        both(fresh(session))
        began = time.perf_counter()
        summaries += both(fresh(session))
        print(f"  {name}: both values made in {1e3 * (time.perf_counter() - began):.0f} ms")
    return summaries


def made_anew(tolds: Mapping[str, Told]) -> Iterator[Summary]:
    """The engineer's and the household's in turn, session after session, without end."""
    for session in cycle(tolds.values()):
        yield engineer_summary(fresh(session))
        yield household_summary(fresh(session))


def timed_of(write: Callable[[Summary], object], summaries: list[Summary]) -> float:
    for summary in summaries:
        write(summary)
    rounds = []
    for _ in range(ROUNDS):
        began = time.perf_counter()
        for summary in summaries:
            write(summary)
        rounds.append(1e3 * (time.perf_counter() - began) / len(summaries))
    return sorted(rounds)[ROUNDS // 2]


def in_batch(write: Callable[[Summary], object], summaries: Iterator[Summary], batch: int) -> None:
    """What the process holds after each tenth of the batch; the first tenth fills what is kept on purpose."""
    print(f"{batch} summaries in all forms; MB held before: {resident_mb():.1f}; after each tenth:", flush=True)
    began = time.perf_counter()
    for number, summary in enumerate(islice(summaries, batch)):
        write(summary)
        if (number + 1) % max(1, batch // 10) == 0:
            gc.collect()
            print(f"  {number + 1:>7}{resident_mb():9.1f} MB{time.perf_counter() - began:8.0f} s", flush=True)


def resident_mb() -> float:
    """Of this process, by Linux."""
    (line,) = [each for each in Path("/proc/self/status").read_text().splitlines() if each.startswith("VmRSS")]
    return int(line.split()[1]) / 1024


if __name__ == "__main__":
    main()
