"""What all drawings share: marks, scales and the check bar."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest

from pages import looks, parsed, words_of
from wellstrung.drawing import marks
from wellstrung.drawing.canvas import Canvas
from wellstrung.drawing.marks import SCALES, Mark


def test_the_shape_of_a_mark_shows_its_level() -> None:
    canvas = Canvas()
    marks.mark(canvas, 0, 0, Mark(1, "error"))
    marks.mark(canvas, 9, 0, Mark(2, "warning"))
    found = looks(parsed(canvas.svg("t", "a", "piece")), "mark")
    assert [shape.tag.rpartition("}")[2] for shape in found] == ["circle", "rect"]


@pytest.mark.parametrize("scale", SCALES)
def test_a_bar_is_as_long_as_its_words_say_on_the_piece_and_on_paper(scale: float) -> None:
    canvas = Canvas(scale)
    marks.check_bar(canvas, 0, 0)
    tree = parsed(canvas.svg("t", "a", "piece"))
    width = float(looks(tree, "bar")[0].get("width", ""))
    [(words, _)] = words_of(tree)
    length, *paper = (float(one) for one in re.findall(r"([\d.e+]+) mm", words))
    assert width == pytest.approx(length)
    assert (paper or [length])[0] == pytest.approx(width * scale, rel=5e-3)
    assert 20 <= width * scale <= 50.0001
    assert marks.stated(scale) in words


@pytest.mark.parametrize(("before", "after"), list(pairwise(SCALES)))
def test_a_body_that_just_fits_at_a_scale_is_drawn_at_it(before: float, after: float) -> None:
    paper = (145.0, 95.0)
    for width, height in ((145 / before, 1e-9), (1e-9, 95 / before)):
        assert marks.fitting(width * 0.999, height * 0.999, paper, most=SCALES[0]) == before
        assert marks.fitting(width * 1.001, height * 1.001, paper, most=SCALES[0]) == after
