"""What is on hand for a plan, and what its maker has weighed and accepts."""

from __future__ import annotations

from collections.abc import Iterator

from generated.draft import Draft, Fields

_COUNTED = (
    "end cap", "cone", "crimp", "crimp cover", "bead tip", "clasp", "pendant", "connector",
    "spacer bar", "bail",
    "ear wire", "ear post", "spectacle loop", "wire link",
)  # fmt: skip


def on_hand(draft: Draft) -> list[Fields]:
    """A line for most of what the plan takes."""
    lines: list[Fields] = []
    for name, bead in draft.beads.items():
        if draft.chance(88):
            lines.append(_beads(draft, name, bead))
            if draft.chance(6):
                lines.append(_beads(draft, name, bead))
    for name, part in draft.parts.items():
        line = _part(draft, name, str(part["kind"]))
        if line and draft.chance(80):
            draft.maybe(4, line, note="from the last piece")
            lines.append(line)
    return lines


def _beads(draft: Draft, name: str, bead: Fields) -> Fields:
    line: Fields = {"bead": name}
    if bead["type"] == "other" or draft.chance(8):
        if draft.chance(85):
            line["count"] = 25 if draft.chance(6) else draft.pick(200, 120, 300, 500)
        else:
            line |= {"length": draft.length(400.0), "pieces": draft.pick(1, 2, 3)}
    else:
        pack = "10 g" if draft.chance(8) else draft.pick("50 g", "20 g", "100 g", "2 oz")
        line |= {"pack": pack, "packs": draft.pick(2, 1, 3)}
    draft.maybe(20, line, sold_as=draft.pick("tube", "bag", "pack", "hank", "strand", "box"))
    draft.maybe(15, line, lot=draft.pick("lot 12", "A 7", "lot 31", 401))
    return line


def _part(draft: Draft, name: str, kind: str) -> Fields | None:
    if kind == "jump ring":
        if draft.chance(80):
            return {"part": name, "pack_of": draft.pick(20, 50, 10), "packs": draft.pick(1, 1, 2)}
        return {"part": name, "count": draft.pick(12, 20, 4)}
    if kind == "chain":
        return {"chain": name, "length": draft.length(draft.pick(600.0, 1000.0, 300.0)),
                **({"pieces": 2} if draft.chance(25) else {})}  # fmt: skip
    if kind == "thread":
        line: Fields = {"thread": name, "spools": draft.pick(2, 1, 3)}
        draft.maybe(15, line, sold_as=draft.pick("spool", "card"))
        return line
    if kind == "adhesive":
        return {"part": name, "volume": draft.pick("25 ml", "5 ml", "0.5 fl oz"),
                **({"packs": 2} if draft.chance(15) else {}),
                **({"sold_as": "bottle"} if draft.chance(15) else {})}  # fmt: skip
    if kind in ("needle", "core"):
        return {"part": name, "count": draft.pick(1, 2)}
    if kind in _COUNTED and draft.chance(30):
        return {"part": name, "count": draft.pick(2, 4, 10)}
    return None


def around_it(draft: Draft, lines: list[Fields]) -> Fields:
    """What else a plan may say at its end: budget, class, what is accepted."""
    tail: Fields = {}
    draft.maybe(20, tail, budget=draft.pick("40 EUR", "£35", "60 USD", "12 EUR"))
    if draft.chance(20):
        of: Fields = {"length": draft.pick("2.5 h", "3 h", "90 min", "6 h")}
        draft.maybe(60, of, sessions=draft.pick(2, 3, 4))
        draft.maybe(30, of, between=draft.pick("1 week", "2 days"))
        if draft.made_by_hand:
            draft.maybe(25, of, prepared=[draft.pick(*draft.made_by_hand)])
        levels = "beginner", "confident beginner", "intermediate", "advanced"
        draft.maybe(50, of, level=draft.pick(*levels))
        draft.maybe(30, of, bring=[draft.pick("reading glasses", "a bead mat")])
        tail["class"] = of
    accepted = [_accepted(draft, *one) for one in _warned_of(draft) if draft.chance(60)]
    if accepted:
        tail["accept"] = accepted
    return tail


def _warned_of(draft: Draft) -> Iterator[tuple[str, str]]:
    """Warnings that a plan is sure to get: by rule, and by part where it is about one."""
    if draft.head["piece"] == "earrings" and "makes" not in draft.head:
        yield "pair-complete", ""


def _accepted(draft: Draft, rule: str, part: str) -> Fields:
    one: Fields = {"rule": rule}
    if part and draft.chance(80):
        one["part"] = part
    return one | {"because": draft.pick("tried on the samples", "asked for by the wearer")}
