"""Quantities of the whole piece: its length, the way round inside it, its mass."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from wellstrung.derived.coils import decides, in_turns
from wellstrung.derived.declared import of_each
from wellstrung.formulas import circles
from wellstrung.formulas.arithmetic import most, pi, sqrt
from wellstrung.formulas.thread import PACKING
from wellstrung.model.item import Missing
from wellstrung.model.parts import Part, Role
from wellstrung.model.plan import Plan, Quantities, RunEntry
from wellstrung.quantity.arithmetic import derived, exact, leaf, times, total
from wellstrung.quantity.causes import Cause, Spread
from wellstrung.quantity.value import Quantity
from wellstrung.subjects.counts import has_place, hung_in_all, is_extender
from wellstrung.subjects.run import at_holes


def thickest(plan: Plan, ask: Quantities) -> Quantity | None:
    """How thick lies what is thickest against the body: woven or strung work, else chain, links."""
    worn = (Role.ROPE, Role.BAND, Role.STRAND)
    ropes = [entry for entry in plan.run if entry.part.kind.role in worn]
    links = [entry for entry in plan.run if ask.offers(entry.part, "thickness")]
    found = [_thickness_at(entry, ask) for entry in ropes or links]
    return max(found, key=lambda thick: thick.middle, default=None)


def _thickness_at(entry: RunEntry, ask: Quantities) -> Quantity:
    """How thick one place of the run lies: as its fattest strand, or a bundle of the innermost.

    Strands of one length that are gathered at their ends lie half way between a flat row and a
    round bundle, a quarter either way (no print). Those that have a hole each lie flat.
    """
    if entry.twists:
        return twisted_round(entry, ask)
    sizes = [(thickness(part, ask), part) for part in entry.parts]
    fattest = max((size for size, _ in sizes), key=lambda size: size.middle)
    if (
        len(sizes) == 1
        or any(part.fills_rest for _, part in sizes)
        or at_holes(ask.plan, entry) is not None
    ):
        return fattest
    lengths = [ask.of(part, "along").middle for part in entry.parts]
    as_one = min(lengths) + ask.plan.bench.limits["strands as one"].value
    sizes = [one for one, long in zip(sizes, lengths, strict=True) if long <= as_one]
    together = _bundled([size for size, _ in sizes], sizes[0][1])
    return max(fattest, together, key=lambda size: size.middle)


def twisted_round(entry: RunEntry, ask: Quantities) -> Quantity:
    """How thick strands are that are twisted together: all of them in the smallest round."""
    sizes = {f"strand{n}": thickness(part, ask) for n, part in enumerate(entry.parts, 1)}
    source = "circles in a circle, see `circles.py`"
    return derived("strands twisted", "mm", circles.side_by_side, sizes, source=source)


def taken_up(strand: float, together: float, thick: float, turns: float) -> float:
    """Length of strands that are twisted round each other, mm: less than they have untwisted.

    The middle of each lies on a screw: for each turn round it goes pi times what is across between
    the middles. Geometry; no published figure for beads.

    >>> round(taken_up(strand=460.0, together=8.0, thick=4.0, turns=10), 1)
    442.5
    """
    return sqrt(most(0, strand**2 - (pi * (together - thick) * turns) ** 2))


def _bundled(sizes: Sequence[Quantity], strand: Part) -> Quantity:
    """Strands of one length, side by side."""
    cure = "close the piece, measure round its inside, and set the lengths by that"
    lies = Cause("how the strands lie", f"`{strand.name}`", cure)
    return derived(
        "strands together",
        "mm",
        lambda flat, lie, **sizes: flat + lie * (bundle(**sizes) - flat),
        {f"strand{number}": size for number, size in enumerate(sizes, 1)},
        flat=max(sizes, key=lambda size: size.middle),
        lie=leaf("how round they lie", 0.5, "", [Spread(lies, 0.25, 0.25)]),
        source="between flat and a round bundle: worked out for this project, no print",
    )


def bundle(**strands: float) -> float:
    """Thickness of strands that lie as one round bundle, mm: the root of 1.3 times their areas.

    Packed as thread is in a hole (`thread.PACKING`); worked out for this project.

    >>> round(bundle(one=4.0, two=4.0, three=4.0), 1)
    7.9
    """
    return sqrt(PACKING * sum(size**2 for size in strands.values()))


def thickness(part: Part, ask: Quantities) -> Quantity:
    """How thick a part lies against the body: of round work its outside."""
    flat = ask.offers(part, "thickness")
    return ask.of(part, "thickness" if flat else "outside")


def _length(ask: Quantities) -> Quantity:
    """Taut, between bearing points, its clasp closed: what each place in the run adds."""
    if not ask.plan.run:
        raise Missing("`run`, the parts from one end to the other")
    each = [adds(entry, ask) for entry in ask.plan.run]
    clasp = any(part.kind.role is Role.CLASP for part in ask.plan.in_run)
    source = f"taut, between bearing points{', clasp closed' if clasp else ''}"
    return total("piece.length", "mm", each, source)


def adds(entry: RunEntry, ask: Quantities) -> Quantity:
    """What one place in the run adds to it, mm, with all the links that stand there.

    Of strands side by side the shortest lies innermost, and the piece is as long as it.
    """
    what = f"{entry.half}.along" if entry.half else "along"
    along = min((ask.of(part, what) for part in entry.parts), key=lambda length: length.middle)
    if entry.twists:
        along = derived(
            f"{entry.part.name} twisted",
            "mm",
            taken_up,
            strand=along,
            together=twisted_round(entry, ask),
            thick=min((thickness(one, ask) for one in entry.parts), key=lambda size: size.middle),
            turns=exact("turns", entry.twists),
            source="each strand lies on a screw: geometry, worked out for this project",
        )
    return times(along, entry.linked)


#: pieces that hang or are pinned on, and go round nothing
_HANGS = frozenset({"earrings", "pendant", "brooch", "key ring"})


def _inside(ask: Quantities) -> Quantity:
    """The way round inside: a thing of some thickness loses pi times that thickness.

    Memory wire lies as wide as its coils, however much of it is strung; the tightest holds it.
    """
    if ask.plan.piece in _HANGS:
        raise Missing("a `piece` that goes round something")
    thick = thickest(ask.plan, ask)
    if thick is None:
        raise Missing("a rope, a band, a strand, chain or wire links in the run")
    coils = [in_turns(one, 1, ask, "coil round") for one in ask.plan.in_run if decides(one)]
    return derived(
        "piece.inside",
        "mm",
        inside_length,
        length=min(coils, key=lambda one: one.middle) if coils else ask.get("piece.length"),
        thickness=thick,
        turns=exact("turns", 1) if coils else turns(ask.plan),
        source="strung length = body + ease + pi x thickness, trade table `bracelet_eases`",
    )


def turns(plan: Plan) -> Quantity:
    """How many times a piece goes round: once, but for memory wire and wraps; raises Missing."""
    coils = [part.count("thread", "turns") for part in plan.in_run if part.thread.springs]
    coils += [part.count("wraps") for part in plan.in_run if part.has("wraps")]
    return exact("turns", max(coils, default=1))


def inside_length(length: float, thickness: float, turns: float = 1) -> float:
    """The way round the inside of a closed piece, mm: its middle line less pi times its thickness.

    Three printed forms of one geometry (trade tables, bracelets): strung length = wrist + ease +
    pi x thickness. What goes round several times, as memory wire does, shares its length out.

    >>> round(inside_length(460.0, 9.9), 1)
    428.9
    >>> round(inside_length(560.0, 3.0, turns=3), 1)
    177.2
    """
    return length / turns - pi * thickness


def extended(ask: Quantities) -> Quantity | None:
    """How much longer the piece is by its extenders or its sliding knots; None without."""
    more = [
        ask.of(part, "extends")
        for part in ask.plan.in_run
        if part.traits.slides or is_extender(part)
    ]
    return total("what extends it", "mm", more) if more else None


def _longest(ask: Quantities) -> Quantity:
    """The length with the clasp in the last link of its extender, or its knots slid together."""
    more = extended(ask)
    if more is None:
        raise Missing("a chain piece with `extender: yes`, or sliding knots, in the run")
    return total("piece.longest", "mm", [ask.get("piece.length"), more])


def _mass(ask: Quantities) -> Quantity:
    """Every part in the run and every part hung, with the rings they hang by."""
    weighs: list[tuple[Part, int]] = []
    for entry in ask.plan.run:
        if entry.counts:
            weighs += [(part, entry.pieces) for part in entry.parts]
    for line in ask.plan.hung:
        pieces, joints = hung_in_all(ask.plan, line)
        weighs.append((line.part, pieces))
        if line.by is not None:
            weighs.append((line.by, joints))
    placed = has_place(ask.plan)
    backs = [one for one in ask.plan.parts.values() if one.kind.role is Role.BACK]
    weighs += [(back, 1) for back in backs if back in placed]
    each = of_each((part for part, _ in weighs), "mass", ask)
    terms = [times(one, many) for one, (_, many) in zip(each, weighs, strict=True)]
    return total("piece.mass", "g", terms)


OF_PIECE: dict[str, Callable[[Quantities], Quantity]] = {
    "length": _length,
    "inside": _inside,
    "longest": _longest,
    "mass": _mass,
}
