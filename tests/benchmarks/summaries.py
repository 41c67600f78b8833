"""How long the forms of a summary take, and whether many of them need ever more memory.

    python -m tests.benchmarks.summaries [--batch 10000]

Prints ms per summary in each form, also as a ratio to the text form, and what the process holds before and after a
batch that is made in all forms in turn. The values are made once: their making is measured apart.
"""

import argparse
import gc
import time
from collections.abc import Callable
from pathlib import Path

from assistant.authoring.cases import begin_case, hold, read_case
from assistant.authoring.summary_forms import FORMS
from assistant.interview.script import Script, script_of
from assistant.knowledge.load import load_knowledge
from assistant.reports.summary.value import Summary
from assistant.wording.languages import Languages
from tests.reports.summary.sessions import both, told_of

ROOT = Path(__file__).parent.parent.parent
CASES = ("base_element_dead", "relay_stuck_told_at_once", "foil_on_the_floor", "thermostat_drifted_low")
ROUNDS = 20


def main() -> None:
    options = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    options.add_argument("--batch", type=int, default=10_000)
    batch = options.parse_args().batch
    knowledge = load_knowledge(ROOT / "rules", None)
    languages = Languages(ROOT / "locales", knowledge)
    sentences = languages.sentences("en-GB", "great_britain")
    summaries = made(script_of(knowledge), sentences)
    wording = sentences.wording
    forms = {name: timed_of(lambda s, form=form: form(s, wording), summaries) for name, form in FORMS.items()}
    print(f"{len(summaries)} summaries, {ROUNDS} rounds; the median of the rounds, ms per summary")
    for name, ms in forms.items():
        print(f"  {name:<9}{ms:9.2f}   {ms / forms['text']:7.1f} times the text form")
    in_batch(lambda s: [form(s, wording) for form in FORMS.values()], summaries, batch)


def made(script: Script, sentences) -> list[Summary]:  # type: ignore[no-untyped-def]
    summaries: list[Summary] = []
    for name in CASES:
        case = read_case(ROOT / "tests" / "cases" / f"{name}.yaml")
        conversation = begin_case(script, case, "great_britain")
        hold(conversation, case["answers"])
        told = told_of(conversation, sentences)
        both(told)
        began = time.perf_counter()
        summaries += both(told_of(conversation, sentences))
        print(f"  {name}: both values made in {1e3 * (time.perf_counter() - began):.0f} ms")
    return summaries


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


def in_batch(write: Callable[[Summary], object], summaries: list[Summary], batch: int) -> None:
    """What the process holds after each tenth of the batch; the first tenth fills what is kept on purpose."""
    print(f"{batch} summaries in all forms; MB held before: {resident_mb():.1f}; after each tenth:", flush=True)
    began = time.perf_counter()
    for number in range(batch):
        write(summaries[number % len(summaries)])
        if (number + 1) % max(1, batch // 10) == 0:
            gc.collect()
            print(f"  {number + 1:>7}{resident_mb():9.1f} MB{time.perf_counter() - began:8.0f} s", flush=True)


def resident_mb() -> float:
    """Of this process, by Linux."""
    (line,) = [each for each in Path("/proc/self/status").read_text().splitlines() if each.startswith("VmRSS")]
    return int(line.split()[1]) / 1024


if __name__ == "__main__":
    main()
