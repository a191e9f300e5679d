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
    holds,
)
from wellstrung.rulebook.plan import Part, Role, RunEntry
from wellstrung.rulebook.values import Quantity, derived, exact, table, total
from wellstrung.rulebook.wording import about, in_unit_of, spelled


def check(toggle: Toggle, ask: Ask) -> Answer:
    clasp = toggle.clasp
    if not toggle.behind:
        return None
    half = derived("half the bar", "mm", lambda bar: bar / 2, bar=ask.of(clasp, "bar.length"))
    margins: dict[Part, Quantity] = {}
    terms = [ask.of(clasp, "bar.to_the_run")]
    reached = terms[0].middle
    for entry in chain.from_iterable(repeat(entry, entry.linked) for entry in toggle.behind):
        if reached >= half.middle:
            break
        if entry.part not in margins:
            margins[entry.part] = _beside_the_bar(clasp, entry.part, ask)
        fits = margins[entry.part]
        if not holds(fits):
            off = total("from the bar", "mm", terms)
            if compare(off - half) is Verdict.FAILS:
                return _misfit(toggle, entry, ask, fits, off)
        terms.append(ask.of(entry.part, "along"))
        reached += terms[-1].middle
    return Held(min(margins.values(), key=lambda room: room.likely.low, default=None))


def _beside_the_bar(clasp: Part, part: Part, ask: Ask) -> Quantity:
    opening, bar = ask.of(clasp, "ring.inside"), ask.of(clasp, "bar.thickness")
    cell = table("clasps").row("toggle").cell("bead_room")
    room = exact("room", cell.value, "mm", source="trade table `clasps`, toggle, bead_room")
    across = ask.across(part)
    if part.kind.role is Role.RING:
        # a ring turns its flat side to the bar
        wire = ask.of(part, "wire")
        taken = derived(
            "taken beside the bar",
            "mm",
            rings.taken_beside,
            across=across,
            wire=wire,
            bar=bar,
            source="a flat ring beside a bar: geometry, see `rings.py`",
        )
    else:
        taken = across + bar
    return opening - taken - room


def _misfit(toggle: Toggle, entry: RunEntry, ask: Ask, fits: Quantity, off: Quantity) -> Misfit:
    clasp, part = toggle.clasp, entry.part
    bar, across = ask.of(clasp, "bar.length"), ask.across(part)
    wide = f"`{part.name}` ({spelled(across)} across)"
    stands = f"stands {in_unit_of(off.middle, bar)} behind the bar of `{clasp.name}`"
    free = f"the bar needs half its length ({in_unit_of(bar.middle / 2, bar)}) free behind it"
    need = in_unit_of(across.middle + fits.likely.low, across)
    short = bar.middle / 2 - off.middle
    return Misfit(
        says=f"{wide} {stands} and {{is|may be}} too wide to pass the ring beside it: {free}",
        place=entry.place,
        found=f"{spelled(across)} across, {about(off, bar)} behind the bar",
        needed=f"{need} across or less, or {in_unit_of(short, bar)} more of small rings before it",
        remedies=tuple(_remedies(toggle, entry, short, ask)),
        margin=fits,
        also=(clasp.place_of("bar", "length"),),
    )


def _remedies(toggle: Toggle, entry: RunEntry, short: float, ask: Ask) -> Iterator[Remedy]:
    first = toggle.behind[0]
    clasp = toggle.clasp.name
    if first is not entry and first.part.kind.role is Role.RING:
        each = ask.of(first.part, "inside").middle
        for more in range(max(int(short / each), 1), int(short / each) + 3):
            count = first.linked + more
            text = f"{{part: {first.part.name}, linked: {count}}}"
            yield Remedy.write(
                first.place, text, f"link {count} of `{first.part.name}` behind the bar: `{text}`"
            )
    yield Remedy(
        f"link {in_unit_of(short, ask.of(toggle.clasp, 'bar.length'))} more of small rings behind"
        f" the bar of `{clasp}` and as much less elsewhere, or take a toggle with a wider ring"
    )


RULE = Rule(
    name="toggle-swing",
    family="fit",
    subject=Toggle,
    check=check,
    title=(
        "half a bar of narrow slack behind a toggle's bar lets it swing through its ring"
        " (the bar's own length is `toggle-bar`)"
    ),
    why=(
        "a cap or a large bead close behind the bar jams in the ring, so that the finished piece"
        " cannot be fastened; a few small rings linked there mend it"
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
