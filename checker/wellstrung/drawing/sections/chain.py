"""A piece of chain pulled taut, link by link, with what is lost before the next one begins."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from wellstrung.drawing import Figure, outlines
from wellstrung.drawing.outlines import Outline
from wellstrung.drawing.sections.case import Case, drawable, marks_of, mm, size
from wellstrung.drawing.sections.section import PAPER, Section
from wellstrung.formulas import chain as links
from wellstrung.model.item import Missing
from wellstrung.quantity.value import Quantity
from wellstrung.rulebook import PieceCut

#: links drawn at each end of a piece that is too long for the page; it is broken between them
_ENDS = 3
#: links that are drawn at most, however small they are
_MOST = 60
#: links of a piece that are named one by one
_NAMED = 12


class _Link(Struct, frozen=True):
    """A link of a chain: its outside length and width, and its wire, mm."""

    long: float
    wide: float
    wire: float

    @property
    def inside(self) -> float:
        return self.long - 2 * self.wire

    def outlines(self, x: float) -> list[Outline]:
        """Outside and inside of the link, its left end at x."""
        opening = outlines.link(x + self.wire, 0, self.inside, self.wide - 2 * self.wire)
        return [outlines.link(x, 0, self.long, self.wide), opening]


def draw(case: Case[PieceCut]) -> Figure:
    """The piece, what is cut or opened behind it, and the first link of the next piece."""
    cut = case.join
    count = len(cut.links)
    every = links.stride(cut.pattern, cut.links, soldered=cut.soldered)
    kinds = {name: _link(case, name) for name in cut.pattern}
    length = case.of(cut.piece, "length")
    broken = count > _MOST or (count > 2 * _ENDS and length.middle * 1.2 > PAPER[0])
    starts = dict(_places(case, every, kinds, broken))
    wide = max(kind.wide for kind in kinds.values())
    names = _counted(cut, every)
    section = Section(starts[every] + kinds[names[every]].long, 2 * wide)
    for number, x in starts.items():
        kind = kinds[names[number]]
        if count <= number < every:
            section.patterned(kind.outlines(x), "lost")
        else:
            section.canvas.area(kind.outlines(x), "link" if number < count else "link next")
        middle = x + kind.long / 2
        if number < count and kind.inside * section.scale > 4:
            section.note(middle, 0, str(number + 1))
    end = starts[count - 1] + kinds[names[count - 1]].long
    said = case.said(("chain-cut",))
    mark = _mark(case, section, starts, kinds, names)
    if said:
        section.mark(mark, -wide / 2, marks_of(said))
    whole = "" if broken else f"{cut.piece.name}.length"
    section.across(0, end, wide / 2, f"{count} links, {mm(length.middle)}", whole)
    named = f"{count} links: {' '.join(cut.links)}" if count <= _NAMED else f"{count} links"
    lost = every - count
    loses = f", {lost} lost before the next piece" if lost else ", none lost"
    written = cut.step.get("every") if cut.step else None
    off = f"; counted off every {written} links" if written else ""
    sizes = ", ".join(_size(case, name) for name in kinds)
    return case.figure(
        section,
        f"piece `{cut.piece.name}` of `{cut.chain.name}`",
        f"{named}{loses}{off}; {sizes}",
        f"count off every {every} links",
        said,
    )


def _link(case: Case[PieceCut], name: str) -> _Link:
    wire = drawable(case.join.chain.wire("links", name, "wire")).middle
    long, wide = (_field(case, name, what).middle for what in ("length", "width"))
    if min(long, wide) <= 2 * wire:
        raise Missing(f"a `{name}` that is larger than its two wires")
    return _Link(long, wide, wire)


def _field(case: Case[PieceCut], name: str, what: str) -> Quantity:
    return case.join.chain.size("links", name, what, allowance="link size")


def _size(case: Case[PieceCut], name: str) -> str:
    return f"`{name}` {size(_field(case, name, 'length'))} long"


def _counted(cut: PieceCut, every: int) -> list[str]:
    """The links from the first of the piece to the first of the next one."""
    first = list(cut.pattern).index(cut.links[0])
    return [cut.pattern[(first + step) % len(cut.pattern)] for step in range(every + 1)]


def _places(
    case: Case[PieceCut], every: int, kinds: dict[str, _Link], broken: bool
) -> Iterator[tuple[int, float]]:
    """Where each link that is drawn begins: each bears on the inside of the one before."""
    cut = case.join
    names, count = _counted(cut, every), len(cut.links)
    end = 0.0
    for number, name in enumerate(names):
        if broken and _ENDS <= number < count - _ENDS:
            continue
        if broken and number == count - _ENDS:
            end += 2.5 * max(kind.wide for kind in kinds.values())
        kind = kinds[name]
        if not number:
            end = kind.wire
        yield number, end - kind.wire
        end += kind.inside


def _mark(
    case: Case[PieceCut],
    section: Section,
    starts: dict[int, float],
    kinds: dict[str, _Link],
    names: list[str],
) -> float:
    """Where it is cut or opened behind the piece; of one that is broken, how many are left out."""
    cut = case.join
    count = len(cut.links)
    wide = max(kind.wide for kind in kinds.values()) / 2
    if len(starts) < len(names):
        gap = (starts[_ENDS - 1] + kinds[names[_ENDS - 1]].long + starts[count - _ENDS]) / 2
        section.note(gap, 0, f"+ {count - 2 * _ENDS}")
    kind = kinds[names[count]]
    x = starts[count] + (kind.long / 2 if cut.soldered else kind.wire)
    over = section.paper(2)
    section.canvas.line(x - over / 2, wide + over, x + over / 2, -wide - over, "scissors")
    section.note(x, -wide - section.paper(3.9), "cut" if cut.soldered else "open")
    return x
