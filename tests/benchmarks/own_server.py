"""A PostgreSQL server of one's own on loopback, that may be killed and started again."""

import contextlib
import os
import pwd
import shutil
import signal
import socket
import subprocess
import tempfile
import time
from pathlib import Path

PROGRAMS = Path("/usr/lib/postgresql")
OWNER = "postgres"
"""Who runs it where the tests are run by the superuser: the server refuses to be run by that one."""


MOST_TRIES = 20


class OwnServer:
    """Of Debian's packages, in a folder that is gone afterwards. Raises FileNotFoundError where there are none."""

    def __init__(self) -> None:
        found = sorted(PROGRAMS.glob("*/bin/initdb"), key=lambda each: float(each.parts[-3]))
        if not found:
            raise FileNotFoundError(f"no PostgreSQL under {PROGRAMS}: apt-get install postgresql")
        self._bin = found[-1].parent
        self._folder = Path(tempfile.mkdtemp(prefix="server"))
        if os.geteuid() == 0:
            owner = pwd.getpwnam(OWNER)
            os.chown(self._folder, owner.pw_uid, owner.pw_gid)
        with socket.socket() as free:
            free.bind(("127.0.0.1", 0))
            self._port = free.getsockname()[1]
        self._run("initdb", "-D", str(self._data), "-A", "trust", "-U", "ovenside")
        settings = (
            f"listen_addresses = '127.0.0.1'\nport = {self._port}\nmax_connections = 200\n"
            f"unix_socket_directories = '{self._folder}'\n"
        )
        with (self._data / "postgresql.conf").open("a") as file:
            file.write(settings)
        self.start()

    @property
    def _data(self) -> Path:
        return self._folder / "data"

    @property
    def url(self) -> str:
        return f"postgresql://ovenside@127.0.0.1:{self._port}/postgres"

    def start(self) -> None:
        """Returns once it takes connections; what a killed one left is recovered before.

        A program that it had started just when it was killed may still be ending: then it is tried again.
        """
        for _ in range(MOST_TRIES - 1):
            try:
                self._start()
            except RuntimeError:
                time.sleep(0.5)
            else:
                return
        self._start()

    def _start(self) -> None:
        self._run("pg_ctl", "-D", str(self._data), "-w", "-t", "120", "-l", str(self._folder / "log"), "start")

    def kill(self) -> None:
        """SIGKILL to the server and all that it started, at once."""
        head = int((self._data / "postmaster.pid").read_text().splitlines()[0])
        children = Path(f"/proc/{head}/task/{head}/children").read_text().split()
        killed = (head, *map(int, children))
        for process in killed:
            _kill(process)
        while any(map(_runs, killed)):
            time.sleep(0.01)

    def remove(self) -> None:
        self._run("pg_ctl", "-D", str(self._data), "-m", "immediate", "stop", must_succeed=False)
        shutil.rmtree(self._folder, ignore_errors=True)

    def _run(self, program: str, *arguments: str, must_succeed: bool = True) -> None:
        as_owner = ["runuser", "-u", OWNER, "--"] if os.geteuid() == 0 else []
        done = subprocess.run(
            [*as_owner, str(self._bin / program), *arguments],
            stdout=subprocess.DEVNULL,
            stderr=subprocess.PIPE,
            check=False,
        )
        if must_succeed and done.returncode != 0:
            raise RuntimeError(f"{program}: {done.stderr.decode()}")


def _kill(process: int) -> None:
    with contextlib.suppress(ProcessLookupError):
        os.kill(process, signal.SIGKILL)


def _runs(process: int) -> bool:
    """One that ended and that nobody asked after is no longer running."""
    try:
        return "State:\tZ" not in Path(f"/proc/{process}/status").read_text()
    except (FileNotFoundError, ProcessLookupError):
        return False
