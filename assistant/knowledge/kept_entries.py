"""The typed entries of sound rule files, kept by what the files say, so that one edited file costs one parse."""

import contextlib
import json
from hashlib import sha256
from pathlib import Path
from typing import Any

from assistant.knowledge.fingerprint import combined, sealed, unsealed, write_beside
from assistant.knowledge.validation import adapter


class KeptEntries:
    """Reads what was kept at `path`, and keeps at the end what was asked for or added since. Never raises."""

    def __init__(self, path: Path) -> None:
        self._path = path
        self._kept: dict[str, str] = {}
        self._in_use: dict[str, str] = {}
        with contextlib.suppress(OSError, ValueError):
            kept = json.loads(unsealed(path.read_bytes()))
            self._kept = {str(key): str(entry) for key, entry in kept.items()}

    def entry(self, kind: str, content: bytes) -> Any | None:
        """The entry of a file of that kind with that content, None where it isn't kept."""
        key = _key(kind, content)
        if key not in self._kept:
            return None
        with contextlib.suppress(ValueError):
            entry = adapter(kind).validate_json(self._kept[key])
            self._in_use[key] = self._kept[key]
            return entry
        return None

    def add(self, kind: str, content: bytes, entry: Any) -> None:
        self._in_use[_key(kind, content)] = adapter(kind).dump_json(entry, by_alias=True).decode()

    def keep(self) -> None:
        if self._in_use.keys() != self._kept.keys():
            write_beside(self._path, sealed(json.dumps(self._in_use).encode()))


def _key(kind: str, content: bytes) -> str:
    return sha256(kind.encode() + b"\n" + content).hexdigest()


def kept_entries(cache: Path, folder: Path) -> KeptEntries:
    """Those of the folder."""
    return KeptEntries(cache / f"entries-{combined(str(folder.absolute()))[:32]}.json")
