"""The lines of one plan in a supply list.

Chain is left out: pieces for several plans are cut together, see `chain_stock`.
"""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import asdict

from wellstrung.derived import taken
from wellstrung.derived.taken import Taken
from wellstrung.lists.line import SupplyLine
from wellstrung.lists.needles import needles
from wellstrung.model.item import Missing
from wellstrung.model.plan import Quantities


def lines(ask: Quantities, makers: int = 1, *, on_hand: bool = True) -> Iterator[SupplyLine]:
    """Every line of a plan but its chains, for so many makers."""
    tools = needles(ask) if makers > 1 else ()  # who works alone has one
    for thing in (*taken.of_plan(ask), *tools):
        if thing.group != "chain":
            yield SupplyLine(
                **asdict(taken.purchase(thing, makers, on_hand=on_hand))
                | {"inches": ask.plan.in_inches},
                describes=thing.describes,
                plans=(ask.plan.title,),
                files=(ask.plan.file,),
                notes=tuple(_notes(thing, makers, on_hand=on_hand)),
            )


def _notes(thing: Taken, makers: int, *, on_hand: bool) -> Iterator[str]:
    if thing.mixes:
        each = " for each maker" if makers > 1 else ""
        yield f"stir {thing.mixes} mix{'' if thing.mixes == 1 else 'es'}{each}"
    if on_hand and isinstance(thing.on_hand, Missing):
        yield f"what is on hand is not counted: it needs {thing.on_hand.field}"
