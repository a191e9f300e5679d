"""What a rule is handed beside its subject: the plan, its quantities and the bench's limits."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cached_property
from typing import NamedTuple

from wellstrung.common.choice import Choice
from wellstrung.common.places import Edit, Place
from wellstrung.derived.beads_taken import beads_in
from wellstrung.derived.cost import cost
from wellstrung.derived.ends import end_in_cap
from wellstrung.derived.fill_rest import fills
from wellstrung.derived.measures import has
from wellstrung.derived.of_plan import Quantities
from wellstrung.derived.outline import Slab, across, apart, outline
from wellstrung.derived.packs import in_packs
from wellstrung.derived.piece import adds, extended
from wellstrung.model.beads import bead_mix
from wellstrung.model.item import Item, Missing
from wellstrung.model.parts import Part
from wellstrung.model.plan import Plan, RunEntry, Step
from wellstrung.quantity.arithmetic import exact, times, total
from wellstrung.quantity.assumed import assumed_in
from wellstrung.quantity.choices import replaced
from wellstrung.quantity.value import Quantity
from wellstrung.reading import tree
from wellstrung.reading.settings import Setting
from wellstrung.rulebook.answer import Remedy
from wellstrung.subjects.base import Eyes, opens
from wellstrung.subjects.counts import pieces_hung
from wellstrung.subjects.glued import WEARING
from wellstrung.subjects.house import HeldToHouseLimit
from wellstrung.subjects.hung import FringeAlong
from wellstrung.work.dependencies import order_that_works
from wellstrung.work.hours import written
from wellstrung.work.search import MOST_LOOKS, Found


class Limit(NamedTuple):
    """A limit that a maker can hold an opinion on: its default, unit and reason.

    Declared beside the rule that uses it; a bench file changes it by its name. Where makers differ
    it has the span in which they choose, which a bench settles unless the choice is a careful one.
    """

    name: str
    value: float
    unit: str
    reason: str
    choice: Choice | None = None


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

    def filled(self, length: str) -> Quantity:
        """A length of the piece; a part that fills the rest makes up for what others are assumed.

        Once the size is measured, the rest is so much longer or shorter; raises Missing.
        """
        found = self.get(length)
        if any(fills(part, self.quantities) for part in self.plan.in_run):
            for size in assumed_in(self.get("piece.length")):
                found = replaced(found, size, size.at_rest)
        return found

    def let_out(self, length: str) -> Quantity:
        """The same with the extender or the sliding knots of the piece let out all the way."""
        more = extended(self.quantities)
        return self.filled(length) if more is None else self.filled(length) + more

    def beads_of(self, part: Part) -> list[Item]:
        """The beads that a part is made of, each once; raises Missing where it names none."""
        beads: list[Item] = [self.plan.beads[name] for name in bead_mix(part)]
        if not beads and part.takes("beads"):
            raise part.missing("beads")
        return beads

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

    def opens(self, *sides: Eyes | Part) -> bool:
        """Whether one of some rings and eyes can be opened; raises Missing where it is not said."""
        can = {side: opens(side) for side in sides}
        open_to_say = (side for side, known in can.items() if known is None)
        unsaid = next((side for side in open_to_say if isinstance(side, Eyes)), None)
        if unsaid is not None and not any(can.values()):
            raise unsaid.part.missing(*unsaid.path, "opens")
        return any(can.values())

    def beads_in(self, part: Part, bead: Item, count: int) -> Quantity:
        """How many of a bead so many of one part take; raises Missing."""
        return beads_in(part, bead, count, self.quantities)

    def in_packs(self, bead: Item, lines: Sequence[Item]) -> Quantity:
        """Beads that some lines of supplies hold; raises Missing."""
        held = [in_packs(bead, line, self.quantities) for line in lines]
        return total(f"{bead.name} in packs", "", held)

    def cost(self, currency: str) -> Quantity:
        """What all that the plan takes costs, bought in whole packs; raises Missing."""
        return cost(self.quantities, currency)

    def across(self, part: Part) -> Quantity:
        """How wide a part is across its own line: its outside or its width; raises Missing."""
        return across(part, self.quantities)

    def outline(self, part: Part, number: int) -> list[Slab]:
        """How wide a hanging part is at each height; raises Missing."""
        return outline(part, number, self.quantities)

    def apart(self, fringe: FringeAlong) -> Quantity:
        """From leg to leg along a rope, a strand or a long edge; raises Missing."""
        return apart(fringe, self.quantities)

    def end(self, rope: Part, cap: Part) -> Quantity:
        """How thick a rope is where a cap takes it: its nub, or its outside; raises Missing."""
        return self.of(rope, end_in_cap(rope, cap, self.quantities))

    def held_to_house_limit(self, held: HeldToHouseLimit) -> tuple[Quantity, Place] | None:
        """What a limit of the bench is for, and where the author would change it; raises Missing.

        None where there is no such thing. A sum over the piece is changed at the most of it.
        """
        limit, item = held.limit, held.item
        if isinstance(item, Part) and not has(item, limit.what):
            return None
        found = self.of(item, limit.what) if item is not None else self.get(limit.name)
        if found.unit != limit.unit:  # of what is sold in another unit
            raise Missing(f"a limit `{limit.name}` in {found.unit or 'pieces'} in the bench")
        most = max(found.args.values(), key=lambda term: term.middle, default=found)
        name = most.name.rpartition(" x ")[2].partition(".")[0]  # of several: `2 x bead.mass`
        part = self.plan.parts.get(name) if item is None else None
        return found, part.key.place if part is not None else held.place

    def source(self, place: Place) -> str:
        """The text at a place of the plan or its drawer, as the author wrote it."""
        text = self.plan.texts[place.file]
        start = tree.offset(text, place.line, place.column)
        return text[start : tree.offset(text, place.end_line, place.end_column)]

    def without(self, item: Item) -> Edit:
        """An edit that takes a named entry out of the plan: its lines, or in flow style a comma."""
        start, end = item.key.place, item.node.place
        around = (entry.node for entry in self.plan.tree.entries.values())
        among = next((node for node in around if _holds(node, item)), None)
        if among and self.source(_first(among.place)) == "{":
            entries = list(among.entries.values())
            at = [*among.entries].index(item.name)
            if at:
                start = _end(entries[at - 1].node.place)
            elif len(entries) > 1:
                end = _start(entries[1].key.place)
        else:
            lines = Place(start.file, start.line, 1, end.end_line + 1, 1)
            if self.source(lines).strip() == self.source(_from(start, end)).strip():
                return Edit(lines, "")  # with no comment behind it
        return Edit(_from(start, end), "")

    def with_field(self, node: tree.Mapping, name: str, value: str | Sequence[str]) -> Edit:
        """An edit that sets a field of an entry, or adds it; both in the entry's own layout."""
        flow = value if isinstance(value, str) else f"[{', '.join(value)}]"
        said = node.written
        spelled = isinstance(node, tree.Spelled)
        if name in said and not (spelled and _shares_its_words(name, said)):
            old = said[name].node.place
            listed = not isinstance(value, str) and self.source(old).startswith("-")
            items = f"\n{' ' * (old.column - 1)}".join(f"- {item}" for item in value)
            return Edit(old, items if listed else flow)
        if spelled:  # the phrase has no room for it: write its fields
            texts = {one: tree.written(entry.node) for one, entry in said.items()}
            fields = ", ".join(f"{one}: {text}" for one, text in {**texts, name: flow}.items())
            return Edit(node.place, f"{{{fields}}}")
        whole, entries = node.place, [entry.node.place for entry in said.values()]
        if self.source(whole).startswith("{"):
            return Edit(_end(entries[-1]), f", {name}: {flow}")
        return Edit(_end(entries[0]), f"\n{' ' * (whole.column - 1)}{name}: {flow}")

    def new_step_after(self, step: Step, text: str) -> Edit:
        """An edit that adds a step after another one, in the layout of the work."""
        item = step.place
        if self.source(self.plan.tree.entries["work"].node.place).startswith("["):
            return Edit(_end(item), f", {text}")
        return Edit(_end(item), "\n" + " " * (item.column - 3) + f"- {text}")

    def new_step(self, text: str) -> Edit:
        """An edit that adds a step at the end of the work, before the piece is packed or worn."""
        steps = self.plan.steps
        made = [step for step in steps if step.verb not in WEARING]
        return self.new_step_after((made or steps)[-1], text)

    def moved_before(self, step: Step, other: Step) -> Remedy:
        """A remedy that moves a step to before an earlier one; the steps between go down by one."""
        steps = self.plan.steps[other.number - 1 : step.number]
        texts = [self.source(moved.place) for moved in (steps[-1], *steps[:-1])]
        edits = tuple(Edit(old.place, new) for old, new in zip(steps, texts, strict=True))
        return Remedy(f"move step {step.number} to before step {other.number}", edits)

    def minutes_between(self, step: Step, later: Step | None = None) -> float:
        """Minutes that the plan writes from the end of a step to the start of a later one.

        Without a later one, to the end of the work.
        """
        times = written(self.plan)
        start = times.starts[later.number - 1] if later is not None else times.finish
        return start - times.over[step.number - 1]

    def in_order(self, otherwise: Remedy) -> tuple[Remedy, ...]:
        """An order of the steps that works, where one is found; then what to do otherwise."""
        steps, found = self.plan.steps, self._order
        if found is not None and found.stopped:
            note = (
                "the search for an order that works stopped after it had looked at a step"
                f" {MOST_LOOKS:,} times"
            )
            return (Remedy(f"{otherwise.text}; {note}"),)
        if found is None or not found.order or not found.cost:
            return (otherwise,)
        listed = ", ".join(f"{steps[index].number} {steps[index].verb}" for index in found.order)
        moved = [(old, steps[new]) for old, new in zip(steps, found.order, strict=True)]
        edits = tuple(
            Edit(old.place, self.source(new.place)) for old, new in moved if old is not new
        )
        return (Remedy(f"an order that works: {listed}", edits), otherwise)

    @cached_property
    def _order(self) -> Found | None:
        """The order nearest to the written one that works; None where a value is missing."""
        return order_that_works(self.quantities)

    def limit(self, limit: Limit | str) -> Quantity:
        """A limit of the rule, or by its name one that quantities use too, with its reason.

        The maker's bench file beats the default.
        """
        if isinstance(limit, str):
            name, setting = limit, self.plan.bench.limits[limit]
        else:
            name, default = limit.name, Setting(*limit[1:])
            setting = self.plan.bench.limits.get(name, default)
        return exact(name, *setting)


def _shares_its_words(name: str, said: Mapping[str, tree.Entry]) -> bool:
    """Whether a field has no words of its own in a phrase: `split ring` is a kind and a closing."""
    place = said[name].node.place
    return any(entry.node.place == place for one, entry in said.items() if one != name)


def _holds(node: tree.Node, item: Item) -> bool:
    entry = node.entries.get(item.name)
    return entry is not None and entry.key is item.key


def _from(start: Place, end: Place) -> Place:
    """From where one place begins to where another ends."""
    return Place(start.file, start.line, start.column, end.end_line, end.end_column)


def _start(place: Place) -> Place:
    """The beginning of a place, before which something ends."""
    return Place(place.file, place.line, place.column, place.line, place.column)


def _first(place: Place) -> Place:
    """The first letter of a place."""
    return Place(place.file, place.line, place.column, place.line, place.column + 1)


def _end(place: Place) -> Place:
    """The end of a place, where something is to be added."""
    return Place(place.file, place.end_line, place.end_column, place.end_line, place.end_column)
