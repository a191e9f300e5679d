"""Files on a page: by their names, for the way to them says nothing outside of this machine."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from os import sep
from pathlib import PurePath

from wellstrung.judging.result import PlanResult


def short_names(plans: Iterable[PlanResult]) -> Mapping[str, str]:
    """Each file that plans or their remarks name with its way there, and what a page calls it.

    Its name alone; with the folder before it where two files have that name.
    """
    plans = tuple(plans)
    files = dict.fromkeys(file for plan in plans for file in _files(plan))
    names = Counter(PurePath(file).name for file in files)
    short = {
        file: name if names[name] == 1 else "/".join(PurePath(file).parts[-2:])
        for file, name in ((file, PurePath(file).name) for file in files)
    }
    for plan in plans:  # a file that is not there is named by a text alone
        home = PurePath(plan.file).parent
        if home.is_absolute():
            short[f"{home}{sep}"] = ""
    longest_first = sorted(short, key=len, reverse=True)
    return {file: short[file] for file in longest_first if short[file] != file}


def _files(plan: PlanResult) -> Iterator[str]:
    yield plan.file
    yield from plan.beside
    if plan.bench:
        yield plan.bench
    yield from (remark.place.file for remark in plan.remarks)


def shortened(text: str, names: Mapping[str, str]) -> str:
    """A text with each of these files by its short name.

    >>> shortened("line 3 of /home/me/mine.yaml", {"/home/me/mine.yaml": "mine.yaml"})
    'line 3 of mine.yaml'
    """
    if "/" not in text and "\\" not in text:
        return text
    for file, name in names.items():
        text = text.replace(file, name)
    return text
