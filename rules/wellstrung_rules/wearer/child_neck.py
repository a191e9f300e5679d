"""What goes round a child's neck must break away when it catches."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Limit, Misfit, Missing, Remedy, Rule, Worn, kept
from wellstrung.rulebook.plan import Item, Part
from wellstrung.rulebook.remedies import in_words
from wellstrung.rulebook.values import Quantity, exact
from wellstrung.rulebook.wording import spelled
from wellstrung_rules.wearer import CHILDREN, LAW_FIRST, ROUND_THE_NECK

#: the pull at which a child's necklace must let go: 15 lbf (ASTM F2923, as cited by Soudek and
#: McLaughlin, Paediatrics and Child Health 2018), at 4.4482216152605 N to the lbf
LETS_GO = 66.7233

SMALL_NECK = Limit(
    "child's neck",
    300.0,
    "mm",
    "few grown-up necks are thinner, from memory; below it a plan without an age is asked for one",
)


def check(worn: Worn, ask: Ask) -> Answer:
    if worn.piece not in ROUND_THE_NECK or worn.closes == "open":
        return None
    if not worn.age and worn.wearer.has("neck"):
        _ask_for_age(worn.wearer, ask)
    if worn.age not in CHILDREN:
        return None
    if not worn.clasps and worn.closes in ("", "clasp"):
        raise Missing("the clasp in `run`, or how the piece `closes`")
    stated = {clasp: clasp.force("breakaway") for clasp in worn.clasps if clasp.has("breakaway")}
    if not stated:
        return _no_breakaway(worn)
    clasp, pull = min(stated.items(), key=lambda each: each[1].middle)
    margin = exact("lets go at", LETS_GO, "N", source=RULE.sources[0]) - pull
    if answer := kept(margin, over="worst"):
        return answer
    return _too_strong(worn, clasp, pull, margin)


def _ask_for_age(wearer: Item, ask: Ask) -> None:
    """Raise Missing where a neck may be a child's and the plan does not say."""
    neck = wearer.length("neck")
    if neck.middle < ask.limit(SMALL_NECK).middle:
        raise Missing(f"`age` of `wearer`: a neck of {spelled(neck)} may be a child's")


_NEEDED = "a clasp that lets go at 15 lb (6.8 kg hanging) or less"
_DEFER = f"ask its supplier for the test; {LAW_FIRST}"


def _no_breakaway(worn: Worn) -> Misfit:
    shut = f"clasp `{worn.clasps[0].name}`" if worn.clasps else f"`closes: {worn.closes}`"
    return Misfit(
        says=f"the {worn.piece} is for {CHILDREN[worn.age]}, and nothing in the plan ({shut})"
        " shows that it breaks away when it catches",
        place=worn.place,
        found="no breakaway",
        needed=_NEEDED,
        remedies=(Remedy(f"take a breakaway clasp and write its `breakaway: ...`; {_DEFER}"),),
        also=tuple(clasp.key.place for clasp in worn.clasps),
    )


def _too_strong(worn: Worn, clasp: Part, pull: Quantity, margin: Quantity) -> Misfit:
    return Misfit(
        says=f"clasp `{clasp.name}` lets go at {spelled(pull)}, and the {worn.piece} is for"
        f" {CHILDREN[worn.age]}: it {{holds|may hold}} too hard to let go when it catches",
        place=clasp.place_of("breakaway"),
        found=spelled(pull),
        needed=_NEEDED,
        remedies=(
            in_words(
                f"take a clasp that lets go sooner; {_DEFER}",
                *(clasp, "breakaway"),
                high=LETS_GO,
                unit="N",
            ),
        ),
        margin=margin,
        also=(worn.place,),
    )


RULE = Rule(
    name="child-neck",
    family="wearer",
    subject=Worn,
    check=check,
    fault="no breakaway for a child",
    title="what goes round a child's neck breaks away when it catches",
    why="a necklace that catches on a slide or a door handle can strangle; in one study a mean"
    " pull of 724 g (7.1 N) closed an airway, far below what most clasps hold",
    sources=(
        "ASTM F2923, breakaway at 15 lbf (66.7 N), as cited in the study below; standard not seen",
        "Soudek and McLaughlin, Paediatr Child Health 2018;23(2):106-110, copy seen",
    ),
    bad="wearer: {age: child} with toggle: {kind: clasp, type: toggle, ...}",
    good="wearer: {age: child} with toggle: {kind: clasp, type: toggle, breakaway: 5 lb, ...}",
    over="worst",
    limits=(SMALL_NECK,),
)
