"""Broken folders that are made by a few lines rather than written down."""

from collections.abc import Callable, Iterable
from itertools import product
from pathlib import Path

from assistant.engine.limits import fnv_1a_32
from assistant.knowledge.rules_folder import MOST_BYTES

NAMES = [f"{letter}{number}" for letter, number in product("abcdefghij", range(100))]


def question(folder: Path, name: str, kind: str, codes: Iterable[str]) -> None:
    choices = "".join(f"  {code}: {{}}\n" for code in codes)
    text = (
        f"note: x\nstage: signs\norder: 500\nkind: {kind}\ncare: talk\n"
        "minutes: {value: 1, unit: minutes, source: a watch}\n"
        f"choices:\n{choices}"
    )
    (folder / "questions" / f"{name}.yaml").write_text(text)


def finding(folder: Path, name: str, conditions: Iterable[str]) -> None:
    when = "".join(f"  - {{{condition}}}\n" for condition in conditions)
    text = f"note: x\nwhen:\n{when}can_mislead: x\nexamples:\n  fires: [{{}}]\n  stays_quiet: [{{}}]\n"
    (folder / "findings" / f"{name}.yaml").write_text(text)


def no_folder(folder: Path) -> None:
    folder.rename(folder.with_name("elsewhere"))


def too_large(folder: Path) -> None:
    (folder / "causes" / "weak_element.yaml").write_text("# " + "x" * MOST_BYTES)


def square_brackets(folder: Path) -> None:
    (folder / "causes" / "weak_element.yaml").write_text("[" * 10_000)


def curly_brackets(folder: Path) -> None:
    (folder / "causes" / "weak_element.yaml").write_text("{" * 10_000)


def keys_within_keys(folder: Path) -> None:
    (folder / "causes" / "weak_element.yaml").write_text("? " * 10_000)


def folder_named_like_a_file(folder: Path) -> None:
    (folder / "acts.yaml").unlink()
    (folder / "acts.yaml").mkdir()
    (folder / "causes" / "bent_door.yaml").mkdir()


def links_in_a_circle(folder: Path) -> None:
    (folder / "causes" / "bent_door.yaml").symlink_to("bent_door.yaml")
    (folder / "roles.yaml").unlink()
    (folder / "roles.yaml").symlink_to("roles.yaml")
    (folder / "regions" / "north_isle.yaml").unlink()
    (folder / "regions").rmdir()
    (folder / "regions").symlink_to("regions")


def too_many_antecedents(folder: Path) -> None:
    question(folder, "marks", "choices", NAMES[:13])
    finding(folder, "demanding", [f"question: marks, includes: {name}" for name in NAMES[:13]])


def too_many_alternatives(folder: Path) -> None:
    for name in ("first", "second"):
        question(folder, name, "choice", NAMES[:9])
    nine = ", ".join(NAMES[:9])
    finding(folder, "broad", [f"question: {name}, is_one_of: [{nine}]" for name in ("first", "second")])


def too_many_rules(folder: Path) -> None:
    for name in ("first", "second"):
        question(folder, name, "choice", NAMES[:8])
    eight = ", ".join(NAMES[:8])
    for name in NAMES[:16]:
        finding(folder, name, [f"question: {q}, is_one_of: [{eight}]" for q in ("first", "second")])


def too_many_keys(folder: Path) -> None:
    """A key that no finding reads can't matter, so each is read."""
    question(folder, "marks", "choices", NAMES[:401])
    for start in range(0, 401, 12):
        twelve = NAMES[start : min(start + 12, 401)]
        finding(folder, f"marked{start}", [f"question: marks, includes: {name}" for name in twelve])


def too_many_codes_of_key(folder: Path) -> None:
    question(folder, "mark", "choice", NAMES[:401])
    for start in range(0, 401, 60):
        codes = ", ".join(NAMES[start : min(start + 60, 401)])
        finding(folder, f"marked{start}", [f"question: mark, is_one_of: [{codes}]"])


def too_many_comparisons_of_key(folder: Path) -> None:
    for number in range(61):
        finding(folder, f"warm{number}", [f"question: temperature_reached, at_least: {number}"])


def condition_in_too_many_rules(folder: Path) -> None:
    for name in NAMES[:251]:
        finding(folder, name, ["question: oven_is_off, is: no"])


def order_out_of_range(folder: Path) -> None:
    for name in NAMES:
        finding(folder, name, ["question: oven_is_off, is: no"])


def same_hash(folder: Path) -> None:
    """Two names with one hash, found by trying: among 200,000 there are several pairs."""
    seen: dict[int, str] = {}
    for number in range(200_000):
        name = f"same{number}"
        first = seen.setdefault(fnv_1a_32(name), name)
        if first != name:
            for number_of, each in enumerate((first, name)):
                question(folder, each, "choice", ["a", "b"])
                finding(folder, f"reads{number_of}", [f"question: {each}, is: a"])
            return
    raise AssertionError("no two names with one hash")


GENERATED: dict[str, Callable[[Path], None]] = {
    made.__name__: made
    for made in (
        no_folder,
        too_large,
        square_brackets,
        curly_brackets,
        keys_within_keys,
        folder_named_like_a_file,
        links_in_a_circle,
        too_many_antecedents,
        too_many_alternatives,
        too_many_rules,
        too_many_keys,
        too_many_codes_of_key,
        too_many_comparisons_of_key,
        condition_in_too_many_rules,
        order_out_of_range,
        same_hash,
    )
}
