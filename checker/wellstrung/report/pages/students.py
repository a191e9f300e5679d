"""Who made which plan: by the maker's name, else by the title, else by the file."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from pathlib import PurePath

from msgspec import Struct

from wellstrung.judging.result import PlanResult


class Student(Struct, frozen=True, eq=False):
    """A student with the plan, and the file name of its page."""

    name: str
    plan: PlanResult
    page: str

    @property
    def piece(self) -> str:
        """The title of the piece; empty where the student goes by it, or it has none."""
        title = _said(self.plan, "title")
        return "" if title == self.name else title


def students(pages: Mapping[str, PlanResult]) -> list[Student]:
    """The students by name, from the pages of their plans; equal names show their file."""
    names = {page: _name(plan) for page, plan in pages.items()}
    files: dict[str, list[str]] = {}
    for page, name in names.items():
        files.setdefault(name.casefold(), []).append(pages[page].file)
    found = []
    for page, name in names.items():
        plan, alike = pages[page], files[name.casefold()]
        file = _shortest(plan.file, alike)
        shown = name if len(alike) == 1 or name == file else f"{name} ({file})"
        found.append(Student(shown, plan, page))
    return sorted(found, key=lambda one: one.name.casefold())


def _name(plan: PlanResult) -> str:
    return _said(plan, "maker") or _said(plan, "title") or PurePath(plan.file).name


def _said(plan: PlanResult, field: str) -> str:
    """The maker or the title; of a file that is no YAML yet, from its line."""
    said: str = getattr(plan, field)
    line = None if plan.readable else re.search(rf"^{field}:[ \t]*([^\s#][^#\n]*)", plan.text, re.M)
    return said or (line[1].strip(" \t\"'") if line else "")


def _shortest(file: str, alike: Sequence[str]) -> str:
    """The end of a path, in whole names, that no other of these paths has."""
    parts = PurePath(file).parts
    rest = [PurePath(other).parts for other in alike if other != file]
    for length in range(1, len(parts)):
        if all(other[-length:] != parts[-length:] for other in rest):
            return "/".join(parts[-length:])
    return file
