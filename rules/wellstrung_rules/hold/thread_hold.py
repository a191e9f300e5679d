"""A thread that alone carries a weight: what it breaks at, with its knots, over its edges."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wellstrung.formulas import thread
from wellstrung.rulebook import (
    Answer,
    Ask,
    Misfit,
    OnThread,
    Remedy,
    Rule,
    bare_edges,
    kept,
    pieces_hung,
)
from wellstrung.rulebook.loads import pull_to_spare, weakest, weight
from wellstrung.rulebook.plan import Part
from wellstrung.rulebook.remedies import stronger_line
from wellstrung.rulebook.values import Quantity, derived, exact
from wellstrung.rulebook.wording import about, in_unit_of, number, often
from wellstrung_rules.limits import HOLD_FACTOR


def check(join: OnThread, ask: Ask) -> Answer:
    if _stretches(join.thread):
        return None
    load, bears, factor = _load(join, ask), _bears(join, ask), ask.limit(HOLD_FACTOR)
    margin = pull_to_spare(bears, load, factor)
    if answer := kept(margin, over="worst"):
        return answer
    wanted = load.worst.high * factor.middle
    held = f"`{join.held.name}`" if join.held else "the whole piece"
    says = (
        f"{_where(join, ask)}the thread of `{join.thread.name}` breaks at {about(bears)}, and"
        f" {held} pulls {about(load, bears)}, {number(factor.middle)} times that in wear"
    )
    return Misfit(
        says=says,
        place=join.thread.place_of("thread", "rating"),
        found=about(bears),
        needed=in_unit_of(wanted, bears),
        remedies=tuple(_remedies(join, bears, wanted, ask)),
        margin=margin,
        also=(join.place,),
    )


def _stretches(part: Part) -> bool:
    """Elastic is pulled by going on over a hand, not by a weight, and is sold without a rating."""
    return part.thread.stretches and not part.has("thread", "rating")


def _load(join: OnThread, ask: Ask) -> Quantity:
    """What pulls at it: its share of what hangs, or the whole piece lifted by one end."""
    if join.held is None:
        return weight(ask.get("piece.mass"))
    share = pieces_hung(join.line) / join.line.times if join.line else 1.0
    return weight(ask.hanging(join.held), share)


def _bears(join: OnThread, ask: Ask) -> Quantity:
    """The pull, N, that breaks all its lines side by side."""
    return derived(
        f"{join.thread.name} breaks at",
        "N",
        lambda line, knot, edge, lines: thread.strength_left(line, knot, edge) * lines,
        line=ask.of(join.thread, "breaking"),
        knot=_knot(join),
        edge=exact("edge", thread.SHARP_EDGE if bare_edges(ask.plan, join.thread) else 1.0),
        lines=exact("lines side by side", join.lines),
        source="shares of strength left: trade tables `knots` and `stitch_facts`",
    )


def _knot(join: OnThread) -> Quantity:
    """The share of strength that its knot leaves, the weakest printed."""
    if not join.knot:
        return exact("knot", 1.0)
    return weakest("knot", "knots", join.knot, "left")


def _where(join: OnThread, ask: Ask) -> str:
    """Where the thread is weakest, as the sentence begins."""
    weak = []
    if join.knot:
        all_along = join.held is not None or join.knot == "overhand"
        weak.append("at a knot" if all_along else "where it is tied")
    if bare_edges(ask.plan, join.thread):
        weak.append("over a sharp edge")
    return f"{' and '.join(weak)}, " if weak else ""


def _remedies(join: OnThread, bears: Quantity, wanted: float, ask: Ask) -> Iterator[Remedy]:
    passes = math.ceil(wanted / (bears.worst.low / join.lines) - 1e-9)
    carrier = join.step or join.line
    node = carrier.node if carrier else join.thread.node
    if join.held or join.step or join.thread.takes("passes"):
        edit = ask.with_field(node, "passes", str(passes))
        yield Remedy(f"take the thread of `{join.thread.name}` through {often(passes)}", (edit,))
    share = bears.worst.low / ask.of(join.thread, "breaking").worst.low
    yield from stronger_line(join.thread, wanted / share, ask)


RULE = Rule(
    name="thread-hold",
    family="hold",
    subject=OnThread,
    check=check,
    title="thread that alone carries a weight is strong enough at its knots, with room for wear",
    why=(
        "thread gives way at a knot or an edge, years after it was tied, and what hung by it is"
        " found on the pavement or not at all"
    ),
    limits=(HOLD_FACTOR,),
    sources=(
        "strength left at a knot: trade table `knots`, tests of rope; at a sharp edge: from memory",
        "breaking over working load 5:1 to 12:1, more where it is knotted: CI 1401-06, copy seen",
    ),
    bad="a pendant of 120 g hung by thread, size A nylon, passes: 1",
    good="a pendant of 12 g hung by thread, 8 lb fused line, passes: 3",
    level="warning",
    over="worst",
)
