"""The hole of a crimp: its wires go through it, and it has to close on them."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.formulas import circles
from wellstrung.formulas.arithmetic import sqrt
from wellstrung.rulebook import Answer, Ask, Misfit, Remedy, Rule, StrandInCrimp, kept
from wellstrung.rulebook.plan import USUAL, Part
from wellstrung.rulebook.remedies import in_words, sold_within
from wellstrung.rulebook.values import Quantity, derived, exact, product, table
from wellstrung.rulebook.wording import about, in_unit_of, spelled, within
from wellstrung_rules.fit import sizes_of_hole

#: what crimps are sold by, mm: common practice, no source
SIZES = (1.0, 1.3, 1.5, 2.0, 2.5, 3.0, 4.0)


def check(join: StrandInCrimp, ask: Ask) -> Answer:
    inside, line = ask.of(join.crimp, "inside"), ask.of(join.strand, "line")
    tight = derived(
        "room in the crimp",
        "mm",
        lambda inside, line, lines: inside - lines * line,
        inside=inside,
        line=line,
        lines=exact("lines side by side", circles.container([1.0] * join.lines)),
    )
    # as much of the hole is filled whatever runs through it
    share = sqrt(join.lines / 2)
    widest = share * table("crimps").row("two wires in any crimp").cell("loosest").value
    loosest = exact("loosest", widest, source="trade table `crimps`, derived")
    loose = product("widest that closes", "mm", loosest, line) - inside
    if answer := kept(tight, loose):
        return answer
    too_tight = tight.likely.low < loose.likely.low
    low, high = sizes_of_hole(inside, tight, loose, inside - tight, inside + loose)
    size, works = sold_within(low, high, coarsest=0.1), within(low, high, inside)
    wanted = in_unit_of(size or low, inside)
    by_size = join.crimp.by_size and not join.crimp.has("inside")
    place = join.crimp.place_of("size" if by_size else "inside")
    many = "one wire" if join.lines == 1 else "two wires" if join.lines == 2 else "its wires"
    return Misfit(
        says=f"the hole of crimp `{join.crimp.name}` ({spelled(inside)}) {{is|may be}} too"
        f" {f'narrow for {many}' if too_tight else 'wide to close'} on the line of"
        f" `{join.strand.name}` ({about(line, inside)})",
        place=place,
        found=spelled(inside),
        needed=f"a hole of {works}",
        remedies=(
            *_sold(join.crimp, inside, low, high),
            *(
                [Remedy.write(place, wanted, f"take a crimp of {wanted} inside ({works} works)")]
                if size and not by_size
                else ()
            ),
            in_words(f"take a crimp of {works} inside", join.crimp, "inside", low=low, high=high),
        ),
        margin=tight if too_tight else loose,
        at_most="error" if too_tight else "warning",
        fault=f"crimp too {'small' if too_tight else 'large'}",
        also=(join.strand.place_of("thread"),),
    )


def _sold(crimp: Part, inside: Quantity, low: float, high: float) -> Iterator[Remedy]:
    """The sizes that crimps are sold by whose holes are as wide, where the plan has one of them."""
    if not crimp.by_size or crimp.has("inside") or crimp.text("size") == USUAL:
        return
    now = crimp.size("size").middle
    for size in SIZES:
        each = inside.likely.low * size / now, inside.likely.high * size / now
        if low <= each[0] and each[1] <= high:
            text = f"take a crimp of {size:g} mm for `{crimp.name}`"
            yield Remedy.write(crimp.place_of("size"), f"{size:g} mm", text)


RULE = Rule(
    name="crimp-bore",
    family="fit",
    subject=StrandInCrimp,
    check=check,
    fault="crimp does not fit",
    title="the wire goes through a crimp, twice at its end, and the crimp still closes on it",
    why=(
        "crimps are sold by sizes that mean different things, and one that is too wide looks closed"
        " and lets the wire slip on the first evening"
    ),
    sources=(
        "hole >= 2 x wire, 1 x where it only runs through; of more, equal circles in a circle",
        "hole <= 4.7 x wire, 3.3 x one alone (geometry: as full): trade table `crimps`, two wires"
        " in any crimp: derived from pairings"
        " in `beading_wires`",
    ),
    bad="crimp: {kind: crimp, inside: 0.75 mm} on a wire of 0.48 mm",
    good="crimp: {kind: crimp, inside: 1 mm} on a wire of 0.38 mm",
)
