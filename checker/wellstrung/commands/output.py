"""What a command writes: to the terminal, to files, and as its exit code."""

from __future__ import annotations

import argparse
import codecs
import os
import sys
from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager, suppress
from pathlib import Path

from wellstrung.commands.progress import quiet
from wellstrung.common.wording import nearest, one_of, spelt_out
from wellstrung.plugins.error import HostError
from wellstrung.report.writer import Options

OK, WRONG, BROKEN = 0, 1, 2
#: what the head of every page of ours holds, and that of every picture
_OURS = (b'<meta name="generator" content="wellstrung">', b"Software\0wellstrung", b"by wellstrung")
#: Signs that some terminals lack, as they can be read in ASCII. Any other loses its accent.
_IN_ASCII = {
    **{"±": "+/-", "×": "x", "π": "pi", "°": " deg", "µ": "u", "μ": "u", "≈": "~", "−": "-"},
    **{"≤": "<=", "≥": ">=", "→": "->", "┃": "|", "│": "|", "─": "-", "█": "#"},
    **dict.fromkeys("‐‑‒–—", "-"),
    **dict.fromkeys("•‣▪·", "*"),
    **dict.fromkeys("‘’‚′", "'"),
    **dict.fromkeys("“”„«»″", '"'),
    **{"£": "GBP ", "€": "EUR ", "¥": "JPY "},
    **{
        "ß": "ss",
        "æ": "ae",
        "Æ": "AE",
        "œ": "oe",
        "Œ": "OE",
        "ø": "o",
        "Ø": "O",
        "ł": "l",
        "Ł": "L",
    },
}


def in_encoding(text: str, encoding: str) -> str:
    """A text as an encoding can hold it: signs that it lacks are written with those it has.

    >>> in_encoding("0.5 µg/cm² ≈ ½ × 3 − 1…", "ascii"), in_encoding("16½ in, 45° · Zoë", "ascii")
    ('0.5 ug/cm2 ~ 1/2 x 3 - 1...', '16 1/2 in, 45 deg * Zoe')
    >>> in_encoding("0.5 µg/cm² ≈ 1", "latin-1")
    '0.5 µg/cm² ~ 1'
    """
    return text.encode(encoding, "wellstrung").decode(encoding)


def _instead(error: UnicodeError) -> tuple[str, int]:
    """The signs for those that an encoding lacks, and where to go on (as `codecs` asks for)."""
    assert isinstance(error, UnicodeEncodeError)
    written = ""
    for at in range(error.start, error.end):
        sign = _sign(error.object[at])
        before = written[-1:] or error.object[max(0, at - 1) : at]
        if before.isdigit() and "/" in sign:
            sign = f" {sign}"  # 16½ is not 161/2
        elif before in ("", " "):
            sign = sign.lstrip()
        written += sign
    return written, error.end


def _sign(sign: str) -> str:
    if sign in _IN_ASCII:
        return _IN_ASCII[sign]
    from unicodedata import normalize  # few names need it

    base = normalize("NFKD", sign).replace("\u2044", "/")
    return base.encode("ascii", "ignore").decode() or "?"


codecs.register_error("wellstrung", _instead)


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
    text = in_encoding(text, sys.stdout.encoding or "ascii")
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
        with quiet():
            yield
    except BrokenPipeError:
        raise
    except OSError as error:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        says = f"the output cannot be written: {error.strerror or error}"
        raise HostError(says) from None


def answer(question: str) -> str | None:
    """What a person types after a question; None at the end of the input."""
    with _printing():
        sys.stdout.write(in_encoding(question, sys.stdout.encoding or "ascii"))
        sys.stdout.flush()
    with quiet():
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
    """A line beside the output, on the error stream; where that is closed or full, it is lost."""
    if sys.stderr is None:  # as Python leaves it where it is closed
        return
    with suppress(OSError), quiet():
        lines = "\n".join(map(spelt_out, says.split("\n")))
        print(in_encoding(f"wellstrung: {lines}", sys.stderr.encoding or "ascii"), file=sys.stderr)


def save(
    pages: Mapping[Path, str] | Mapping[Path, bytes],
    inputs: Iterable[Path] = (),
    *,
    force: bool = False,
) -> None:
    """Write pages and name the first; raises HostError, and then leaves each file as it was.

    A file that is there already must be a page of ours, or `force` is given. What was read for the
    pages is never written over.
    """
    read = [*inputs]
    for path in pages:
        protect(read, path, "--out")
        if not force and path.is_file() and not _is_ours(path):
            raise HostError(f"{path} is there already and is not a page of ours: take --force")
    write_all({p: page.encode() if isinstance(page, str) else page for p, page in pages.items()})
    more = f" and {len(pages) - 1} more beside it" if len(pages) > 1 else ""
    show(spelt_out(f"wrote {next(iter(pages))}{more}"))


def protect(inputs: Iterable[Path], path: Path, option: str) -> None:
    """Raise HostError if writing to `path`, which `option` names, would overwrite an input."""
    if path.exists() and any(one.exists() and path.samefile(one) for one in inputs):
        raise HostError(
            f"{path} is one of the files that are read or written: give another {option}"
        )


def _is_ours(path: Path) -> bool:
    try:
        with path.open("rb") as stream:
            head = stream.read(2000)
    except OSError:
        return False
    return any(sign in head for sign in _OURS)


def write_all(files: Mapping[Path, bytes]) -> None:
    """Write all of these files or none; raises HostError. A device is written to as it is.

    Each is written beside its place first, and moved there when all of them are.
    """
    parts: dict[Path, Path] = {}
    path = Path()
    try:
        for path, data in files.items():
            path.parent.mkdir(parents=True, exist_ok=True)
            if path.exists() and not path.is_file():
                path.write_bytes(data)
                continue
            at = path.resolve()  # what a link leads to is written, the link stays
            parts[at] = at.with_name(f".{os.getpid()}-{len(parts)}.part")
            _write(parts[at], data)
            if at.exists():
                parts[at].chmod(at.stat().st_mode & 0o777)
        for path, part in parts.items():
            part.replace(path)
    except OSError as error:
        raise HostError(f"{path} cannot be written: {error.strerror or error}") from None
    finally:
        for part in parts.values():
            part.unlink(missing_ok=True)


def _write(path: Path, data: bytes) -> None:
    """Write a new file, to the disk."""
    with path.open("xb") as stream:
        stream.write(data)
        stream.flush()
        os.fsync(stream.fileno())


def unknown(what: str, names: Iterable[str], known: Iterable[str], see: str = "") -> int | None:
    """Exit 2 with a note on the first name that is not known; None if all are.

    `see` is the command that lists those that are.
    """
    choices = list(known)
    for name in names:
        if name not in choices:
            near = nearest(name, choices)
            advice = f"`{near}`" if near else one_of(choices, name, see)
            note(f"there is no {what} called `{name}`: write {advice}")
            return BROKEN
    return None
