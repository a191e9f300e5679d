"""What a pouch is made to hold: it goes in, and where its height is told, it does not look out."""

from __future__ import annotations

import math

from wellstrung.rulebook import Answer, Ask, Held, Misfit, Remedy, Rule, Woven, holds, kept
from wellstrung.rulebook.plan import Part
from wellstrung.rulebook.values import Quantity
from wellstrung.rulebook.wording import about, in_unit_of, spelled


def check(woven: Woven, ask: Ask) -> Answer:
    pouch = woven.part
    if not pouch.has("holds"):
        return None
    wide, thick = pouch.length("holds", "width"), pouch.length("holds", "thickness")
    has = ask.of(pouch, "width_inside")
    room = has - (wide + thick)
    if not holds(room):
        return _too_narrow(pouch, has, wide, room)
    if not pouch.has("holds", "height"):
        return Held(room)
    height, depth = pouch.length("holds", "height"), ask.of(pouch, "length")
    over = depth - height
    if holds(over):
        return kept(room, over)
    return _too_shallow(pouch, depth, height, over)


def _too_narrow(pouch: Part, has: Quantity, wide: Quantity, room: Quantity) -> Misfit:
    around, place = pouch.count("around"), pouch.place_of("around")
    wanted = 2 * math.ceil(around * (has.middle - room.likely.low) / has.middle / 2)
    head = f"what `{pouch.name}` holds, {spelled(wide)} wide and {pouch.text('holds', 'thickness')}"
    tail = f"go in: it is {about(has, wide)} wide inside, laid flat"
    text = f"write `around: {wanted}`"
    return Misfit(
        says=f"{head} thick, {{does|may}} not {tail}",
        place=place,
        found=f"{about(has, wide)} wide inside",
        needed=f"{in_unit_of(has.middle - room.likely.low, wide)} wide inside",
        remedies=(Remedy.write(place, str(wanted), text), Remedy(f"{text} or more")),
        margin=room,
        also=(pouch.place_of("holds"),),
    )


def _too_shallow(pouch: Part, depth: Quantity, height: Quantity, over: Quantity) -> Misfit:
    head = f"what `{pouch.name}` holds ({spelled(height)} high)"
    tail = f"out of its opening: it is {about(depth, height)} deep"
    return Misfit(
        says=f"{head} {{looks|may look}} {tail}",
        place=pouch.place_of("rounds" if pouch.has("rounds") else "length"),
        found=f"{about(depth, height)} deep",
        needed=f"{in_unit_of(depth.middle - over.likely.low, height)} or more",
        remedies=(
            Remedy(
                f"weave it {in_unit_of(-over.likely.low, height)} deeper, or take out `height`"
                " where it is meant to look out"
            ),
        ),
        margin=over,
        at_most="warning",
        also=(pouch.place_of("holds", "height"),),
    )


RULE = Rule(
    name="pouch-room",
    family="fit",
    subject=Woven,
    check=check,
    title="what a pouch is made to hold goes into it",
    why="a stone that was to go into the pouch is tried in it when the bottom is closed",
    sources=(
        "width and thickness of a flat thing come to half the way round it, and so does the width"
        " inside of a tube laid flat: geometry, worked out for this project",
    ),
    bad="holds: {width: 30 mm, thickness: 6 mm} in a pouch 32 mm wide inside",
    good="holds: {width: 24 mm, thickness: 4 mm} in a pouch 32 mm wide inside",
)
