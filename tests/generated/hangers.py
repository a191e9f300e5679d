"""What hangs from a piece: pendants by rings and by bails, chain, drops and fringe."""

from __future__ import annotations

from typing import Any

from generated import chains, findings, strung
from generated.draft import Bead, Draft
from generated.findings import Hanging


def hang(
    draft: Draft, part: str, from_: Any, by: str = "", times: int = 1, stage: str = "hang", **more: Any
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
    step: dict[str, Any] = {"from_": source}
    if by and by != "thread":
        draft.maybe(70, step, by=by)
    draft.maybe(100 if times > 1 else 20, step, times=times)
    draft.step(stage, "hang", part, **step)


def from_rope(draft: Draft, rope: str, outside: float, *, capped: bool = True) -> None:
    """Something in the middle of a rope or a strand: on a carrier ring or on a bail."""
    way = draft.pick("carrier", "carrier", "bail", "pinch bail")
    if way == "carrier":
        _on_carriers(draft, rope, outside)
        return
    bail = findings.bail(draft, outside, pinch=way == "pinch bail")
    draft.hung.append({"part": bail, "from": rope})
    if way == "bail":
        draft.step("slide", "slide", bail, onto=rope)
    else:
        draft.step("hang", "hang", bail, from_=rope)
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
    inside = round(draft.fit(outside * 1.15 + 3.5), 1)
    carrier = findings.ring(draft, inside=(inside, inside + 2), closing=closing)
    bottom = draft.pick(0, 1, 3, 5, 7)
    below = findings.pendant(draft, top=count, bottom=bottom)
    if closing in ("soldered", "closed"):
        draft.parts[below.name]["top_eyes"]["opens"] = "yes"
        draft.step("slide", "slide", carrier.name, onto=rope)
    hang(draft, below.name, rope, carrier.name, count)
    underneath(draft, below)


def underneath(draft: Draft, below: Hanging) -> None:
    """What hangs from the eyes at the bottom of a pendant."""
    if not below.bottom:
        return
    eyes = {"part": below.name, "eyes": draft.pick("bottom", "bottom", "bottom eyes")}
    if eyes["eyes"] == "bottom eyes":
        eyes["eyes"] = "bottom_eyes" if draft.chance(50) else "bottom"
    way = draft.pick("chain", "thread", "pins", "charms", "mixed")
    count = below.bottom
    if way == "thread":
        drop = strung.drop(draft, legs=count)
        hang(draft, drop.name, eyes, "thread", count, stage="fringe", passes=draft.whole(1, 3))
        return
    if way == "mixed" and count >= 3:
        one, two = _small(draft, "charms"), _small(draft, "pins")
        ring = findings.ring(draft, inside=(3.0, 3.8))
        odd = list(range(1, count + 1, 2))
        hang(draft, one, eyes, ring.name, len(odd), at=odd)
        hang(draft, two, eyes, ring.name, count - len(odd))
        return
    small = _small(draft, way)
    if way == "pins" and draft.chance(60):
        hang(draft, small, eyes, times=count)  # its own loop is opened
        return
    ring = findings.ring(draft, inside=(3.0, 3.8))
    hang(draft, small, eyes, ring.name, count if not draft.chance(4) else max(1, count - 1))


def _small(draft: Draft, way: str) -> str:
    """Something small enough to hang in a row."""
    if way == "chain":
        piece = chains.piece(draft, draft.between(20, 50, 5))
        step = {"every": draft.whole(3, 9)} if draft.chance(30) else {}
        draft.step("cut", "cut", piece.name, **step)
        return piece.name
    if way == "pins":
        pin = strung.wire_link(draft, draft.pick("head pin", "eye pin"))
        draft.step("wire", "wrap loop", pin.name)
        return pin.name
    return findings.pendant(draft, grams=0.8).name


def fringe(draft: Draft, part: str, edge: str, eyes: int, bead: Bead, *, spread: bool = True) -> None:
    """Legs sewn along a woven edge: in all its eyes, at some of them, or every so many."""
    passes = draft.pick({}, {"passes": 2}, {"passes": 3}, {"passes": 1})
    place = {"part": part, "eyes": edge}
    way = draft.pick("all", "at", "some") if spread else "all"
    if way == "at" and eyes >= 3:
        places = sorted({1, (eyes + 1) // 2, eyes})
        tall = strung.drop(draft, like=bead)
        hang(draft, tall.name, place, "thread", len(places), stage="fringe", at=places, **passes)
        if draft.chance(60):
            leg = strung.drop(draft, like=bead)
            left = eyes - len(places)
            hang(draft, leg.name, place, "thread", max(1, left), stage="fringe", **passes)
        return
    count = eyes if way == "all" else max(1, (eyes + 1) // 2)
    leg = strung.drop(draft, like=bead, legs=min(count, 40))
    if leg.count and leg.count != count:
        count = leg.count
    hang(draft, leg.name, place, "thread", count, stage="fringe", **passes)
