"""A safety chain: slack while the clasp is closed, long enough for the hand once it is open."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wellstrung.rulebook import Answer, Ask, Held, Misfit, Missing, Remedy, Rule, SafetyChain, kept
from wellstrung.rulebook.plan import Part
from wellstrung.rulebook.values import Quantity, derived
from wellstrung.rulebook.wording import about, at_least, in_unit_of, raised


def check(join: SafetyChain, ask: Ask) -> Answer:
    closed = ask.of(join.clasp, "a.along") + ask.of(join.clasp, "b.along")
    spans = _spans(join, ask)
    slack = spans - closed
    if not kept(slack):
        return _misfit(
            join, slack, closed, f"{{is|may be}} drawn tight before `{join.clasp.name}` closes", ask
        )
    if ask.plan.piece != "bracelet":
        return Held()
    if join.wearer is None or not join.wearer.has("hand"):
        raise Missing("`wearer: {hand: ...}`")
    hand = join.wearer.girth("hand")
    room = ask.get("piece.inside") - closed + spans  # the chain in place of the clasp
    if answer := kept(room - hand):
        return answer
    says = f"{{does|may}} not let the hand ({about(hand)}) through with the clasp open"
    return _misfit(join, room - hand, spans + hand - room, says, ask)


def _spans(join: SafetyChain, ask: Ask) -> Quantity:
    """From ring to ring: the chain, taut, and the ring that holds it at each of its ends, mm."""
    along, ring = ask.of(join.chain, "along"), join.line.ring
    if ring is None:
        return along
    return derived(
        f"{join.chain.name} with its rings",
        "mm",
        lambda along, ring: along + 2 * ring,
        along=along,
        ring=ask.of(ring, "inside"),
        source="geometry",
    )


def _misfit(join: SafetyChain, margin: Quantity, needed: Quantity, does: str, ask: Ask) -> Misfit:
    chain, short = join.chain, max(-margin.likely.low, 0.0)
    more = in_unit_of(short, needed)
    return Misfit(
        says=f"safety chain `{chain.name}` ({about(_spans(join, ask))} with its rings) {does}",
        place=chain.key.place,
        found=about(_spans(join, ask)),
        needed=at_least(needed.middle, needed),
        remedies=(
            *_longer(chain, short, margin, ask),
            Remedy(f"cut `{chain.name}` longer by {more} or more"),
        ),
        margin=margin,
        also=(join.place,),
    )


def _longer(chain: Part, short: float, margin: Quantity, ask: Ask) -> Iterator[Remedy]:
    """The chain cut longer, in the field that says how long it is."""
    if chain.has("links"):
        had = chain.count("links")
        links = had + math.ceil(short * had / ask.of(chain, "along").middle)
        text = f"cut {links} links for `{chain.name}` instead of {had}"
        yield Remedy.write(chain.place_of("links"), str(links), text)
    elif chain.has("length"):
        wanted = raised(chain.length("length"), margin)
        yield Remedy.write(chain.place_of("length"), wanted, f"cut {wanted} for `{chain.name}`")


RULE = Rule(
    name="safety-chain",
    family="length",
    subject=SafetyChain,
    check=check,
    fault="safety chain too short",
    title="a safety chain is slack beside the closed clasp, and lets the hand through with it open",
    why="one that is too short holds the clasp open, or has to be unhooked each time the bracelet"
    " comes off",
    sources=(
        "way round with the clasp open = inside - clasp + chain with its rings: geometry of this"
        " project; no published figure",
    ),
    bad="guard: {..., length: 2 cm} beside a clasp of 18 mm, wearer: {wrist: 16 cm, hand: 21 cm}",
    good="guard: {..., length: 6 cm} beside a clasp of 18 mm, wearer: {wrist: 16 cm, hand: 21 cm}",
    level="warning",
)
