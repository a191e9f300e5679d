"""The key of the beads in a drawing: a swatch for each, with its grain, its name and its colour.

The beads of a plan in; entries out, for a page that lists them, and the key drawn under a piece.
"""

from __future__ import annotations

from collections.abc import Iterable

from msgspec import Struct

from wellstrung.drawing.canvas import Canvas, words_width
from wellstrung.drawing.looks.beads import swatch
from wellstrung.drawing.looks.sizes import Sizes
from wellstrung.drawing.looks.tones import grain_of
from wellstrung.drawing.marks import Rows
from wellstrung.drawing.pen import Pen

#: a swatch and a row of the key, mm on paper, and white after an entry
SWATCH, ROW, _AIR = 3.2, 4.8, 4.0
#: no more beads are listed; the last entry counts the others
_MOST = 24
#: the longest that a name or a colour is shown, letters
_LONGEST = 40


class Entry(Struct, frozen=True):
    """A bead of the key: its name, what the key says, its colour, and how it is marked."""

    name: str
    words: str
    colour: str
    grain: str


def entries(sizes: Sizes, seen: Iterable[str] | None = None) -> list[Entry]:
    """The beads of a plan in its order: all, or those whose classes a canvas has `seen`."""
    classes = None if seen is None else set(seen)
    return [
        Entry(name, _words(sizes, name), sizes.colour(name), grain_of(number))
        for number, name in enumerate(sizes.plan.beads)
        if classes is None or f"b{number}" in classes
    ]


def _words(sizes: Sizes, name: str) -> str:
    bead = sizes.plan.beads[name]
    if not bead.has("colour"):
        return f"{_shown(name)}, in grey: no colour given"
    grey = "" if sizes.own_colour(name) else ", in grey"
    return f"{_shown(name)}: {_shown(bead.text('colour'))}{grey}"


def _shown(text: str, most: int = _LONGEST) -> str:
    """A text in the room that a key has for it."""
    return text if len(text) <= most else f"{text[: most - 1]}\N{HORIZONTAL ELLIPSIS}"


def draw_key(canvas: Canvas, sizes: Sizes, left: float, top: float, width: float) -> None:
    """The key of the beads on a canvas, in rows about so wide; nothing where it has no bead."""
    found = entries(sizes, canvas.looks)
    high = canvas.paper(ROW)
    rows = Rows(left, top + high / 2, left + width, high)
    most = int((width * canvas.scale - SWATCH - 2.0) / words_width("m"))
    for entry in found[:_MOST]:
        words = _shown(entry.words, most)
        room = canvas.paper(SWATCH + 1.0 + words_width(words))
        x, y = rows.place(room, canvas.paper(_AIR))
        middle = x + canvas.paper(SWATCH / 2)
        swatch(Pen(canvas, middle, y), sizes, entry.name, canvas.paper(SWATCH))
        canvas.text(x + canvas.paper(SWATCH + 1.0), y, words, anchor="start")
    if found[_MOST:]:
        more = f"and {len(found) - _MOST:,} more beads"
        canvas.text(left, rows.y + high, more, anchor="start")
