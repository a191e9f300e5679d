"""A canvas of shapes in millimetres that becomes one SVG drawing at a stated scale.

Colours are the page's business: a shape names a class, and the page's style sheet says what that
class looks like in light, in dark and in print. ElementTree escapes whatever a plan's text holds.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from xml.etree import ElementTree

#: millimetres of white around what is drawn, life-size
_MARGIN = 1.0
#: how wide a letter is, in parts of its height: wide enough for any usual sans-serif
LETTER = 0.6


@dataclass
class Canvas:
    """Shapes in mm, x to the right and y down, and the box that holds them all.

    `scale` is how many times larger than life the drawing is on the page, `margin` the mm of white
    around it. Every shape may carry the name of the quantity that it draws, so that a page's
    numbers can be held against its sizes; `side` says which of its sides that is, `width` or
    `height`, where they differ.
    """

    scale: float = 1.0
    margin: float = _MARGIN
    _shapes: list[ElementTree.Element] = field(default_factory=list)
    _box: tuple[float, float, float, float] = (math.inf, math.inf, -math.inf, -math.inf)

    def circle(self, x: float, y: float, r: float, look: str, quantity: str = "") -> None:
        """A circle about (x, y)."""
        self._reach(x - r, y - r, x + r, y + r)
        self._add("circle", look, quantity, cx=x, cy=y, r=r)

    def ring(
        self,
        x: float,
        y: float,
        width: float,
        height: float,
        wire: float,
        look: str,
        quantity: str = "",
    ) -> None:
        """A ring or a link of round wire about (x, y), seen from the front, empty inside."""
        self._reach(x - width / 2, y - height / 2, x + width / 2, y + height / 2)
        inner = max(width - 2 * wire, 0.02), max(height - 2 * wire, 0.02)
        rounds = f"{_rounded(x, y, width, height)} {_rounded(x, y, *inner)}"
        self._add("path", look, quantity, d=rounds, **{"fill-rule": "evenodd"})

    def box(
        self,
        x: float,
        y: float,
        width: float,
        height: float,
        look: str,
        quantity: str = "",
        side: str = "",
        corner: float = 0.0,
    ) -> None:
        """A rectangle with its upper left corner at (x, y), its corners rounded by a radius."""
        self._reach(x, y, x + width, y + height)
        more: dict[str, float | str] = {"data-side": side} if side else {}
        more |= {"rx": corner} if corner else {}
        self._add("rect", look, quantity, x=x, y=y, width=width, height=height, **more)

    def ellipse(
        self, x: float, y: float, rx: float, ry: float, look: str, quantity: str = ""
    ) -> None:
        """An ellipse about (x, y)."""
        self._reach(x - rx, y - ry, x + rx, y + ry)
        self._add("ellipse", look, quantity, cx=x, cy=y, rx=rx, ry=ry)

    def line(
        self, x1: float, y1: float, x2: float, y2: float, look: str, quantity: str = ""
    ) -> None:
        """A straight line."""
        self._reach(min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2))
        self._add("line", look, quantity, x1=x1, y1=y1, x2=x2, y2=y2)

    def curve(
        self, points: list[tuple[float, float]], look: str, quantity: str = "", side: str = ""
    ) -> None:
        """A line through points; close it by naming the first again at the end."""
        for x, y in points:
            self._reach(x, y, x, y)
        through = " L ".join(f"{x:.5g} {y:.5g}" for x, y in points)
        closed = " Z" if points[0] == points[-1] else ""
        more = {"data-side": side} if side else {}
        self._add("path", look, quantity, d=f"M {through}{closed}", **more)

    def area(self, outlines: Sequence[Sequence[tuple[float, float]]], look: str) -> None:
        """What lies within an odd number of closed outlines: a ring within two circles."""
        for x, y in (point for outline in outlines for point in outline):
            self._reach(x, y, x, y)
        way = " ".join(f"M {_through(outline)} Z" for outline in outlines)
        self._add("path", look, "", d=way, **{"fill-rule": "evenodd"})

    def strokes(self, lines: Sequence[tuple[float, float, float, float]], look: str) -> None:
        """Many short straight lines of one look, as one shape; nothing where there are none."""
        for x1, y1, x2, y2 in lines:
            self._reach(min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2))
        if lines:
            way = " ".join(f"M {_through([(x1, y1), (x2, y2)])}" for x1, y1, x2, y2 in lines)
            self._add("path", look, "", d=way)

    def text(
        self, x: float, y: float, words: str, look: str, size: float = 2.5, anchor: str = "middle"
    ) -> None:
        """Words of a height in mm on the page, whatever the scale; (x, y) is on their base line."""
        height = size / self.scale
        width = len(words) * height * LETTER
        left = x - {"start": 0.0, "middle": width / 2, "end": width}[anchor]
        self._reach(left, y - height, left + width, y + height / 3)
        placed: dict[str, float | str] = {"font-size": height, "text-anchor": anchor}
        self._add("text", look, "", words, x=x, y=y, **placed)

    def hold(self, left: float, top: float, right: float, bottom: float) -> None:
        """Room for what is put there later."""
        self._reach(left, top, right, bottom)

    @property
    def extent(self) -> tuple[float, float, float, float]:
        """Left, top, right and bottom of all that is drawn."""
        return self._box

    @property
    def size(self) -> tuple[float, float]:
        """Width and height of the whole drawing in mm, life-size, its white margin included."""
        left, top, right, bottom = self._box
        return right - left + 2 * self.margin, bottom - top + 2 * self.margin

    def svg(self, title: str, alt: str, look: str = "") -> str:
        """The drawing as an SVG element, with a title and a description for who cannot see it."""
        left, top = self._box[0] - self.margin, self._box[1] - self.margin
        width, height = self.size
        root = ElementTree.Element(
            "svg",
            {
                "xmlns": "http://www.w3.org/2000/svg",
                "viewBox": f"{left:.6g} {top:.6g} {width:.6g} {height:.6g}",
                "width": f"{width * self.scale:.6g}mm",
                "height": f"{height * self.scale:.6g}mm",
                "role": "img",
                "data-scale": f"{self.scale:g}",
            }
            | ({"class": look} if look else {}),
        )
        ElementTree.SubElement(root, "title").text = title
        ElementTree.SubElement(root, "desc").text = alt
        root.extend(self._shapes)
        return ElementTree.tostring(root, encoding="unicode")

    def _reach(self, left: float, top: float, right: float, bottom: float) -> None:
        box = self._box
        self._box = (min(box[0], left), min(box[1], top), max(box[2], right), max(box[3], bottom))

    def _add(
        self, tag: str, look: str, quantity: str, words: str = "", /, **at: float | str
    ) -> None:
        attributes = {"class": look} | ({"data-quantity": quantity} if quantity else {})
        attributes |= {
            key: value if isinstance(value, str) else f"{value:.6g}" for key, value in at.items()
        }
        shape = ElementTree.Element(tag, attributes)
        shape.text = words or None
        self._shapes.append(shape)


def _through(points: Sequence[tuple[float, float]]) -> str:
    return " L ".join(f"{x:.5g} {y:.5g}" for x, y in points)


def _rounded(x: float, y: float, width: float, height: float) -> str:
    """The path of a box about (x, y) whose shorter sides are round."""
    r = min(width, height) / 2
    right, down = width - 2 * r, height - 2 * r
    corner = f"a {r:.6g} {r:.6g} 0 0 1"
    return (
        f"M {x - right / 2:.6g} {y - height / 2:.6g} h {right:.6g} {corner} {r:.6g} {r:.6g}"
        f" v {down:.6g} {corner} {-r:.6g} {r:.6g} h {-right:.6g} {corner} {-r:.6g} {-r:.6g}"
        f" v {-down:.6g} {corner} {r:.6g} {-r:.6g} Z"
    )
