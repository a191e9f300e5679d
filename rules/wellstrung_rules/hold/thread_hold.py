"""A thread that alone carries a weight: where it breaks, at its knots and over sharp edges."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wellstrung.formulas import thread
from wellstrung.rulebook import (
    Answer,
    Ask,
    Choice,
    Misfit,
    OnThread,
    Remedy,
    Rule,
    bare_edges,
    kept,
    pieces_hung,
)
from wellstrung.rulebook.loads import pull_at_clasp, pull_to_spare, weakest, weight
from wellstrung.rulebook.remedies import stronger_line
from wellstrung.rulebook.values import Quantity, derived, exact
from wellstrung.rulebook.wording import about, at_least, often
from wellstrung_rules.hold import in_wear
from wellstrung_rules.limits import HOLD_FACTOR


def check(join: OnThread, ask: Ask) -> Answer:
    part = join.thread
    if part.thread.stretches and not part.of_thread("rating"):
        return None  # elastic is stretched over a hand, and is sold without a rating
    (load, pulls), bears, factor = _load(join, ask), _bears(join, ask), ask.limit(HOLD_FACTOR)
    margin = pull_to_spare(bears, load, factor)
    if answer := kept(margin, over="worst"):
        return answer
    wanted = load.worst.high * factor.middle
    return Misfit(
        says=f"{_where(join, ask)}the thread of `{part.name}` breaks at {about(bears)}; {pulls}"
        f" pulls like {in_wear(load, factor, bears)}",
        place=part.place_of("thread", "rating"),
        found=about(bears),
        needed=at_least(wanted, bears),
        remedies=tuple(_remedies(join, bears, wanted, ask)),
        margin=margin,
        also=(join.place,),
    )


def _load(join: OnThread, ask: Ask) -> tuple[Quantity, str]:
    """What pulls at it, and that in words: its share of what hangs, or the piece by one end."""
    if join.held is None:
        return pull_at_clasp(ask.plan, ask.get("piece.mass"), join.thread)
    share = pieces_hung(join.line) / join.line.times if join.line else 1.0
    return weight(ask.hanging(join.held), share), f"`{join.held.name}`"


def _bears(join: OnThread, ask: Ask) -> Quantity:
    """The pull, N, that breaks all its lines side by side, at the weakest knot printed."""
    knot, edge = exact("knot", 1.0), exact("edge", 1.0)
    if join.knot:
        knot = weakest("knot", "knots", join.knot, "left", best=1.0)
    if bare_edges(ask.plan, join.thread):
        left = thread.SHARP_EDGE
        edge = exact("edge", left, choice=Choice(left, 1.0, careful=True))
    return derived(
        f"{join.thread.name} breaks at",
        "N",
        lambda line, knot, edge, lines: thread.strength_left(line, knot, edge) * lines,
        line=ask.of(join.thread, "breaking"),
        knot=knot,
        edge=edge,
        lines=exact("lines side by side", join.lines),
        source="shares of strength left: trade tables `knots` and `stitch_facts`",
    )


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
    if join.held or join.step or join.thread.takes("passes"):
        passes = math.ceil(wanted / (bears.worst.low / join.lines) - 1e-9)
        node = (join.step or join.line or join.thread).node
        edit = ask.with_field(node, "passes", str(passes))
        yield Remedy(f"take the thread of `{join.thread.name}` through {often(passes)}", (edit,))
    share = bears.worst.low / ask.of(join.thread, "breaking").worst.low
    yield from stronger_line(join.thread, wanted / share, ask)


RULE = Rule(
    name="thread-hold",
    family="hold",
    subject=OnThread,
    check=check,
    fault="thread too weak",
    title="thread that alone carries a weight is strong enough at its knots, with room for wear",
    why="thread breaks at a knot or an edge, years after it was tied, and what hung by it is found"
    " on the pavement or not at all",
    limits=(HOLD_FACTOR,),
    sources=(
        "strength left at a knot: trade table `knots`, tests of rope; at a sharp edge: from memory",
        "breaking over working load 5:1 to 12:1, more where it is knotted: CI 1401-06, copy seen",
    ),
    bad="a pendant of 120 g hung by thread, size A nylon, passes: 1",
    good="a pendant of 12 g hung by thread, 8 lb fused line, passes: 3",
    over="worst",
    loads=True,
)
