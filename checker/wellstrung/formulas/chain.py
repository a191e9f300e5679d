"""Chain: a pattern of links that repeats, pieces cut from it in phase, and what cutting costs.

Counting, worked out for this project. A piece is named by the link it starts with and by how many
links it has. Cutting a soldered chain goes through a link and loses it; an open link is opened and
kept. A piece can be turned end for end, so the next one begins with its first link or with its
last: links are skipped until the pattern comes round to either.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import cycle, islice


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
    once = list(islice(links_from(pattern, first), len(pattern)))
    at = [number for number, link in enumerate(once) if link == kind]
    rounds, more = divmod(wanted - 1, len(at))
    return list(islice(cycle(once), rounds * len(pattern) + at[more] + 1))


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
    least = len(links) + (1 if soldered else 0)
    # one of them is so many times round the pattern
    return next(
        every for every in range(least, least + len(pattern)) if in_phase(pattern, links, every)
    )


def _links_at(pattern: Sequence[str], start: int, count: int) -> list[str]:
    return [pattern[(start + step) % len(pattern)] for step in range(count)]


def _is_at(pattern: Sequence[str], start: int, links: Sequence[str]) -> bool:
    """Whether a piece of these links lies there, as it is or turned end for end."""
    found = _links_at(pattern, start, len(links))
    return list(links) in (found, found[::-1])


def _next_at(pattern: Sequence[str], start: int, links: Sequence[str]) -> int:
    """The first place from `start` on where a piece of these links lies; ValueError if none is.

    Whole pieces are compared, not first links: a pattern may hold the same link twice in a row.
    """
    for at in range(start, start + len(pattern)):
        if _is_at(pattern, at, links):
            return at
    raise ValueError(f"no piece of this chain is {' '.join(links)}")


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
        at = _next_at(pattern, at, links)
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
    return min(begins_behind(pattern, links, end, insides, soldered=soldered)[1] for end in ends)


def length_of(
    links: Sequence[str], insides: Mapping[str, float], wires: Mapping[str, float]
) -> float:
    """Length from outer end to outer end, mm, of links pulled taut: their insides and two walls.

    >>> length_of(['loop', 'bar'], {'loop': 4.0, 'bar': 12.0}, {'loop': 1.0, 'bar': 1.0})
    18.0
    """
    return sum(insides[link] for link in links) + wires[links[0]] + wires[links[-1]]


def begins_behind(
    pattern: Sequence[str],
    links: Sequence[str],
    end: int,
    insides: Mapping[str, float],
    *,
    soldered: bool,
) -> tuple[int, float]:
    """Where the next piece begins behind a piece, and the insides lost up to there."""
    start = _next_at(pattern, end + (1 if soldered else 0), links)
    return start, sum(insides[link] for link in _links_at(pattern, end, start - end))


def gap(cup: float, pitch: float) -> float:
    """From one cup to the next, mm: geometry.

    >>> round(gap(cup=3.9, pitch=4.3), 2)
    0.4
    """
    return pitch - cup


def cups_in(length: float, cup: float, pitch: float) -> float:
    """How many cups a length of cup chain has: the last has no link behind it.

    Geometry, worked out for this project; no published figure.

    >>> round(cups_in(length=150.0, cup=3.9, pitch=4.3), 1)
    35.0
    """
    return (length + gap(cup, pitch)) / pitch
