"""The canvas: its box, its scale, and words that cannot become markup."""

from __future__ import annotations

from xml.etree import ElementTree

import pytest

from wellstrung.drawing.canvas import Canvas


def drawn(canvas: Canvas) -> ElementTree.Element:
    return ElementTree.fromstring(canvas.svg("cap", "a rope in a cap", "piece"))


def test_a_millimetre_is_a_millimetre_times_the_scale() -> None:
    canvas = Canvas(scale=5)
    canvas.box(0, 0, 10, 4, "metal", "cap.bore")
    root = drawn(canvas)
    assert root.get("width") == "52mm" and root.get("height") == "22mm"  # a margin of 1 mm about
    assert root.get("viewBox") == "-0.2 -0.2 10.4 4.4"
    assert root[2].get("data-quantity") == "cap.bore"


def test_every_shape_lies_within_the_box() -> None:
    canvas = Canvas()
    canvas.circle(0, 0, 3, "bead")
    canvas.ellipse(10, 0, 2, 5, "bead")
    canvas.line(-4, 0, 0, 0, "thread")
    canvas.curve([(0, 7), (1, 8), (0, 7)], "thread")
    assert canvas.extent == (-4, -5, 12, 8)
    assert canvas.paper_size == (12 + 4 + 2, 8 + 5 + 2)


def test_words_keep_their_height_on_the_page_at_any_scale() -> None:
    for scale in (1, 5):
        canvas = Canvas(scale=scale)
        canvas.text(0, 0, "rope", "label", size=2.5)
        assert float(drawn(canvas)[2].get("font-size", "")) * scale == pytest.approx(2.5)


def test_words_cannot_become_markup() -> None:
    canvas = Canvas()
    canvas.text(0, 0, "</text><script>alert(1)</script>", "label")
    svg = canvas.svg("<b>", "&", "piece")
    assert "<script>" not in svg and "<b>" not in svg
    assert drawn(canvas)[2].text == "</text><script>alert(1)</script>"
