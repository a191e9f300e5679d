"""A drawing that stands alone: with its style in it, on a light ground, for any program to show.

A page's style sheet has names for colours, and lines as thick on paper at any scale. Programs that
show or print pictures know neither: here both are written out.
"""

from __future__ import annotations

import re
from functools import cache
from importlib import resources
from xml.etree import ElementTree

from wellstrung.drawing.canvas import Canvas

#: what a sheet says of other pages than light ones, of names, and of what only browsers know
_QUERY = re.compile(r"@media [^{]*\{.*?\n\}\n", re.DOTALL)
_NAMED = re.compile(r"(--[a-z0-9-]+): ([^;]+);")
_USED = re.compile(r"var\((--[a-z0-9-]+)\)")
_THICK = re.compile(r"([\d.]+)mm")
_RULE = re.compile(r"^(\.drawing|\.piece) [^{]*\{[^{}]*\}", re.MULTILINE)


def alone(canvas: Canvas, title: str, alt: str) -> str:
    """A canvas as an SVG file of its own; it is as large as its paper."""
    root = ElementTree.fromstring(canvas.svg(title, alt, "piece"))
    root.set("xmlns", "http://www.w3.org/2000/svg")
    for one in root.iter():
        one.tag = one.tag.rpartition("}")[2]
    left, top, wide, high = root.get("viewBox", "").split()
    sheet, ground = _sheet(canvas.scale)
    style = ElementTree.Element("style")
    style.text = sheet
    paper = {"x": left, "y": top, "width": wide, "height": high, "style": f"fill:{ground}"}
    root[2:2] = [style, ElementTree.Element("rect", paper)]
    return (
        '<?xml version="1.0" encoding="UTF-8"?>\n<!-- by wellstrung -->\n'
        + ElementTree.tostring(root, encoding="unicode")
    )


def _sheet(scale: float) -> tuple[str, str]:
    """The rules for a light ground at a scale, and the colour of that ground."""
    text, named = _light()
    plain = _USED.sub(lambda one: named[one[1]], text)
    return _THICK.sub(lambda one: f"{float(one[1]) / scale:.4g}", plain), named["--paper"]


@cache
def _light() -> tuple[str, dict[str, str]]:
    """The rules of the sheets for light pages, and what their names stand for."""
    folder = resources.files("wellstrung.drawing")
    sheets = [folder.joinpath(name).read_text("utf-8") for name in ("drawing.css", "piece.css")]
    text = _QUERY.sub("", re.sub(r"/\*.*?\*/", "", "\n".join(sheets), flags=re.DOTALL))
    rules = [rule[0] for rule in _RULE.finditer(text) if "--" not in rule[0].replace("var(--", "")]
    plain = "\n".join(rules).replace("vector-effect: non-scaling-stroke; ", "")
    return plain, dict(_NAMED.findall(text))
