"""Which beads a part is made of, and in what shares."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Mapping, Sequence
from itertools import cycle, islice

from wellstrung.common.cache import cached
from wellstrung.model.item import Missing
from wellstrung.model.parts import Part, Role
from wellstrung.reading import tree as reading

#: the fields that name beads added to woven work: the band it grows from, edging and layer
ADDED = (("base", "beads"), ("edging", "beads"), ("layer", "beads"))
#: the fields of a part that name the beads its thread goes through
_ON_THREAD = (
    ("beads",), ("core_bead",), ("turn",), ("sides",), ("bezel",), ("edge_row",), *ADDED,
)  # fmt: skip
#: the fields of a part that name beads, in the order in which they are picked up
_PICKED_UP = (
    ("core_bead",), ("outer",), ("beads",), ("sides",), ("turn",), ("bezel",), ("edge_row",),
    *ADDED,
)  # fmt: skip


def bead_mix(part: Part) -> dict[str, int]:
    """How many of each bead a part takes in its repeat: one of the only bead it names.

    `beads: kelp` is one bead, `beads: [kelp, kelp, sand]` a repeat, `beads: {kelp: 2, sand: 1}`
    shares. A rope with a core of beads repeats one of those and an outer loop. Empty where the part
    has no beads.
    """
    if part.stitch is not None and part.stitch.cored:
        return dict(Counter(beads_named(part, "outer")) + Counter(beads_named(part, "core_bead")))
    if listed_for(part, SIDE) or listed_for(part, UNIT):
        return _of_units(part)
    if rounds_listed(part):
        return dict(Counter(islice(cycle(listed_for(part, ROUND)), rounds_listed(part))))
    if part.kind.bead_counts is not None:
        return dict(sum((Counter(beads_named(part, field)) for field in SEWN_ROWS), Counter()))
    if part.has("sides"):
        return _with_sides(part, beads_named(part, "beads"))
    if counted := _strung_over_counts(part):
        return counted
    # beside a core, outer beads are the bridge of a strip
    return dict(Counter(beads_named(part, "beads")) + Counter(beads_named(part, "outer")))


def _strung_over_counts(part: Part) -> dict[str, int]:
    """Every bead of listed beads that are counted, leg by leg; empty where whole repeats are.

    Each strand, each leg and each wire begins with the first bead of the list.
    """
    listed, counts = beads_listed(part), part.counts("count")
    if not listed or all(count % len(listed) == 0 for count in counts):
        return {}
    return dict(sum((strung_so_far(listed, count) for count in counts), Counter()))


def beads_listed(part: Part) -> list[str]:
    """The list of beads that a part repeats, in its order; empty where it names one or shares."""
    node = part.node_at("beads")
    return (
        [str(name) for name in node.value]
        if node is not None and isinstance(node.value, list)
        else []
    )


def strung_so_far(listed: Sequence[str], count: int) -> Counter[str]:
    """How many of each bead of a list there are in so many, the list again from its first bead.

    >>> strung_so_far(["sand", "kelp", "kelp"], 4)
    Counter({'sand': 2, 'kelp': 2})
    """
    whole, over = divmod(count, len(listed))
    repeats = Counter({name: whole * n for name, n in Counter(listed).items() if whole})
    return repeats + Counter(listed[:over])


#: the fields of what is sewn on a backing that name its beads, row by row
SEWN_ROWS = ("beads", "bezel", "edge_row")


def _with_sides(part: Part, mix: dict[str, int]) -> dict[str, int]:
    """The beads between the rows of right-angle weave, and those of its sides: a row of it."""
    across = max(part.counts("across") or part.counts("each_row") or (1,))
    in_all = sum(mix.values())
    counted = Counter({name: 2 * across * count for name, count in mix.items()})
    counted[part.text("sides")] += (across + 1) * (part.count("loop", default=4) - 2) * in_all
    return dict(counted)


#: what the beads of a list stand for, each in its turn
COLUMN, ROUND = "each column", "each round"
#: of right-angle weave, each of the four sides of a unit, or each unit along it
SIDE, UNIT = "each side", "each unit"


def bead_of_unit(part: Part, line: int, side: int | None = None) -> str:
    """The bead that lies across at a line of right-angle weave, or on a side from that line on.

    Units share sides, so the four of a unit lie the other way round in the next. Of a bead for
    each unit the line at its end is of its bead.
    """
    if four := listed_for(part, SIDE):
        return four[2 * (line % 2)] if side is None else four[1 + 2 * (side % 2)]
    units = listed_for(part, UNIT)
    return units[(max(line - 1, 0) if side is None else line) % len(units)]


def _of_units(part: Part) -> dict[str, int]:
    """Every bead of listed units, counted; over a length those of a repeat, its last line not."""
    across = part.count("across", default=1)
    counted = part.count("rows") if part.has("rows") else rounds_listed(part)
    rows = counted or len(listed_for(part, UNIT)) or 2
    beads: Counter[str] = Counter()
    for line in range(rows + bool(counted)):
        beads[bead_of_unit(part, line)] += across
    for row in range(rows):
        beads[bead_of_unit(part, row, 0)] += across // 2 + 1
        beads[bead_of_unit(part, row, 1)] += (across + 1) // 2
    return dict(beads)


def listed_for(part: Part, each: str) -> tuple[str, ...]:
    """The beads of a part in their order where each stands for a column, or for a round."""
    node = part.node_at("beads")
    listed = part.has("one_for") and node is not None and isinstance(node.value, list)
    return part.texts("beads") if listed and part.text("one_for") == each else ()


def rounds_listed(part: Part) -> int:
    """How many rounds, or units, a list of a bead for each is woven over; 0 where a length says it.

    As many as the plan counts, the list again from its first bead; else as many as it names.
    """
    named = listed_for(part, ROUND) or listed_for(part, UNIT)
    if not named or part.has("length"):
        return 0
    counted = (part.count(field) for field in ("rounds", "rows") if part.has(field))
    return next(counted, len(named))


def beads_named(part: Part, *path: str) -> dict[str, int]:
    """How many of each bead one field names; empty where it is not written."""
    node = part.node_at(*path)
    if node is None:
        return {}
    if isinstance(node, reading.Mapping):
        return {str(name): int(count) for name, count in node.value.items()}
    return dict(part.cache.get(_listed, part, path))


def _listed(part: Part, path: tuple[str, ...]) -> dict[str, int]:
    rows = bead_rows(part, *path)
    each = math.lcm(*map(len, rows))  # of a row of several as many in all as of one alone
    counts: Counter[str] = Counter()
    for row in rows:
        for name in row:
            counts[name] += each // len(row)
    return counts


def bead_rows(part: Part, *path: str) -> list[list[str]]:
    """The items of a field that lists beads, row by row: one bead, or several that repeat in it."""
    node = part.node_at(*path)
    value = node.value if node is not None else []
    items = value if isinstance(value, list) else [value]
    return [[str(bead) for bead in (row if isinstance(row, list) else [row])] for row in items]


def beads_of_loop(part: Part) -> list[str]:
    """The beads of one loop of a net as they are picked up; empty where no list names them all."""
    node = part.node_at("beads")
    names = node.value if node is not None and isinstance(node.value, list) else []
    whole = part.has("loop") and len(names) == part.count("loop")
    return [str(name) for name in names] if whole else []


def daisy_of(part: Part) -> tuple[dict[str, int], str]:
    """The petals of one repeat of daisies, and the bead in their middles, once to so many petals.

    One bead may be both. Both are empty where what repeats is no daisy of `loop` petals.
    """
    mix, takes = beads_named(part, "beads"), part.count("loop") + 1
    if len(mix) == 1:
        [bead] = mix
        return {bead: takes - 1}, bead
    daisies, over = divmod(sum(mix.values()), takes)
    middle = next((name for name, n in reversed(mix.items()) if n == daisies and not over), "")
    return {name: n for name, n in mix.items() if middle and name != middle}, middle


def beads_in_order(part: Part) -> list[str]:
    """The beads of a strand from end to end; raises Missing if the plan lacks order or number."""
    node = part.node_at("beads")
    written = node.value if node is not None else []
    if isinstance(written, dict):
        raise Missing(f"the beads of `{part.name}` in their order, as a list")
    repeat = [str(name) for name in written] if isinstance(written, list) else [str(written)]
    if part.has("repeats"):
        return repeat * part.count("repeats")
    count = part.count("count")
    return (repeat * (count // len(repeat) + 1))[:count]


def apart(strand: Part) -> bool:
    """Whether crimps or knots hold the beads of a spaced strand, on both sides of each group."""
    held = strand.part("held_by")
    return strand.has("held_by") and (held is None or held.kind.role is Role.CRIMP)


def knot_of(strand: Part) -> str:
    """The row of trade table `knots` that a strand is knotted with."""
    return strand.text("knot") if strand.has("knot") else "overhand"


def held_by_crimps(strand: Part) -> Part | None:
    """The crimp that stands beside the beads of a spaced strand; None where none does."""
    held = strand.part("held_by")
    return held if held is not None and held.kind.role is Role.CRIMP else None


def holds(part: Part) -> int:
    """How many crimps, knots or drops of glue hold the beads of a spaced strand; 0 where none do.

    One on each side of a bead or a group. A drop of glue is in the hole: one in a bead alone, one
    in the first and one in the last of a group.
    """
    if not part.has("held_by"):
        return 0
    repeat = sum(bead_mix(part).values())
    beads = part.count("repeats") * repeat if part.has("repeats") else part.count("count")
    group, held = part.count("group", default=1), part.part("held_by")
    within = held is not None and held.kind.role is Role.GLUE and group == 1
    return -(-beads // group) * (1 if within else 2)


def beads_on_thread(part: Part) -> tuple[str, ...]:
    """Names of the beads that the thread of a part goes through, each once."""
    return tuple(dict.fromkeys(name for path in _ON_THREAD for name in beads_named(part, *path)))


def beads_picked_up(part: Part) -> tuple[str, ...]:
    """Names of all the beads of a part, each once, in the order in which they are picked up."""
    return tuple(dict.fromkeys(name for path in _PICKED_UP for name in beads_named(part, *path)))


def takes_bead(part: Part, name: str) -> bool:
    """Whether a part takes a bead, in its work or in what is added to it."""
    return name in bead_shares(part) or any(name in beads_named(part, *path) for path in ADDED)


@cached
def bead_shares(part: Part) -> Mapping[str, float]:
    """The share that each bead has of all the beads of a part, its turn bead included."""
    mix = bead_mix(part)
    of_all = sum(mix.values())
    shares = {name: count / of_all for name, count in mix.items()}
    if part.has("turn"):
        counts = part.counts("count") or (of_all,)
        leg = sum(counts) / len(counts)
        shares = {name: share * leg / (leg + 1) for name, share in shares.items()}
        turn = part.text("turn")
        shares[turn] = shares.get(turn, 0.0) + 1 / (leg + 1)
    return shares


def legs_of(part: Part) -> int:
    """How many drops hang where nobody says how often: its `legs`, or as many as it stands for."""
    return part.count("legs", default=drops_of(part)) if part.kind.role is Role.DROP else 1


def drops_of(part: Part) -> int:
    """How many drops a part stands for: as many as it lists counts."""
    return len(part.counts("count")) or 1 if part.kind.role is Role.DROP else 1
