"""The sound folder with mistakes put into it, and what is printed about them."""

import io
import shutil
from collections.abc import Iterable, Mapping
from functools import cache
from pathlib import Path
from typing import Any

import yaml

from assistant.authoring.check import check
from assistant.wording.locale import Wording, load_wording

HERE = Path(__file__).parent
SOUND = HERE / "sound_rules"
BROKEN = HERE / "broken_rules"
LOCALES = HERE.parent.parent / "locales"
SHOWN = "RULES"
"""Stands for the folder in the expected lines."""


@cache
def english() -> Wording:
    return load_wording(LOCALES, "en-GB")


def copy_of_sound_rules(target: Path) -> Path:
    return Path(shutil.copytree(SOUND, target / "rules"))


def read_example(path: Path) -> dict[str, Any]:
    """`changes`, each of a file, and the lines `printed`."""
    found = yaml.safe_load(path.read_text("utf-8"))
    assert found.keys() <= {"changes", "printed"}, path
    return dict(found)


def make_changes(folder: Path, changes: Iterable[Mapping[str, str]]) -> None:
    """Each names a `file`, and `replace` and `with`, or `add`, or `content`, or `bytes`; or nothing: it goes."""
    for change in changes:
        path = folder / change["file"]
        match change:
            case {"replace": old, "with": new}:
                text = path.read_text("utf-8")
                assert text.count(old) == 1, f"{change['file']}: {old!r} stands there {text.count(old)} times"
                path.write_text(text.replace(old, new), "utf-8")
            case {"add": added}:
                path.write_text(path.read_text("utf-8") + added, "utf-8")
            case {"content": content}:
                path.parent.mkdir(exist_ok=True)
                path.write_text(content, "utf-8", newline="")
            case {"bytes": content}:
                path.write_bytes(content.encode("latin-1"))
            case _:
                shutil.rmtree(path) if path.is_dir() else path.unlink()


def lines_printed(folder: Path, wording: Wording | None = None) -> tuple[list[str], int]:
    """What `rules check` prints, with SHOWN for the folder's own path, and its exit status."""
    out = io.StringIO()
    status = check(folder, wording or english(), out)
    return out.getvalue().replace(str(folder), SHOWN).splitlines(), status
