"""What is closed and slides on a rope or strand passes one end, or is on before both are made."""

from __future__ import annotations

from wellstrung.formulas import rings
from wellstrung.rulebook import Answer, Ask, Held, Misfit, Missing, Remedy, Rule, SlidesOn, kept
from wellstrung.rulebook.plan import Eyes, Part, Role, RunEntry
from wellstrung.rulebook.values import Quantity, derived
from wellstrung.rulebook.wording import about


def check(slides: SlidesOn, ask: Ask) -> Answer:
    if _opens(slides.what, ask):
        return None
    if not all(slides.ends):
        return Held()
    slider, carrier = slides.slider.name, slides.carrier.name
    if slides.step is None:
        raise Missing(f"a step `{{do: slide, part: {slider}, onto: {carrier}}}` under `work`")
    if not slides.made_by:
        return Held()
    inside = _inside(slides.what, ask)
    # it may go on over either end: the easier one decides, by the widest thing there
    ends = [[(inside - _across(entry, ask), entry) for entry in end] for end in slides.ends]
    narrowest = [min(end, key=lambda found: found[0].likely.low) for end in ends]
    margin, entry = max(narrowest, key=lambda found: found[0].likely.low)
    if answer := kept(margin):
        return answer
    step, made = slides.step, slides.made_by[-1]
    sizes = f"{about(inside)}, and `{entry.part.name}` is {about(_across(entry, ask))} across"
    head = f"{_words(slides.what)} is closed and goes on `{carrier}` in step {step.number}, after"
    tail = f"step {made.number} has made the last of its ends: its inside is {sizes}"
    return Misfit(
        says=f"{head} {tail}{{|, so it may not pass}}",
        place=step.place,
        found=f"step {step.number}",
        needed=f"before step {made.number}",
        remedies=_remedies(slides, ask),
        margin=margin,
        also=(made.place, entry.place),
    )


def _opens(what: Eyes | Part, ask: Ask) -> bool:
    """Whether it can be opened to go on anywhere; raises Missing where the plan does not say."""
    if isinstance(what, Part):
        if what.kind.role is Role.RING:
            return bool(ask.opens(what))
        return what.text("opens") == "yes"
    opens = ask.opens(what)
    if opens is None:
        raise what.part.missing(*what.path, "opens")
    return opens


def _inside(what: Eyes | Part, ask: Ask) -> Quantity:
    return ask.get(what.quantity("hole")) if isinstance(what, Eyes) else ask.of(what, "inside")


def _words(what: Eyes | Part) -> str:
    return what.words if isinstance(what, Eyes) else f"{what.kind.name} `{what.name}`"


def _across(entry: RunEntry, ask: Ask) -> Quantity:
    """How wide a part at an end is; half a clasp, or a wire link, is as wide as its eye or more."""
    part = entry.part
    eye = entry.half or "loop"
    if entry.half == "a" and part.traits.swings:
        return part.length("ring", "outside", allowance="ring size")
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


def _remedies(slides: SlidesOn, ask: Ask) -> tuple[Remedy, ...]:
    step, made = slides.step, slides.made_by[-1]
    assert step is not None
    slider, name = slides.slider, slides.slider.name
    moved = ask.moved_before(step, made)
    by_hand = Remedy(f"put `{name}` on before the ends of `{slides.carrier.name}` are made")
    field, opened = ("closing", "open") if slider.kind.role is Role.RING else ("opens", "yes")
    if not slider.has(field):
        return (moved, by_hand)
    return (
        moved,
        Remedy.write(
            slider.place_of(field), opened, f"take one that opens for `{name}`: `{field}: {opened}`"
        ),
        by_hand,
    )


RULE = Rule(
    name="passes-over-end",
    family="fit",
    subject=SlidesOn,
    check=check,
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
