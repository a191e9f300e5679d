"""What hangs from a piece: pendants by rings and by bails, chain, drops and fringe."""

from __future__ import annotations

from typing import Any

from generated import chains, findings, strung, woven
from generated.draft import Bead, Draft
from generated.findings import Hanging


def hang(
    draft: Draft,
    part: str,
    from_: Any,
    by: str = "",
    times: int = 1,
    *,
    stage: str = "hang",
    **more: Any,
) -> None:
    """Hangs a part and writes the step that does it."""
    line: dict[str, Any] = {"part": part, "from": from_}
    if by:
        line["by"] = by
    draft.maybe(100 if times > 1 and "at" not in more else 12, line, times=times)
    line.update(more)
    draft.maybe(3, line, note="from the middle out")
    draft.hung.append(line)
    source = from_["part"] if isinstance(from_, dict) else from_
    step: dict[str, Any] = {}
    draft.maybe(92, step, from_=source)
    if by and by != "thread":
        draft.maybe(70, step, by=by)
    draft.maybe(100 if times > 1 else 20, step, times=times)
    draft.step(stage, "hang", part, **step)


def in_the_middle(draft: Draft, rope: str, outside: float) -> None:
    """Something in the middle of a rope or a strand: on a carrier ring or on a bail."""
    way = draft.pick("carrier", "carrier", "bail", "pinch bail", "setting")
    if way == "carrier":
        _on_carriers(draft, rope, outside)
    elif way == "setting":
        _setting(draft, rope, outside)
    else:
        _on_bail(draft, rope, outside, pinch=way == "pinch bail")


def _on_bail(draft: Draft, rope: str, outside: float, *, pinch: bool) -> None:
    bail = findings.bail(draft, outside, pinch=pinch)
    draft.hung.append({"part": bail, "from": rope})
    if pinch:
        draft.step("hang", "hang", bail, from_=rope)
    else:
        draft.step("slide", "slide", bail, onto=rope)
    below = findings.pendant(draft, bottom=draft.pick(0, 0, 1))
    if draft.chance(30):
        small = findings.ring(draft)
        hang(draft, below.name, bail, small.name)
    else:
        hang(draft, below.name, bail)
    underneath(draft, below)


def _on_carriers(draft: Draft, rope: str, outside: float) -> None:
    count = draft.pick(1, 1, 2)
    closing = draft.pick("soldered", "closed", "open", "open")
    roomy = 1.75 if closing == "open" else 1.15
    inside = round(draft.fit(outside * roomy + 3.5), 1)
    carrier = findings.ring(draft, inside=(inside, inside + 2), closing=closing)
    bottom = draft.pick(0, 1, 3, 5, 7)
    below = findings.pendant(draft, top=count, bottom=bottom)
    if closing in ("soldered", "closed"):
        draft.parts[below.name]["top_eyes"]["opens"] = "yes"
        draft.step("slide", "slide", carrier.name, onto=rope)
    hang(draft, below.name, rope, carrier.name, count)
    if closing == "open" and draft.chance(40):
        draft.steps.pop()
        draft.step("hang", "close ring", carrier.name, around=rope)
    underneath(draft, below)


def _setting(draft: Draft, rope: str, outside: float) -> None:
    """A stone in its bezel, by a ring round the rope."""
    setting = woven.bezel(draft, eye=True)
    draft.step("make", "weave", setting.name)
    draft.step("finish", "finish thread", setting.name)
    inside = round(draft.fit(outside * 1.15 + 4), 1)
    carrier = findings.ring(draft, inside=(inside, inside + 2), closing="soldered")
    draft.step("slide", "slide", carrier.name, onto=rope)
    hang(draft, setting.name, {"part": rope}, carrier.name)


def underneath(draft: Draft, below: Hanging) -> None:
    """What hangs from the eyes at the bottom of a pendant."""
    if not below.bottom:
        return
    eyes = {"part": below.name, "eyes": draft.pick("bottom", "bottom", "bottom_eyes")}
    way = draft.pick("chain", "thread", "pins", "charms", "mixed", "ring")
    count = below.bottom
    if way == "thread":
        drop = strung.drop(draft, legs=count)
        passes = draft.whole(1, 3)
        hang(draft, drop.name, eyes, "thread", count, stage="fringe", passes=passes)
        return
    if way == "ring":
        small = findings.ring(draft, inside=(3.0, 4.0))
        hang(draft, small.name, eyes, times=count)
        charm = findings.pendant(draft, grams=0.6)
        hang(draft, charm.name, small.name, times=count)
        draft.parts[charm.name]["top_eyes"]["opens"] = "no"
        return
    if way == "mixed" and count >= 3:
        one, two = _small(draft, "charms"), _small(draft, "pins")
        ring = findings.ring(draft, inside=(3.0, 3.8))
        odd = list(range(1, count + 1, 2))
        hang(draft, one, eyes, ring.name, len(odd), at=odd)
        hang(draft, two, eyes, ring.name, count - len(odd))
        return
    small_one = _small(draft, way)
    if way == "pins" and draft.chance(60):
        hang(draft, small_one, eyes, times=count)  # its own loop is opened
        return
    ring = findings.ring(draft, inside=(3.0, 3.8))
    hang(draft, small_one, eyes, ring.name, count if not draft.chance(4) else max(1, count - 1))


def _small(draft: Draft, way: str) -> str:
    """Something small enough to hang in a row."""
    if way == "chain":
        piece = chains.piece(draft, draft.between(20, 50, 5))
        chains.cut(draft, piece)
        return piece.name
    if way == "pins":
        pin = strung.wire_link(draft, draft.pick("head pin", "eye pin"))
        draft.step("wire", "wrap loop", pin.name)
        return pin.name
    return findings.pendant(draft, grams=0.8).name


def fringe(
    draft: Draft, part: str, edge: str, eyes: int, bead: Bead, *, spread: bool = True
) -> None:
    """Legs sewn along a woven edge: in all its eyes, at some of them, or every so many."""
    passes = draft.pick({}, {"passes": 2}, {"passes": 3}, {"passes": 1})
    place = {"part": part, "eyes": edge}
    way = draft.pick("all", "at", "some") if spread else "all"
    if way == "at" and eyes >= 3:
        places = sorted({1, (eyes + 1) // 2, eyes // 2 + 1, eyes})
        tall = strung.drop(draft, like=bead)
        hang(draft, tall.name, place, "thread", len(places), stage="fringe", at=places, **passes)
        left = eyes - len(places)
        if left and draft.chance(60):
            leg = strung.drop(draft, like=bead)
            hang(draft, leg.name, place, "thread", left, stage="fringe", **passes)
        return
    count = eyes if way == "all" else max(1, (eyes + 1) // 2)
    leg = strung.drop(draft, like=bead, legs=min(count, 60))
    count = leg.listed or count
    hang(draft, leg.name, place, "thread", count, stage="fringe", **passes)
    if draft.chance(20):
        behind = strung.drop(draft, like=bead)
        hang(draft, behind.name, place, "thread", count, stage="fringe", layer=2)


def along(draft: Draft, part: str, length: float, edge: str) -> None:
    """A few legs along a long edge."""
    leg = strung.drop(draft)
    place = {"part": part, "eyes": edge}
    over = {"over": draft.length(round(length / 3))} if draft.chance(50) else {}
    count = draft.whole(2, 5)
    hang(draft, leg.name, place, "thread", count, stage="fringe", **over)
