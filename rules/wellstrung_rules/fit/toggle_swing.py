"""What stands behind a toggle's bar: narrow for half a bar, so that the bar swings through.

The bar goes through its ring end first. When its last end passes, everything up to half a bar from
the stem has gone through beside it: bar and part side by side must be less than the opening, or the
part must stand further off. A bar that is tilted needs less, so that half of it is the most that
can be asked: only what surely stands nearer is judged.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain, repeat

from wellstrung.formulas import rings
from wellstrung.rulebook import (
    Answer,
    Ask,
    Held,
    Misfit,
    Remedy,
    Rule,
    Toggle,
    Verdict,
    compare,
    kept,
)
from wellstrung.rulebook.plan import Part, Role, RunEntry
from wellstrung.rulebook.values import Quantity, derived, printed, total
from wellstrung.rulebook.wording import about, at_least, in_unit_of, lowered, spelled

_FLAT = "a flat ring beside a bar: geometry, see `rings.py`"


def check(toggle: Toggle, ask: Ask) -> Answer:
    clasp = toggle.clasp
    if not toggle.behind:
        return None
    half = derived("half the bar", "mm", lambda bar: bar / 2, bar=ask.of(clasp, "bar.length"))
    rooms: dict[Part, Quantity] = {}
    terms = [ask.of(clasp, "bar.to_the_run")]
    reached = terms[0].middle
    for entry in chain.from_iterable(repeat(entry, entry.linked) for entry in toggle.behind):
        if reached >= half.middle:
            break
        if entry.part not in rooms:
            rooms[entry.part] = _beside_the_bar(clasp, entry.part, ask)
        if not kept(rooms[entry.part]):
            off = total("from the bar", "mm", terms)
            if compare(off - half) is Verdict.FAILS:
                return _misfit(toggle, entry, ask, rooms[entry.part], off)
        terms.append(ask.of(entry.part, "along"))
        reached += terms[-1].middle
    return Held(min(rooms.values(), key=lambda room: room.likely.low, default=None))


def _beside_the_bar(clasp: Part, part: Part, ask: Ask) -> Quantity:
    """What is left of the opening with the bar in it and the part beside the bar."""
    across, bar = ask.across(part), ask.of(clasp, "bar.thickness")
    taken = across + bar
    if part.kind.role is Role.RING:  # it turns its flat side to the bar
        sizes = {"across": across, "wire": ask.of(part, "wire"), "bar": bar}
        taken = derived("taken beside the bar", "mm", rings.taken_beside, sizes, source=_FLAT)
    return ask.of(clasp, "ring.inside") - taken - printed("clasps", "toggle", "bead_room")


def _misfit(toggle: Toggle, entry: RunEntry, ask: Ask, fits: Quantity, off: Quantity) -> Misfit:
    clasp, across = toggle.clasp, ask.across(entry.part)
    bar = ask.of(clasp, "bar.length")
    short = bar.middle / 2 - off.middle
    more = f"{at_least(short, bar)} more of small rings"
    passes = across.middle + fits.likely.low > 0  # else nothing is narrow enough for that ring
    woven = " or of stem" if clasp.part("bar", "woven") else ""
    return Misfit(
        says=f"`{entry.part.name}` ({spelled(across)} across) is {in_unit_of(off.middle, bar)}"
        f" behind the bar of `{clasp.name}` and {{is|may be}} too wide to pass the ring beside it:"
        f" the bar needs half its length ({at_least(bar.middle / 2, bar)}) free behind it",
        place=entry.place,
        found=f"{spelled(across)} across, {about(off, bar)} behind the bar",
        needed=f"{lowered(across, fits)} across or less, or {more} before it" if passes else more,
        remedies=(
            *_more_rings(toggle.behind[0], entry, short, ask),
            Remedy(
                f"put {more}{woven} behind the bar of `{clasp.name}` and as much less elsewhere, or"
                " take a toggle with a wider ring"
            ),
        ),
        margin=fits,
        also=(clasp.place_of("bar", "length"),),
    )


def _more_rings(first: RunEntry, wide: RunEntry, short: float, ask: Ask) -> Iterator[Remedy]:
    name = first.part.name
    if first is not wide and first.part.kind.role is Role.RING:
        fewest = int(short / ask.of(first.part, "inside").middle)
        for more in range(max(fewest, 1), fewest + 3):
            text = f"{{part: {name}, linked: {first.linked + more}}}"
            said = f"link {first.linked + more} of `{name}` behind the bar: `{text}`"
            yield Remedy.write(first.place, text, said)


RULE = Rule(
    name="toggle-swing",
    family="fit",
    subject=Toggle,
    check=check,
    fault="toggle bar cannot swing",
    title=(
        "half a bar of narrow slack behind a toggle's bar lets it swing through its ring"
        " (the bar's own length is `toggle-bar`)"
    ),
    why=(
        "a cap or a large bead close behind the bar jams in the ring, so that the finished piece"
        " cannot be fastened; a few small rings linked there help"
    ),
    sources=(
        "bar and bead side by side at least 0.5 mm under the opening within half a bar: trade table"
        " `clasps`, toggle, bead_room, derived",
        "a few small rings linked behind the bar: common practice",
    ),
    level="warning",
    bad="run: [toggle.a, ring, cap, rope, cap, ring, toggle.b]",
    good="run: [toggle.a, ring, cap, rope, cap, {part: ring, linked: 4}, toggle.b]",
)
