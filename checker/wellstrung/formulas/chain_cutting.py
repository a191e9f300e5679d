"""Pieces of chain cut from lengths on hand: as many as can be had, by first fit and by a search.

Counting along the pattern, worked out for this project: see `chain`.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence

from msgspec import Struct, field

from wellstrung.formulas.chain import begins_behind, length_of


def pieces_had(
    lengths: Sequence[float],
    pattern: Sequence[str],
    pieces: Sequence[Sequence[str]],
    insides: Mapping[str, float],
    wires: Mapping[str, float],
    *,
    soldered: bool,
) -> int:
    """How many of the pieces these lengths give, laid out as `laid_out` does.

    >>> pieces_had([44.0], ['loop', 'bar'], [['loop', 'bar']] * 3, {'loop': 4.0, 'bar': 8.0},
    ...     {'loop': 1.0, 'bar': 1.0}, soldered=True)
    2
    """
    laid = laid_out(lengths, pattern, pieces, insides, wires, soldered=soldered)
    return sum(len(one) for one in laid)


def laid_out(
    lengths: Sequence[float],
    pattern: Sequence[str],
    pieces: Sequence[Sequence[str]],
    insides: Mapping[str, float],
    wires: Mapping[str, float],
    *,
    soldered: bool,
) -> list[list[int]]:
    """For each length the numbers of the pieces to cut from it, in the order they are cut.

    The longest go first, each where it first fits. For pieces all alike that is the most there can
    be; where some are left over, orders of cutting are searched, `_MOST_LOOKS` pieces long: enough
    for a class. Every length is taken to begin with the first link of the piece cut from it.

    >>> laid_out([44.0, 14.0], ['loop', 'bar'], [['loop', 'bar']] * 3, {'loop': 4.0, 'bar': 8.0},
    ...     {'loop': 1.0, 'bar': 1.0}, soldered=True)
    [[0, 1], [2]]
    """
    cutter = _Cutter(lengths, pattern, insides, wires, soldered)
    first = cutter.first_fit(pieces)
    had = sum(len(one) for one in first)
    if had == len(pieces) or len({tuple(links) for links in pieces}) == 1:
        return first
    best = cutter.searched(pieces)
    return best if sum(len(one) for one in best) > had else first


#: So often a search for an order of cutting looks whether a piece still fits.
_MOST_LOOKS = 30_000
#: Of a length: the link behind its last piece, the insides used up to there, and its first wall.
_End = tuple[int, float, float]
#: While searching: which length is cut, where it ends, and how many of each kind are left.
_State = tuple[int, "_End | None", tuple[int, ...]]
#: The kind to cut next (none: go on to the next length), and the state after it.
_Way = tuple["int | None", _State]


class _Cutter(Struct, frozen=True):
    """Cuts pieces from lengths of one chain."""

    lengths: Sequence[float]
    pattern: Sequence[str]
    insides: Mapping[str, float]
    wires: Mapping[str, float]
    soldered: bool
    #: by the link behind a piece and the links of the next: where that begins, and what is lost
    _behind: dict[tuple[int, tuple[str, ...]], tuple[int, float]] = field(default_factory=dict)
    _own: dict[tuple[str, ...], float] = field(default_factory=dict)

    def cut(self, length: float, end: _End | None, links: tuple[str, ...]) -> _End | None:
        """Where a length ends once a piece more is cut from it; None where it is too short."""
        if links not in self._own:
            self._own[links] = sum(self.insides[link] for link in links)
        start, used = self._begins(end, links)
        used += self._own[links]
        first_wall = end[2] if end else self.wires[links[0]]
        stop = (start + len(links)) % len(self.pattern)
        fits = used + first_wall + self.wires[self.pattern[stop - 1]] <= length + 1e-6
        return (stop, used, first_wall) if fits else None

    def _begins(self, end: _End | None, links: tuple[str, ...]) -> tuple[int, float]:
        """Where the next piece begins on a length, and the insides used or lost up to there."""
        if end is None:
            return list(self.pattern).index(links[0]), 0.0
        key = (end[0], links)
        if key not in self._behind:
            self._behind[key] = begins_behind(
                self.pattern, links, end[0], self.insides, soldered=self.soldered
            )
        start, lost = self._behind[key]
        return start, end[1] + lost

    def first_fit(self, pieces: Sequence[Sequence[str]]) -> list[list[int]]:
        """The longest first, each from the first length that still gives it."""
        ends: list[_End | None] = [None] * len(self.lengths)
        laid: list[list[int]] = [[] for _ in self.lengths]
        order = sorted(
            range(len(pieces)), key=lambda one: -length_of(pieces[one], self.insides, self.wires)
        )
        #: of each kind of piece the first length that may still give one: lengths only get shorter
        first: dict[tuple[str, ...], int] = {}
        for piece in order:
            links = tuple(pieces[piece])
            for number in range(first.get(links, 0), len(self.lengths)):
                end = self.cut(self.lengths[number], ends[number], links)
                first[links] = number
                if end is not None:
                    ends[number] = end
                    laid[number].append(piece)
                    break
            else:
                first[links] = len(self.lengths)
        return laid

    def searched(self, pieces: Sequence[Sequence[str]]) -> list[list[int]]:
        """The most pieces over every order of cutting, length by length."""
        counts = Counter(tuple(links) for links in pieces)
        kinds = list(counts)
        #: of each state the most pieces from there on, and the way to go
        known: dict[_State, tuple[int, _Way | None]] = {}
        start: _State = (0, None, tuple(counts.values()))
        # no recursion: it would be as deep as there are pieces. Ways are looked for first; when
        # what they lead to is known, the best is taken
        todo: list[tuple[_State, list[_Way] | None]] = [(start, None)]
        looks = 0
        while todo:
            state, ways = todo.pop()
            if state in known or (ways is None and looks >= _MOST_LOOKS):
                continue  # what is found by then stands
            if ways is None:
                ways = self._ways(state, kinds)
                looks += len(kinds)
                todo.append((state, ways))
                todo += [(then, None) for _, then in reversed(ways)]
            else:
                had = [known.get(then, (0,))[0] + (kind is not None) for kind, then in ways]
                best = max(had, default=0)
                known[state] = best, ways[had.index(best)] if ways else None
        laid: list[list[int]] = [[] for _ in self.lengths]
        numbers = {
            kind: [at for at, links in enumerate(pieces) if tuple(links) == wanted][::-1]
            for kind, wanted in enumerate(kinds)
        }
        state = start
        while (way := known.get(state, (0, None))[1]) is not None:
            kind, then = way
            if kind is not None:
                laid[state[0]].append(numbers[kind].pop())
            state = then
        return laid

    def _ways(self, state: _State, kinds: Sequence[tuple[str, ...]]) -> list[_Way]:
        """How cutting can go on: to leave the length at hand, or to cut a kind from it."""
        number, end, left = state
        if number == len(self.lengths) or not any(left):
            return []
        ways: list[_Way] = [(None, (number + 1, None, left))]
        for kind, links in enumerate(kinds):
            cut = self.cut(self.lengths[number], end, links) if left[kind] else None
            if cut is not None:
                fewer = (*left[:kind], left[kind] - 1, *left[kind + 1 :])
                ways.append((kind, (number, cut, fewer)))
        return ways
