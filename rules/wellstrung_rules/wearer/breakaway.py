"""A lanyard goes round the neck and carries things that catch: it should break away."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Caution, Held, Piece, Rule
from wellstrung.rulebook.plan import Role
from wellstrung_rules.wearer import CHILDREN, LAW_FIRST


def check(piece: Piece, ask: Ask) -> Answer:
    plan = ask.plan
    if plan.piece != "lanyard" or plan.age in CHILDREN:
        return None
    clasps = [part for part in plan.in_run if part.kind.role is Role.CLASP]
    if any(clasp.has("breakaway") for clasp in clasps):
        return Held()
    return Caution(
        "this lanyard goes round the neck, and nothing in the plan shows that it breaks away when"
        " it catches in a door, a machine or a hand: take a breakaway clasp at the back of the"
        " neck and write its `breakaway: ...`; the safety rules of the place where it is worn and"
        f" {LAW_FIRST}",
        plan.place_of("piece"),
    )


RULE = Rule(
    name="breakaway",
    family="wearer",
    subject=Piece,
    check=check,
    fault="lanyard without breakaway",
    title="a lanyard worn round the neck breaks away when it catches",
    why="a lanyard carries keys or a badge that catch in doors, machines and hands, and pull at the"
    " neck",
    sources=(
        "many workplaces require a breakaway clasp: bythegraces.com, Why your lanyard needs a"
        " breakaway clasp, copy seen",
    ),
    good="piece: lanyard with catch: {kind: clasp, type: magnetic, breakaway: 2 lb, ...}",
    level="caution",
)
