"""The line by which a person at a terminal sees that the program is at work, and how far it is.

It comes after half a second and goes before anything else is written. In a pipe there is none, and
nothing is loaded for it.
"""

from __future__ import annotations

import os
import stat
import sys
import time
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from typing import TypeVar

P = TypeVar("P")

#: After so many seconds without other output it is shown; so often it is looked for.
_AFTER, _EACH = 0.5, 0.1


class _Line:
    """The line of a run; a thread of its own writes it, so that no work has to."""

    def __init__(self) -> None:
        import threading  # most runs are over before there is anything to show

        self.says = "working"
        self._shown = ""
        self._since = self._begun = time.monotonic()
        self._lock, self._over = threading.RLock(), threading.Event()
        self._thread = threading.Thread(target=self._run, daemon=True)
        self._thread.start()

    def _run(self) -> None:
        while not self._over.wait(_EACH):
            with self._lock:
                now = time.monotonic()
                if now - self._since >= _AFTER:
                    self._write(f"{self.says}, {now - self._begun:.0f} s")

    def _write(self, line: str) -> None:
        """Put a line over the one that is shown, without signs that some terminals lack."""
        try:
            room = (os.get_terminal_size(sys.stderr.fileno()).columns or 80) - 1
            plain = line.encode("ascii", "replace").decode()[: max(0, room)]
            if plain != self._shown:
                os.write(sys.stderr.fileno(), f"\r{plain:{len(self._shown)}}\r{plain}".encode())
            self._shown = plain
        except OSError:
            self._over.set()

    @contextmanager
    def quiet(self) -> Iterator[None]:
        """The line is gone while something else is written or asked."""
        with self._lock:
            self._clear()
            try:
                yield
            finally:
                self._since = time.monotonic()

    def _clear(self) -> None:
        if self._shown:
            self._write("")
            self._shown = ""

    def end(self) -> None:
        """Take the line away for good."""
        self._over.set()
        self._thread.join()
        self._clear()


_lines: list[_Line] = []


@contextmanager
def at_work() -> Iterator[None]:
    """Show a line while this goes on, where a person is watching."""
    if not _watched():
        yield
        return
    line = _Line()
    _lines.append(line)
    try:
        yield
    finally:
        _lines.remove(line)
        line.end()


def _watched() -> bool:
    if sys.stderr is None or not sys.stderr.isatty():
        return False
    try:
        out = os.fstat(sys.stdout.fileno()).st_mode
    except (OSError, ValueError):
        return False
    return not (stat.S_ISFIFO(out) or stat.S_ISSOCK(out))


@contextmanager
def quiet() -> Iterator[None]:
    """No line is shown while something is written or asked."""
    if not _lines:
        yield
        return
    with _lines[-1].quiet():
        yield


def doing(what: str) -> None:
    """What the line shows from now on."""
    if _lines:
        _lines[-1].says = what


def counted_off(plans: Iterable[P], count: int) -> Iterator[P]:
    """The plans one by one, while the line shows how far it is."""
    for number, plan in enumerate(plans, 1):
        doing(f"checking {number} of {count}" if count > 1 else "checking")
        yield plan
