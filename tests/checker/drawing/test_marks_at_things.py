"""Each mark stands at the thing that its remark means: in the drawn box of that part or half."""

from __future__ import annotations

from pathlib import Path

import pytest

from pages import ALL, box_of, checked, keeper, looks, parsed
from running import ROOT, SAMPLES, SHARED
from wellstrung.drawing.piece import drawings

ORDINARY = sorted((ROOT / "tests" / "ordinary").rglob("*.yaml"))
COLLAR = SHARED / "slack_tide_collar.yaml"
BIG_CAP = "{kind: end cap, bore: 7 mm, depth: 7 mm, length: 15 mm, takes: beads, metal: brass}"


def named(svg: str) -> list[tuple[str, str, list[int], float]]:
    """Every thing that a drawing names, the numbers of its remarks, and where that is."""
    tree = parsed(svg)
    things = [
        (one.get("data-part"), one.get("data-half"), box_of(one)) for one in looks(tree, "thing")
    ]
    found = []
    for label in looks(tree, "named"):
        part, half = label.get("data-part"), label.get("data-half")
        [spot] = looks(label, "leader-end")
        x, y = float(spot.get("cx", "")), float(spot.get("cy", ""))
        mine = [box for name, side, box in things if (name, side) == (part, half)]
        assert any(box.left <= x <= box.right and box.top <= y <= box.bottom for box in mine), (
            f"{part} {half} is named at ({x}, {y}), and is drawn at {mine}"
        )
        numbers = [int(one.text or "") for one in looks(label, "number")]
        found.append((part or "", half or "", numbers, x))
    return found


@pytest.mark.parametrize("path", [*ALL, *ORDINARY], ids=lambda path: path.stem)
def test_every_name_and_mark_points_into_the_box_of_its_part(path: Path) -> None:
    result = checked(path)
    for figure in drawings(result):
        for part, _, numbers, _ in named(figure.svg) if figure.svg else ():
            for number in numbers:
                assert part in result.numbered[number - 1].parts


def test_a_line_from_words_below_the_run_meets_its_lower_side() -> None:
    tree = parsed(drawings(checked(SAMPLES / "breakwater_cuff.yaml"))[1].svg)
    below = set()
    for label in looks(tree, "named"):
        [spot], [words, *_] = looks(label, "leader-end"), looks(label, "label")
        at, written = float(spot.get("cy", "")), float(words.get("y", ""))
        assert at * written >= 0
        below.add(written > 0)
    assert below == {True, False}


@pytest.mark.parametrize(
    ("old", "new", "rule", "at"),
    [
        ("bar: {length: 24 mm", "bar: {length: 12 mm", "toggle-bar", "toggle.b"),
        ("linked: 4}", "linked: 1}", "toggle-swing", "toggle.b"),
        ("2 mm, eye: {hole: 2.4 mm, wire: 1.2 mm}}\n    bar", "2 mm, eye: {hole: 0.9 mm, wire: "
         "1.2 mm}}\n    bar", "ring-through-eye", "small by toggle.a"),
        ("stem: 3 mm, eye: {hole: 2.4", "stem: 3 mm, eye: {hole: 0.9", "ring-through-eye",
         "small by toggle.b"),
        ("rope, cap,", "rope, big cap,", "cap-bore", "big cap"),
        ("by: small, times: 7", "by: carrier, times: 7", "no-way-in", "carrier on drop"),
    ],
    ids=lambda value: value[:24],
)  # fmt: skip
def test_a_mark_stands_at_the_half_the_end_or_the_hung_line_that_is_meant(
    old: str, new: str, rule: str, at: str
) -> None:
    text = COLLAR.read_text(encoding="utf-8")
    assert old in text
    text = text.replace(old, new).replace("  carrier: {", f"  big cap: {BIG_CAP}\n  carrier: {{")
    result = keeper().check_text(text)
    ours = next(n for n, one in enumerate(result.numbered, 1) if one.rule == rule)
    part, _, beside = at.partition(" by " if " by " in at else " on ")
    part, _, half = part.partition(".")
    for figure in drawings(result):
        marked = {one[:2]: one[3] for one in named(figure.svg) if ours in one[2]}
        assert set(marked) == {(part, half)}
        if beside:  # it stands nearer to that than to any other place of its part
            tree, x = parsed(figure.svg), marked[part, half]
            name, _, side = beside.partition(".")
            middle = next(
                (box.left + box.right) / 2
                for one in looks(tree, "thing")
                if (one.get("data-part"), one.get("data-half") or "") == (name, side)
                for box in [box_of(one)]
            )
            width = float(tree.get("viewBox", "").split()[2])
            assert abs(x - middle) < width / 4
