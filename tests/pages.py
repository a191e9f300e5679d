"""Checked samples and their pages, and what tests read in a drawing."""

from __future__ import annotations

import hashlib
import math
import re
from functools import cache
from pathlib import Path
from typing import NamedTuple
from xml.etree import ElementTree

from running import SAMPLES, SHARED
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult
from wellstrung.plugins import host

ALL = sorted((*SAMPLES.rglob("*.yaml"), *SHARED.glob("*.yaml")))
SVG = "{http://www.w3.org/2000/svg}"
#: how wide a letter may be, in parts of its height
LETTER = 0.6
_DECIMAL = re.compile(r"-?\d+\.\d+(?:e-?\d+)?")


@cache
def keeper() -> Checker:
    """A checker that keeps what a page needs."""
    return Checker(host.load(), quantities=True)


@cache
def checked(path: Path) -> PlanResult:
    """A sample's result."""
    return keeper().check_file(path)


class Area(NamedTuple):
    """A box on a drawing, in its own mm."""

    left: float
    top: float
    right: float
    bottom: float

    def meets(self, other: Area) -> bool:
        """Whether they share more than an edge."""
        return (
            self.left < other.right - 1e-6
            and other.left < self.right - 1e-6
            and self.top < other.bottom - 1e-6
            and other.top < self.bottom - 1e-6
        )


def parsed(svg: str) -> ElementTree.Element:
    """A drawing as a tree."""
    return ElementTree.fromstring(svg)


def digest(*trees: ElementTree.Element) -> str:
    """How many shapes drawings have, and a digest of them to a hundredth of a mm; no words."""
    found = [
        " ".join([one.tag, *(f"{key}={value}" for key, value in sorted(one.attrib.items()))])
        for tree in trees
        for one in tree.iter()
        if one.tag.rpartition("}")[2] not in ("svg", "title", "desc", "text")
    ]
    lines = _DECIMAL.sub(lambda number: f"{float(number[0]):.2f}", "\n".join(found))
    return f"{len(found)} shapes, {hashlib.sha256(lines.encode()).hexdigest()[:12]}"


def looks(tree: ElementTree.Element, look: str) -> list[ElementTree.Element]:
    """The shapes that have a look among theirs."""
    return [shape for shape in tree.iter() if look in shape.get("class", "").split()]


def bounds(shape: ElementTree.Element) -> Area:
    """The box about a bead as drawn: a round, a box with round corners, leaning or not, a path."""

    def at(*names: str) -> list[float]:
        return [float(shape.get(name, 0)) for name in names]

    if shape.tag.endswith("path"):
        points = [float(n) for n in re.findall(r"-?[\d.]+(?:e-\d+)?", shape.get("d", ""))]
        return Area(min(points[0::2]), min(points[1::2]), max(points[0::2]), max(points[1::2]))
    if shape.tag.endswith("rect"):
        x, y, width, height = at("x", "y", "width", "height")
        middle, half, round_end = (x + width / 2, y + height / 2), (width / 2, height / 2), False
    else:
        middle, round_end = (at("cx")[0], at("cy")[0]), True
        half = (at("rx")[0] or at("r")[0], at("ry")[0] or at("r")[0])
    turned = re.search(r"rotate\((-?[\d.]+)", shape.get("transform", ""))
    turn = math.radians(float(turned[1])) if turned else 0.0
    wide, high = half
    cos, sin = abs(math.cos(turn)), abs(math.sin(turn))
    # a bead's corners are round: an oval is nearer to it than its box
    across, down = math.hypot(wide * cos, high * sin), math.hypot(wide * sin, high * cos)
    if not round_end and not turned:
        across, down = half
    return Area(middle[0] - across, middle[1] - down, middle[0] + across, middle[1] + down)


def words_of(tree: ElementTree.Element) -> list[tuple[str, Area]]:
    """Every piece of text with the box that it takes."""
    found = []
    for text in tree.iter(f"{SVG}text"):
        size, words = float(text.get("font-size", "")), text.text or ""
        width = len(words) * size * LETTER
        x, y = float(text.get("x", "")), float(text.get("y", ""))
        left = x - {"start": 0.0, "middle": width / 2, "end": width}[text.get("text-anchor", "")]
        found.append((words, Area(left, y - size * 0.75, left + width, y + size * 0.2)))
    return found


def box_of(shape: ElementTree.Element) -> Area:
    """The box that a shape takes, or all shapes of a group."""
    if shape.tag == f"{SVG}g":
        boxes = [box_of(one) for one in shape]
        return Area(
            min(one.left for one in boxes),
            min(one.top for one in boxes),
            max(one.right for one in boxes),
            max(one.bottom for one in boxes),
        )
    size = {key: float(shape.get(key, "0")) for key in _SIZES if shape.tag != f"{SVG}path"}
    if shape.tag == f"{SVG}rect":
        left, top = size["x"], size["y"]
        return Area(left, top, left + size["width"], top + size["height"])
    if shape.tag == f"{SVG}line":
        xs, ys = sorted((size["x1"], size["x2"])), sorted((size["y1"], size["y2"]))
        return Area(xs[0], ys[0], xs[1], ys[1])
    if shape.tag in (f"{SVG}circle", f"{SVG}ellipse"):
        rx, ry = size["r"] or size["rx"], size["r"] or size["ry"]
        rx, ry = (max(rx, ry),) * 2 if shape.get("transform") else (rx, ry)
        return Area(size["cx"] - rx, size["cy"] - ry, size["cx"] + rx, size["cy"] + ry)
    numbers = [float(n) for n in _NUMBER.findall(shape.get("d", ""))]
    if " a " in shape.get("d", ""):  # a ring: its first corner, its level side, and its radius
        x, y, level, r = numbers[:4]
        return Area(x - r, y, x + level + r, y + 2 * r + numbers[10])
    return Area(min(numbers[::2]), min(numbers[1::2]), max(numbers[::2]), max(numbers[1::2]))


_SIZES = ("x", "y", "width", "height", "x1", "y1", "x2", "y2", "cx", "cy", "r", "rx", "ry")
_NUMBER = re.compile(r"-?[\d.]+(?:e-?\d+)?")
