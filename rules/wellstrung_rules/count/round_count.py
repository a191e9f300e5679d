"""Beads in the ring or beads a round: asks where the number looks like the other one."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Held, Misfit, Missing, Remedy, Rule, Woven, caps_at
from wellstrung.rulebook.plan import Part, Role
from wellstrung.rulebook.values import Quantity, Window, working
from wellstrung.rulebook.wording import about, number, within
from wellstrung_rules.limits import CAP_LOOSE, CAP_TIGHT


def check(woven: Woven, ask: Ask) -> Answer:
    rope = woven.part
    if rope.kind.role is not Role.ROPE or "counted_otherwise.outside" not in woven.stitch.asides:
        return None  # the stone of a bezel gives its count
    if not rope.has("around") and not rope.has("each_round"):
        return None  # a list with a bead for each column says which it means
    each = rope.has("each_round")
    field, other = ("each_round", "around") if each else ("around", "each_round")
    count = rope.count(field)
    if each and (count % 2 or count < _FEWEST):
        return Held()  # no ring has so many beads
    stated, words, like = _stated(rope, ask)
    counted = ask.of(rope, "as_counted.outside")
    otherwise = ask.of(rope, "counted_otherwise.outside")
    if _meet(counted.worst, stated) or not _meet(otherwise.likely, stated):
        return Held()
    so = ", if that is how the pattern counts"
    key = rope.node.entries[field].key.place
    return Misfit(
        says=f"`{rope.name}` with `{field}: {count}` will be {about(counted, like)} outside, but"
        f" {words}: with `{other}: {count}` it will be {about(otherwise, like)}",
        place=key,
        found=f"{field}: {count}",
        needed=f"{other}: {count}{so}",
        remedies=(
            Remedy.write(key, other, f"write `{other}: {count}`{so}"),
            Remedy(f"look up whether the pattern means {count} beads in the ring or in a round"),
        ),
        working=(
            *working(counted),
            *working(otherwise),
            f"a ring of {count} is two rounds of {number(count / 2)}",
        ),
    )


#: The fewest beads that close an even ring (see the stitch).
_FEWEST = 4


def _stated(rope: Part, ask: Ask) -> tuple[Window, str, Quantity]:
    """The outside that the plan gives, mm: as measured, or as the cap takes it."""
    if rope.has("measured", "outside") or rope.has("outside"):
        outside = ask.of(rope, "outside")
        return outside.worst, f"it measures {outside.spelling}", outside
    caps = caps_at(ask.plan, rope)
    if not caps or any(rope in entry.parts and entry.beside for entry in ask.plan.run):
        # a cap that takes several ropes says of none how thick it is
        raise Missing(f"`measured.outside` of `{rope.name}`")
    bore = ask.of(caps[0], "bore")
    low = bore.worst.low - ask.limit(CAP_LOOSE).middle
    high = bore.worst.high / (1 - ask.limit(CAP_TIGHT).middle)
    words = f"cap `{caps[0].name}` takes a rope of {within(low, high, bore)}"
    return Window(low, high), words, bore


def _meet(a: Window, b: Window) -> bool:
    return a.low <= b.high and b.low <= a.high


RULE = Rule(
    name="round-count",
    family="count",
    subject=Woven,
    check=check,
    fault="beads around taken for a round",
    title="the number of beads around is written as it is meant: in the ring, or in a round",
    why=(
        "patterns quote the beads of the starting ring or the beads of a round, which is half as"
        " many; read the wrong way, they make a rope half or twice as thick"
    ),
    limits=(CAP_TIGHT, CAP_LOOSE),
    sources=(
        "a ring of N is two rounds, then N/2 a round: counting",
        "outside of the rope: geometry, worked out for this project",
        "ropes that a cap takes: as in `cap-bore`",
    ),
    bad="around: 6 where the pattern has six beads a round, and a cap for twelve in the ring",
    good="each_round: 6",
    level="warning",
)
