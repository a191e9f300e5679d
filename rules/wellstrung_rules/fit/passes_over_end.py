"""What is closed and slides on a rope or strand passes one end, or is on before both are made."""

from __future__ import annotations

from wellstrung.formulas import rings
from wellstrung.rulebook import Answer, Ask, Held, Misfit, Missing, Remedy, Rule, SlidesOn, kept
from wellstrung.rulebook.plan import Eyes, Part, Role, RunEntry
from wellstrung.rulebook.values import Quantity, derived
from wellstrung.rulebook.wording import about


def check(slides: SlidesOn, ask: Ask) -> Answer:
    what = slides.what
    if _opens(what, ask):
        return None
    if not all(slides.ends):
        return Held()
    slider, carrier = slides.slider, slides.carrier.name
    if slides.step is None:
        raise Missing(f"a step `{{do: slide, part: {slider.name}, onto: {carrier}}}` under `work`")
    if not slides.made_by:
        return Held()
    if isinstance(what, Eyes):
        inside, words = ask.get(what.quantity("hole")), what.words
    else:
        inside, words = ask.of(what, "inside"), f"{what.noun} `{what.name}`"
    # it may go on over either end: the easier one decides, by the widest thing there
    ends = [[(inside - _across(entry, ask), entry) for entry in end] for end in slides.ends]
    narrowest = [min(end, key=lambda found: found[0].likely.low) for end in ends]
    margin, entry = max(narrowest, key=lambda found: found[0].likely.low)
    if answer := kept(margin):
        return answer
    step, made = slides.step, slides.made_by[-1]
    field, opened = ("closing", "open") if slider.kind.role is Role.RING else ("opens", "yes")
    opener = f"take one that opens for `{slider.name}`: `{field}: {opened}`"
    return Misfit(
        says=f"{words} is closed and goes on `{carrier}` in step {step.number}, after step"
        f" {made.number} has made the last of its ends{{|, so it may not pass}}: its inside is"
        f" {about(inside)}, and `{entry.part.name}` is {about(_across(entry, ask))} across",
        place=step.place,
        found=f"step {step.number}",
        needed=f"before step {made.number}",
        remedies=(
            ask.moved_before(step, made),
            *([Remedy.write(slider.place_of(field), opened, opener)] if slider.has(field) else []),
            Remedy(f"put `{slider.name}` on before the ends of `{carrier}` are made"),
        ),
        margin=margin,
        also=(made.place, entry.place),
    )


def _opens(what: Eyes | Part, ask: Ask) -> bool:
    """Whether it can be opened to go on anywhere; raises Missing where the plan does not say."""
    if isinstance(what, Part) and what.kind.role is not Role.RING:
        return what.text("opens") == "yes"
    return ask.opens(what)


def _across(entry: RunEntry, ask: Ask) -> Quantity:
    """How wide a part at an end is; half a clasp, or a wire link, is as wide as its eye or more."""
    part, eye = entry.part, entry.half or "loop"
    if entry.half == "a" and part.traits.swings:
        return part.size("ring", "outside", allowance="ring size")
    if eye not in part.kind.eyes:
        return ask.across(part)
    return derived(
        f"{part.name}.{eye} outside",
        "mm",
        rings.outside_of,
        inside=ask.of(part, f"{eye}.hole"),
        wire=ask.of(part, f"{eye}.wire"),
        source="outside = inside + 2 x wire: geometry",
    )


RULE = Rule(
    name="passes-over-end",
    family="fit",
    subject=SlidesOn,
    check=check,
    fault="bail or ring put on too late",
    title=(
        "a closed bail, ring or eye is on its rope or strand before both ends are made, or passes"
        " one of them (a ring on a capped rope is `capped-too-soon`)"
    ),
    why=(
        "the clasp is crimped on, and the bail that was to carry the pendant still lies on the mat:"
        " the strand is cut and strung again"
    ),
    sources=(
        "what is closed passes only what is narrower than its inside: geometry",
        "half a clasp is at least as wide as its eye: geometry",
    ),
    yields_to=("bail-opening", "ring-room", "capped-too-soon"),
    bad="crimp both ends, then slide the closed bail on the strand",
    good="slide the closed bail on the strand, then crimp both ends",
)
