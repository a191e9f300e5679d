"""What a pouch is made to hold: it goes in, and where its height is given, it does not look out."""

from __future__ import annotations

import math

from wellstrung.rulebook import Answer, Ask, Misfit, Remedy, Rule, Woven, kept
from wellstrung.rulebook.plan import Part
from wellstrung.rulebook.values import Quantity
from wellstrung.rulebook.wording import about, at_least, raised, spelled


def check(woven: Woven, ask: Ask) -> Answer:
    pouch = woven.part
    if not pouch.has("holds"):
        return None
    wide, thick = pouch.length("holds", "width"), pouch.length("holds", "thickness")
    has = ask.of(pouch, "width_inside")
    room = has - (wide + thick)
    fits = kept(room)
    if fits is None:
        return _too_narrow(pouch, has, wide, room)
    if not pouch.has("holds", "height"):
        return fits
    height, depth = pouch.length("holds", "height"), ask.of(pouch, "length")
    over = depth - height
    return kept(room, over) or _too_shallow(pouch, depth, height, over)


def _too_narrow(pouch: Part, has: Quantity, wide: Quantity, room: Quantity) -> Misfit:
    around, place = pouch.count("around"), pouch.place_of("around")
    wanted = 2 * math.ceil(around * (has.middle - room.likely.low) / has.middle / 2)
    text = f"write `around: {wanted}`"
    return Misfit(
        says=f"what `{pouch.name}` holds, {spelled(wide)} wide and"
        f" {pouch.text('holds', 'thickness')} thick, {{does|may}} not go in: it is"
        f" {about(has, wide)} wide inside, laid flat",
        place=place,
        found=f"{about(has, wide)} wide inside",
        needed=f"{raised(has, room, wide)} wide inside",
        remedies=(Remedy.write(place, str(wanted), text), Remedy(f"{text} or more")),
        margin=room,
        also=(pouch.place_of("holds"),),
    )


def _too_shallow(pouch: Part, depth: Quantity, height: Quantity, over: Quantity) -> Misfit:
    return Misfit(
        says=f"what `{pouch.name}` holds ({spelled(height)} high) {{looks|may look}} out of its"
        f" opening: it is {about(depth, height)} deep",
        place=pouch.place_of("rounds" if pouch.has("rounds") else "length"),
        found=f"{about(depth, height)} deep",
        needed=f"{raised(depth, over, height)} or more",
        remedies=(
            Remedy(
                f"weave it {at_least(-over.likely.low, height)} deeper, or delete `height` where"
                " it is meant to look out"
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
    fault="pouch too small",
    title="what a pouch is made to hold goes into it",
    why="a stone that was to go into the pouch is tried in it when the bottom is closed",
    sources=(
        "width plus thickness of a flat thing is half the way round it, and so is the width"
        " inside of a tube laid flat: geometry, worked out for this project",
    ),
    bad="holds: {width: 30 mm, thickness: 6 mm} in a pouch 32 mm wide inside",
    good="holds: {width: 24 mm, thickness: 4 mm} in a pouch 32 mm wide inside",
)
