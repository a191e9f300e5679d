"""A crimp cover: the crimp, folded round, goes into it, and does not stick out at its ends."""

from __future__ import annotations

from wellstrung.formulas.findings import pressed
from wellstrung.rulebook import Answer, Ask, CrimpInCover, Misfit, Remedy, Rule, kept, tightest
from wellstrung.rulebook.remedies import in_words
from wellstrung.rulebook.values import Cause, Quantity, Spread, derived, leaf
from wellstrung.rulebook.wording import about, raised, spelled

#: how far a crimp is flattened that was folded round with crimping pliers: from memory
_FOLDED, _LESS, _MORE = 0.1, 0.1, 0.15
#: how wide covers are sold, closed, mm, and what of it is inside: from memory, table `crimps`
_SOLD, _ROOM = (3.0, 4.0, 5.0), 0.8


def check(join: CrimpInCover, ask: Ask) -> Answer:
    crimp, cover = join.crimp, join.cover
    folded = _folded(join, ask)
    room, long = ask.of(cover, "inside"), ask.of(crimp, "length")
    goes_in, hidden = room - folded, ask.of(cover, "outside") - long
    if answer := kept(goes_in, hidden):
        return answer
    margin = tightest(goes_in, hidden)
    field, had, needs = ("inside", room, folded) if margin is goes_in else ("outside", None, long)
    had = had or ask.of(cover, field)
    wider = raised(had, margin)
    does = "{does|may} not close over" if margin is goes_in else "{is|may be} shorter than"
    needed = f"{'room of' if margin is goes_in else 'an outside of'} {wider} or wider"
    low = had.middle - margin.likely.low
    sold = [one for one in _SOLD if one * (_ROOM if margin is goes_in else 1) >= low]
    of = f" of {sold[0]:g} mm" if sold else ""
    by_hand = f"take a crimp cover{of} with {needed}, or a smaller crimp"
    place, size = cover.place_of("size"), f"{sold[0]:g} mm" if sold else ""
    by_size = Remedy.write(place, size, f"take a crimp cover{of}, as shops sell it")
    return Misfit(
        says=f"crimp cover `{cover.name}` ({spelled(had)} {field}) {does} crimp `{crimp.name}`"
        f" ({about(needs, had)}{' folded round' if margin is goes_in else ' long'})",
        place=cover.place_of(field),
        found=f"{spelled(had)} {field}",
        needed=needed,
        remedies=(
            *([by_size] if sold and not cover.has(field) else []),
            in_words(by_hand, cover, field, low=low),
        ),
        margin=margin,
        also=(crimp.place_of("cover"),),
    )


def _folded(join: CrimpInCover, ask: Ask) -> Quantity:
    """Across a crimp that is folded round over the line."""
    crimp = join.crimp
    cure = f"fold one round, and measure it and the room in `{join.cover.name}`"
    spread = Spread(Cause("how the crimp is folded", f"`{crimp.name}`", cure), _LESS, _MORE)
    flat = leaf("flat", _FOLDED, "", [spread], source="folded with crimping pliers: from memory")
    sizes = {"outside": ask.of(crimp, "outside"), "inside": ask.of(crimp, "inside"), "flat": flat}
    return derived("crimp, folded", "mm", pressed, sizes, source="geometry of this project")


RULE = Rule(
    name="crimp-cover",
    family="fit",
    subject=CrimpInCover,
    check=check,
    fault="crimp cover too small",
    title="a crimp, folded round, goes into its cover, and the cover hides it from end to end",
    why=(
        "a cover that is too small does not close: its edges gape and catch on clothes; a crimp"
        " that was pressed flat instead of folded goes into none"
    ),
    sources=(
        "across a crimp folded round: geometry of this project; how far it stays flat: from memory",
        "no narrower inside and no shorter outside than the crimp: geometry",
    ),
    bad="a cover of 1.9 mm inside over a crimp tube of 2 mm",
    good="a cover of 2.4 mm inside over a crimp tube of 2 mm",
    level="warning",  # it hides the crimp and holds nothing
)
