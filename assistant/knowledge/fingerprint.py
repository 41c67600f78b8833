"""Digests of rules and locales, and the small files kept under them. Standard library only."""

import contextlib
from hashlib import sha256
from pathlib import Path
from tempfile import NamedTemporaryFile

from assistant import __version__

MOST_KEPT = 12


def fingerprint(folder: Path, pattern: str = "*.yaml") -> str:
    """A digest of every such file below the folder, by name and content; hex, 64 characters."""
    digest = sha256()
    for path in sorted(folder.rglob(pattern)):
        name = path.relative_to(folder).as_posix().encode("utf-8", "surrogateescape")
        content = _content(path)
        digest.update(b"%d %s %d " % (len(name), name, len(content)))
        digest.update(content)
    return digest.hexdigest()


def _content(path: Path) -> bytes:
    """Nothing for what can't be read: the checks say so of such a file."""
    with contextlib.suppress(OSError):
        return path.read_bytes() if path.is_file() else b""
    return b""


def sealed(content: bytes) -> bytes:
    """The content behind its own digest, so that a damaged copy is noticed."""
    return sha256(content).hexdigest().encode() + b"\n" + content


def unsealed(kept: bytes) -> bytes:
    """The content again. Raises ValueError if it isn't what was sealed."""
    seal, _, content = kept.partition(b"\n")
    if seal != sha256(content).hexdigest().encode():
        raise ValueError("damaged since it was kept")
    return content


def combined(*marks: str) -> str:
    """One digest for several, bound to this version of the package and to its own files."""
    own = Path(__file__).parent.parent
    return sha256("\n".join((__version__, fingerprint(own, "*.py"), *marks)).encode()).hexdigest()


def write_beside(path: Path, content: bytes) -> None:
    """Keep a file that can be made again. It appears whole or not at all; a disk that refuses is no mistake."""
    with contextlib.suppress(OSError), contextlib.ExitStack() as unfinished:
        path.parent.mkdir(parents=True, exist_ok=True)
        with NamedTemporaryFile(dir=path.parent, delete=False) as file:
            unfinished.callback(Path(file.name).unlink, missing_ok=True)
            file.write(content)
        Path(file.name).replace(path)
        _drop_oldest(path.parent)


def _drop_oldest(folder: Path) -> None:
    kept = sorted(folder.glob("*.json"), key=lambda path: path.stat().st_mtime, reverse=True)
    for path in kept[MOST_KEPT:]:
        path.unlink(missing_ok=True)
