"""`ovenside rules learn`: outcomes -> a change of `learned.yaml` for somebody to look at, and what it would do."""

from collections.abc import Iterator, Mapping
from difflib import unified_diff
from pathlib import Path
from typing import TextIO, get_args

from assistant.belief.hypotheses import SOMETHING_ELSE
from assistant.belief.learning import Estimate, estimate, learned_from
from assistant.belief.outcomes import Outcome, latest_of_each_session
from assistant.knowledge.learned import LEARNED_DIFF, LEARNED_FILE, MOST_SESSIONS, Group, Learned
from assistant.knowledge.model import Knowledge
from assistant.wording.locale import Wording

HEADING = """\
# What came of past sessions, counted by "ovenside rules learn". Each cause: found in so many, of so many looked at.
"""
NO_NEW_LINE = "\\ No newline at end of file\n"


def learn(
    folder: Path,
    knowledge: Knowledge,
    outcomes: tuple[Outcome, ...],
    sizes: Mapping[str, int],
    wording: Wording,
    out: TextIO,
) -> int:
    """Write the diff beside the rules, which stay as they are. Returns the exit status.

    `sizes`: sessions in all, of each group that is named, and of `unknown`.
    """
    _say_unknown_causes(outcomes, knowledge, wording, out)
    mistake = _mistake_in(sizes, outcomes, wording)
    learned = None if mistake else learned_from(outcomes, knowledge, sizes)
    if learned is None:
        out.write((mistake or wording.say("outcomes-none")) + "\n")
        return 1
    for line in _report(knowledge, knowledge.model_copy(update={"learned": learned}), wording):
        out.write(line + "\n")
    return _write_diff(folder, learned, wording, out)


def _mistake_in(sizes: Mapping[str, int], outcomes: tuple[Outcome, ...], wording: Wording) -> str | None:
    """A number of sessions that can't be, in a sentence."""
    latest = latest_of_each_session(outcomes)
    for group, size in sizes.items():
        known = sum(outcome.group == group for outcome in latest)
        if not known <= size <= MOST_SESSIONS:
            return wording.say("learn-size_wrong", group=group, size=str(size), least=known, most=str(MOST_SESSIONS))
    return None


def _say_unknown_causes(outcomes: tuple[Outcome, ...], knowledge: Knowledge, wording: Wording, out: TextIO) -> None:
    known = {*knowledge.causes, SOMETHING_ELSE}
    for cause in sorted({cause for outcome in outcomes for cause in outcome.causes_found} - known):
        out.write(wording.say("outcomes-cause_gone", cause=cause) + "\n")


def _report(before: Knowledge, after: Knowledge, wording: Wording) -> Iterator[str]:
    """How many sessions stand behind it, then each cause whose rate changes as far as it is shown."""
    learned = after.learned
    assert learned is not None
    yield wording.say(
        "learn-sessions",
        until=learned.until.isoformat(),
        visited=learned.sessions.visited,
        phone=learned.sessions.solved_by_phone,
        unknown=learned.sessions.unknown,
    )
    for group in get_args(Group):
        if learned.sessions.of_group(group) and group not in learned.counts:
            yield wording.say("learn-group_unseen", group=group)
    width = max(map(len, after.causes))
    changed = False
    for cause_id in after.causes:
        old, new = estimate(cause_id, before), estimate(cause_id, after)
        if _percent(old.rate) != _percent(new.rate):
            changed = True
            yield _row(cause_id.ljust(width), old, new, _counts(learned, cause_id, wording), wording)
    if not changed:
        yield wording.say("learn-no_rate_changes")


def _row(cause: str, old: Estimate, new: Estimate, counts: str, wording: Wording) -> str:
    return wording.say(
        "learn-row",
        cause=cause,
        before=_percent(old.rate),
        after=_percent(new.rate),
        low=_percent(new.low),
        high=_percent(new.high),
        counts=counts,
    )


def _counts(learned: Learned, cause_id: str, wording: Wording) -> str:
    seen = [
        wording.say("learn-count", group=group, found=count.found, of=count.of)
        for group in get_args(Group)
        if (count := learned.count(group, cause_id)).of
    ]
    return ", ".join(seen)


def _percent(share: float) -> str:
    return f"{share * 100:.1f}".rjust(4)


def learned_text(learned: Learned) -> str:
    """The file that says so."""
    sessions = ", ".join(f"{group}: {size}" for group, size in learned.sessions.model_dump().items())
    lines = [
        f"until: {learned.until.isoformat()}",
        f"sessions: {{{sessions}}}",
        *(["counts:"] if learned.counts else []),
    ]
    for group, counts in learned.counts.items():
        lines.append(f"  {group}:")
        lines += [f"    {cause}: {{found: {count.found}, of: {count.of}}}" for cause, count in counts.items()]
    return HEADING + "\n".join(lines) + "\n"


def difference(old: str | None, new: str) -> str:
    """A unified diff that makes one text of the other, for `patch -p1` or `git apply` in the rules folder.

    `old` is None where there is no file yet; without a difference the diff is empty.
    """
    before = "/dev/null" if old is None else f"a/{LEARNED_FILE}"
    lines = unified_diff(_lines(old or ""), _lines(new), before, f"b/{LEARNED_FILE}")
    return "".join(line if line.endswith("\n") else line + "\n" + NO_NEW_LINE for line in lines)


def _lines(text: str) -> list[str]:
    """Lines end where patch sees an end, and nowhere else."""
    *whole, last = text.split("\n")
    return [*(line + "\n" for line in whole), *([last] if last else [])]


def _write_diff(folder: Path, learned: Learned, wording: Wording, out: TextIO) -> int:
    target, current = folder / LEARNED_DIFF, folder / LEARNED_FILE
    try:
        old = current.read_bytes().decode() if current.exists() else None
        change = difference(old, learned_text(learned))
        if not change:
            target.unlink(missing_ok=True)
            out.write(wording.say("learn-nothing_new") + "\n")
            return 0
        target.write_bytes(change.encode())
    except OSError as error:
        out.write(wording.say("learn-not_written", where=str(target), reason=error.strerror or str(error)) + "\n")
        return 1
    out.write(wording.say("learn-written", where=str(target), name=LEARNED_DIFF) + "\n")
    return 0
