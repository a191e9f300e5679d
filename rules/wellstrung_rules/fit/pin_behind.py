"""A brooch pin against what it is sewn or glued behind: it does not stand out at either side."""

from __future__ import annotations

from wellstrung.rulebook import (
    Answer,
    Ask,
    Limit,
    Misfit,
    Missing,
    PinBehind,
    Remedy,
    Rule,
    kept,
)
from wellstrung.rulebook.plan import Part
from wellstrung.rulebook.remedies import in_words
from wellstrung.rulebook.values import Quantity
from wellstrung.rulebook.wording import about, in_unit_of, lowered, spelled

COVERED = Limit(
    "pin covered", 4.0, "mm", "a pin 2 mm inside either edge is not seen, common practice"
)
#: how long brooch pins are sold, mm: from memory (3/4, 1, 1 1/4, 1 1/2 and 2 in)
_SOLD = (20.0, 25.0, 32.0, 38.0, 50.0)
#: what may say how far a part reaches across
_ACROSS = ("width", "length", "outside", "height")


def check(join: PinBehind, ask: Ask) -> Answer:
    pin, carrier = join.pin, join.carrier
    long, wide = ask.of(pin, "length"), _widest(carrier, ask)
    if answer := kept(margin := wide - long - ask.limit(COVERED)):
        return answer
    needed = f"{lowered(long, margin)} or shorter"
    by_hand, most = f"take a brooch pin of {needed}", long.middle + margin.likely.low
    sold = [in_unit_of(one, long) for one in _SOLD if one <= most]
    place = pin.place_of("length")
    shops = [Remedy.write(place, one, f"take one of {one}, as shops sell it") for one in sold[-1:]]
    return Misfit(
        says=f"brooch pin `{pin.name}` ({spelled(long)}) {{shows|may show}} at the sides of"
        f" `{carrier.name}`, which is {about(wide, long)} at its widest",
        place=place,
        found=spelled(long),
        needed=needed,
        remedies=(*shops, in_words(by_hand, pin, "length", high=most)),
        margin=margin,
        also=(carrier.key.place,),
    )


def _widest(carrier: Part, ask: Ask) -> Quantity:
    """The way across what carries the pin where it is widest; raises Missing."""
    found, lacks = list[Quantity](), None
    for what in _ACROSS:
        try:
            found.append(ask.of(carrier, what))
        except Missing as missing:
            lacks = lacks or missing
    if not found:
        raise lacks or carrier.missing("width")
    return max(found, key=lambda size: size.middle)


RULE = Rule(
    name="pin-behind",
    family="fit",
    subject=PinBehind,
    check=check,
    fault="brooch pin too long",
    title="a brooch pin is covered by the piece that it holds",
    why="a pin that stands out is seen, and its catch pulls threads in the cloth and the beadwork",
    limits=(COVERED,),
    sources=("no longer than what covers it: geometry", "2 mm at either edge: common practice"),
    bad="a brooch pin of 32 mm behind a panel of 28 mm",
    good="a brooch pin of 25 mm behind a panel of 40 mm",
    level="warning",
)
