"""Beads of one round of a bezel that repeat, and the corners of its stone, fit its ring."""

from __future__ import annotations

import math

from wellstrung.rulebook import Answer, Ask, Held, Misfit, Remedy, Rule, Woven
from wellstrung.rulebook.plan import Part, bead_rows
from wellstrung.rulebook.wording import plural


def check(woven: Woven, ask: Ask) -> Answer:
    bezel = woven.part
    if not bezel.takes("stone"):
        return None
    around, place = bezel.count("around"), bezel.place_of("around")
    repeats = {len(row) for row in bead_rows(bezel, "beads")} - {1}
    corners = _corners(bezel)
    if not repeats and not corners:
        return None
    off = [many for many in sorted(repeats) if around % (2 * many)]
    if not off and around % (corners or 1) == 0:
        return Held()
    every = math.lcm(*(2 * many for many in repeats), corners or 2)
    aim = _goes_round(bezel, ask, around)
    near = [n for n in (aim // every * every, (aim // every + 1) * every) if n]
    if off:
        has = plural(around // 2, "bead")
        fault = f"has rounds of {has}, and {plural(off[0], 'bead')} that repeat in one"
        other = f"; or let so many repeat that they go into {around // 2}"
        fault = f"{fault} do not go round: {around // 2 % off[0]} are left over"
    else:
        other = ""
        fault = f"has a ring of {around}, not a multiple of 4: the corners of its stone are unlike"
    writes = " or ".join(f"`around: {n}`" for n in near)
    return Misfit(
        says=f"`{bezel.name}` {fault}",
        place=place,
        found=f"around: {around}",
        needed=writes,
        remedies=(
            *(Remedy.write(place, str(n), f"write `around: {n}`") for n in near),
            Remedy(f"write {writes}, with beads as much longer or shorter{other}"),
        ),
        also=(bezel.place_of("beads" if off else "stone"),),
    )


def _goes_round(bezel: Part, ask: Ask, around: int) -> int:
    """The ring itself where it may go round the stone, or else one that does."""
    least, behind, most = (
        ask.of(bezel, f"around_{what}").middle for what in ("least", "behind", "most")
    )
    return around if behind <= around <= most else round((least + most) / 2)


def _corners(bezel: Part) -> int:
    """Corners of its stone with sides alike between them; none where two sides are longer."""
    shape = bezel.node_at("stone", "shape")
    alike = not bezel.has("stone", "width") or (
        bezel.size("stone", "width").middle == bezel.size("stone", "outside").middle
    )
    return 4 if shape is not None and shape.value == "square" and alike else 0


RULE = Rule(
    name="bezel-round",
    family="count",
    subject=Woven,
    check=check,
    fault="a bezel's beads do not go round",
    title="beads that repeat in a round of a bezel go round it, and a square stone has four corners"
    " alike",
    why=(
        "a repeat that does not come out breaks beside the first bead of its round; a ring that"
        " four does not divide meets the corners of a square stone each in another way"
    ),
    sources=(
        "counting",
        "36 round a square stone of 12 mm, four times 5 of 11/0 and 4 of 15/0: `Square Stone Beaded"
        " Bezels`, excerpt seen",
    ),
    bad="around: 38 and stone: {shape: square, outside: 12 mm}",
    good="around: 36 and stone: {shape: square, outside: 12 mm}",
    level="warning",
)
