"""A lanyard goes round the neck and carries things that catch: it should break away, and soon."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Caution, Choice, Limit, Misfit, Piece, Rule, kept
from wellstrung.rulebook.plan import Part, Role
from wellstrung.rulebook.remedies import in_words
from wellstrung.rulebook.values import Quantity
from wellstrung.rulebook.wording import at_most, spelled
from wellstrung_rules.wearer import CHILDREN, LAW_FIRST

_PRINTED = "`The Role of Safety Buckle on Lanyard` and one page more, copies seen"
LETS_GO = Limit(
    "lanyard lets go",
    98.1,
    "N",
    f"buckles of lanyards open at about 10 kg: {_PRINTED}",
    Choice(66.7, 98.1, "15 lb, as for a child's necklace, ASTM F2923 (standard not seen)"),
)
_SAFETY = f"the safety rules of the place where it is worn and {LAW_FIRST}"


def check(piece: Piece, ask: Ask) -> Answer:
    plan = ask.plan
    if plan.piece != "lanyard" or plan.age in CHILDREN:
        return None
    clasps = [part for part in plan.in_run if part.kind.role is Role.CLASP]
    stated = {clasp: clasp.force("breakaway") for clasp in clasps if clasp.has("breakaway")}
    if not stated:
        called = (clasp for clasp in clasps if "breakaway" in ask.source(clasp.place_of("type")))
        named = next(called, None)
        return Caution(
            "this lanyard goes round the neck, and"
            + (
                f" the plan does not say at what pull `{named.name}` lets go when the lanyard"
                " catches in a door, a machine or a hand: ask its supplier"
                if named is not None
                else " nothing in the plan shows that it breaks away when it catches in a door, a"
                " machine or a hand: take a breakaway clasp at the back of the neck"
            )
            + f" and write its `breakaway: ...`; {_SAFETY}",
            named.key.place if named is not None else plan.place_of("piece"),
        )
    clasp, pull = min(stated.items(), key=lambda each: each[1].middle)
    margin = ask.limit(LETS_GO) - pull
    return kept(margin) or _too_strong(clasp, pull, margin, ask)


def _too_strong(clasp: Part, pull: Quantity, margin: Quantity, ask: Ask) -> Misfit:
    most = ask.limit(LETS_GO).middle
    return Misfit(
        says=f"`{clasp.name}` lets go at {spelled(pull)}, and a lanyard that catches"
        " {holds|may hold} its wearer by the neck until then",
        place=clasp.place_of("breakaway"),
        found=spelled(pull),
        needed=f"a clasp that lets go at {at_most(most, pull)} or less",
        remedies=(
            in_words(
                "take a breakaway clasp that lets go sooner; ask its supplier for the test;"
                f" {_SAFETY}",
                *(clasp, "breakaway"),
                high=most,
                unit="N",
            ),
        ),
        margin=margin,
        fault="breakaway too strong",
        also=(ask.plan.place_of("piece"),),
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
    limits=(LETS_GO,),
    sources=(
        "many workplaces require a breakaway clasp: bythegraces.com, Why your lanyard needs a"
        " breakaway clasp, copy seen",
        f"one opens at about 10 kg, 98 N: {_PRINTED}",
    ),
    bad="piece: lanyard with catch: {kind: clasp, type: barrel, breakaway: 200 N, ...}",
    good="piece: lanyard with catch: {kind: clasp, type: magnetic, breakaway: 2 lb, ...}",
)
