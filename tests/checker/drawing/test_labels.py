"""Labels: no words over other words, no line through words."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pages import Area, looks, parsed, words_of
from wellstrung.drawing.canvas import Canvas
from wellstrung.drawing.marks import Mark
from wellstrung.drawing.piece import labels
from wellstrung.drawing.piece.labels import Label

label = st.builds(
    Label,
    x=st.floats(0, 150),
    y=st.floats(0, 10),
    words=st.text("abcdefgh ", min_size=1, max_size=24),
    marks=st.lists(st.just(Mark(3, "error")), max_size=2).map(tuple),
)
Placing = Callable[[Canvas, list[Label], float], None]


@pytest.mark.parametrize("place", [labels.above, labels.below], ids=["above", "below"])
@pytest.mark.parametrize("scale", [0.25, 1.0, 3.0])
@given(several=st.lists(label, max_size=12))
def test_no_words_lie_over_words_and_no_line_crosses_them(
    place: Placing, scale: float, several: list[Label]
) -> None:
    canvas = Canvas(scale=scale)
    canvas.box(0, 0, 150, 10, "cloth")
    place(canvas, several, 0 if place is labels.above else 10)
    tree = parsed(canvas.svg("t", "a", "piece"))
    words = [area for text, area in words_of(tree) if text.strip() and not text.isdigit()]
    for index, one in enumerate(words):
        assert not any(one.meets(other) for other in words[index + 1 :])
    for line in looks(tree, "leader"):
        x = float(line.get("x1", ""))
        ends = sorted((float(line.get("y1", "")), float(line.get("y2", ""))))
        thin = Area(x - 0.01, ends[0], x + 0.01, ends[1])
        assert not any(thin.meets(area) for area in words)


@given(several=st.lists(label, max_size=12))
def test_labels_beside_stand_one_below_the_other(several: list[Label]) -> None:
    canvas = Canvas()
    canvas.box(0, 0, 150, 10, "cloth")
    labels.beside(canvas, several, 150, 10)
    words = [area for _, area in words_of(parsed(canvas.svg("t", "a", "piece")))]
    for index, one in enumerate(words):
        assert one.left > 150 and one.top >= 10
        assert not any(one.meets(other) for other in words[index + 1 :])
