"""Remedies that make the run longer or shorter: by a length, by a count, by cord ends."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from wellstrung.common.places import Edit
from wellstrung.derived.piece import adds, turns
from wellstrung.model.parts import Part, Role
from wellstrung.quantity.arithmetic import leaf
from wellstrung.reading import tree
from wellstrung.rulebook.answer import Remedy
from wellstrung.rulebook.ask import Ask
from wellstrung.rulebook.wording import in_unit_of, together
from wellstrung.subjects.chain import of_cups
from wellstrung.subjects.counts import is_extender


def with_length(ask: Ask) -> list[Part]:
    """The woven and strung parts of the run with a written length of their own, or its chain."""
    written = [part for part in ask.plan.in_run if part.has("length") and not part.fills_rest]
    made = [part for part in written if part.stitch]
    return made or [one for one in written if one.traits.cut_from and not is_extender(one)]


def places_of(part: Part, ask: Ask) -> int:
    """At how many places of the run a part adds its length; strands side by side add it once."""
    return sum(part in entry.parts for entry in ask.plan.run)


def run_longer(ask: Ask, more: float, rounded: Callable[[float], int]) -> tuple[Remedy, ...]:
    """A remedy that adds `more` mm to the run: to the only part with a length, or counted.

    Strands side by side all become longer, and of sliding knots the cord ends.
    """
    if ends := _longer_ends(ask, more, rounded):
        return ends
    parts = dict.fromkeys(with_length(ask))
    if counted := _counted(ask):
        return _more_counted(*counted, ask, more, rounded)
    if not parts:
        return _more_repeated(ask, more, rounded)
    if any(
        parts.keys() - set(entry.parts) for entry in ask.plan.run if parts.keys() & set(entry.parts)
    ):
        return ()
    edits: list[Edit] = []
    words: dict[tuple[str, str], list[str]] = {}
    for part in parts:
        length = part.length("length")
        new = length.middle + more / places_of(part, ask)
        if new <= 0:
            return ()
        text = in_unit_of(rounded(new), length)
        edits.append(Edit(part.place_of("length"), text))
        words.setdefault((text, length.spelling), []).append(f"`{part.name}`")
    if all(text == was for text, was in words):
        return ()  # as near as it is measured
    makes = "string" if part.kind.role is Role.STRAND else "weave" if part.stitch else "cut"
    each = (f"{text} of {together(names)} instead of {was}" for (text, was), names in words.items())
    return (Remedy(f"{makes} {together(each)}", tuple(edits)),)


def _longer_ends(ask: Ask, more: float, rounded: Callable[[float], int]) -> tuple[Remedy, ...]:
    """Cord ends between two sliding knots that are so much longer, mm: no bead is restrung."""
    for knots in ask.plan.in_run:
        if knots.traits.slides and knots.count("sliding", "knots", default=2) > 1:
            ends, place = knots.length("sliding", "ends"), knots.place_of("sliding", "ends")
            if (new := rounded(ends.middle + more)) > 0:
                wanted = in_unit_of(new, ends)
                text = f"leave ends of {wanted} in `{knots.name}` instead of {ends.spelling}"
                return (Remedy.write(place, wanted, text),)
    return ()


#: the fields that count what makes a part of the run as long as it is
_COUNTS = ("links", "count", "repeats")


def _counted(ask: Ask) -> tuple[Part, str] | None:
    """The only part of the run that is counted, and the field; None where a length is written."""
    counted = {
        (part, field)
        for part in ask.plan.in_run
        for field in _COUNTS
        if part.has(field) and (part.stitch or field == "links")
    }
    return counted.pop() if len(counted) == 1 and not with_length(ask) else None


def _by_one(part: Part, field: str, ask: Ask) -> float:
    """What one bead, link or cup more adds to the run, mm."""
    each = ask.of(part, "length").middle / part.count(field)
    if of_cups(part) and part.cut_from is not None:
        each = part.cut_from.size("cup", "pitch", allowance="link size").middle
    return each * places_of(part, ask)


def _more_counted(
    part: Part, field: str, ask: Ask, more: float, rounded: Callable[[float], int]
) -> tuple[Remedy, ...]:
    had = part.count(field)
    count = max(1, rounded(had + more / _by_one(part, field, ask)))
    if count == had:
        return ()  # as near as whole beads come
    links = "cut {} cups for" if of_cups(part) else "cut {} links for"
    what = {"links": links, "count": "string {} beads of"}
    said = what.get(field, f"string {{}} {field} of").format(count)
    words = f"{said} `{part.name}` instead of {had}"
    return (Remedy.write(part.place_of(field), str(count), words),)


def _more_repeated(ask: Ask, more: float, rounded: Callable[[float], int]) -> tuple[Remedy, ...]:
    """The only group of the run that repeats, more or less often."""
    run = ask.plan.tree.entries.get("run")
    items = run.node.items if run is not None and isinstance(run.node, tree.Sequence) else ()
    groups = [one for one in items if isinstance(one, tree.Mapping) and "repeat" in one.entries]
    if len(groups) != 1:
        return ()
    count, had = groups[0].entries["repeat"].node, int(groups[0].value["repeat"])
    places = [entry for entry in ask.plan.run if groups[0].place.holds(entry.place)]
    each = sum(adds(entry, ask).middle for entry in places) / had
    often = max(1, rounded(had + more / each))
    names = together(dict.fromkeys(f"`{entry.called}`" for entry in places))
    words = f"repeat {names} {often} times instead of {had}"
    return (Remedy.write(count.place, str(often), words),) if often != had else ()


def asked_longer(
    ask: Ask, more: float, rounded: Callable[[float], int], *, asked: float | None = None
) -> Iterator[Remedy]:
    """Remedies that add `more` mm to the run and to the length that the plan asks for.

    `asked` is what is added to that, where it is not the same.
    """
    goal = ask.plan.goal
    runs = run_longer(ask, more, rounded)
    by_ends = _longer_ends(ask, more, rounded)
    if (
        runs and not by_ends and (counted := _counted(ask))
    ):  # whole beads add more than is asked for
        part, field = counted
        more = (int(runs[0].edits[0].new) - part.count(field)) * _by_one(part, field, ask)
        rounded = round
    if goal is None or not (runs or any(part.fills_rest for part in ask.plan.in_run)):
        return
    like = leaf("wanted", goal.middle, "mm", spelled_unit=goal.unit)
    off = goal.window.high - goal.middle
    more /= turns(ask.plan).middle if goal.field == "inside" else 1
    more = more if asked is None else asked
    wanted = in_unit_of(rounded(goal.middle + more), like)
    if off and not goal.assumed:
        wanted += f" ± {goal.text.partition('±')[2].strip() or in_unit_of(off, like)}"
    for run in runs or (Remedy(""),):
        words = " and ".join(filter(None, (f"write `{goal.called}: {wanted}`", run.text)))
        yield Remedy(words, (Edit(goal.place, wanted), *run.edits))
