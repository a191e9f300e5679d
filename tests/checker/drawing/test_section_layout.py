"""How a section lays out its hatching and the words of its dimensions."""

from __future__ import annotations

from itertools import pairwise

import pytest

from pages import looks, parsed, words_of
from wellstrung.drawing import outlines
from wellstrung.drawing.marks import Mark
from wellstrung.drawing.sections.section import WIDTH, Section


def test_a_thing_between_two_lines_of_hatching_is_hatched_more_closely() -> None:
    section = Section(100.0, 90.0)
    thing = outlines.box(1.2, 0.0, 1.0, 1.0)
    assert not outlines.hatch([thing], section.paper(1.4), 45.0)
    section.cut([thing], "metal")
    assert looks(parsed(section.canvas.svg("t", "a", "section")), "metal-lines")


def test_words_of_a_dimension_stand_below_it_where_beside_it_they_would_widen_the_section() -> None:
    section = Section(10.0, 5.0)
    section.canvas.box(0.0, 0.0, 10.0, 5.0, "metal")
    for words in ("wire 1 mm", "with room for four passes"):
        section.across(8.0, 10.0, 5.0, words)
    tree = parsed(section.svg("t", "a"))
    boxes = dict(words_of(tree))
    short, long = boxes["wire 1 mm"], boxes["with room for four passes"]
    assert short.left > 10 > long.left
    assert float(tree.get("width", "").removesuffix("mm")) <= WIDTH


@pytest.mark.parametrize("apart", [0.0, 0.4, 1.0, 1.6])
def test_no_mark_stands_on_another(apart: float) -> None:
    """Three marks that begin to the left of one, as wide as they are."""
    section = Section(10.0, 5.0)
    section.mark(5.0, 1.0, [Mark(1, "error")])
    at = 5.0 - apart * section.paper(6.0)
    section.mark(at, 1.0, [Mark(number, "error") for number in (2, 3, 4)])
    section.svg("t", "a")
    discs = looks(parsed(section.canvas.svg("t", "a", "section")), "mark")
    spots = sorted(float(disc.get("cx", "")) for disc in discs)
    assert len(spots) == 4
    assert all(right - left > section.paper(5.9) for left, right in pairwise(spots))
