"""Does what is brought mend the oven at the first visit?

    python -m tests.benchmarks.first_visit --ovens 1000 --seed 1 --processes 2

Simulated. Faulty ovens are drawn by the rules' base rates, their householders answer from the rules' own tables, and
of those whose interview ends with a visit it is counted whether that trade, with those parts, would mend all that is
wrong. So it shows what a kit is worth if the rules are right, and whether the chance that a summary states is that
share; never how often a real visit is enough.
"""

import argparse
from collections.abc import Callable, Mapping
from dataclasses import asdict, dataclass
from functools import partial
from pathlib import Path
from statistics import fmean

from assistant.authoring.processes import spread
from assistant.authoring.simulated_interview import LANG, ROLE, answer_to
from assistant.authoring.simulated_ovens import draw_oven
from assistant.belief.hypotheses import SOMETHING_ELSE
from assistant.interview.commands import Start
from assistant.interview.conversation import Conversation, utc_now
from assistant.interview.first_visit import chance_of_first_visit
from assistant.interview.log import SessionRecord
from assistant.interview.script import Script, script_of
from assistant.interview.verdict import NONE, Verdict
from assistant.interview.view import QuestionView
from assistant.knowledge.load import load_knowledge
from assistant.knowledge.model import Cause
from assistant.store.memory import MemoryStore

ROOT = Path(__file__).parents[2]
VISITS = ("book_visit", "maker_seller_or_landlord_first", "stop_and_isolate")
UNSURE = 0.1
KITS = ("nothing", "top cause's part", "chosen kit", "everything")


@dataclass(frozen=True)
class Visit:
    """`mended`: by each kit of KITS. `parts`: how many the chosen kit has. `stated`: the summary's chance."""

    mended: tuple[bool, ...]
    parts: int
    stated: float | None
    faulty: bool


def verdict_of(script: Script, oven: Mapping[str, object]) -> tuple[Conversation, Verdict]:
    """The interview held to its end; the oven is switched off where that is asked."""
    record = SessionRecord(session_id="0" * 32, code_hash=str(oven["number"]), name=None, created_at=utc_now())
    conversation = Conversation(script, MemoryStore(), record)
    conversation.start(Start(ROLE, str(oven["region"]), LANG, "single"))
    view = conversation.view()
    while isinstance(view, QuestionView) or view.details.get("then"):
        asked = view.id if isinstance(view, QuestionView) else str(view.details["then"])
        conversation.do(answer_to(script, asked, oven, 0.0, UNSURE))
        view = conversation.view()
    return conversation, view


def visit(script: Script, seed: int, number: int) -> Visit | None:
    """That oven's visit, if it ends with one of a trade that mends ovens."""
    oven = draw_oven(script.knowledge, script.evidence_model, "faulty", number, seed)
    conversation, verdict = verdict_of(script, asdict(oven))
    who = verdict.details.get("who")
    if verdict.action not in VISITS or who not in ("appliance_engineer", "electrician"):
        return None
    causes = script.knowledge.causes
    kit = verdict.details.get("kit", ())
    chosen = kit if isinstance(kit, tuple) else ()
    first = next((c for c, _ in verdict.named if c not in (NONE, SOMETHING_ELSE) and causes[c].kind == "fault"), None)
    part = causes[first].part if first is not None else None
    everything = tuple(script.knowledge.ovens.parts)
    faults = [causes.get(cause) for cause in oven.hypothesis]
    faults = [cause for cause in faults if cause is None or cause.kind == "fault"]
    return Visit(
        mended=tuple(
            all(_mends(cause, str(who), brought) for cause in faults)
            for brought in ((), (part,) if part else (), chosen, everything)
        ),
        parts=len(chosen),
        stated=chance_of_first_visit(script, conversation.assessment, chosen, str(who)),
        faulty=bool(faults),
    )


def _mends(cause: Cause | None, who: str, brought: tuple[str, ...]) -> bool:
    return cause is not None and cause.mended_by == who and cause.part in (None, *brought)


def player(seed: int) -> Callable[[int], Visit | None]:
    """What plays one oven, made anew in each process."""
    return partial(visit, script_of(load_knowledge(ROOT / "rules", None)), seed)


def main() -> None:
    arguments = argparse.ArgumentParser(description="What a kit mends at the first visit, simulated.")
    arguments.add_argument("--ovens", type=int, default=1000)
    arguments.add_argument("--seed", type=int, default=1)
    arguments.add_argument("--processes", type=int, default=1)
    chosen = arguments.parse_args()
    played = spread(player, (chosen.seed,), range(chosen.ovens), chosen.processes, 10)
    visits = [each for each in played if each is not None and each.faulty]
    print(
        f"Simulated: {chosen.ovens} faulty ovens, seed {chosen.seed}; {len(visits)} end with a visit and have a fault."
    )
    for place, name in enumerate(KITS):
        share = fmean(each.mended[place] for each in visits)
        error = (share * (1 - share) / len(visits)) ** 0.5
        print(f"mended at the first visit with {name:<17} {100 * share:5.1f} % ± {100 * error:.1f}")
    print(f"parts in the chosen kit, mean              {fmean(each.parts for each in visits):5.2f}")
    stated = [each for each in visits if each.stated is not None]
    print(f"chance that the summaries stated, mean     {100 * fmean(e.stated or 0 for e in stated):5.1f} %")


if __name__ == "__main__":
    main()
