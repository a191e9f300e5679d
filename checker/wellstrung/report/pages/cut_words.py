"""What is cut by its length for a part, in sentences for a student, and their bench."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from wellstrung.common import units
from wellstrung.common.wording import together
from wellstrung.derived.taken import cord_words, described
from wellstrung.judging.result import PlanResult
from wellstrung.lists.cutting import CutList, Lengths
from wellstrung.model.parts import WOVEN_WORK, Part
from wellstrung.model.plan import Plan
from wellstrung.quantity.value import Quantity
from wellstrung.report import cuts_list
from wellstrung.subjects.wires import wires

#: what a shop asks of a line
_LINE = ("type", "rating", "size", "outside", "colour")


class Bench(Struct, frozen=True):
    """What the words of a step are taken from: a plan, its quantities, and its cutting list."""

    result: PlanResult
    plan: Plan
    cuts: CutList

    def known(self, part: Part, what: str) -> Quantity | None:
        """A quantity of a part; None where it is not known."""
        return self.result.quantities.get(f"{part.name}.{what}")

    def long(self, length: float) -> str:
        """A length of what is cut or worn, in the maker's unit."""
        return units.by_length(length, inches=self.plan.in_inches)


def to_cut(part: Part, at: Bench) -> Iterator[str]:
    """What to cut for a part by its length, tails included."""
    found = [one for one in at.cuts.lengths if one.part == part.name]
    yield from (_cut(one, at) for one in found)
    if not found and part.kind.role in WOVEN_WORK:
        line = "thread" if part.takes("thread") else "cord"
        yield f"The plan does not say which {line} `{part.name}` takes: ask before you cut"


def running_on(part: Part, at: Bench) -> Iterator[str]:
    """The lines that go on from a strand through a bar."""
    for line in dict.fromkeys(one for one in wires(at.plan) if part in one.strands):
        bars = together(dict.fromkeys(f"`{bar.name}`" for bar in line.bars))
        alike = f"{len(line.strands)} of `{part.name}`" if {*line.strands} == {part} else ""
        order = alike or together(f"`{one.name}`" for one in line.strands)
        yield f"One line goes on through {bars}: string {order} on it, one after another"
        yield "Put each bar on all its lines before you string on"


def _cut(one: Lengths, at: Bench) -> str:
    many = f"{one.count}" if one.most == one.count else f"{one.count} to {one.most}"
    of = f"pieces of {one.what}" if one.most > 1 else f"piece of {one.what}"
    kind = _kind_of_line(at.plan.parts[one.part], one.what)
    each = "each " if one.most > 1 else ""
    notes = "".join(f", {note}" for note in one.notes)
    when = "" if one.when == "now" else f"; {cuts_list.WHEN[one.when]}"
    notes += f", for all {at.plan.makes} that the plan makes" if at.plan.makes > 1 else ""
    return f"Cut {many} {of}{kind}, {each}{at.long(one.length)} long{notes}{when}"


def _kind_of_line(part: Part, what: str) -> str:
    """Which thread or wire is cut, as a shop calls it."""
    if what in ("thread", "line"):
        said = " ".join(filter(None, (part.of_thread(field) for field in _LINE)))
    else:
        said = cord_words(part) if what == "cord" else described(part, "wire", "metal")
    return f" ({said})" if said else ""
