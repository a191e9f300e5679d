"""What a teacher can bring to lend: findings in sizes that would do, added up."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from msgspec import Struct

from wellstrung.common.places import Edit
from wellstrung.derived.amounts import pieces_needed
from wellstrung.derived.taken import asked_for
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Plan
from wellstrung.report.pages.at_place import part_at, supplies_at
from wellstrung.report.pages.students import Student
from wellstrung.what_if.unfit import Unfit, unfit

#: what a ring is known by beside the size that is changed
_OF_A_RING = ("size", "outside", "inside", "wire")
#: fields that say which sort of a finding it is
_KINDS = (("type",), ("closing",))
#: what a remark needs a size of: of its own part, or of another that meets it
_ASKED = re.compile(r"an? (?:\w+ )?(\w+) of ")


class Loan(Struct, frozen=True):
    """A finding to lend: how many (0 where it does not come by the piece), which, and for whom."""

    count: int
    what: str
    students: tuple[str, ...]


class _Wanted(Struct):
    """What would serve for one part: sizes that the checker tried, or what it needs in words."""

    part: Part
    count: int
    sizes: dict[tuple[str, ...], str]
    words: list[str]


def loans(students: Sequence[Student]) -> list[Loan]:
    """What would serve the students whose findings do not do; equal things are added up."""
    found: dict[tuple[str, str, str], dict[str, int]] = {}
    for student in students:
        for wanted in _wanted(student):
            by = found.setdefault(_called(wanted), {})
            by[student.name] = by.get(student.name, 0) + wanted.count
    added = ((key, sum(by.values()), tuple(by)) for key, by in sorted(found.items()))
    return [
        Loan(count, f"{noun if count == 1 or not count else several}{rest}", names)
        for (noun, several, rest), count, names in added
    ]


def _wanted(student: Student) -> Iterable[_Wanted]:
    """Every finding of a plan that would put one of its remarks right."""
    ask, found, tried = student.plan.ask, dict[str, _Wanted](), set[Part]()
    if ask is None:
        return ()

    def of(part: Part) -> _Wanted:
        count = int(pieces_needed(part, ask.quantities).middle)
        return found.setdefault(part.name, _Wanted(part, count, {}, []))

    for remark in student.plan.numbered:
        for edit in remark.edits if remark.counts else ():
            part, path = part_at(ask.plan, edit.place) or (None, ())
            if part is not None and part.traits.bought and _is_size(path, edit.new):
                of(part).sizes.setdefault(path, edit.new)
                tried.add(part)
            short = _short(ask.plan, edit)
            if short is not None:
                of(short[0]).count = short[1]
    for one in unfit(student.plan):
        part = ask.plan.parts.get(one.thing)
        if part is not None and part.traits.bought and part not in tried and _in_words(part, one):
            of(part).words.append(one.remark.needed)
    return found.values()


def _in_words(part: Part, one: Unfit) -> bool:
    """Whether another of a part would do, by its size; what does not suit its wearer is a clasp."""
    node = part.node_at(*one.path) if one.path else None
    if node is None:
        return part.kind.role is Role.CLASP
    asked = _ASKED.match(one.remark.needed)
    return isinstance(node.value, str) and (asked is None or asked[1] in one.path)


def _is_size(path: tuple[str, ...], new: str) -> bool:
    """Whether a change asks for another thing: of a size, or of a type; not for another count."""
    return path[-1:] in _KINDS or (bool(path) and new[:1].isdecimal() and not new.isdecimal())


def _short(plan: Plan, edit: Edit) -> tuple[Part, int] | None:
    """The part of a line of supplies that counts too few, and how many are short."""
    part, line = supplies_at(plan, edit.place) or (None, None)
    if part is None or line is None or not (part.traits.bought and edit.new.isdecimal()):
        return None
    return part, int(edit.new) - int(line.value.get("count", 0))


def _called(wanted: _Wanted) -> tuple[str, str, str]:
    """A finding as a shop knows it, one and several of it, and the size that would do."""
    part, sizes = wanted.part, dict(wanted.sizes)
    kind = next((sizes.pop(path) for path in list(sizes) if path[-1:] in _KINDS), "")
    noun = f"{kind} {part.kind.name}" if kind else asked_for(part)
    if part.kind.role is Role.RING:
        sizes = {(name,): part.text(name) for name in _OF_A_RING if part.has(name)} | sizes
    rest = "".join(f", {' '.join(name).replace('_', ' ')} {new}" for name, new in sizes.items())
    words = list(dict.fromkeys(wanted.words))
    return noun, f"{noun}s", rest + (f": {' and '.join(words)}" if words else "")
