"""The words and marks on a drawn piece: names, remarks, a ruler below it, and the check bar."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Sequence
from string import ascii_lowercase

from wellstrung.common.places import Place
from wellstrung.drawing import marks
from wellstrung.drawing.canvas import WORDS, Canvas, words_width
from wellstrung.drawing.key import draw_key
from wellstrung.drawing.marks import Mark, Room
from wellstrung.drawing.piece import labels
from wellstrung.drawing.piece.body import Body, Shown
from wellstrung.drawing.piece.labels import Label
from wellstrung.drawing.piece.stretches import WORKED
from wellstrung.judging.result import PlanResult, Remark
from wellstrung.model.parts import Part
from wellstrung.subjects.chain import of_cups

#: the least that a step of a ruler takes on paper, and the least that it counts, mm
_LEAST_STEP, _CENTIMETRE = 2.6, 10.0
#: what marks and lines beside words take at least, mm on paper
_MARKS = 16.0
#: a room too low for a key of beads, mm on paper
_LOW = 40.0


class Annotations:
    """Names, marks, ruler, bar and legend of one drawing; `marked` are the remarks with a mark.

    No words are wider than the room, mm on paper; where it is low, beads have no key. A drawing
    that has no room for words beside its things has `letters` there, and the words below.
    """

    def __init__(
        self, result: PlanResult, body: Body, canvas: Canvas, room: Room, *, letters: bool = False
    ) -> None:
        width, high = room
        self.numbered = dict(enumerate(result.numbered, 1))
        self.length = result.quantities.get("piece.length")
        self.body, self.canvas = body, canvas
        self.marked: set[int] = set()
        self._halves = [one for one in body.shown if one.half]
        self._of_part: dict[str, list[Shown]] = {}
        for one in body.shown:
            self._of_part.setdefault(one.part.name, []).append(one)
        self._longest = int((width - _MARKS) / words_width("m"))
        self._key: dict[str, str] | None = {} if letters else None
        self._label()
        if not (body.close or body.upright):
            self._ruler()
        left, _, _, bottom = self.canvas.extent
        on_paper = width > 2 * marks.LONGEST_BAR
        marks.check_bar(canvas, left, bottom + canvas.paper(4), on_paper=on_paper)
        right = max(canvas.extent[2], left + canvas.paper(width - 2.5))
        y = bottom + canvas.paper(10.5)
        y = marks.legend(canvas, left, y, right, canvas.looks)
        for letter, words in (self._key or {}).items():
            canvas.text(left + canvas.paper(0.4), y, letter, "label", anchor="start")
            canvas.text(left + canvas.paper(7), y, words, "label", anchor="start")
            y += canvas.paper(WORDS * 1.5)
        if high > _LOW:
            draw_key(canvas, body.sizes, left, y - canvas.paper(WORDS / 2), right - left)

    def _label(self) -> None:
        """Names with their marks: of all parts close up, else of what is worked or marked.

        Where nothing hangs they stand by turns above and below the run.
        """
        body, canvas, right = self.body, self.canvas, self.body.hanging.right
        top, bottom = body.edges
        marked = self._marks()
        named: set[Part] = set()
        run: list[Label] = []
        hung: list[Label] = []
        for one in body.shown:
            first = one.part not in named
            named.add(one.part)
            if (
                body.close
                or body.upright
                or one in marked
                or (not one.hung and _is_worked(one.part))
            ):
                words = self._cut(body.words(one, size=first or bool(one.half)))
                label = Label(
                    one.x, one.y, words, tuple(marked.get(one, ())), one.part.name, one.half,
                    one.level,
                )  # fmt: skip
                (hung if one.hung else run).append(label)
        if body.upright:
            labels.beside(canvas, [*run, *hung], max(canvas.extent[2], right))
            return
        over, under = run, []
        if body.close and not hung:
            over = run[::2]
            under = [label.other_side if label.level else label for label in run[1::2]]
        labels.above(canvas, over, top)
        labels.below(canvas, under, bottom)
        labels.beside(canvas, hung, right, bottom)

    def _cut(self, words: str) -> str:
        """Words, with their end left out where they would be wider than the drawing.

        Or a letter that stands for them.
        """
        if len(words) > self._longest:
            words = f"{words[: self._longest - 1]}…"
        if self._key is None:
            return words
        about, number = divmod(len(self._key), 26)
        letter = ascii_lowercase[number] + (str(about) if about else "")
        self._key[letter] = words
        return letter

    def _marks(self) -> dict[Shown, list[Mark]]:
        """The marks of remarks, by the thing shown that each is about."""
        found: dict[Shown, list[Mark]] = defaultdict(list)
        for number, remark in self.numbered.items():
            at = self._place_of(remark)
            if at is not None:
                found[at].append(Mark(number, remark.level))
                self.marked.add(number)
        return found

    def _place_of(self, remark: Remark) -> Shown | None:
        """The thing that a remark means, if it is shown.

        The part that the remark's place lies in, or the first of its parts; of several such things
        the half, the place of the run or the hung line that its places lie in, and then the one
        that meets most of its other parts.
        """
        parts = self.body.plan.parts
        places = (remark.place, *remark.also)
        halves = {one.called for one in self._halves if _in_half(one, places)}
        names = {*remark.parts, *halves}

        def aside(name: str) -> bool:
            """Whether the remark's place lies elsewhere than in what the plan says of a part."""
            return name not in parts or not parts[name].node.place.holds(remark.place)

        def meant(one: Shown) -> tuple[bool, bool, bool, int]:
            in_line = any(one.place.holds(place) for place in places)
            first = _in_half(one, places[:1])
            return first, one.called in halves, in_line, len(one.near & names)

        for name in sorted(remark.parts, key=aside):
            if mine := self._of_part.get(name):
                return max(mine, key=meant)
        return None

    def _ruler(self) -> None:
        """A ruler in cm below the run, as long as the piece, and the length asked for."""
        canvas, paper = self.canvas, self.canvas.paper
        end = self.body.run[-1].end
        y = canvas.extent[3] + paper(6)
        is_whole = self.length is not None and abs(self.length.middle - end) < 0.01
        quantity = ("piece.length", "width") if is_whole else ("", "")
        canvas.box(0, y, end, paper(0.9), "ruler", *quantity)
        step = marks.round_length(max(paper(_LEAST_STEP), _CENTIMETRE))
        for count in range(math.floor(end / step) + 1):
            long = count % 5 == 0
            canvas.line(count * step, y, count * step, y + paper(3.4 if long else 2.2), "tick")
            if long:
                words = f"{count * step / _CENTIMETRE:g}" + (" cm" if count == 0 else "")
                canvas.text(count * step, y + paper(6.0), words)
        self._mark_whole(end + paper(2), y)
        goal = self.body.plan.goal
        if goal is not None and goal.field == "finished_length":
            low, high = goal.window
            canvas.box(low, y - paper(1.8), high - low, paper(1.3), "wanted")
            canvas.text(high, y - paper(4.2), f"wanted: {goal.text}", anchor="end")

    def _mark_whole(self, x: float, y: float) -> None:
        """Remarks on the piece as a whole, at the end of the ruler."""
        reach = self.canvas.paper(marks.REACH)
        for number, remark in self.numbered.items():
            if not remark.parts:
                marks.mark(self.canvas, x + reach, y, Mark(number, remark.level))
                x += 2.3 * reach
                self.marked.add(number)


def _in_half(one: Shown, places: Sequence[Place]) -> bool:
    """Whether one of these places lies in the fields of this half of a clasp."""
    if not one.half:
        return False
    nodes = map(one.part.node_at, (one.half, *one.part.kind.eyes[one.half].called))
    return any(node.place.holds(place) for node in nodes if node is not None for place in places)


def _is_worked(part: Part) -> bool:
    return part.kind.role in WORKED or part.traits.made_by == "weave" or of_cups(part)
