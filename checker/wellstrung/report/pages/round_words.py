"""What a student does who works round a stone or a core."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wellstrung.common.wording import together
from wellstrung.derived.taken import side_by_side
from wellstrung.model.beads import bead_rows, beads_named
from wellstrung.model.parts import Part
from wellstrung.quantity.value import Quantity
from wellstrung.report.pages.cut_words import Bench


def about(amount: Quantity) -> str:
    """A count of rounds or beads: exact where it is, else about so many."""
    low, high = (f"{end:.0f}" for end in amount.likely)
    whole = abs(amount.middle - round(amount.middle)) < 1e-6
    if low == high:
        return f"{'' if whole else 'about '}{amount.middle:.0f}"
    return f"about {amount.middle:.0f} ({low} to {high} likely)"


def base_band(part: Part) -> Iterator[str]:
    """The band that the rounds of a bezel grow from."""
    around, rows = part.count("around"), part.count("base", "rows", default=1)
    stitch, rounds = part.text("base", "stitch"), len(bead_rows(part, "beads"))
    units = f"{around // 2} units" if stitch == "right-angle weave" else f"{around} beads"
    named = together(f"`{name}`" for name in beads_named(part, "base", "beads"))
    tall = "" if rows == 1 else f" and {rows} rows"
    yield f"Begin with a base of {stitch}: {units}{tall} of {named}, joined into a ring"
    behind, each = rounds // 2, "unit" if stitch == "right-angle weave" else "second bead"
    yield f"Rounds grow from both its edges: {behind} at its back, {rounds - behind} at its front"
    yield f"The first round from either edge has one bead for each {each} of it"


def over_core(part: Part, at: Bench) -> Iterator[str]:
    """A tube that closes over both ends of its core."""
    rounds, beads, last = (at.known(part, what) for what in ("rounds", "beads", "last_round"))
    core = "tube" if part.has("core", "length") else "ball"
    wide = part.text("core", "outside")
    if part.has("core", "material") and "wood" in part.text("core", "material").casefold():
        # bare wood shows between the beads, and takes up damp: common practice, no source
        yield f"Paint or seal the wooden {core} in the colour of the beads, and let it dry through"
    yield f"Slide the {core} ({wide}) in after a few rounds, and weave on over it to both ends"
    hole = f"to a hole of {part.text('core', 'hole')}" if part.has("core", "hole") else "shut"
    at_last = f": about {last.middle:.0f} beads in the last round" if last is not None else ""
    narrow = "pick up smaller loops" if part.has("loop") else "leave out beads, evenly round"
    yield f"Where it narrows {narrow}, and draw each end in {hole}{at_last}"
    if rounds is not None and beads is not None:
        # a net has longer meshes where it narrows: its rounds are not those of its middle
        often = "" if part.has("loop") else f"{about(rounds)} rounds, "
        yield f"From end to end it takes {often}{about(beads)} beads"


def embroidered(part: Part, at: Bench) -> Iterator[str]:
    """A stone sewn down on a backing."""
    under, behind = part.traits.glued_on
    done = {str(step.get("to")) for step in at.plan.steps_that("glue", part=part)}
    if under not in done:
        size = _by(part, at, "foundation")
        yield f"Cut foundation {size} or larger; glue the stone to its middle"
    for turn, row in enumerate(bead_rows(part, "beads"), 1):
        count = at.known(part, f"row_{turn}")
        many = "" if count is None else f" {about(count)} beads,"
        base = ", an even count, for the bezel" if turn == 1 and part.has("bezel") else ""
        yield f"Row {turn}:{many} {_in_row(row)}{base}"
    for turn, row in enumerate(bead_rows(part, "bezel") if part.has("bezel") else (), 1):
        yield f"Bezel, round {turn}, a bead for every second of the base: {_in_row(row)}"
    later = "" if behind in done else ", and glue on a backing as large"
    yield f"Trim the foundation to {_by(part, at, 'backing')}, and cut no thread{later}"
    if behind not in done and not at.plan.steps_that("edge", part=part):
        yield from edge_sewn(part, at)


def edge_sewn(part: Part, at: Bench, sew: str = "Sew") -> Iterator[str]:
    """The edge of what is backed, where it has one."""
    if part.has("edge_row"):
        count = at.known(part, "edging_beads")
        many = "" if count is None else f"{about(count)} of "
        edge = f"{many}`{part.text('edge_row')}` side by side round the edge"
        yield f"{sew} {edge}, through both layers"


def stone_glued(part: Part, layer: str, glue: str, at: Bench) -> Iterator[str]:
    """A stone glued on its foundation, or the backing glued behind both: common practice."""
    if layer == part.traits.glued_on[0]:
        size = _by(part, at, "foundation")
        yield f"Cut foundation {size} or larger, and mark the stone in its middle"
        yield f"Spread a thin film of `{glue}` under it, and leave its rim free for the needle"
        yield "Press it down flat, and wipe off what comes out before it sets"
        return
    yield f"Spread a thin film of `{glue}` on the back, over the threads, up to the last row"
    yield f"Lay it on the backing, press it flat, and trim that to {_by(part, at, 'backing')}"


def _by(part: Part, at: Bench, what: str) -> str:
    """A size by another, in whole mm."""
    return side_by_side(at.known(part, f"{what}_{side}") for side in ("length", "width"))


def _in_row(row: Sequence[str]) -> str:
    """The beads of a row: one, or several that repeat."""
    names = together(f"`{name}`" for name in row)
    return names if len(row) == 1 else f"{names}, and again from the first"
