"""The command line at a pseudo-terminal, as a person uses it: read what it asks, type an answer."""

from __future__ import annotations

import os
import pty
import re
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

ENTER = "\n"
CTRL_C, CTRL_D = "\x03", "\x04"


class Terminal:
    """A run of the command line at a terminal of its own; all that it showed is in `shown`."""

    def __init__(self, process: subprocess.Popen[bytes], master: int) -> None:
        self._process, self._master = process, master
        self.shown = ""
        self._seen = 0

    def until(self, words: str | re.Pattern[str]) -> str:
        """What is shown from here until these words are; fails if the run ends before."""
        pattern = re.compile(re.escape(words)) if isinstance(words, str) else words
        while not (found := pattern.search(self.shown, self._seen)):
            more = self._more()
            assert more, f"`{words}` was never shown:\n{self.shown}"
            self.shown += more
        new, self._seen = self.shown[self._seen : found.end()], found.end()
        return new

    def type(self, keys: str) -> None:
        """Type these keys."""
        os.write(self._master, keys.encode())

    def end(self) -> int:
        """The exit code, once the run has ended."""
        while more := self._more():
            self.shown += more
        return self._process.wait()

    def _more(self) -> str:
        try:
            return os.read(self._master, 65536).decode("utf-8", "replace").replace("\r\n", "\n")
        except OSError:  # the run has ended
            return ""


@contextmanager
def at_terminal(*arguments: str | Path, cwd: Path) -> Iterator[Terminal]:
    """Run the command line at a pseudo-terminal, where ctrl-C reaches it as a key."""
    master, slave = pty.openpty()
    ours = {name: os.environ[name] for name in ("PATH", "PYTHONPATH") if name in os.environ}
    process = subprocess.Popen(
        [sys.executable, "-m", "wellstrung", *map(str, arguments)],
        cwd=cwd,
        env={**ours, "COLUMNS": "80", "PYTHONUTF8": "1", "TERM": "dumb"},
        stdin=slave,
        stdout=slave,
        stderr=slave,
        start_new_session=True,
        preexec_fn=_own_terminal,
    )
    os.close(slave)
    try:
        yield Terminal(process, master)
    finally:
        process.kill()
        process.wait()
        os.close(master)


def _own_terminal() -> None:
    """Make the terminal on the standard streams the one that signals come from.

    What runs in the background ignores ctrl-C, and so does what it starts: a terminal does not.
    """
    import fcntl
    import signal
    import termios

    signal.signal(signal.SIGINT, signal.SIG_DFL)
    fcntl.ioctl(0, termios.TIOCSCTTY, 0)
