"""Steps of the work as one says them: `weave rope`, `glue cap to rope with glue`, `wait 24 h`."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from wellstrung.common.patterns import Pattern
from wellstrung.common.places import Edit, Fault
from wellstrung.common.trade_words import ACCEPTED, answer, plain, words
from wellstrung.common.wording import nearest, one_of
from wellstrung.reading import tree
from wellstrung.reading.faults import EVERY_WORD, fault, shown
from wellstrung.short_forms.phrase import Phrase
from wellstrung.short_forms.step_lines import BEFORE, OfPlan, said
from wellstrung_schemas import verbs

_TIME = Pattern(
    r"(?<![\w./])\d+(?:\.\d+)?\s*(?:min|minutes?|h|hrs?|hours?|days?|weeks?)\b", re.IGNORECASE
)
_TIMES = Pattern(
    r"(?<![\w./])\d+\s*(?:times|x)\b|(?<!\w)x\s*\d+\b|\b(?:once|twice)\b", re.IGNORECASE
)
#: `turn 2 loops at coil`
_LOOPS = Pattern(r"^(?:turn|make|bend|wrap|form)\s+(\d+)(?=\s+loops?\b)", re.IGNORECASE)
#: `turn a loop at each end of coil`, `crimp both ends`
_BOTH_ENDS = Pattern(r"(?<!\w)(?:(?:at|on)\s+)?(?:each|both|either)\s+ends?(?!\w)", re.IGNORECASE)
#: `2 joints`, `2 ends`, as lists of steps print them
_COUNTS = {
    field: Pattern(rf"(?<![\w./])\d+\s*{field[:-1]}s?\b", re.IGNORECASE)
    for field in ("joints", "ends")
}
#: what a stone that is sewn on is glued to: no parts of the plan
_LAYER = Pattern(r"(?<!\w)to\s+(?:(?:the|its)\s+)?(foundation|backing)(?!\w)", re.IGNORECASE)
_STONE = Pattern(r"(?<!\w)stone\s+of(?!\w)", re.IGNORECASE)
#: `tie a surgeon's knot`, `knot strand with a square knot`: which knot it is goes in the note
_KNOT = Pattern(
    r"(?<!\w)(?:(?:with|in|by)\s+)?(?:an?\s+)?((?:surgeon['’]?s?['’]?|square|reef|double overhand|"
    r"overhand|half hitch|figure[- ](?:of[- ])?eight)(?=\s+knots?\b))",
    re.IGNORECASE,
)
#: what is left of a step whose knot is named
_TIED = Pattern(r"^tie(?!\w)|(?<!\w)knots?(?!\w)", re.IGNORECASE)
_SAID = {"once": 1, "twice": 2}
_FILLER = r"(?<!\w)(?:the|a|an|each|every|all|for|of|and|then|at|in|on|it{noun})(?!\w)"
#: a verb as the plan has it and as people say it, with its noun and without -> the plan's own
_VERBS: Mapping[str, str] = {
    **{plain(word): verb for verb, listed in ACCEPTED["do"].items() for word in words(listed)},
    **{word: verb for verb in verbs() for word in (verb.split()[0], verb)},
}


def step(
    node: tree.Scalar,
    parts: Mapping[str, str],
    woven: Sequence[str],
    faults: list[Fault],
    plan: OfPlan,
) -> tree.Mapping | None:
    """A step of the work from a phrase; None, with a fault, where it does not name a step.

    `parts` are the parts by every word that may name one: its own name, or that of its beads.
    `woven` are those that earlier steps weave: the thread to finish is that of the only one.
    """
    phrase = Phrase(node)
    # where `rope` is a part, `weave rope` says which
    ends = tuple(f" {plain(name)}{many}" for name in parts for many in ("", "s", "es"))
    loops, knot = phrase.take(_LOOPS), phrase.take(_KNOT)
    known = {word: of for word, of in _VERBS.items() if not word.endswith(ends)}
    verb = phrase.take_word(known if loops is None else {"loop": "wrap loop", "loops": "wrap loop"})
    if verb is None or _told(node, (3, 2)):
        faults.append(_no_step(node, Phrase(node), parts, plan))
        return None
    takes = verbs()[verb.value]["properties"]
    note = _named_knot(phrase, knot) if knot is not None and "note" in takes else None
    longest = "|".join(map(re.escape, sorted(parts, key=len, reverse=True))) or "(?!)"
    names = rf"(?:{longest})(?:e?s)?"
    fields: dict[str, tree.Node | None] = {"do": verb, "note": note}
    for field in BEFORE:
        if field in takes:
            before = "(?:to|over)" if field == "to" else field  # `fold end over chain`
            pattern = rf"(?<!\w){before}\s+(?:(?:the|its)\s+)?({names})(?![\w/])"
            fields[field] = _part(phrase.take(re.compile(pattern, re.IGNORECASE)), parts)
    if verb.value == "glue" and fields["to"] is None:
        fields["to"] = phrase.take(_LAYER)
        phrase.take(_STONE)
    if "part" in takes:
        pattern = rf"(?<![\w/])({names})(?![\w/])"
        fields["part"] = part = _part(phrase.take(re.compile(pattern, re.IGNORECASE)), parts)
        kind = plan.kinds.get(str(part.value)) if part is not None else None
        if (verb.value, kind, fields.get("to")) == ("sew", "embroidered cabochon", None):
            # its beads are sewn round the stone, and then its edge
            sewn = part is not None and part.value in woven
            fields["do"] = tree.meaning(verb, "edge" if sewn else "weave")
    fields["time" if "time" in takes else "takes"] = phrase.take(_TIME)
    # how often a glue step is done is how many joints it makes
    often = next((field for field in ("times", "joints") if field in takes), None)
    if often is not None and (times := phrase.take(_TIMES)) is not None:
        times.value = _counted(times)
        fields[often] = times
    elif loops is not None:
        loops.value = int(loops.text)
        fields["times"] = loops
    elif verb.value == "wrap loop" and (both := phrase.take(_BOTH_ENDS)) is not None:
        both.value = 2
        fields["times"] = both
    elif verb.value == "finish thread" and (both := phrase.take(_BOTH_ENDS)) is not None:
        both.value = 2
        fields["ends"] = both
    elif verb.value == "crimp" and (both := phrase.take(_BOTH_ENDS)) is not None:
        crimps = [name for name, kind in plan.kinds.items() if kind == "crimp"]
        if fields["part"] is None and len(crimps) == 1:
            fields["part"] = tree.meaning(both, crimps[0])
    for field, counted in _COUNTS.items():
        if field in takes and (count := phrase.take(counted)) is not None:
            count.value = _counted(count)
            fields[field] = count
    noun = "".join(f"|{word}s?" for word in verb.value.split()[1:])
    filler = re.compile(_FILLER.format(noun=noun), re.IGNORECASE)
    while phrase.take(filler) is not None:
        pass
    if verb.value in ("finish thread", "edge") and fields["part"] is None and len(woven) == 1:
        fields["part"] = tree.meaning(verb, woven[0])
    strands = [name for name, kind in plan.kinds.items() if kind == "strand"]
    if verb.value == "knot" and fields["part"] is None and len(strands) == 1:
        fields["part"] = tree.meaning(verb, strands[0])
    lacks = [name for name in verbs()[verb.value]["required"] if fields.get(name) is None]
    rest = phrase.take_rest()
    if rest is not None or lacks:
        faults.append(_in_part(node, fields, rest, lacks, plan))
        return None
    return tree.Spelled(node, fields)


def _named_knot(phrase: Phrase, knot: tree.Scalar) -> tree.Scalar:
    """Which knot a step ties, as its note: how it is tied decides no check."""
    while phrase.take(_TIED) is not None:
        pass
    return tree.meaning(knot, f"{knot.text} knot")


def _counted(words: tree.Scalar) -> int:
    """How many `3 times`, `x 3`, `twice` or `2 joints` are."""
    return _SAID.get(words.text.casefold()) or int(re.sub(r"\D", "", words.text))


def _in_part(
    node: tree.Scalar,
    fields: Mapping[str, tree.Node | None],
    rest: tree.Scalar | None,
    lacks: Sequence[str],
    plan: OfPlan,
) -> Fault:
    """The fault of a step that says more than is known, or less than it has to."""
    known = {name: str(one.value) for name, one in fields.items() if one and name != "note"}
    verb, time = known.pop("do"), known.get("time", "")
    line = plan.example(verb) if lacks else said(verb, known, time)
    says = f"step {shown(node)} says {shown(rest)}, which is not known" if rest is not None else ""
    if rest is None:
        what = "how long it takes" if "time" in lacks else f"its `{lacks[0]}`"
        what = "its part" if lacks[0] == "part" else what
        says = f"step {shown(node)} does not {'say' if 'time' in lacks else 'name'} {what}"
    advice = f"write it as {'in ' * bool(lacks)}`{line}`"
    advice += ", and what else it says in its `note`" if rest is not None and not lacks else ""
    edits = () if lacks else (Edit(node.place, line),)
    place = rest.place if rest is not None else node.place
    return fault(f"{says}: {advice}", place, remedy=advice, edits=edits)


def _no_step(node: tree.Scalar, phrase: Phrase, parts: Mapping[str, str], plan: OfPlan) -> Fault:
    """The fault of a phrase that does not begin with a step, with what to write instead."""
    first = phrase.take(re.compile(r"\S+")) or node
    told, near = _told(node, (3, 2, 1)), nearest(first.text, _VERBS)
    advice = f"begin with {one_of(verbs(), first.text, EVERY_WORD)}"
    lines = _lines(node.text, parts, plan)
    if told:
        meant = [
            line
            for line in lines
            for verb in verbs()
            if line.startswith(f"`{verb} ") and f"`{verb}`" in told[0]
        ]
        own = said("knot", {"part": plan.such("strand"), "with": plan.such("glue")})
        advice = told[0].replace("knot strand with glue", own) + (
            f"; here {' or '.join(meant)}" if meant and told[1] else ""
        )
    elif near or lines:
        advice = f"write `{_VERBS[near]}`" if near else f"write {' or '.join(lines)}"
    edits = (Edit(first.place, _VERBS[near]),) if near and not told else ()
    begins = (
        "is no step of its own" if plain(first.text) in _VERBS else "does not begin with a step"
    )
    says = f"{shown(node)} {begins}: {advice}"
    return fault(says, first.place, remedy=advice, edits=edits)


def _told(node: tree.Scalar, lengths: tuple[int, ...]) -> tuple[str, bool] | None:
    """What is answered to the first words of a phrase, so many of them, and whether it is asked."""
    begin = node.text.split()
    known = (answer("do", " ".join(begin[:count])) for count in lengths if count <= len(begin))
    return next((one for one in known if one), None)


def _lines(text: str, parts: Mapping[str, str], plan: OfPlan) -> list[str]:
    """Lines of steps about the parts that a phrase names, at most three."""
    named = (
        parts[word]
        for word in parts
        if re.search(rf"(?i)(?<!\w){re.escape(word)}(?:e?s)?(?!\w)", text)
    )
    lines = dict.fromkeys(line for part in dict.fromkeys(named) for line in plan.about(part))
    return [f"`{line}`" for line in lines][:3]


def _part(word: tree.Scalar | None, parts: Mapping[str, str]) -> tree.Scalar | None:
    """The part that a word names, one or many of it."""
    if word is None:
        return None
    forms = (word.text, word.text.removesuffix("s"), word.text.removesuffix("es"))
    known = {name.casefold(): part for name, part in parts.items()} | dict(parts)
    own = [known.get(form) or known.get(form.casefold()) for form in forms]
    return tree.meaning(word, next(part for part in own if part))
