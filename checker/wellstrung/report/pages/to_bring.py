"""What a teacher can bring to lend: findings in sizes that would do, added up."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from contextlib import suppress

from msgspec import Struct

from wellstrung.derived.pieces import pieces_needed, pieces_on_hand
from wellstrung.derived.taken import asked_for
from wellstrung.judging.result import Remark
from wellstrung.model.item import Missing
from wellstrung.model.parts import Part, Role
from wellstrung.report.pages.at_place import part_at, supplies_at
from wellstrung.report.pages.students import Student
from wellstrung.what_if.unfit import Unfit, unfit

#: what a ring is known by beside the size that is changed
_OF_A_RING = ("size", "outside", "inside", "wire")
#: fields that say which sort of a finding it is
_KINDS = (("type",), ("closing",))


class Loan(Struct, frozen=True):
    """A finding to lend: how many (0 where it does not come by the piece), which, and for whom."""

    count: int
    what: str
    students: tuple[str, ...]


class _Wanted(Struct):
    """What would serve for one part: sizes that the checker tried, or what it needs in words.

    `sure` says that an error asks for it, not a warning alone.
    """

    part: Part
    count: int
    sizes: dict[tuple[str, ...], str]
    words: list[str]
    sure: bool = False


def loans(students: Sequence[Student]) -> list[Loan]:
    """What would serve the students whose findings do not do; equal things are added up."""
    found: dict[tuple[str, str, str], dict[str, int]] = {}
    for student in students:
        for wanted in _wanted(student):
            by = found.setdefault(_called(wanted), {})
            name = student.name if wanted.sure else f"{student.name} (warned)"
            by[name] = by.get(name, 0) + wanted.count
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

    def of(part: Part, remark: Remark) -> _Wanted:
        count = int(pieces_needed(part, ask.quantities).middle)
        wanted = found.setdefault(part.name, _Wanted(part, count, {}, []))
        wanted.sure |= remark.level == "error"
        return wanted

    for remark in student.plan.numbered:
        for edit in remark.edits if remark.counts else ():
            part, path = part_at(ask.plan, edit.place) or (None, ())
            if part is not None and part.traits.bought and _is_size(path, edit.new):
                of(part, remark).sizes.setdefault(path, edit.new)
                tried.add(part)
            short = supplies_at(ask.plan, edit.place)
            if short is not None and short.traits.bought:
                wanted = of(short, remark)
                with suppress(Missing):  # adhesive does not come by the piece
                    had = int(pieces_on_hand(short, ask.quantities).middle)
                    wanted.count = max(0, wanted.count - had)
    for one in unfit(student.plan):
        part = ask.plan.parts.get(one.thing)
        if part is not None and part.traits.bought and part not in tried and _in_words(part, one):
            of(part, one.remark).words.append(one.remark.needed)
    return found.values()


def _in_words(part: Part, one: Unfit) -> bool:
    """Whether another of a part would do, by its size; what does not suit its wearer is a clasp."""
    node = part.node_at(*one.path) if one.path else None
    if node is None:
        return part.kind.role is Role.CLASP
    return isinstance(node.value, str) and one.asked and one.path[-1] != "mass"


def _is_size(path: tuple[str, ...], new: str) -> bool:
    """Whether a change asks for another thing: of a size, or of a type; not for another count."""
    return path[-1:] in _KINDS or (bool(path) and new[:1].isdecimal() and not new.isdecimal())


def _called(wanted: _Wanted) -> tuple[str, str, str]:
    """A finding as a shop knows it, one and several of it, and the size that would do."""
    part = wanted.part
    sizes = {path[path[:1] == ("measured",) :]: new for path, new in wanted.sizes.items()}
    kind = next((sizes.pop(path) for path in list(sizes) if path[-1:] in _KINDS), "")
    noun = f"{kind} {part.kind.name}" if kind else asked_for(part)
    if part.kind.role is Role.RING:
        sizes = {(name,): part.text(name) for name in _OF_A_RING if part.has(name)} | sizes
    rest = "".join(f", {' '.join(name).replace('_', ' ')} {new}" for name, new in sizes.items())
    words = list(dict.fromkeys(wanted.words))
    return noun, f"{noun}s", rest + (f": {' and '.join(words)}" if words else "")
