"""Remedies that can be written, and what a plan is after them, as text for a terminal."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from difflib import unified_diff

from wellstrung.common.places import Edit
from wellstrung.common.wording import together
from wellstrung.judging.mending import Mended, Texts, texts_of
from wellstrung.judging.result import PlanResult, Remark
from wellstrung.report.heading import heading, verdict
from wellstrung.report.styled import Text
from wellstrung.report.terminal import Page, where
from wellstrung.report.writer import Options

#: of what an edit replaces or writes; the rest is cut off
_LONGEST = 60
#: more changes than these, as when steps move, are described by the remedy in words
_FEW = 2
#: the name of the field whose value begins where a line is cut
_FIELD = re.compile(r"([A-Za-z_][\w -]*)[\"']?:\s*$")
_DIFF = {"+": "green", "-": "red", "@": "cyan"}


def offered(
    plan: PlanResult, remedies: Mapping[int, Remark], outside: Iterable[str], options: Options
) -> str:
    """The plan's verdict and what can be written, by number, one line each.

    `outside` are files that edits would have to be made in and that are not the plan's own.
    """
    page = Page(options)
    heading(page, plan)
    page.line()
    by_hand = [
        str(number)
        for number, remark in enumerate(plan.numbered, 1)
        if remark.counts and number not in remedies
    ]
    for number, remark in remedies.items():
        changes = ", ".join(_change(edit, plan) for edit in remark.edits)
        if len(remark.edits) > _FEW:
            changes = remark.remedy
        page.path(f"{number}. {where(remark.edits[0].place)} {remark.rule}: {changes}")
    if not remedies:
        page.line("there is nothing that can be written for you" if by_hand else "nothing to mend")
    if by_hand:
        which = f"{'remark' if len(by_hand) == 1 else 'remarks'} {together(by_hand)}"
        page.line(f"to change by hand: {which} of `wellstrung check`")
    for file in outside:
        page.line(f"{file} is outside the plan's folder: change it by hand")
    return page.text()


def _change(edit: Edit, plan: PlanResult) -> str:
    """One edit in words, after the name of its field.

    >>> from wellstrung.common.places import Place
    >>> plan = PlanResult("plan.yaml", text="bore: 8 mm")
    >>> _change(Edit(Place("plan.yaml", 1, 7, 1, 11), "9 mm"), plan)
    'bore `8 mm` -> `9 mm`'
    >>> _change(Edit(Place("plan.yaml", 1, 11, 1, 11), ", depth: 5 mm"), plan)
    'add `depth: 5 mm`'
    """
    place = edit.place
    lines = texts_of(plan)[place.file].splitlines()[place.line - 1 : place.end_line]
    name = None
    if lines:
        name = _FIELD.search(lines[0][: place.column - 1])
        lines[-1] = lines[-1][: place.end_column - 1]
        lines[0] = lines[0][place.column - 1 :]
    old, new = _short(" ".join(lines)), _short(edit.new)
    if not old:
        return f"add `{new.removeprefix(', ')}`" if new else "add a space"
    field = f"{name[1]} " if name else ""
    return f"{field}`{old}` -> `{new}`" if new else f"delete `{old}`"


def _short(text: str) -> str:
    line = " ".join(text.split())
    return line if len(line) <= _LONGEST else f"{line[:_LONGEST]}..."


def changed(
    before: PlanResult, after: PlanResult, mended: Mended, copies: Mapping[str, str],
    options: Options,
) -> str:  # fmt: skip
    """The lines that changed, the verdict before and after, and what became of each remark.

    `copies` says where the old text of each changed file is kept.
    """
    page = Page(options)
    for line in _diff(texts_of(before), mended.texts, copies):
        page.path(line, style=_DIFF.get(line[:1], ""))
    if copies:
        page.line()
        page.line(Text("before    ") + verdict(before))
    else:
        page.line("nothing is changed")
    page.line(Text("now       ") + verdict(after))
    had, has = _counting(before), _counting(after)
    _several(page, "mended", (_named(one) for one in had if not _stands(one, after)))
    _several(page, "left", (_named(one) for one in has if _stands(one, before)))
    # what a slip hid is not brought by its edit
    new = "new" if before.readable else "now seen"
    _several(page, new, (_named(one) for one in has if not _stands(one, before)))
    _several(page, "left out", (f"{_named(one)}: {why}" for one, why in mended.left_out))
    for file, copy in copies.items():
        page.path(f"kept      {file} as it was: {copy}")
        if file != before.file:
            page.line(f"{file} serves other plans too: check them", 10)
    return page.text()


def _several(page: Page, name: str, texts: Iterable[str]) -> None:
    for number, text in enumerate(texts):
        page.pair("" if number else name, text, 0, gap=10)


def _diff(before: Texts, after: Texts, copies: Mapping[str, str]) -> Iterator[str]:
    for file, copy in copies.items():
        old, new = before[file].splitlines(), after[file].splitlines()
        yield from unified_diff(old, new, copy, file, n=1, lineterm="")


def _counting(plan: PlanResult) -> list[Remark]:
    return [one for one in plan.remarks if one.counts]


def _stands(remark: Remark, result: PlanResult) -> bool:
    """Whether a result has a remark, or some of those that it stands for."""
    if remark.rule.startswith("plan-"):
        return any(one.says == remark.says for one in result.remarks)
    return any(
        rank and rule == remark.rule and {*parts} <= {*remark.parts}
        for (rule, parts), rank in result.raised.items()
    )


def _named(remark: Remark) -> str:
    at = f"{remark.rule}, line {remark.place.line}"
    return f"{at}: {remark.says}" if remark.rule.startswith("plan-") else at
