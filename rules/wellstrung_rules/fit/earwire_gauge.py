"""The wire of an ear wire or a post against the piercing that it goes through."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, InEar, Misfit, Remedy, Rule, kept
from wellstrung.rulebook.remedies import thicker_wires, thinner_wires
from wellstrung.rulebook.values import Window, exact, table
from wellstrung.rulebook.wording import between, in_unit_of, spelled


def check(join: InEar, ask: Ask) -> Answer:
    part, wire = join.ear_wire, ask.of(join.ear_wire, "wire")
    usual = _usual(part.traits.stays_in)
    thin = wire - exact("thinnest usual", usual.low, "mm", source=RULE.sources[0])
    thick = exact("thickest usual", usual.high, "mm", source=RULE.sources[0]) - wire
    margin = min(thin, thick, key=lambda room: room.likely.low)
    if answer := kept(margin):
        return answer
    too = "thinner" if margin is thin else "thicker"
    does = "cuts into the lobe" if margin is thin else "does not go in without pain"
    off = ask.plan.bench.allowances["wire"].value  # what drawn wire is off, with room for that
    thicker, thinner = (wire, usual.low + off), (wire, usual.high - off)
    wires = thicker_wires(*thicker) if margin is thin else thinner_wires(*thinner)
    subject = f"the wire of `{part.name}` ({spelled(wire)})"
    reason = f"{too} than ears are usually pierced for: it {does}"
    return Misfit(
        says=f"{subject} {{is|may be}} {reason}",
        place=part.place_of("wire"),
        found=spelled(wire),
        needed=f"a wire of {between(usual.low, usual.high, exact('mm', 0.0, 'mm'))}",
        remedies=(
            *(
                Remedy.write(part.place_of("wire"), size, f"take {size} wire for `{part.name}`")
                for size in wires
            ),
            Remedy(
                f"take a wire of {in_unit_of(usual.low, wire)} to {in_unit_of(usual.high, wire)}"
            ),
        ),
        margin=margin,
    )


def _usual(post: bool) -> Window:
    """The usual thickness of wires, and of posts, which stay in the ear and may be thicker, mm."""
    rows = table("ear_wires")
    hook = rows.row("ear wire").cell("wire_usual")
    return Window(hook.low, rows.row("post").cell("wire").high if post else hook.high)


RULE = Rule(
    name="earwire-gauge",
    family="fit",
    subject=InEar,
    check=check,
    title="an ear wire is as thick as ears are pierced for",
    why=(
        "a wire of 18 AWG is a needle to an ear pierced for 20, and one as thin as 24 hangs in the"
        " lobe like a cheese wire"
    ),
    sources=(
        "20 to 22 AWG (0.81 to 0.64 mm) usual, 18 AWG too thick for many: trade table `ear_wires`,"
        " several pages; limits of 0.6 and 0.9 mm, of posts 1 mm, derived from them",
    ),
    bad="hook: {kind: ear wire, type: hook, wire: 18 AWG}",
    good="hook: {kind: ear wire, type: hook, wire: 20 AWG}",
    level="warning",
)
