"""Slips that leave a plan right to read, and often wrong to make: so that rules have much to say.

Each slip changes a finished plan as somebody might who was thinking of something else. What it
leaves is still a plan in which every name points somewhere.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from generated.choices import Choices, chance, pick

Plan = dict[str, Any]
Slip = Callable[[Choices, Plan], None]


def slipped(choices: Choices, plan: Plan) -> None:
    """Makes a slip or two in about a third of the plans."""
    if not chance(choices, 36):
        return
    _slip(choices, plan)
    if chance(choices, 30):
        _slip(choices, plan)


def _slip(choices: Choices, plan: Plan) -> None:
    """The first slip, from any one on, that there is something for in this plan."""
    before, start = repr(plan), choices.whole(0, len(SLIPS) - 1)
    for number in range(len(SLIPS)):
        SLIPS[(start + number) % len(SLIPS)](choices, plan)
        if repr(plan) != before:
            return


def _parts(plan: Plan, *kinds: str) -> list[dict[str, Any]]:
    return [part for part in plan["parts"].values() if part["kind"] in kinds]


def _one(choices: Choices, plan: Plan, *kinds: str) -> dict[str, Any]:
    """One part of these kinds; where there is none, an entry that is thrown away."""
    found = _parts(plan, *kinds)
    return pick(choices, found) if found else {}


def _eyes(node: Any) -> list[dict[str, Any]]:
    """Every eye of a part: whatever has a hole and a wire."""
    if not isinstance(node, dict):
        return []
    own = [node] if {"hole", "wire"} <= node.keys() else []
    return own + [eye for value in node.values() for eye in _eyes(value)]


def _set(choices: Choices, part: dict[str, Any], **values: tuple[Any, ...]) -> None:
    """Changes a field to one of several values, where it is written."""
    for field, options in values.items():
        if field in part:
            part[field] = pick(choices, options)


def thick_ring(choices: Choices, plan: Plan) -> None:
    """A ring of a wire that is too thick, or too thin."""
    ring = _one(choices, plan, "jump ring")
    if "inside" in ring:
        _set(choices, ring, wire=("14 AWG", "22 AWG", "1.5 mm", "24 AWG"))
    else:
        _set(choices, ring, wire=("16 AWG", "22 AWG", "24 AWG", "1.3 mm"))


def small_ring(choices: Choices, plan: Plan) -> None:
    """A ring that is too small, or far too wide."""
    ring = _one(choices, plan, "jump ring")
    _set(choices, ring, inside=("2 mm", "2.6 mm", "14 mm"), outside=("3.8 mm", "4.2 mm", "16 mm"))


def other_closing(choices: Choices, plan: Plan) -> None:
    """A closed ring where one that opens was meant, or the other way about."""
    ring = _one(choices, plan, "jump ring")
    _set(choices, ring, closing=("closed", "soldered", "open", "split"))


def step_left_out(choices: Choices, plan: Plan) -> None:
    """A step that is forgotten."""
    steps = plan.get("work", [])
    if len(steps) > 1:
        steps.remove(pick(choices, steps))


def steps_changed_about(choices: Choices, plan: Plan) -> None:
    """A step that comes too early."""
    steps = plan.get("work", [])
    if len(steps) > 1:
        moved = steps.pop(choices.whole(1, len(steps) - 1))
        steps.insert(choices.whole(0, len(steps) - 1), moved)


def heavy(choices: Choices, plan: Plan) -> None:
    """Something that weighs far more than it looks."""
    part = _one(choices, plan, "pendant", "clasp", "connector", "end cap")
    _set(choices, part, mass=("60 g", "25 g", "150 g", "400 g"))


def weak_line(choices: Choices, plan: Plan) -> None:
    """A thread, or a clasp, that gives way early."""
    for part in _parts(plan, "strand", "bead drop", "woven rope", "woven band", "bezel", "pouch"):
        if "rating" in part.get("thread", {}):
            part["thread"]["rating"] = pick(choices, ("0.2 lb", "1 lb", "2 N"))
    _set(choices, _one(choices, plan, "clasp"), pull=("0.1 N", "0.3 N"))


def eye_more(choices: Choices, plan: Plan) -> None:
    """An eye more, or a hole less, than was meant."""
    part = _one(choices, plan, "pendant", "connector", "spacer bar", "clasp")
    counted = [eyes for eyes in (*_eyes(part), part.get("holes", {})) if "count" in eyes]
    if counted:
        eyes = pick(choices, counted)
        eyes["count"] = max(1, eyes["count"] + pick(choices, (1, -1)))


def small_eye(choices: Choices, plan: Plan) -> None:
    """An eye with a small hole, or a thick wall, or an edge far from its hole."""
    part = _one(choices, plan, "pendant", "connector", "end cap", "clasp", "bail", "ear wire")
    eyes = _eyes(part)
    if eyes:
        one = pick(choices, eyes)
        one |= pick(choices, ({"hole": "0.9 mm"}, {"wire": "2.6 mm"}, {"edge": "4 mm"}))


def wide_hole(choices: Choices, plan: Plan) -> None:
    """A hole that does not stop what it is to stop."""
    part = _one(choices, plan, "cone", "bead tip")
    _set(choices, part, hole=("5 mm", "0.4 mm"), inside=("1 mm", "6 mm"))
    _set(choices, _one(choices, plan, "crimp"), inside=("3 mm", "0.6 mm"))


def bead_out_of_line(choices: Choices, plan: Plan) -> None:
    """A bead of another size than those beside it."""
    bead = pick(choices, list(plan.get("beads", {"": {}}).values()))
    if bead.get("type") == "round" and "make" in bead:
        bead["size"] = pick(choices, ("6/0", "15/0", "11/0", "8/0"))
        bead.pop("measured", None)
    _set(choices, bead, per_gram=(900, 0.4), hole=("0.4 mm", "0.3 mm"))


def around_or_each_round(choices: Choices, plan: Plan) -> None:
    """A count in the ring where the one of a round was meant, or the other way about."""
    rope = _one(choices, plan, "woven rope")
    if "cubic" in rope.get("stitch", ""):
        return
    if "around" in rope and "odd" not in rope["stitch"]:
        if rope["stitch"] != "Russian spiral":  # it counts stitches around
            rope["each_round"] = rope.pop("around")
    elif "each_round" in rope:
        rope["around"] = 2 * rope.pop("each_round")
    _set(choices, rope, rounds=(5, 900))


def short_thread(choices: Choices, plan: Plan) -> None:
    """Thread that is too short to work with, and a needle that is too thick."""
    part = _one(choices, plan, "woven rope", "woven band", "strand", "bezel", "pouch")
    _set(choices, part.get("thread", {}), tail=("3 cm", "80 cm"), working_length=("30 cm", "6 m"))
    _set(choices, part, needle=("beading 10", "big-eye 1", "sharps 10", "twisted heavy"))


def little_on_hand(choices: Choices, plan: Plan) -> None:
    """Less on hand than it takes."""
    for line in plan.get("supplies", []):
        if chance(choices, 50):
            _set(choices, line, packs=(1,), pack=("5 g",), pack_of=(2,), count=(3,), spools=(1,),
                 length=("12 cm",), volume=("0.3 ml",))  # fmt: skip


def two_lots(choices: Choices, plan: Plan) -> None:
    """Beads of two lots for one piece."""
    lines = plan.get("supplies", [])
    for line in [line for line in lines if "bead" in line and "pack" in line]:
        line["lot"] = "lot 3"
        lines.append({**line, "lot": "lot 8"})
        return


def short_bar(choices: Choices, plan: Plan) -> None:
    """A toggle's bar that falls out or does not swing; a band's clasp that does not fit."""
    for clasp in _parts(plan, "clasp"):
        _set(
            choices, clasp.get("bar", {}), length=("9 mm", "14 mm", "60 mm"), stem=("1 mm", "9 mm")
        )
        _set(choices, clasp.get("tube", {}), length=("5 mm", "60 mm"), slot=("0.8 mm",))
        _set(choices, clasp.get("jaw", {}), width=("5 mm", "60 mm"), gap=("0.8 mm",))
        _set(choices, clasp.get("button", {}), outside=("6 mm", "30 mm"))


def fine_chain(choices: Choices, plan: Plan) -> None:
    """Chain with links that little goes through."""
    for chain in _parts(plan, "chain"):
        links = chain.get("links")
        for link in links.values() if isinstance(links, dict) else ():
            link.pop("hole", None)
            link |= pick(choices, ({"wire": "1.6 mm"}, {"width": "2.2 mm"}, {"wire": "1.3 mm"}))


def wrong_ear(choices: Choices, plan: Plan) -> None:
    """An ear wire that is too thick, or of a metal that nobody names."""
    ear = _one(choices, plan, "ear wire", "ear post")
    _set(choices, ear, wire=("16 AWG", "24 AWG"))
    ear.pop("metal", None)


def cap_that_does_not_fit(choices: Choices, plan: Plan) -> None:
    """A cap or a cone that is far too narrow or too wide, or too shallow."""
    part = _one(choices, plan, "end cap", "cone")
    part.pop("outside", None)
    part.pop("measured", None)
    part.pop("length", None)
    _set(choices, part, bore=("2.5 mm", "3 mm", "22 mm"), depth=("1.5 mm", "2 mm"))


def other_width(choices: Choices, plan: Plan) -> None:
    """A bail, a core, a stone, or a thing in a pouch that is much thicker than it was."""
    _set(choices, _one(choices, plan, "bail"), inside=("2 mm", "3 mm"))
    _set(choices, _one(choices, plan, "core"), outside=("9 mm", "5 mm"))
    bezel = _one(choices, plan, "bezel")
    _set(choices, bezel.get("stone", {}), outside=("9 mm", "40 mm"), thickness=("2 mm", "12 mm"))
    _set(choices, _one(choices, plan, "pouch").get("holds", {}), width=("9 cm",), height=("20 cm",))


def not_so_long(choices: Choices, plan: Plan) -> None:
    """A piece that is to be much shorter or longer, or another's size."""
    _set(choices, plan, finished_length=("30 cm ± 5 mm", "60 cm ± 1 cm"), inside=("12 cm ± 3 mm",))
    sizes = {
        "neck": ("50 cm",),
        "wrist": ("24 cm", "12 cm"),
        "hand": ("30 cm",),
        "head": ("75 cm",),
    }
    _set(choices, plan.get("wearer", {}), **sizes)


def uneven_fringe(choices: Choices, plan: Plan) -> None:
    """A fringe whose sides differ, or with a leg too many."""
    for drop in _parts(plan, "bead drop"):
        if isinstance(drop.get("count"), list):
            drop["count"][0] += 3
    for line in plan.get("hung", []):
        part = plan["parts"][line["part"]]
        if "times" in line and "at" not in line and not isinstance(part.get("count"), list | dict):
            line["times"] += 1


def another_glue(choices: Choices, plan: Plan) -> None:
    """An adhesive that does not suit, or that sets too soon."""
    for glue in _parts(plan, "adhesive"):
        glue["type"] = pick(choices, ("cyanoacrylate", "UV resin", "contact cement"))
        if chance(choices, 50):
            glue["usable"] = "20 s"


def turned(choices: Choices, plan: Plan) -> None:
    """Eyes that look the other way."""
    for part in _parts(plan, "pendant", "end cap", "connector", "bail", "bezel"):
        for eyes in _eyes(part):
            eyes["faces"] = pick(choices, ("front", "side"))


SLIPS: tuple[Slip, ...] = (
    thick_ring, small_ring, other_closing, step_left_out, steps_changed_about, heavy, weak_line,
    eye_more, small_eye, wide_hole, bead_out_of_line, around_or_each_round, short_thread,
    little_on_hand, two_lots, short_bar, fine_chain, wrong_ear, cap_that_does_not_fit, other_width,
    not_so_long, uneven_fringe, another_glue, turned,
)  # fmt: skip
