"""Files that are there as a whole or not at all."""

import errno
import os
import secrets
from pathlib import Path

OWNER_ALONE = 0o600


def file_or_here(typed: str) -> Path | None:
    """What an option names: `-` is no file but standard output, None; a file of that name is `./-`."""
    return None if typed == "-" else Path(typed)


def write_whole(path: Path, content: bytes) -> None:
    """Raises OSError; then what was there before is still there.

    A new file is for its owner alone; one that was there keeps its rights. A link goes on leading to its file. What
    is there already and isn't a file (a pipe, a device) can't be replaced and is written to as it is.
    """
    if path.exists() and not path.is_file():
        path.write_bytes(content)
        return
    target = _behind_links(path)
    beside = target.with_name(f".{secrets.token_hex(8)}.part")
    descriptor = os.open(beside, os.O_WRONLY | os.O_CREAT | os.O_EXCL, OWNER_ALONE)
    try:
        with os.fdopen(descriptor, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        if target.exists():
            beside.chmod(target.stat().st_mode)
        beside.replace(target)
    except BaseException:
        beside.unlink(missing_ok=True)
        raise


def _behind_links(path: Path) -> Path:
    try:
        return path.resolve()
    except RuntimeError as error:  # links that lead in a circle
        raise OSError(errno.ELOOP, os.strerror(errno.ELOOP), str(path)) from error
