"""Chain: pieces in phase, by walking along a chain whose every link is written out."""

from __future__ import annotations

from itertools import permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from wellstrung.formulas.chain import length_of, links_from, piece, run_of, stride
from wellstrung.formulas.chain_cutting import pieces_had

patterns = st.lists(st.sampled_from(["loop", "bar", "bead"]), min_size=1, max_size=4)
INSIDES = {"loop": 4.0, "bar": 12.0, "bead": 7.0}
WIRES = {"loop": 1.0, "bar": 1.0, "bead": 1.0}


@st.composite
def chains(draw: st.DrawFn) -> tuple[list[str], list[list[str]]]:
    """A pattern and pieces cut from it, each from some link on; a link may come twice in a row."""
    pattern = draw(patterns)
    cuts = st.tuples(st.sampled_from(pattern), st.integers(1, 6))
    return pattern, [piece(pattern, *draw(cuts)) for _ in range(draw(st.integers(1, 5)))]


def is_piece(found: list[str], links: list[str]) -> bool:
    """Whether these links are the piece, which can be turned end for end."""
    return links in (found, found[::-1])


def ends(chain: list[str], pieces: list[list[str]], at: int, *, soldered: bool) -> list[int]:
    """Where the last of the pieces may end, for every way to lay them along the chain from `at`."""
    if not pieces:
        return [at]
    first, *rest = pieces
    found = []
    for start in range(at, min(at + 9, len(chain) - len(first))):
        if is_piece(chain[start : start + len(first)], first):
            end = start + len(first)
            # the link behind a piece is cut through, unless the piece is the last
            found += ends(chain, rest, end + bool(rest and soldered), soldered=soldered)
    return found


def most_pieces(chain: list[str], links: list[str], length: float, *, soldered: bool) -> int:
    """How many alike pieces lie within a length of chain: the best of every way to cut it."""
    best = [0] * (len(chain) + 2)
    walls = WIRES[links[0]] + WIRES[links[-1]]
    for start in reversed(range(len(chain) - len(links))):
        best[start] = best[start + 1]
        end = start + len(links)
        fits = sum(INSIDES[link] for link in chain[:end]) + walls <= length + 1e-6
        if fits and is_piece(chain[start:end], links):
            best[start] = max(best[start], 1 + best[end + soldered])
    return best[0]


@given(chains(), st.booleans())
def test_a_run_gives_every_piece_in_phase(
    made: tuple[list[str], list[list[str]]], soldered: bool
) -> None:
    pattern, pieces = made
    run = run_of(pattern, pieces, soldered=soldered)
    chain = (pattern * 40)[pattern.index(pieces[0][0]) :]
    assert run == chain[: len(run)]
    at = 0
    for number, links in enumerate(pieces):
        at += bool(number and soldered)
        while not is_piece(run[at : at + len(links)], links):
            assert at < len(run), "the run ends before its last piece"
            at += 1
        at += len(links)
    assert at == len(run)


@settings(deadline=None)
@given(chains(), st.booleans())
def test_no_way_to_cut_a_run_is_shorter(
    made: tuple[list[str], list[list[str]]], soldered: bool
) -> None:
    pattern, pieces = made
    pieces = pieces[:3]
    chain = (pattern * 40)[pattern.index(pieces[0][0]) :]
    run = run_of(pattern, pieces, soldered=soldered)
    assert len(run) == min(ends(chain, pieces, 0, soldered=soldered))


@given(patterns, st.integers(1, 6), st.integers(1, 6), st.booleans(), st.floats(20, 300))
def test_alike_pieces_are_had_as_often_as_brute_force_finds(
    pattern: list[str], count: int, wanted: int, soldered: bool, length: float
) -> None:
    links = piece(pattern, pattern[0], count)
    most = most_pieces(pattern * 80, links, length, soldered=soldered)
    had = pieces_had([length], pattern, [links] * wanted, INSIDES, WIRES, soldered=soldered)
    assert had == min(most, wanted)


@given(st.integers(1, 8), st.integers(1, 30), st.booleans(), st.floats(10, 400))
def test_pieces_of_one_kind_of_link_by_division(
    count: int, wanted: int, soldered: bool, length: float
) -> None:
    links_held = int((length + 1e-6 - 2 * WIRES["loop"]) // INSIDES["loop"])
    # the last piece loses no link behind it
    most = (links_held + soldered) // (count + soldered)
    pieces = [["loop"] * count] * wanted
    had = pieces_had([length], ["loop"], pieces, INSIDES, WIRES, soldered=soldered)
    assert had == min(most, wanted)


@given(chains(), st.lists(st.floats(5, 120), max_size=3), st.booleans())
def test_no_more_is_had_than_there_are_links(
    made: tuple[list[str], list[list[str]]], lengths: list[float], soldered: bool
) -> None:
    pattern, pieces = made
    had = pieces_had(lengths, pattern, pieces, INSIDES, WIRES, soldered=soldered)
    assert 0 <= had <= len(pieces)
    shortest = sorted(sum(INSIDES[link] for link in links) for links in pieces)[:had]
    assert sum(shortest) <= sum(lengths) + 1e-5
    assert had or all(length_of(p, INSIDES, WIRES) > x for p in pieces for x in lengths)


@pytest.mark.parametrize(
    ("pattern", "links", "soldered", "every"),
    [
        (["link"], 6, True, 7),
        (["link"], 6, False, 6),
        (["loop", "bar"], 6, True, 7),
        (["loop", "bar", "bead"], 3, True, 6),
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
    assert all(is_piece(chain[n * every : n * every + links], one) for n in range(5))


def test_pieces_of_two_kinds_share_a_length() -> None:
    pattern = ["loop", "bar"]
    long, short = piece(pattern, "loop", 4), piece(pattern, "loop", 2)
    run = run_of(pattern, [long, short], soldered=True)
    assert run == ["loop", "bar", "loop", "bar", "loop", "bar", "loop"]
    length = length_of(run, INSIDES, WIRES)
    both = [short, long]
    assert pieces_had([length], pattern, both, INSIDES, WIRES, soldered=True) == 2
    assert pieces_had([length - 0.1], pattern, both, INSIDES, WIRES, soldered=True) == 1


def test_a_link_that_is_not_in_the_pattern() -> None:
    with pytest.raises(ValueError, match="'ring' is not in list"):
        next(links_from(["loop", "bar"], "ring"))


@pytest.mark.parametrize(
    ("counts", "says"),
    [
        ({"ring": 1}, "no piece has 1 of `ring`: the pattern is loop bar"),
        ({"loop": 0}, "no piece has 0 of `loop`: the pattern is loop bar"),
    ],
)
def test_a_piece_that_the_pattern_never_gives(counts: dict[str, int], says: str) -> None:
    with pytest.raises(ValueError) as told:
        piece(["loop", "bar"], "loop", counts)
    assert str(told.value) == says


@given(
    st.permutations(["loop", "bar", "bead"]), st.lists(st.integers(1, 5), min_size=1, max_size=4)
)
def test_pieces_that_start_anywhere_share_a_length_as_long_as_their_links(
    firsts: list[str], counts: list[int]
) -> None:
    """Walls differ from link to link: the length has the first wall of the first piece."""
    pattern, wires = ["loop", "bar", "bead"], {"loop": 0.8, "bar": 2.0, "bead": 3.1}
    pieces = [piece(pattern, firsts[number % 3], count) for number, count in enumerate(counts)]
    longest_first = sorted(pieces, key=lambda one: -length_of(one, INSIDES, wires))
    run = run_of(pattern, longest_first, soldered=True)
    needs = length_of(run, INSIDES, wires)
    # on the way there no shorter end of the run may need more, or a piece would be left out
    had = pieces_had([needs], pattern, pieces, INSIDES, wires, soldered=True)
    longest = max(
        length_of(run_of(pattern, longest_first[: n + 1], soldered=True), INSIDES, wires)
        for n in range(len(pieces))
    )
    assert had == len(pieces) or longest > needs
    short = pieces_had([needs - 0.01], pattern, pieces, INSIDES, wires, soldered=True)
    shortest = min(
        length_of(run_of(pattern, order, soldered=True), INSIDES, wires)
        for order in permutations(pieces)
    )
    assert (short == len(pieces)) == (shortest <= needs - 0.01 + 1e-6)


def test_longest_first_is_not_always_the_most() -> None:
    """5, 4, 4, 3, 2, 2 from two lengths of 10: 5 + 3 + 2 and 4 + 4 + 2; longest first leaves one.

    Links of one kind, 1 mm inside and hardly any wire, opened and so not lost.
    """
    pieces = [["o"] * count for count in (5, 4, 4, 3, 2, 2)]
    had = pieces_had([10, 10], ["o"], pieces, {"o": 1.0}, {"o": 0.0}, soldered=False)
    assert had == len(pieces)


def test_thousands_of_pieces_are_searched_as_far_as_the_search_goes() -> None:
    pieces = [["loop", "bar"]] * 3000 + [["loop", "bar", "loop"]] * 3000
    had = pieces_had([89_500.0], ["loop", "bar"], pieces, INSIDES, WIRES, soldered=True)
    assert 0 < had < len(pieces)


@given(st.lists(st.integers(1, 5), min_size=1, max_size=5), st.lists(st.integers(3, 9), max_size=2))
def test_pieces_had_by_trying_every_order(counts: list[int], lengths: list[int]) -> None:
    """Every order of the pieces, each put on the length at hand until it is used up."""
    pieces = [["o"] * count for count in counts]
    best = 0
    for order in permutations(counts):
        for split in range(len(order) + 1):
            parts = (order[:split], order[split:])
            had = 0
            for part, length in zip(parts, lengths, strict=False):
                used = 0
                for count in part:
                    used += count
                    had += used <= length
            best = max(best, had)
    found = pieces_had(lengths, ["o"], pieces, {"o": 1.0}, {"o": 0.0}, soldered=False)
    assert found == best
