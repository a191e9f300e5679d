"""The checker as a library: plans in, plain records out.

Nothing here prints, writes a file or keeps a state of its own; a result holds data alone, so that
it can be pickled and sent to another process. What is installed (rules, kinds, stitches) is loaded
once and never changes.

>>> plan = load_plan("tag.yaml", text='''
... plan: 1
... title: Tag
... piece: bracelet
... beads: {reed: {type: round, size: 8/0, make: Japanese}}
... parts: {row: {kind: strand, stitch: strung, beads: reed, count: 60}}
... run: [row]
... ''')
>>> check(plan).outcome
'nothing wrong found'
>>> length = quantities(plan)["row.length"]
>>> length.middle, length.unit
(127.26, 'mm')
>>> [(line.name, line.need.middle) for line in supplies([plan])]
[('reed', 60.0)]
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import cache
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from wellstrung.commands.files import Benches
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult, understood
from wellstrung.lists import shopping
from wellstrung.lists.line import SupplyLine
from wellstrung.plugins import host
from wellstrung.quantity.working import working
from wellstrung.reading import drawer as drawers
from wellstrung.reading import parser, tree
from wellstrung.reading.settings import Bench


class LoadedPlan(Struct, frozen=True):
    """A plan as it was read, with the bench and the drawer that go with it."""

    read: tree.Read
    bench: Bench | None = None
    drawer: tree.Read | None = None


class Value(Struct, frozen=True):
    """A quantity: its middle and its ranges, each in its unit, and how it was worked out."""

    name: str
    unit: str
    middle: float
    likely: tuple[float, float]
    worst: tuple[float, float]
    working: tuple[str, ...]


def load_plan(path: Path | str, *, text: str | None = None) -> LoadedPlan:
    """A plan file with its bench and its drawer, found as the command line finds them.

    With `text` the plan is that text, and `path` is what remarks call it. A file that cannot be
    read is no exception: `check` lists its faults. Raises HostError if its bench cannot be used.
    """
    path = Path(path)
    installed = _checker().installed
    if text is not None:
        read = parser.read_text(text, str(path))
        return LoadedPlan(read, None, drawers.named_by(read, None))
    read = parser.read(path)
    bench = Benches(installed, None, say=None).of(path)
    return LoadedPlan(read, bench, drawers.named_by(read, path.parent, installed.fragments))


def check(plan: LoadedPlan) -> PlanResult:
    """What is wrong with a plan, what was checked, and what is open."""
    result = _checker().check_read(plan.read, plan.bench, plan.drawer)
    return replace(
        result,
        remarks=tuple(replace(remark, margin=None) for remark in result.remarks),
        held=tuple(kept._replace(margin=None) for kept in result.held),
    )


def quantities(plan: LoadedPlan) -> Mapping[str, Value]:
    """Every quantity of a plan by its name; empty for a file that is no plan."""
    result = _checker(quantities=True).check_read(plan.read, plan.bench, plan.drawer)
    return {
        name: Value(
            name,
            one.unit,
            one.middle,
            (one.likely.low, one.likely.high),
            (one.worst.low, one.worst.high),
            tuple(working(one)),
        )
        for name, one in result.quantities.items()
    }


def supplies(
    plans: Iterable[LoadedPlan], makers: int = 1, *, on_hand: bool = True
) -> tuple[SupplyLine, ...]:
    """What plans take together, each made by so many makers; over what is on hand, or in all."""
    checker = _checker(keep=True)
    results = [checker.check_read(plan.read, plan.bench, plan.drawer) for plan in plans]
    return tuple(shopping.needed(understood(results), makers, on_hand=on_hand))


@cache
def _checker(*, quantities: bool = False, keep: bool = False) -> Checker:
    return Checker(host.load(), quantities=quantities, keep=keep)
