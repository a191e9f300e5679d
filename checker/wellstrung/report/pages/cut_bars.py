"""Lengths of chain drawn as bars, with the pieces to cut from each."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.drawing import Figure
from wellstrung.drawing.canvas import Canvas, words_width
from wellstrung.lists import cutting
from wellstrung.lists.cutting import Bar, ChainCuts
from wellstrung.report import cuts_list

#: how wide the longest length of chain is drawn on the page and on a phone, mm, and how high
_WIDE, _PHONE, _HIGH = 150.0, 91.0, 7.0
#: of so many pieces the links are counted off, so that a list stays one
_COUNTED = 60
#: the class that a stretch of a length is drawn with
_LOOKS = {"piece": "link", "lost": "lost", "left": "bar"}


def cut_bars(chain: ChainCuts) -> Iterator[Figure]:
    """A drawing for each length of chain, its pieces in turn, and the links to count in words."""
    longest = max((bar.length for bar in chain.bars), default=1.0)
    for number, bar in enumerate(chain.bars, 1):
        steps = tuple(
            cuts_list.counted_off(piece, inches=bar.inches) for piece in bar.pieces[:_COUNTED]
        )
        if len(bar.pieces) > _COUNTED:
            steps = (*steps, f"go on so for {len(bar.pieces) - _COUNTED} more")
        when, good = cuts_list.WHEN[chain.when], cuts_list.how_good(chain)
        words = f"{when}; {good}; {cuts_list.source(bar)}; {cuts_list.begins(bar)}"
        several = f", length {number} of {len(chain.bars)}" if len(chain.bars) > 1 else ""
        title = f"`{chain.chain}`{several}"
        alt = ". ".join((f"{title}: {words}", *steps))
        said = ". ".join((words, *steps))
        svg, narrow = (
            _drawn(bar, width / longest).svg(title, said, f"section {look}")
            for width, look in ((_WIDE, "roomy"), (_PHONE, "narrow"))
        )
        yield Figure(title, alt, words, svg, narrow=narrow, steps=steps)


def _drawn(bar: Bar, per_mm: float) -> Canvas:
    """The length as a bar on paper; numbers stand in the pieces, crosses in what is lost.

    Where a number has no room, one piece after another is counted along the bar.
    """
    canvas, number = Canvas(), 0
    for what, start, end in cutting.spans(bar):
        left, wide = start * per_mm, (end - start) * per_mm
        canvas.box(left, 0, wide, _HIGH, _LOOKS[what])
        if what == "piece":
            number += 1
            if words_width(str(number)) <= wide:
                canvas.text(left + wide / 2, _HIGH / 2, str(number), "label")
        elif what == "lost":
            canvas.line(left, 0, left + wide, _HIGH, "scissors")
            canvas.line(left, _HIGH, left + wide, 0, "scissors")
    return canvas
