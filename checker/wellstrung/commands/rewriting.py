"""Files written anew: a copy of each is kept beside it, and all are written or none."""

from __future__ import annotations

import codecs
from collections.abc import Mapping
from contextlib import suppress
from itertools import count
from pathlib import Path

from wellstrung.commands.output import write_all
from wellstrung.plugins.error import HostError


def rewrite(changes: Mapping[Path, tuple[str, str]]) -> dict[Path, Path]:
    """Write each file's new text for its old one; where the copies are.

    Raises HostError, and then leaves every file as it was: one whose text is not the old one any
    more was saved meanwhile, and is not written over.
    """
    data: dict[Path, bytes] = {}
    new: dict[Path, bytes] = {}
    copies: dict[Path, Path] = {}
    at = Path()
    try:
        for at, (old, text) in changes.items():
            data[at] = at.read_bytes()
            if _body(data[at]) != old.encode():
                raise HostError(f"{at} was changed meanwhile: nothing is written; run it again")
            new[at] = data[at][: len(data[at]) - len(_body(data[at]))] + text.encode()
        for at in changes:
            _copy(at, data[at], copies)
        write_all(new)
    except BaseException as error:  # an interrupt too
        for path, copy in copies.items():
            with suppress(OSError):  # a copy that cannot be put back stays
                if path.read_bytes() == data[path]:
                    copy.unlink()
                else:
                    copy.replace(path.resolve())
        if not isinstance(error, OSError):
            raise
        raise HostError(f"{at} cannot be changed: {error.strerror or error}") from None
    return copies


def _body(data: bytes) -> bytes:
    return data.removeprefix(codecs.BOM_UTF8)


def _copy(path: Path, data: bytes, copies: dict[Path, Path]) -> None:
    """A copy beside a file under a name that is free, and that no folder takes for a plan."""
    for number in count(1):
        copy = path.with_name(f"{path.name}.before{f'-{number}' if number > 1 else ''}")
        try:
            with copy.open("xb") as stream:
                copies[path] = copy
                stream.write(data)
        except FileExistsError:
            continue
        copy.chmod(path.stat().st_mode & 0o777)
        return
