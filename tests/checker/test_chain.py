"""Chain: pieces in phase, by walking along a chain that is really there."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellstrung.chain import length_of, links_from, piece, pieces_had, run_of, stride

patterns = st.lists(st.sampled_from(["loop", "bar", "bead"]), min_size=1, max_size=4)
INSIDES = {"loop": 4.0, "bar": 12.0, "bead": 7.0}
WIRES = {"loop": 1.0, "bar": 1.0, "bead": 1.0}


def walk(
    pattern: list[str], links: list[str], pieces: int, *, soldered: bool
) -> tuple[int, list[int]]:
    """Cut pieces off a chain that is really there; links used, and where each piece begins."""
    start = pattern.index(links[0])
    chain = (pattern * 200)[start:]
    starts, at = [], 0
    for number in range(pieces):
        if number and soldered:
            at += 1  # the link that is cut through
        while chain[at : at + len(links)] != links:
            at += 1
        starts.append(at)
        at += len(links)
    return at, starts


@given(patterns, st.integers(1, 6), st.integers(1, 5), st.booleans())
def test_a_run_gives_every_piece_in_phase(
    pattern: list[str], count: int, pieces: int, soldered: bool
) -> None:
    links = piece(pattern, pattern[0], count)
    run = run_of(pattern, [links] * pieces, soldered=soldered)
    used, starts = walk(pattern, links, pieces, soldered=soldered)
    assert len(run) == used
    assert all(run[start : start + count] == links for start in starts)
    assert run == (pattern * 200)[: len(run)]


@given(patterns, st.integers(1, 6), st.integers(1, 6), st.booleans(), st.floats(20, 300))
def test_alike_pieces_are_had_as_often_as_brute_force_finds(
    pattern: list[str], count: int, wanted: int, soldered: bool, length: float
) -> None:
    links = piece(pattern, pattern[0], count)
    most = 0
    for pieces in range(1, wanted + 1):
        run = run_of(pattern, [links] * pieces, soldered=soldered)
        if length_of(run, INSIDES, WIRES) <= length + 1e-6:
            most = pieces
    had = pieces_had([length], pattern, [links] * wanted, INSIDES, WIRES, soldered=soldered)
    assert had == most


@pytest.mark.parametrize(
    ("pattern", "links", "soldered", "every"),
    [
        (["link"], 6, True, 7),
        (["link"], 6, False, 6),
        (["loop", "bar"], 6, True, 8),
        (["loop", "bar"], 5, True, 6),
        (["loop", "bar"], 5, False, 6),
        (["loop", "loop", "bar"], 1, False, 3),
        (["loop", "loop", "bar"], 2, True, 3),
        (["loop", "loop", "bar"], 3, True, 6),
        (["loop", "loop", "bar"], 4, True, 6),
    ],
)
def test_stride(pattern: list[str], links: int, soldered: bool, every: int) -> None:
    one = piece(pattern, pattern[0], links)
    assert stride(pattern, one, soldered=soldered) == every
    chain = pattern * 40
    assert all(chain[n * every : n * every + links] == one for n in range(5))


def test_pieces_of_two_kinds_share_a_length() -> None:
    pattern = ["loop", "bar"]
    long, short = piece(pattern, "loop", 4), piece(pattern, "loop", 2)
    run = run_of(pattern, [long, short], soldered=True)
    assert run == ["loop", "bar", "loop", "bar", "loop", "bar", "loop", "bar"]
    length = length_of(run, INSIDES, WIRES)
    both = [short, long]
    assert pieces_had([length], pattern, both, INSIDES, WIRES, soldered=True) == 2
    assert pieces_had([length - 0.1], pattern, both, INSIDES, WIRES, soldered=True) == 1


def test_a_link_that_is_not_in_the_pattern() -> None:
    with pytest.raises(ValueError, match="'ring' is not in list"):
        next(links_from(["loop", "bar"], "ring"))
