"""Whole right plans: as a hypothesis strategy, and as a list that comes out alike each time."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from hypothesis import strategies as st

from generated import (
    lines,
    pieces_for_ears,
    pieces_of_bands,
    pieces_of_rope,
    pieces_of_strands,
    supplies,
)
from generated.choices import Choices, Drawn, Seeded, pick, shuffled
from generated.draft import Draft
from generated.layout import Layout

Piece = Callable[[Draft], None]

PIECES: tuple[Piece, ...] = (
    *pieces_of_rope.ALL,
    *pieces_of_bands.ALL,
    *pieces_of_strands.ALL,
    *pieces_for_ears.ALL,
)

_FIRST = ("Low Tide", "Hedgerow", "Paper Boat", "North Window", "Long Field", "Rain Gauge", "Ember",
          "Two Rivers", "Attic", "Copper Beech")  # fmt: skip
_MAKERS = ("Ada", "Bram", "Celia", "Doro", "Emrys", "Fenna", "Gwil", "Hanne")


def written(choices: Choices, piece: Piece | None = None) -> str:
    """The text of a plan, by these choices; of one piece, or of any."""
    draft = Draft(choices)
    (piece or pick(choices, PIECES))(draft)
    return Layout(choices).text(_whole(draft))


def _whole(draft: Draft) -> dict[str, Any]:
    _extras(draft)
    what = str(draft.head["piece"])
    plan: dict[str, Any] = {"plan": 1, "title": f"{draft.pick(*_FIRST)} {what}"}
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
    if draft.chance(85):
        plan["supplies"] = supplies.on_hand(draft)
    plan = {key: value for key, value in plan.items() if value != []}
    plan |= supplies.around_it(draft)
    if draft.chance(6):
        order = [key for key in plan if key not in ("plan", "title")]
        plan = {"plan": 1, "title": plan["title"]} | {
            key: plan[key] for key in shuffled(draft.choices, order)
        }
    return plan


def _extras(draft: Draft) -> None:
    """What lies on the bench beside the piece."""
    if draft.chance(8):
        lines.needle(draft)


def _last(draft: Draft) -> list[dict[str, Any]]:
    return draft.pick([{"do": "wear"}], [{"do": "wear"}], [{"do": "pack"}, {"do": "wear"}], [])


@st.composite
def plans(draw: st.DrawFn) -> str:
    """The YAML text of a right plan."""
    return written(Drawn(draw))


def seeded(n: int, seed: int = 0) -> list[str]:
    """The texts of `n` plans that are the same whenever they are asked for."""
    return [written(Seeded(f"{seed}/{number}")) for number in range(n)]
