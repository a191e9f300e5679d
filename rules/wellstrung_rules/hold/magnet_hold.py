"""A magnetic clasp against the weight of the piece: halves slide apart long before they part."""

from __future__ import annotations

from wellstrung import magnets, tables
from wellstrung.rulebook import (
    Answer,
    Ask,
    ClaspClosed,
    Held,
    Misfit,
    Part,
    Quantity,
    Remedy,
    Rule,
    Verdict,
    about,
    compare,
    derived,
    in_unit_of,
    leaf,
    number,
    spelled,
    weight,
)


def check(join: ClaspClosed, ask: Ask) -> Answer:
    clasp = join.clasp
    if clasp.text("type") != "magnetic":
        return None
    field = "breakaway" if clasp.has("breakaway") and not clasp.has("pull") else "pull"
    pull, share, factor = clasp.force(field), _share(), ask.limit("magnet factor")
    load = weight(ask.get("piece.mass"))
    margin = derived(
        "pull to spare",
        "N",
        lambda pull, share, load, factor: magnets.slides_at(pull, share) - load * factor,
        "pull * share - load * factor",
        pull=pull,
        share=share,
        load=load,
        factor=factor,
    )
    if compare(margin, over=RULE.over) is Verdict.HOLDS:
        return Held(margin)
    wanted = load.worst.high * factor.middle / share.middle
    slides = in_unit_of(magnets.slides_at(pull.worst.low, share.middle), pull)
    says = (
        f"the halves of clasp `{clasp.name}` ({spelled(pull)} straight) slide apart at"
        f" {slides}, and the piece pulls {about(load, pull)}, {number(factor.middle)} times that"
        " in a tug"
    )
    return Misfit(
        says=says,
        may=says,
        place=clasp.place_of(field),
        found=spelled(pull),
        needed=f"a straight pull of {in_unit_of(wanted, pull)} or more",
        remedies=(Remedy(_remedy(clasp, wanted, pull)),),
        margin=margin,
    )


def _remedy(clasp: Part, wanted: float, pull: Quantity) -> str:
    return (
        f"take a clasp of {in_unit_of(wanted, pull)} or more for `{clasp.name}`, one whose halves"
        " sit inside each other, or add a safety chain"
    )


def _share() -> Quantity:
    """The share of the straight pull at which halves slide off, the least printed."""
    cell = tables.load("clasps").row("magnetic").cell("slides_at")
    source = f"trade tables, clasps, magnetic: {cell.grade}"
    return leaf("share of the pull", cell.low, "", source=source, grade=cell.grade)


RULE = Rule(
    name="magnet-hold",
    family="hold",
    subject=ClaspClosed,
    check=check,
    title="a magnetic clasp holds the weight of the piece when its halves are pulled sideways",
    why=(
        "magnets are sold by their straight pull; bent round a wrist or a nape they slide off each"
        " other at a fifth of it, and the piece is gone without a sound"
    ),
    sources=(
        "magnets slide at 15 to 25 % of their straight pull: What is the difference between"
        " adhesive force and displacement force/shear force?, copy seen",
        "a tug of twice the weight: common practice, no source",
    ),
    bad="magnet: {kind: clasp, type: magnetic, pull: 3 N} on a bracelet of 60 g",
    good="magnet: {kind: clasp, type: magnetic, pull: 12 N} on a bracelet of 60 g",
    level="warning",
    over="worst",
)
