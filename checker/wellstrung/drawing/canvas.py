"""A canvas of shapes in millimetres that becomes one SVG drawing at a stated scale.

Colours are the page's business: a shape names a class, and the page's style sheet says what that
class looks like in light, in dark and in print. A bead alone has the colour that its plan gives,
written after its class as in `bead b0 #2e6b4f`. ElementTree escapes whatever a plan's text holds.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from xml.etree import ElementTree

#: height of words, mm: 9 pt on paper and 12 px on a screen, the least that is read with ease
WORDS = 3.2
#: how wide a letter is, in parts of its height: wide enough for any usual sans-serif
_LETTER = 0.6
#: white around a drawing on paper, mm
_MARGIN = 1.0
#: how far the middle of a line of words lies above its base line, in parts of their height
_HALF_HIGH = 0.36
#: a spot on the page, mm, x to the right and y down
Spot = tuple[float, float]
#: left, top, right and bottom, mm
Extent = tuple[float, float, float, float]
_NOTHING: Extent = (math.inf, math.inf, -math.inf, -math.inf)
#: how far within the edge of a thing a label points to, at most, mm
_INSET = 0.4


def words_width(words: str, size: float = WORDS) -> float:
    """How wide words are on paper, mm, when they are `size` mm high.

    >>> round(words_width("rope"), 2)
    7.68
    """
    return len(words) * size * _LETTER


def within(spot: Spot, box: Extent) -> Spot:
    """A spot moved into a box that it lies beside, a little from its edge.

    >>> within((5.0, -3.0), (0.0, 0.0, 20.0, 4.0))
    (5.0, 0.4)
    """
    left, top, right, bottom = box
    if left > right:  # nothing is drawn
        return spot
    inset = min((right - left) / 2, (bottom - top) / 2, _INSET)
    (x, y) = spot
    return (
        min(max(x, left + inset), right - inset),
        min(max(y, top + inset), bottom - inset),
    )


class Canvas:
    """Shapes in mm, x to the right and y down, and the extent of all of them.

    `scale` is how many times larger than life the drawing is on the page. A shape may carry the
    name of the quantity that it draws, so that a page's numbers can be held against its sizes;
    `side` says which of its sides that is, `width` or `height`, where they differ.
    """

    def __init__(self, scale: float = 1.0) -> None:
        self.scale = scale
        #: left, top, right and bottom of all that is drawn
        self.extent: Extent = _NOTHING
        self.last: Extent = _NOTHING
        #: the class names of all that is drawn
        self.looks: set[str] = set()
        self._shapes: list[ElementTree.Element] = []

    @contextmanager
    def thing(self, name: str, half: str = "", look: str = "thing") -> Iterator[None]:
        """What is drawn within is one thing: a part, or one half of a clasp; or what names it.

        After it `last` is the extent of that thing alone.
        """
        around, before, self.extent = self._shapes, self.extent, _NOTHING
        named = {"class": look, "data-part": name} | ({"data-half": half} if half else {})
        group = ElementTree.Element("g", named)
        self._shapes = []
        yield
        group.extend(self._shapes)
        self._shapes = around
        around.append(group)
        self.last, self.extent = self.extent, before
        self.hold(*self.last)

    def paper(self, mm: float) -> float:
        """Millimetres on paper as millimetres life-size."""
        return mm / self.scale

    def circle(self, x: float, y: float, r: float, look: str, quantity: str = "") -> None:
        """A circle about (x, y)."""
        self.hold(x - r, y - r, x + r, y + r)
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
        self.hold(x - width / 2, y - height / 2, x + width / 2, y + height / 2)
        inner = max(width - 2 * wire, 0.02), max(height - 2 * wire, 0.02)
        rims = f"{_rounded(x, y, width, height)} {_rounded(x, y, *inner)}"
        self._add("path", look, quantity, d=rims, **{"fill-rule": "evenodd"})

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
        self.hold(x, y, x + width, y + height)
        more: dict[str, float | str] = {"data-side": side} if side else {}
        more |= {"rx": corner} if corner else {}
        self._add("rect", look, quantity, x=x, y=y, width=width, height=height, **more)

    def rounded(
        self,
        x: float,
        y: float,
        width: float,
        height: float,
        look: str,
        corner: Spot,
        turn: float = 0,
    ) -> None:
        """A box about (x, y) with round corners, turned clockwise by so many degrees."""
        cos, sin = abs(math.cos(math.radians(turn))), abs(math.sin(math.radians(turn)))
        across, down = (width * cos + height * sin) / 2, (width * sin + height * cos) / 2
        self.hold(x - across, y - down, x + across, y + down)
        rx, ry = corner
        at = {"x": x - width / 2, "y": y - height / 2, "width": width, "height": height}
        self._add("rect", look, "", **at, rx=rx, ry=ry, **_turned(x, y, turn))

    def ellipse(self, x: float, y: float, rx: float, ry: float, look: str, turn: float = 0) -> None:
        """An ellipse about (x, y), turned clockwise by so many degrees."""
        reach = max(rx, ry) if turn else 0.0
        self.hold(x - (reach or rx), y - (reach or ry), x + (reach or rx), y + (reach or ry))
        self._add("ellipse", look, "", cx=x, cy=y, rx=rx, ry=ry, **_turned(x, y, turn))

    def line(
        self, x1: float, y1: float, x2: float, y2: float, look: str, quantity: str = ""
    ) -> None:
        """A straight line."""
        self.hold(min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2))
        self._add("line", look, quantity, x1=x1, y1=y1, x2=x2, y2=y2)

    def curve(self, points: Sequence[Spot], look: str, quantity: str = "", side: str = "") -> None:
        """A line through points; close it by naming the first again at the end."""
        self._path([points], look, quantity, side, closed=points[0] == points[-1])

    def area(self, outlines: Sequence[Sequence[Spot]], look: str) -> None:
        """What lies within an odd number of closed outlines: a ring within two circles."""
        self._path(outlines, look, closed=True, **{"fill-rule": "evenodd"})

    def strokes(self, lines: Sequence[tuple[Spot, Spot]], look: str) -> None:
        """Many short straight lines of one look, as one shape; nothing where there are none."""
        if lines:
            self._path(lines, look)

    def text(
        self,
        x: float,
        y: float,
        words: str,
        look: str = "words",
        size: float = WORDS,
        anchor: str = "middle",
    ) -> None:
        """Words of a height in mm on paper, whatever the scale, with their middle at height y."""
        height = self.paper(size)
        base = y + height * _HALF_HIGH
        self.hold(*self.words_extent(x, y, words, size, anchor))
        placed: dict[str, float | str] = {"font-size": height, "text-anchor": anchor}
        self._add("text", look, "", words, x=x, y=base, **placed)

    def words_extent(
        self, x: float, y: float, words: str, size: float = WORDS, anchor: str = "middle"
    ) -> Extent:
        """The room that words take."""
        height, width = self.paper(size), self.paper(words_width(words, size))
        left = x - {"start": 0.0, "middle": width / 2, "end": width}[anchor]
        base = y + height * _HALF_HIGH
        return left, base - height, left + width, base + height / 3

    def hold(self, left: float, top: float, right: float, bottom: float) -> None:
        """Keep room within the extent of the drawing."""
        box = self.extent
        self.extent = (
            min(box[0], left), min(box[1], top), max(box[2], right), max(box[3], bottom),
        )  # fmt: skip

    def take(self, other: Canvas, look: str, name: str = "", *, again: bool = False) -> None:
        """All that another canvas holds, under a name by which it is shown `again`.

        There the style sheet finds the classes of the group alone, not those of what is round it.
        """
        self.hold(*other.extent)
        self.looks |= other.looks
        if again:
            self._shapes.append(ElementTree.Element("use", {"href": f"#{name}"}))
        else:
            group = ElementTree.Element(
                "g", {"class": f"drawing {look}"} | ({"id": name} if name else {})
            )
            group.extend(other._shapes)
            self._shapes.append(group)

    @property
    def paper_size(self) -> tuple[float, float]:
        """Width and height of the whole drawing on paper, mm, its white margin included."""
        left, top, right, bottom = self.extent
        return (
            (right - left) * self.scale + 2 * _MARGIN,
            (bottom - top) * self.scale + 2 * _MARGIN,
        )

    def svg(self, title: str, alt: str, look: str) -> str:
        """The drawing as an SVG element, with a title, and in words for readers who cannot see it.

        `look` is its class: what kind of drawing it is, and whether it is the `narrow` one.
        """
        margin = self.paper(_MARGIN)
        left, top, right, bottom = self.extent
        wide, high = right - left + 2 * margin, bottom - top + 2 * margin
        width, height = self.paper_size
        root = ElementTree.Element(
            "svg",
            {
                "xmlns": "http://www.w3.org/2000/svg",
                "viewBox": f"{left - margin:.6g} {top - margin:.6g} {wide:.6g} {high:.6g}",
                "width": f"{width:.6g}mm",
                "height": f"{height:.6g}mm",
                "role": "img",
                "data-scale": f"{self.scale:g}",
                "class": f"drawing {look}",
            },
        )
        ElementTree.SubElement(root, "title").text = title
        ElementTree.SubElement(root, "desc").text = alt
        root.extend(self._shapes)
        return ElementTree.tostring(root, encoding="unicode")

    def _path(
        self,
        lines: Iterable[Sequence[Spot]],
        look: str,
        quantity: str = "",
        side: str = "",
        *,
        closed: bool = False,
        **more: str,
    ) -> None:
        """One shape of several lines, each through its points."""
        stretches = []
        for points in lines:
            for x, y in points:
                self.hold(x, y, x, y)
            through = " L ".join(f"{x:.5g} {y:.5g}" for x, y in points)
            stretches.append(f"M {through}{' Z' if closed else ''}")
        more |= {"data-side": side} if side else {}
        self._add("path", look, quantity, d=" ".join(stretches), **more)

    def _add(
        self, tag: str, look: str, quantity: str, words: str = "", /, **at: float | str
    ) -> None:
        attributes = {"class": look}
        names, _, own = look.partition(" #")
        if own:
            attributes = {"class": names, "style": f"fill:#{own}"}
        self.looks.update(names.split())
        attributes |= {"data-quantity": quantity} if quantity else {}
        attributes |= {
            key: value if isinstance(value, str) else f"{value:.6g}" for key, value in at.items()
        }
        shape = ElementTree.Element(tag, attributes)
        shape.text = words or None
        self._shapes.append(shape)


def _turned(x: float, y: float, degrees: float) -> dict[str, str]:
    """What turns a shape about (x, y), clockwise."""
    return {"transform": f"rotate({degrees:.4g} {x:.6g} {y:.6g})"} if degrees else {}


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
