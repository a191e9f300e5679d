"""A repeat of beads, columns or rows fits the count that it is woven over.

Round a tube only whole repeats fit: any other count breaks the pattern where the round closes.
Across a band, and from end to end, one more also works: the pattern then ends as it begins. A list
of whole rows, one after another, fits as well.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterator
from typing import NamedTuple

from wellstrung.rulebook import Answer, Ask, Held, Misfit, Remedy, Rule, Woven
from wellstrung.rulebook.plan import Part, Place, Role
from wellstrung.rulebook.remedies import measured_anew


class Repeat(NamedTuple):
    """A repeat after `every` so many of `what`, the field that counts them, and its place.

    `beads` are those of one repeat, where they are listed.
    """

    woven: Woven
    every: int
    what: str
    field: str
    place: Place
    beads: tuple[str, ...] = ()

    @property
    def round_and_round(self) -> bool:
        """Whether it must close."""
        return self.field in ("around", "each_round")

    @property
    def stays_even(self) -> bool:
        """Whether an even count stays even: of a ring, or of columns that are woven in pairs."""
        return self.field == "around" or (self.field == "across" and self.woven.stitch.in_pairs)

    def comes_out(self, count: int) -> bool:
        """Whole, or whole rows; or, where it need not close, alike from both ends."""
        rows = self.woven.stitch.side_every  # of flat peyote a row is half of what lies across
        row = count if count % rows else count // rows
        if self.beads and self.field != "count" and self.every % row == 0:
            return True
        if count % self.every == 0 or self.round_and_round:
            return count % self.every == 0
        if not self.beads:
            return count % self.every == 1
        return all(
            self.beads[n] == self.beads[(count - 1 - n) % self.every]
            for n in range(min(self.every, count))
        )


def check(woven: Woven, ask: Ask) -> Answer:
    part = woven.part
    repeats = list(_repeats(woven))
    for repeat in repeats:
        if not repeat.comes_out(part.count(repeat.field)):
            return _misfit(part, repeat)
    return Held() if repeats else None


def _repeats(woven: Woven) -> Iterator[Repeat]:
    part, columns = woven.part, woven.stitch.columns
    field = next((word for word in _COUNTED if part.has(word)), "")
    listed = _listed(part) if columns == "beads" or part.kind.role is Role.STRAND else ()
    if field and listed:
        yield Repeat(woven, len(listed), "beads", field, part.place_of("beads"), listed)
    if field and columns and part.has("repeat", "columns") and not part.has("each_row"):
        place = part.place_of("repeat", "columns")
        yield Repeat(woven, part.count("repeat", "columns"), "columns", field, place)
    for what in ("rows", "rounds"):
        if part.has("repeat", what):
            counted = "rows" if part.has("rows") else what
            part.count(counted)  # a length gives no count: raises Missing
            place = part.place_of("repeat", what)
            yield Repeat(woven, part.count("repeat", what), what, counted, place)


#: the fields that count what lies across or around, or along a strand
_COUNTED = ("across", "around", "each_round", "count")


def _listed(part: Part) -> tuple[str, ...]:
    """The beads of one repeat, in their order; one for each round or column is no repeat."""
    node = part.node_at("beads")
    each = part.takes("stone") or part.has("one_for")
    if node is None or not isinstance(node.value, list) or each:
        return ()
    beads = part.texts("beads")
    return beads if len(set(beads)) > 1 and not part.has("each_row") else ()


def _misfit(part: Part, repeat: Repeat) -> Misfit:
    count, place = part.count(repeat.field), part.place_of(repeat.field)
    near, over = _nearest(repeat, count), count % repeat.every
    writes = " or ".join(f"`{repeat.field}: {n}`" for n in sorted(near))
    mix = ", ".join(f"{bead}: {n}" for bead, n in Counter(repeat.beads).items())
    shares = f"; or `beads: {{{mix}}}`, if the order does not matter" if mix else ""
    anew = measured_anew(part, repeat.field)
    text = f"write {writes}{anew}{shares}"
    edits = [Remedy.write(place, str(n), text) for n in near if not anew]
    return Misfit(
        says=f"the repeat of {repeat.every} {repeat.what} does not fit `{repeat.field}: {count}` of"
        f" `{part.name}` a whole number of times: {over} {'is' if over == 1 else 'are'} left over",
        place=place,
        found=f"{repeat.field}: {count}",
        needed=writes,
        remedies=(*edits, Remedy(f"{text}; or change the repeat")),
        also=(repeat.place,),
        working=(f"{count} = {count // repeat.every} x {repeat.every} + {over}",),
    )


def _nearest(repeat: Repeat, count: int) -> list[int]:
    """The nearest counts on either side that are whole, or whole and one more; the nearer first."""
    even = repeat.stays_even and count % 2 == 0
    step = math.lcm(repeat.every, 2) if even else repeat.every
    whole = count // step * step
    works = [
        n
        for n in (whole, whole + 1, whole + step, whole + step + 1)
        if n >= repeat.every and repeat.comes_out(n) and not (even and n % 2)
    ]
    below, above = [n for n in works if n < count][-1:], [n for n in works if n > count][:1]
    return sorted(below + above, key=lambda n: abs(n - count))


RULE = Rule(
    name="pattern-repeat",
    family="count",
    subject=Woven,
    check=check,
    fault="repeat does not fit the count",
    title="a repeat of beads, columns or rows fits the count it is woven over",
    why=(
        "a repeat that does not fit breaks where the round closes, or gives a band two different"
        " edges; it is there from the first row and is noticed when the piece is done"
    ),
    sources=(
        "counting",
        "a repeat and one column more, so that both edges are alike: common practice, no source",
    ),
    bad="around: 14 and beads: [reed, reed, sand]",
    good="around: 12 and beads: [reed, reed, sand]",
    level="warning",
)
