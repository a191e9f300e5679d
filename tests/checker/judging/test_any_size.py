"""Work grows with a plan and no faster; what is longer than any plan is refused at once."""

from __future__ import annotations

import cProfile
import pstats
from collections.abc import Callable

import pytest

from wellstrung.judging.checker import Checker
from wellstrung.model import references
from wellstrung.model.contradictions import MOST_HUNG, MOST_MADE, MOST_ON_RING, MOST_PLACES
from wellstrung.plugins import host
from wellstrung.reading.most import MOST_LISTED, MOST_NAMED
from wellstrung.report.pages import sheet

#: how often each function was called, by its file, its line and its name
Counts = dict[tuple[str, int, str], int]

_HEAD = "plan: 1\ntitle: Long\npiece: necklace\n"
_BEAD = "beads:\n  gull: {type: round, size: 8/0, make: Japanese}\n"
_RING = "  ring: {kind: jump ring, outside: 5 mm, wire: 20 AWG, closing: open}\n"
_BAR = "{kind: connector, length: 18 mm, eyes: {count: 2, hole: 2 mm, wire: 1 mm}}"
_CONE = "  cone: {kind: cone, bore: 7 mm, hole: 2 mm, depth: 7 mm, length: 11 mm}\n"
_STRAND = "{kind: strand, stitch: strung, beads: gull, length: 15 cm, thread: "


def _plan(parts: str, run: str, rest: str = "") -> str:
    return f"{_HEAD}{_BEAD}parts:\n{parts}run: [{run}]\n{rest}"


def _named(count: int, stem: str, made: str) -> tuple[str, list[str]]:
    names = [f"{stem} {n}" for n in range(count)]
    return "".join(f"  {name}: {made}\n" for name in names), names


def _unused(count: int) -> str:
    parts, _ = _named(count, "bar", _BAR)
    return _plan(_RING + parts, "ring")


def _bought(count: int) -> str:
    parts, names = _named(count, "bar", _BAR)
    lines = "".join(f"  - {{part: {name}, count: 1}}\n" for name in names)
    return _plan(parts, ", ".join(names), f"supplies:\n{lines}")


def _bundled(count: int) -> str:
    parts, names = _named(count, "line", f"{_STRAND}flexible wire 0.38 mm}}")
    return _plan(_CONE + parts, f"cone, {{strands: [{', '.join(names)}]}}, cone")


def _threaded(count: int) -> str:
    parts, names = _named(count, "line", f"{_STRAND}spool 0}}")
    spools, _ = _named(count, "spool", "{kind: thread, type: flexible wire, length: 9 m}")
    return _plan(spools + parts, ", ".join(names))


def _roped(count: int) -> str:
    rope = "{kind: woven rope, stitch: tubular peyote, beads: gull, around: 8, length: 10 cm}"
    parts, names = _named(count, "rope", rope)
    return _plan(parts, ", ".join(names))


def _stepped(count: int) -> str:
    return _plan(
        f"{_RING}  line: {_STRAND}flexible wire 0.38 mm}}\n",
        "line, ring",
        "work:\n" + "  - string line\n" * count,
    )


_DROP = "{kind: pendant, height: 20 mm, mass: 3 g, top_eyes: {count: 1, hole: 2 mm, wire: 1 mm}}"


def _on_ring(count: int) -> str:
    parts, names = _named(count, "drop", _DROP)
    lines = "".join(f"  - {{part: {name}, from: ring, by: ring}}\n" for name in names)
    return _plan(f"{_RING}  bar: {_BAR}\n{parts}", "bar, ring, bar", f"hung:\n{lines}")


def _hung(count: int) -> str:
    lines = "  - {part: drop, from: ring, by: ring}\n" * count
    return _plan(f"{_RING}  drop: {_DROP}\n  bar: {_BAR}\n", "bar, ring, bar", f"hung:\n{lines}")


def _thick(count: int) -> str:
    """Rings that are thick for their size, each by an amount of its own: several remarks each."""
    names = [f"loop {n}" for n in range(count)]
    rings = "".join(
        f"  {name}: {{kind: jump ring, outside: 5 mm, wire: {2 + n / 100_000} mm, closing: open}}\n"
        for n, name in enumerate(names)
    )
    return _plan(rings, ", ".join(names))


def _calls(work: Callable[[str], object], text: str) -> Counts:
    """How often each function of ours was called for a plan."""
    profile = cProfile.Profile()
    profile.enable()
    work(text)
    profile.disable()
    counted = pstats.Stats(profile).stats  # type: ignore[attr-defined]
    return {where: calls[1] for where, calls in counted.items() if "wellstrung" in where[0]}


#: what is worked out of each strand's load, or of a bundle, by every strand: see `MOST_MADE`
_BY_CAUSES = frozenset({"causes.py", "value.py", "extremes.py", "arithmetic.py", "circles.py"})
#: a search for an order of steps stops after so many looks (`MOST_LOOKS`)
_BOUNDED = frozenset({"search.py"})


_SHAPES = [_unused, _bought, _bundled, _threaded, _roped, _stepped, _hung, _thick]


@pytest.mark.parametrize("shape", _SHAPES)
def test_calls_grow_with_the_plan(checker: Checker, shape: Callable[[int], str]) -> None:
    """Twice the parts: no function is called more than about twice as often."""
    few, many = (_calls(checker.check_text, shape(count)) for count in (60, 120))
    assert not _faster(few, many)


@pytest.mark.parametrize(
    ("shape", "few"), [(_unused, 200), (_bought, 200), (_stepped, 200), (_thick, 60)]
)
def test_calls_of_a_page_grow_with_the_plan(shape: Callable[[int], str], few: int) -> None:
    """The same of a leaf."""
    checker = Checker(host.load(), keep=True)
    page = [_calls(lambda text: sheet(checker.check_text(text)), shape(n)) for n in (few, 2 * few)]
    assert not _faster(*page)


def _faster(few: Counts, many: Counts) -> Counts:
    """The functions that are called more than about twice as often for twice the parts."""
    return {
        where: calls
        for where, calls in many.items()
        if where[0].rpartition("/")[2] not in _BY_CAUSES | _BOUNDED
        and few.get(where)
        and calls > 1_000
        and calls > 2.6 * few[where]
    }


@pytest.mark.parametrize(
    ("text", "says"),
    [
        (_unused(MOST_NAMED + 1), f"`parts` has {MOST_NAMED + 2} entries, more than is"),
        (_stepped(MOST_LISTED + 1), f"`work` has {MOST_LISTED + 1} entries, more than is"),
        (_roped(MOST_MADE + 1), f"{MOST_MADE + 1} parts are made at the bench, more than is"),
        (_on_ring(MOST_ON_RING + 1), f"{MOST_ON_RING + 1} different parts hang from `ring`"),
        (_hung(MOST_HUNG + 1), f"`hung` has {MOST_HUNG + 1} lines, more than is"),
        (
            _plan(_RING, ", ".join(["{repeat: 200, of: [ring, ring]}"] * 200)),
            f"the run has over {MOST_PLACES} places, more than is",
        ),
    ],
    ids=["parts", "work", "made", "ring", "hung", "places"],
)
def test_what_is_longer_than_any_plan_is_refused(checker: Checker, text: str, says: str) -> None:
    result = checker.check_text(text)
    (slip,) = [remark for remark in result.remarks if "more than is checked" in remark.says]
    assert slip.says.startswith(says)
    assert any(do in slip.says for do in (": write a plan for each piece", ": give those"))
    assert not result.readable


def test_many_unknown_names_are_not_all_compared(
    checker: Checker, monkeypatch: pytest.MonkeyPatch
) -> None:
    parts, names = _named(40, "bar", _BAR)
    text = _plan(parts, ", ".join(name.replace("bar", "bat") for name in names))
    monkeypatch.setattr(references, "_MOST_COMPARED", 400)
    said = [remark.says for remark in checker.check_text(text).remarks]
    assert sum("too many names are unknown" in says for says in said) == 30
