"""Files that are there as a whole or not at all."""

import os
import secrets
from pathlib import Path


def write_whole(path: Path, content: bytes) -> None:
    """Raises OSError; then what was there before is still there.

    What is there already and isn't a file (a pipe, a device) can't be replaced and is written to as it is.
    """
    target = path.resolve()
    if target.exists() and not target.is_file():
        target.write_bytes(content)
        return
    beside = target.with_name(f".{secrets.token_hex(8)}.part")
    try:
        with beside.open("xb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        if target.exists():
            beside.chmod(target.stat().st_mode)
        beside.replace(target)
    except BaseException:
        beside.unlink(missing_ok=True)
        raise
