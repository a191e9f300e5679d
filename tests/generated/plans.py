"""Whole right plans: as a hypothesis strategy, and as a list that comes out alike each time."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from hypothesis import strategies as st

from generated import (
    lines,
    pieces_for_ears,
    pieces_of_bands,
    pieces_of_metal,
    pieces_of_rope,
    pieces_of_strands,
    pieces_worn,
    slips,
    supplies,
)
from generated.choices import Choices, Drawn, Seeded, pick, shuffled
from generated.draft import Draft, Fields
from generated.layout import Layout

Piece = Callable[[Draft], None]

PIECES: tuple[Piece, ...] = (
    *pieces_of_rope.ALL,
    *pieces_of_bands.ALL,
    *pieces_of_strands.ALL,
    *pieces_of_metal.ALL,
    *pieces_for_ears.ALL,
    *pieces_worn.ALL,
)

_FIRST = ("Low Tide", "Hedgerow", "Paper Boat", "North Window", "Long Field", "Rain Gauge", "Ember",
          "Two Rivers", "Attic", "Copper Beech")  # fmt: skip
_MAKERS = ("Ada", "Bram", "Celia", "Doro", "Emrys", "Fenna", "Gwil", "Hanne")


def written(choices: Choices, piece: Piece | None = None) -> str:
    """The text of a plan, by these choices; of one piece, or of any."""
    return Layout(choices).text(whole(choices, piece))


def whole(choices: Choices, piece: Piece | None = None) -> Fields:
    """A plan, not yet written down."""
    draft = Draft(choices)
    (piece or pick(choices, PIECES))(draft)
    _extras(draft)
    what = str(draft.head["piece"])
    plan: Fields = {"plan": 1, "title": f"{draft.pick(*_FIRST)} {what}"}
    draft.maybe(60, plan, maker=draft.pick(*_MAKERS))
    draft.maybe(10, plan, note="first try of a new shape")
    plan |= draft.head
    if draft.beads:
        plan["beads"] = draft.beads
    plan["parts"] = draft.parts
    plan["run"] = draft.run
    if draft.hung:
        plan["hung"] = draft.hung
    if draft.chance(90):
        plan["work"] = [*draft.in_order(), *_last(draft)]
    lines_on_hand = supplies.on_hand(draft) if draft.chance(85) else []
    plan["supplies"] = lines_on_hand
    slips.slipped(draft.choices, plan)
    plan = {key: value for key, value in plan.items() if value != []}
    plan |= supplies.around_it(draft, lines_on_hand)
    if draft.chance(6):
        order = [key for key in plan if key not in ("plan", "title")]
        plan = {"plan": 1, "title": plan["title"]} | {
            key: plan[key] for key in shuffled(draft.choices, order)
        }
    draft.maybe(20, plan, version=draft.pick(1, 2, "second try"))
    return plan


def _extras(draft: Draft) -> None:
    """What lies on the bench beside the piece."""
    if draft.chance(8):
        lines.needle(draft)
    for name in [bead for bead in draft.beads if not _used(draft, bead)]:
        if not draft.chance(8):
            del draft.beads[name]
    draft.maybe(2, draft.head, makes=draft.whole(1, 3))


def _used(draft: Draft, bead: str) -> bool:
    return any(bead in _words(part) for part in draft.parts.values())


def _words(node: Any) -> Iterator[str]:
    """Every name and word in a part."""
    if isinstance(node, dict):
        for key, value in node.items():
            yield key
            yield from _words(value)
    elif isinstance(node, list):
        for value in node:
            yield from _words(value)
    elif isinstance(node, str):
        yield node
        yield node.partition(" ")[2]  # `6 sloe` is six of one bead


def _last(draft: Draft) -> list[dict[str, Any]]:
    """The steps at the end: the piece is packed or worn."""
    steps: list[dict[str, Any]] = []
    if draft.chance(20):
        pack: dict[str, Any] = {"do": "pack"}
        draft.maybe(30, pack, part=draft.run[0].partition(".")[0])
        draft.maybe(20, pack, takes="10 min")
        draft.maybe(20, pack, note="in tissue paper")
        steps.append(pack)
    if draft.chance(85):
        wear: dict[str, Any] = {"do": "wear"}
        draft.maybe(4, wear, takes="1 h")
        draft.maybe(4, wear, note="to the market")
        steps.append(wear)
    return steps


@st.composite
def plans(draw: st.DrawFn) -> str:
    """The YAML text of a right plan."""
    return written(Drawn(draw))


def seeded(n: int, seed: int = 0) -> list[str]:
    """The texts of `n` plans that are the same whenever they are asked for."""
    return [
        written(Seeded(f"{seed}/{number}"), PIECES[number % len(PIECES)]) for number in range(n)
    ]
