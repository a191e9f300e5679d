"""All that a rule may import: what a rule is, what it is handed, and what it may answer.

A rule looks at one subject and answers one of

* `Held(margin)` - it was kept, with this much to spare;
* `Misfit(margin, ...)` - it was not, over part or all of the margin's range;
* `Caution(...)` - a safety text whose condition is in the plan;
* `None` - the rule has nothing to do with this subject.

Asking for a value that the plan lacks raises `Missing`; the core then lists the subject as unjudged
with the field that would let it be judged.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from functools import cached_property
from typing import Any, Literal

from msgspec import Struct

from wellstrung import tables
from wellstrung.common import units
from wellstrung.common.places import Edit, Place
from wellstrung.common.wording import article
from wellstrung.derived.of_plan import Quantities, adds, beads_in, in_packs
from wellstrung.derived.outline import Slab, across, drops, outline, side_by_side
from wellstrung.model.parts import (
    Hung,
    Item,
    Missing,
    Part,
    Plan,
    Role,
    RunEntry,
    Step,
    bead_mix,
    fills_rest,
)
from wellstrung.quantity.value import (
    SLACK,
    Cause,
    Quantity,
    Spread,
    Verdict,
    Window,
    compare,
    derived,
    exact,
    leaf,
    number,
    times,
    total,
    worked,
)
from wellstrung.reading import tree
from wellstrung.subjects.alone import ClaspClosed, CoreInRope, Named, PaletteBead, Piece, WireLink
from wellstrung.subjects.along_the_run import Centred, SlidesOn, TailThroughLoop
from wellstrung.subjects.base import Eyes, Subject, opens
from wellstrung.subjects.chain import ChainCut, EndLink, PieceCut
from wellstrung.subjects.counts import pieces_hung
from wellstrung.subjects.glued import (
    WEARING,
    Glue,
    GluedEnd,
    GluedJoint,
    Glues,
    GlueUsed,
    Mixed,
    Moment,
    caps_at,
)
from wellstrung.subjects.hung import BailAround, HungByEyes, HungOnEyes, evenly
from wellstrung.subjects.joins_made import JoinAtWork
from wellstrung.subjects.linked import EyesMeet, Hangs, RingHolds, RingInUse, RingThroughEye
from wellstrung.subjects.on_thread import (
    OnThread,
    Threaded,
    Woven,
    bare_edges,
    edges_of,
    fringe_passes,
    passes_of,
)
from wellstrung.subjects.run import (
    BandInClasp,
    LinkThroughCone,
    RopeInCap,
    StrandInCrimp,
    StrandsAtHoles,
    StrandsBeside,
    StrandsInCone,
    TipOnStrands,
    Toggle,
    taken,
)
from wellstrung.subjects.steps import (
    ClassMeets,
    Cutting,
    PartAtWork,
    RingOnCappedRope,
    ThreadEnds,
    done_at_home,
)
from wellstrung.subjects.supplies import BeadsNeeded, Budgeted, RingsNeeded, ThreadNeeded
from wellstrung.subjects.worn import Fitted, InEar, MetalParts, PutOn, Rigid, Worn

Level = Literal["error", "warning", "caution"]


class Held(Struct, frozen=True):
    """The rule was kept; `margin` is what is left, where there is one to name."""

    margin: Quantity | None = None


class Remedy(Struct, frozen=True):
    """What would put it right, in words and - where it can be said exactly - as edits.

    Edits are tried on a changed copy of the plan before they are offered.
    """

    text: str
    edits: tuple[Edit, ...] = ()


class Misfit(Struct, frozen=True):
    """The rule was not kept.

    `says` is for a margin that fails over its whole range, `may` for one that fails over part of
    it. Without a margin the misfit is a matter of counting and stands as it is. `at_most` lowers
    the level of one kind of misfit below the rule's own.
    """

    says: str
    place: Place
    found: str
    needed: str
    remedies: tuple[Remedy, ...]
    margin: Quantity | None = None
    may: str = ""
    at_most: Level = "error"
    also: tuple[Place, ...] = ()
    working: tuple[str, ...] = ()


class Caution(Struct, frozen=True):
    """A safety text; it never changes the outcome and cannot be accepted away."""

    says: str
    place: Place


Answer = Held | Misfit | Caution | None


class Ask:
    """What a rule is handed beside its subject: the plan, its quantities and the bench's limits."""

    def __init__(self, plan: Plan, quantities: Quantities) -> None:
        self.plan = plan
        self.quantities = quantities

    def get(self, name: str) -> Quantity:
        """A quantity by name; raises Missing."""
        return self.quantities.get(name)

    def of(self, item: Item, what: str) -> Quantity:
        """`what` of a part or a bead; raises Missing."""
        return self.quantities.of(item, what)

    def beads_of(self, part: Part) -> list[Item]:
        """The beads that a part is made of, each once."""
        return [self.plan.beads[name] for name in bead_mix(part)]

    def offers(self, part: Part, what: str) -> bool:
        """Whether a part of its kind and stitch has such a quantity at all."""
        return self.quantities.offers(part, what)

    def hanging(self, part: Part) -> Quantity:
        """Mass of a part with all that hangs from it, g; raises Missing."""
        terms = [self.of(part, "mass")]
        for line in self.plan.hung:
            if line.source is part:
                terms.append(times(self.hanging(line.part), pieces_hung(line)))
                if line.by is not None:
                    terms.append(times(self.of(line.by, "mass"), line.times))
        return total(f"{part.name} and what hangs from it", "g", terms)

    def adds(self, entry: RunEntry) -> Quantity:
        """What a place in the run adds to it, with all its links; raises Missing."""
        return adds(entry, self.quantities)

    def opens(self, side: Eyes | Part) -> bool | None:
        """Whether a ring or an eye can be opened; None where the plan does not say."""
        return opens(side, self.plan)

    def beads_in(self, part: Part, bead: Item, count: int) -> Quantity:
        """How many of a bead so many of one part take; raises Missing."""
        return beads_in(part, bead, count, self.quantities)

    def in_packs(self, bead: Item, lines: Sequence[Item]) -> Quantity:
        """Beads that some lines of supplies hold; raises Missing."""
        held = [in_packs(bead, line, self.quantities) for line in lines]
        return total(f"{bead.name} in packs", "", held)

    def cost(self, currency: str) -> Quantity:
        """What all that the plan takes costs, bought in whole packs; raises Missing."""
        from wellstrung.lists import shopping

        return shopping.cost(self.quantities, currency)

    def across(self, part: Part) -> Quantity:
        """How wide a part is across its own line: its outside or its width; raises Missing."""
        return across(part, self.quantities)

    def outline(self, part: Part, number: int) -> list[Slab]:
        """How wide a hanging part is at each height; raises Missing."""
        return outline(part, number, self.quantities)

    def end(self, rope: Part, cap: Part) -> Quantity:
        """How thick a rope is where a cap takes it: its nub, or its outside; raises Missing."""
        return self.of(rope, "nub.outside" if taken(cap) == "nub" else "outside")

    def source(self, place: Place) -> str:
        """The text at a place of the plan or its drawer, as the author wrote it."""
        text = self.plan.texts[place.file]
        start = tree.offset(text, place.line, place.column)
        return text[start : tree.offset(text, place.end_line, place.end_column)]

    def without(self, item: Item) -> Edit:
        """An edit that takes a named entry out of the plan."""
        start, end = item.key.place, item.node.place
        return Edit(Place(start.file, start.line, start.column, end.end_line, end.end_column), "")

    def new_item_after(self, item: Place, text: str) -> Edit:
        """An edit that adds a list item on a line of its own after another one."""
        end = Place(item.file, item.end_line, item.end_column, item.end_line, item.end_column)
        return Edit(end, "\n" + " " * (item.column - 3) + f"- {text}")

    def with_field(self, node: tree.Mapping, name: str, value: str) -> Edit:
        """An edit that sets a field of an entry; a new one is added in the entry's own layout."""
        if name in node.entries:
            return Edit(node.entries[name].node.place, value)
        whole, first = node.place, next(iter(node.entries.values())).node.place
        line, column, new = whole.end_line, whole.end_column - 1, f", {name}: {value}"
        if not self.source(whole).startswith("{"):
            line, column = first.end_line, first.end_column
            new = f"\n{' ' * (whole.column - 1)}{name}: {value}"
        return Edit(Place(whole.file, line, column, line, column), new)

    def new_step(self, text: str) -> Edit:
        """An edit that adds a step at the end of the work, before the piece is packed or worn."""
        steps = self.plan.steps
        made = [step for step in steps if step.verb not in WEARING]
        return self.new_item_after((made or steps)[-1].place, text)

    def moved_before(self, step: Step, other: Step) -> tuple[Edit, ...]:
        """Edits that move a step to before an earlier one; the steps between go down by one."""
        steps = self.plan.steps[other.number - 1 : step.number]
        texts = [self.source(moved.place) for moved in (steps[-1], *steps[:-1])]
        return tuple(Edit(old.place, new) for old, new in zip(steps, texts, strict=True))

    def in_order(self, otherwise: Remedy) -> tuple[Remedy, ...]:
        """An order of the steps that works, where one is found; then what to do otherwise."""
        steps, (order, free) = self.plan.steps, self._order
        if free:
            note = f"{free} steps can change places, too many to look for an order that works"
            return (Remedy(f"{otherwise.text}; {note}"),)
        if not order:
            return (otherwise,)
        listed = ", ".join(f"{steps[index].number} {steps[index].verb}" for index in order)
        moved = [(old, steps[new]) for old, new in zip(steps, order, strict=True)]
        edits = tuple(
            Edit(old.place, self.source(new.place)) for old, new in moved if old is not new
        )
        return (Remedy(f"an order that works: {listed}", edits), otherwise)

    @cached_property
    def _order(self) -> tuple[tuple[int, ...], int]:
        """The order nearest to the written one that works; or how many steps are too many.

        Empty where the written order works, or none does, or a value is missing.
        """
        from wellstrung.work import needs
        from wellstrung.work import order as work_order

        try:
            records, waits = needs.records(self.plan, self.quantities)
        except Missing:
            return (), 0
        free = work_order.open_steps(records)
        if free > work_order.MOST_OPEN:
            return (), free
        order = work_order.order_that_works(records, waits) or ()
        return (order if work_order.moved(order) else ()), 0

    def limit(self, name: str) -> Quantity:
        """A limit of the bench, with its reason as source."""
        setting = self.plan.bench.limits[name]
        return exact(name, setting.value, setting.unit, source=setting.reason)


class Rule(Struct, frozen=True):
    """One rule: its name in trade words, what it looks at, and the function that judges.

    `title` says in one line what it asks for; `why` what happens at the bench otherwise; `bad` and
    `good` show a line of a plan. `level` is the highest it gives. `yields_to` names the rules whose
    remark about the same part makes this one superfluous. `over` is `worst` for rules of hold and
    of safety.
    """

    name: str
    family: str
    subject: type[Subject]
    check: Callable[[Any, Ask], Answer]
    title: str
    why: str
    sources: tuple[str, ...]
    bad: str = ""
    good: str = ""
    level: Level = "error"
    yields_to: tuple[str, ...] = ()
    over: Literal["likely", "worst"] = "likely"


def weight(mass: Quantity, share: float = 1.0) -> Quantity:
    """The weight of a mass, N, or a share of it: g at standard gravity, 9.80665 m/s2.

    >>> round(weight(exact("charm", 100.0, "g")).middle, 5)
    0.98067
    """
    return derived(
        f"weight of {mass.name}",
        "N",
        lambda mass, share, gravity: mass * share * gravity / 1000,
        mass=mass,
        share=exact("share", share),
        gravity=exact("gravity", 9.80665, "m/s2"),
    )


def pull_to_spare(bears: Quantity, load: Quantity, factor: Quantity) -> Quantity:
    """What is left of a strength, N, over a load so many times taken.

    >>> bears, load = exact("wire", 12.0, "N"), exact("charm", 2.0, "N")
    >>> pull_to_spare(bears, load, exact("hold factor", 5.0)).middle
    2.0
    """
    return derived(
        "pull to spare",
        "N",
        lambda bears, load, factor: bears - load * factor,
        bears=bears,
        load=load,
        factor=factor,
    )


def weakest(name: str, table: str, row: str, column: str, unit: str = "") -> Quantity:
    """The least that a table prints: hold is judged by the weakest; raises Missing without a cell.

    >>> weakest("share held", "crimps", "closed by hand", "held").grade
    'one page'
    """
    cell = tables.load(table).row(row).cells.get(column)
    if cell is None:
        raise Missing(f"a `{column.replace('_', ' ')}` of {row} in the trade table `{table}`")
    source = f"trade tables, {table}, {row}: {cell.grade}"
    return leaf(name, cell.low, unit, source=source, grade=cell.grade)


def stronger_line(thread: Part, wanted: float, ask: Ask) -> tuple[Remedy, ...]:
    """Remedies for a line too weak: the weakest sold of its type that breaks at `wanted` N or more.

    Ratings are offered as edits where the author writes a rating of a type the tables know.
    """
    now = ask.of(thread, "breaking")
    pounds = f"{math.ceil(wanted / units.force('1 lb').value - 1e-9)} lb"
    least = pounds if now.spelled_unit in ("", "lb") else in_unit_of(wanted, now)
    by_hand = Remedy(f"take a line for `{thread.name}` that is rated {least} or more")
    if not thread.has("thread", "rating") or not thread.has("thread", "type"):
        return (by_hand,)
    kind = f"{thread.text('thread', 'type')} "
    sold = [
        row.name.removeprefix(kind)
        for row in tables.load("threads").rows.values()
        if row.name.startswith(kind) and row.cell("breaking").value >= wanted
    ]
    place = thread.place_of("thread", "rating")
    return (
        *(
            Remedy(f"take {rating} line for `{thread.name}`", (Edit(place, rating),))
            for rating in sold[:1]
        ),
        by_hand,
    )


def spelled(quantity: Quantity) -> str:
    """A value as the author wrote it; one that was worked out, with its likely range."""
    if quantity.spelling:
        return quantity.spelling
    return about(quantity)


def about(quantity: Quantity, like: Quantity | None = None) -> str:
    """A value with its likely range, in the unit that `like` was written in."""
    model = like or quantity
    middle = in_unit_of(quantity.middle, model)
    ends = {in_unit_of(end, model) for end in quantity.likely}
    if ends == {middle}:
        return middle  # a range too narrow to print
    return f"{middle}, likely {between(*quantity.likely, model)}"


def between(low: float, high: float, like: Quantity) -> str:
    """A range in the unit that `like` was written in, as one would write it in a plan."""
    first, last = in_unit_of(low, like), in_unit_of(high, like)
    head, _, unit = first.rpartition(" ")
    return f"{head}..{last}" if head and last.endswith(unit) else f"{first} to {last}"


def in_unit_of(value: float, like: Quantity) -> str:
    """A value in base units, printed in the unit that `like` was written in.

    Sixteenths of an inch are too coarse to tell a fit in: below two inches they give way to mm.
    """
    unit = _unit(like, like.unit)
    return units.show(value, "mm" if unit == "in/" and abs(value) < 2 * units.INCH else unit)


def wider_bore(cap: Part, wanted: float) -> tuple[Edit, ...]:
    """Edits that give a cap or a cone another bore, mm, and keep the wall round it."""
    bore = cap.length("bore")
    edits = [Edit(cap.place_of("bore"), in_unit_of(wanted, bore))]
    if cap.has("outside"):
        outside = cap.length("outside")
        if outside.middle <= wanted:
            grown = in_unit_of(outside.middle + wanted - bore.middle, outside)
            edits.append(Edit(cap.place_of("outside"), grown))
    return tuple(edits)


def spelled_time(minutes: float) -> str:
    """A time as one would write it in a plan.

    >>> spelled_time(20), spelled_time(90), spelled_time(1440)
    ('20 min', '90 min', '24 h')
    """
    if minutes >= 120 and minutes % 60 == 0:
        return f"{number(minutes / 60)} h"
    return f"{number(minutes)} min"


def hours(minutes: float) -> str:
    """A time as one would say it, to the minute.

    >>> hours(40), hours(130), hours(1440)
    ('40 min', '2 h 10 min', '24 h')
    """
    whole, left = divmod(round(minutes), 60)
    if not whole:
        return f"{left} min"
    return f"{whole} h {left} min" if left else f"{whole} h"


def often(count: int) -> str:
    """How many times, in words where there are words for it.

    >>> often(1), often(2), often(3)
    ('once', 'twice', '3 times')
    """
    return {1: "once", 2: "twice"}.get(count, f"{count} times")


def thinner_wires(wire: Quantity, limit: float) -> list[str]:
    """Up to three standard wires no thicker than `limit`, thickest first, as the author names wire.

    An author who writes AWG or SWG gets the same system back, one who writes mm gets tenths.
    """
    unit = wire.spelled_unit
    gauges = {"AWG": units.awg, "SWG": units.swg}
    if unit.upper() in gauges:
        size = gauges[unit.upper()]
        return [f"{n} {unit}" for n in range(10, 31) if size(n) <= min(limit, wire.middle - 1e-6)][
            :3
        ]
    tenths = int(min(limit, wire.middle) * 10 + 1e-6)
    return [
        in_unit_of(n / 10, wire)
        for n in range(tenths, max(tenths - 3, 2), -1)
        if n / 10 < wire.middle
    ]


def thicker_wires(wire: Quantity, limit: float) -> list[str]:
    """Up to three standard wires no thinner than `limit`, thinnest first, as the author names wire.

    An author who writes AWG or SWG gets the same system back, one who writes mm gets tenths.

    >>> thicker_wires(leaf("wire", 0.64, "mm", spelled_unit="AWG"), limit=0.7)
    ['21 AWG', '20 AWG', '19 AWG']
    """
    unit = wire.spelled_unit
    gauges = {"AWG": units.awg, "SWG": units.swg}
    if unit.upper() in gauges:
        size = gauges[unit.upper()]
        return [
            f"{n} {unit}" for n in range(30, 9, -1) if size(n) >= max(limit, wire.middle + 1e-6)
        ][:3]
    first = math.ceil(max(limit, wire.middle + 1e-6) * 10 - 1e-6)
    return [in_unit_of(n / 10, wire) for n in range(first, first + 3)]


#: Rings are sold in half millimetres: common practice.
_RING_STEP = 0.5


def sized_by(ring: Part) -> str:
    """The field that the author sizes a ring by: `inside` or `outside`."""
    return "inside" if ring.has("inside") else "outside"


def wider_ring(ring: Part, size: Quantity, short: float, otherwise: str) -> tuple[Remedy, ...]:
    """Remedies for a ring too small by `short` mm: the next size sold, or what else to change."""
    wanted = math.ceil((size.middle + short) / _RING_STEP - 1e-9) * _RING_STEP
    written = in_unit_of(wanted, size)
    text = f"{written} {sized_by(ring)}"
    return (
        Remedy(
            f"take a ring of {text} for `{ring.name}`",
            (Edit(ring.place_of(sized_by(ring)), written),),
        ),
        Remedy(f"take a ring of {text} or more, or {otherwise}"),
    )


def bead_packs(need: BeadsNeeded, ask: Ask, wanted: str, note: str = "") -> tuple[Remedy, ...]:
    """Remedies for beads that run short: so many packs on the last line of supplies, or in all."""
    line, name = need.lines[-1], need.bead.name
    by_hand = Remedy(f"have {wanted} of `{name}` in all")
    if not line.has("pack") or not line.has("packs"):
        return (by_hand,)
    packs = number(ask.of(need.bead, "packs_wanted").middle)
    edit = Edit(line.place_of("packs"), packs)
    return (Remedy(f"have {packs} packs of `{name}`{note}", (edit,)), by_hand)


def _unit(like: Quantity, base: str) -> str:
    return like.spelled_unit or next(
        (leaf.spelled_unit for leaf in like.leaves if leaf.spelled_unit and leaf.unit == base), base
    )


__all__ = [
    "SLACK",
    "Answer",
    "Ask",
    "BailAround",
    "BandInClasp",
    "BeadsNeeded",
    "Budgeted",
    "Cause",
    "Caution",
    "Centred",
    "ChainCut",
    "ClaspClosed",
    "ClassMeets",
    "CoreInRope",
    "Cutting",
    "Edit",
    "EndLink",
    "Eyes",
    "EyesMeet",
    "Fitted",
    "Glue",
    "GlueUsed",
    "GluedEnd",
    "GluedJoint",
    "Glues",
    "Hangs",
    "Held",
    "Hung",
    "HungByEyes",
    "HungOnEyes",
    "InEar",
    "Item",
    "JoinAtWork",
    "Level",
    "LinkThroughCone",
    "MetalParts",
    "Misfit",
    "Missing",
    "Mixed",
    "Moment",
    "Named",
    "OnThread",
    "PaletteBead",
    "Part",
    "PartAtWork",
    "Piece",
    "PieceCut",
    "Place",
    "Plan",
    "PutOn",
    "Quantity",
    "Remedy",
    "Rigid",
    "RingHolds",
    "RingInUse",
    "RingOnCappedRope",
    "RingThroughEye",
    "RingsNeeded",
    "Role",
    "RopeInCap",
    "Rule",
    "RunEntry",
    "SlidesOn",
    "Spread",
    "Step",
    "StrandInCrimp",
    "StrandsAtHoles",
    "StrandsBeside",
    "StrandsInCone",
    "Subject",
    "TailThroughLoop",
    "ThreadEnds",
    "ThreadNeeded",
    "Threaded",
    "TipOnStrands",
    "Toggle",
    "Verdict",
    "Window",
    "WireLink",
    "Worn",
    "Woven",
    "about",
    "article",
    "bare_edges",
    "bead_mix",
    "bead_packs",
    "between",
    "caps_at",
    "compare",
    "derived",
    "done_at_home",
    "drops",
    "edges_of",
    "evenly",
    "exact",
    "fills_rest",
    "fringe_passes",
    "hours",
    "in_unit_of",
    "leaf",
    "number",
    "often",
    "passes_of",
    "pieces_hung",
    "pull_to_spare",
    "side_by_side",
    "sized_by",
    "spelled",
    "spelled_time",
    "stronger_line",
    "taken",
    "thicker_wires",
    "thinner_wires",
    "times",
    "total",
    "weakest",
    "weight",
    "wider_bore",
    "wider_ring",
    "worked",
]
