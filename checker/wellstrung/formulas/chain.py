"""Chain: a pattern of links that repeats, pieces cut from it in phase, and what cutting costs.

Counting, worked out for this project. A piece is named by the link it starts with and by how many
links it has. Cutting a soldered chain goes through a link and loses it; an open link is opened and
kept. A piece can be turned end for end, so the next one begins with its first link or with its
last: links are skipped until the pattern comes round to either.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from itertools import islice

from msgspec import Struct


def links_from(pattern: Sequence[str], first: str) -> Iterator[str]:
    """The links of an endless chain from the first `first` on; ValueError if it has none.

    >>> list(islice(links_from(['loop', 'bar'], 'bar'), 3))
    ['bar', 'loop', 'bar']
    """
    at = list(pattern).index(first)
    while True:
        yield pattern[at]
        at = (at + 1) % len(pattern)


def piece(pattern: Sequence[str], first: str, counts: int | Mapping[str, int]) -> list[str]:
    """The links of one piece: so many links, or so many of one type, ending with the last of them.

    ValueError if there is no such link in the pattern, or if the count is below one.

    >>> piece(['loop', 'bar'], 'loop', {'bar': 2})
    ['loop', 'bar', 'loop', 'bar']
    """
    if isinstance(counts, int):
        return list(islice(links_from(pattern, first), counts))
    ((kind, wanted),) = counts.items()
    if kind not in pattern or wanted < 1:
        raise ValueError(f"no piece has {wanted} of `{kind}`: the pattern is {' '.join(pattern)}")
    links: list[str] = []
    for link in links_from(pattern, first):
        links.append(link)
        if links.count(kind) == wanted:
            return links
    raise AssertionError("links_from never ends")


def in_phase(pattern: Sequence[str], links: Sequence[str], every: int) -> bool:
    """Whether counting off `every` links from piece to piece always begins a right piece.

    >>> in_phase(['loop', 'bar'], ['loop', 'bar'], 3), in_phase(['loop', 'bar'], ['loop'], 3)
    (True, False)
    """
    return not out_of_phase(pattern, links, every)


def out_of_phase(pattern: Sequence[str], links: Sequence[str], every: int) -> list[tuple[int, str]]:
    """The pieces that are wrong where `every` links are counted off: their number, first link.

    >>> out_of_phase(['loop', 'bar'], ['loop'], 3)
    [(2, 'bar')]
    """
    start = list(pattern).index(links[0])
    starts = {number: start + number * every for number in range(len(pattern))}
    return [
        (number + 1, pattern[at % len(pattern)])
        for number, at in starts.items()
        if not _is_at(pattern, at, links)
    ]


def stride(pattern: Sequence[str], links: Sequence[str], *, soldered: bool) -> int:
    """Links to count off from the start of one piece to the start of the next, lost ones included.

    >>> stride(['loop', 'bar'], ['loop', 'bar', 'loop'], soldered=True)
    4
    >>> stride(['loop', 'bar'], ['loop', 'bar'], soldered=True)
    3
    >>> stride(['loop', 'bar', 'disc'], ['loop', 'bar', 'disc'], soldered=True)
    6
    >>> stride(['loop', 'bar'], ['loop', 'bar'], soldered=False)
    2
    """
    every = len(links) + (1 if soldered else 0)
    while not in_phase(pattern, links, every):
        every += 1
    return every


def _links_at(pattern: Sequence[str], start: int, count: int) -> list[str]:
    return [pattern[(start + step) % len(pattern)] for step in range(count)]


def _is_at(pattern: Sequence[str], start: int, links: Sequence[str]) -> bool:
    """Whether a piece of these links lies there, as it is or turned end for end."""
    found = _links_at(pattern, start, len(links))
    return list(links) in (found, found[::-1])


def run_of(pattern: Sequence[str], pieces: Sequence[Sequence[str]], *, soldered: bool) -> list[str]:
    """Every link from the first of the first piece to the last of the last, lost ones included.

    Between two pieces as few links are lost as can be.

    >>> run_of(['loop', 'bar'], [['loop'], ['loop']], soldered=True)
    ['loop', 'bar', 'loop']
    """
    if not pieces:
        return []
    places = list(_places(pattern, pieces, soldered=soldered))
    return _links_at(pattern, places[0].start, places[-1].stop - places[0].start)


def _places(
    pattern: Sequence[str], pieces: Sequence[Sequence[str]], *, soldered: bool
) -> Iterator[range]:
    """Where each piece lies along an endless chain, as close behind the one before as can be."""
    end = list(pattern).index(pieces[0][0])
    for number, links in enumerate(pieces):
        at = end + (1 if number and soldered else 0)
        # compare whole pieces, not first links: a pattern may hold the same link twice in a row
        while not _is_at(pattern, at, links):
            at += 1
        end = at + len(links)
        yield range(at, end)


def numbered(
    pattern: Sequence[str], pieces: Sequence[Sequence[str]], *, soldered: bool
) -> list[range]:
    """The links of each piece by number, counted from 1 at the first link of the first piece.

    The links between two pieces are lost.

    >>> numbered(['loop', 'bar'], [['loop', 'bar', 'loop']] * 2, soldered=True)
    [range(1, 4), range(5, 8)]
    """
    if not pieces:
        return []
    places = list(_places(pattern, pieces, soldered=soldered))
    before = places[0].start - 1
    return [range(place.start - before, place.stop - before) for place in places]


def least_lost(
    pattern: Sequence[str],
    links: Sequence[str],
    others: Sequence[Sequence[str]],
    insides: Mapping[str, float],
    *,
    soldered: bool,
) -> float:
    """The least that is lost, mm, between one of `others` and a piece of these links behind it.

    Counting along the pattern, worked out for this project.

    >>> least_lost(['loop', 'bar'], ['loop'], [['loop'], ['loop', 'bar', 'loop']],
    ...     {'loop': 4.0, 'bar': 8.0}, soldered=True)
    8.0
    """
    ends = {
        (start + len(other)) % len(pattern)
        for other in others
        for start in range(len(pattern))
        if _is_at(pattern, start, other)
    }
    behind = ((end, 0.0, 0.0) for end in ends)
    return min(_next(pattern, links, end, insides, soldered=soldered)[1] for end in behind)


def length_of(
    links: Sequence[str], insides: Mapping[str, float], wires: Mapping[str, float]
) -> float:
    """Length from outer end to outer end, mm, of links pulled taut: their insides and two walls.

    >>> length_of(['loop', 'bar'], {'loop': 4.0, 'bar': 12.0}, {'loop': 1.0, 'bar': 1.0})
    18.0
    """
    return sum(insides[link] for link in links) + wires[links[0]] + wires[links[-1]]


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
    be; where some are left over, orders of cutting are searched, `_MOST_STATES` of them: enough for
    a class. Every length is taken to begin with the first link of the piece cut from it.

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


_MOST_STATES = 20_000
#: Of a length: the link behind its last piece, the insides used up to there, and its first wall.
_End = tuple[int, float, float]
#: While searching: which length is cut, where it ends, and how many of each kind are left.
_State = tuple[int, "_End | None", tuple[int, ...]]


class _Cutter(Struct, frozen=True):
    """Cuts pieces from lengths of one chain."""

    lengths: Sequence[float]
    pattern: Sequence[str]
    insides: Mapping[str, float]
    wires: Mapping[str, float]
    soldered: bool

    def cut(self, length: float, end: _End | None, links: Sequence[str]) -> _End | None:
        """Where a length ends once a piece more is cut from it; None where it is too short."""
        start, used = _next(self.pattern, links, end, self.insides, soldered=self.soldered)
        used += sum(self.insides[link] for link in links)
        first_wall = end[2] if end else self.wires[links[0]]
        last = self.pattern[(start + len(links) - 1) % len(self.pattern)]
        fits = used + first_wall + self.wires[last] <= length + 1e-6
        return (start + len(links), used, first_wall) if fits else None

    def first_fit(self, pieces: Sequence[Sequence[str]]) -> list[list[int]]:
        """The longest first, each from the first length that still gives it."""
        ends: list[_End | None] = [None] * len(self.lengths)
        laid: list[list[int]] = [[] for _ in self.lengths]
        order = sorted(
            range(len(pieces)), key=lambda one: -length_of(pieces[one], self.insides, self.wires)
        )
        for piece in order:
            for number, length in enumerate(self.lengths):
                end = self.cut(length, ends[number], pieces[piece])
                if end is not None:
                    ends[number] = end
                    laid[number].append(piece)
                    break
        return laid

    def searched(self, pieces: Sequence[Sequence[str]]) -> list[list[int]]:
        """The most pieces over every order of cutting, length by length."""
        counts = Counter(tuple(links) for links in pieces)
        kinds = list(counts)
        #: of each state the most pieces from there on, and the kind to cut next (none: go on)
        known: dict[_State, tuple[int, int | None]] = {}

        def after(state: _State, kind: int) -> _State | None:
            number, end, left = state
            cut = self.cut(self.lengths[number], end, kinds[kind]) if left[kind] else None
            fewer = (*left[:kind], left[kind] - 1, *left[kind + 1 :])
            return (number, cut, fewer) if cut is not None else None

        def most(state: _State) -> int:
            number, _, left = state
            if number == len(self.lengths) or not any(left):
                return 0
            if state not in known:
                if len(known) >= _MOST_STATES:
                    return 0  # what is found by then stands
                known[state] = (0, None)
                best: tuple[int, int | None] = (most((number + 1, None, left)), None)
                for kind in range(len(kinds)):
                    then = after(state, kind)
                    if then is not None and 1 + most(then) > best[0]:
                        best = (1 + most(then), kind)
                known[state] = best
            return known[state][0]

        state: _State = (0, None, tuple(counts.values()))
        most(state)
        laid: list[list[int]] = [[] for _ in self.lengths]
        numbers = {
            kind: [at for at, links in enumerate(pieces) if tuple(links) == wanted][::-1]
            for kind, wanted in enumerate(kinds)
        }
        while state in known:
            kind = known[state][1]
            then = after(state, kind) if kind is not None else None
            if kind is not None and then is not None:
                laid[state[0]].append(numbers[kind].pop())
            state = then or (state[0] + 1, None, state[2])
        return laid


def _next(
    pattern: Sequence[str],
    links: Sequence[str],
    end: tuple[int, float, float] | None,
    insides: Mapping[str, float],
    *,
    soldered: bool,
) -> tuple[int, float]:
    """Where the next piece begins on a length, and the insides used or lost up to there."""
    if end is None:
        return list(pattern).index(links[0]), 0.0
    start = end[0] + (1 if soldered else 0)
    while not _is_at(pattern, start, links):
        start += 1
    return start, end[1] + sum(insides[link] for link in _links_at(pattern, end[0], start - end[0]))
