"""What a command writes: to the terminal, to files, and as its exit code."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path

from wellstrung.common.wording import nearest
from wellstrung.plugins.error import HostError
from wellstrung.report.writer import Options

OK, WRONG, BROKEN = 0, 1, 2
#: what the head of every page of ours holds
_OURS = b'<meta name="generator" content="wellstrung">'
#: Signs that some terminals lack.
ASCII = str.maketrans(
    {
        "±": "+/-",
        "×": "x",
        "π": "pi",
        "°": " deg",
        "²": "2",
        "½": "1/2",
        "┃": "|",
        "—": "-",
        "…": "...",
        "£": "GBP ",
        "€": "EUR ",
        "¥": "JPY ",
    }
)


def looks(options: argparse.Namespace) -> Options:
    """How to write for this terminal."""
    terminal = sys.stdout.isatty()
    return Options(
        width=max(40, min(columns(), 120)),
        colour=terminal and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb",
        workings=getattr(options, "workings", False),
        brief=getattr(options, "brief", False),
        trace=getattr(options, "trace", False),
        ascii_only=not (sys.stdout.encoding or "ascii").lower().startswith("utf"),
        large=getattr(options, "large", False),
        full=getattr(options, "full", False),
    )


def columns() -> int:
    """The width of the terminal: `COLUMNS` if it is set, or its own, or 80."""
    width = os.environ.get("COLUMNS", "")
    if width.isdecimal() and int(width):
        return int(width)
    try:
        return os.get_terminal_size(sys.stdout.fileno()).columns
    except (OSError, ValueError):
        return 80


def show(text: str) -> None:
    """Print, in ASCII where the terminal cannot show more; raises HostError if it cannot."""
    encoding = sys.stdout.encoding or "ascii"
    try:
        text.encode(encoding)
    except UnicodeEncodeError:
        text = text.translate(ASCII).encode(encoding, "replace").decode(encoding)
    with _printing():
        sys.stdout.write(text + "\n")
        sys.stdout.flush()


def show_as_is(text: str) -> None:
    """Print a file: in UTF-8 whatever the terminal shows, and with its own line ends.

    A spreadsheet recognizes UTF-8 by the mark before it; plain ASCII needs none. Raises HostError.
    """
    with _printing():
        sys.stdout.flush()
        sys.stdout.buffer.write(text.encode("ascii" if text.isascii() else "utf-8-sig"))
        sys.stdout.buffer.flush()


@contextmanager
def _printing() -> Iterator[None]:
    """A full disk behind the output is an error of one line; what is left is not tried again."""
    try:
        yield
    except BrokenPipeError:
        raise
    except OSError as error:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        says = f"the output cannot be written: {error.strerror or error}"
        raise HostError(says) from None


def answer(question: str) -> str | None:
    """What a person types after a question; None at the end of the input."""
    sys.stdout.write(question)
    sys.stdout.flush()
    if sys.stdin.isatty():
        _wait_for_keys()
    line = sys.stdin.readline()
    return line.strip() if line else None


def _wait_for_keys() -> None:
    """Return when there is something to read; a ctrl-C at any moment is raised.

    One that comes just before the read begins would otherwise wait for the next key: the signal is
    noted in a pipe, which is waited for as well.
    """
    import select
    import signal

    noted, notes = os.pipe()
    os.set_blocking(notes, False)
    before = signal.set_wakeup_fd(notes, warn_on_full_buffer=False)
    try:
        select.select([sys.stdin, noted], [], [])
    finally:
        signal.set_wakeup_fd(before)
        os.close(noted)
        os.close(notes)


def note(says: str) -> None:
    """A line beside the output, on the error stream."""
    print(f"wellstrung: {says}", file=sys.stderr)


def save(pages: Mapping[Path, str], inputs: Iterable[Path] = (), *, force: bool = False) -> None:
    """Write pages and name the first; raises HostError, and then leaves each file as it was.

    A file that is there already must be a page of ours, or `force` is given. What was read for the
    pages is never written over.
    """
    read = [path for path in inputs if path.exists()]
    for path in pages:
        if any(path.exists() and path.samefile(one) for one in read):
            raise HostError(f"{path} is read for the page: give another --out")
        if not force and path.is_file() and not _is_ours(path):
            raise HostError(f"{path} is there already and is not a page of ours: take --force")
    for path, page in pages.items():
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            write_whole(path, page.encode())
        except OSError as error:
            raise HostError(f"{path} cannot be written: {error.strerror or error}") from None
    more = f" and {len(pages) - 1} more beside it" if len(pages) > 1 else ""
    show(f"wrote {next(iter(pages))}{more}")


def _is_ours(path: Path) -> bool:
    try:
        with path.open("rb") as stream:
            return _OURS in stream.read(2000)
    except OSError:
        return False


def write_whole(path: Path, data: bytes) -> None:
    """Write all of a file or nothing; a device is written to as it is."""
    if path.exists() and not path.is_file():
        path.write_bytes(data)
        return
    path = path.resolve()  # what a link leads to is written, the link stays
    part = path.with_name(f".{path.name}.{os.getpid()}.part")
    try:
        with part.open("xb") as stream:
            stream.write(data)
            stream.flush()
            os.fsync(stream.fileno())
        if path.exists():
            part.chmod(path.stat().st_mode & 0o777)
        part.replace(path)
    finally:
        part.unlink(missing_ok=True)


def unknown(what: str, names: Iterable[str], known: Iterable[str]) -> int | None:
    """Exit 2 with a note on the first name that is not known; None if all are."""
    choices = list(known)
    for name in names:
        if name not in choices:
            near = nearest(name, choices)
            advice = f"write `{near}`" if near else f"there are {', '.join(choices)}"
            note(f"there is no {what} called `{name}`: {advice}")
            return BROKEN
    return None
