"""What to do behind a piece of chain, in words: open a link, cut one, or cut between cups."""

from __future__ import annotations

from collections.abc import Sequence


def between_cups(rest: float, *, last_piece: bool) -> str:
    """What to do behind a piece of cup chain: nothing where the chain ends with it."""
    if last_piece and rest <= 0:
        return "the chain ends here"
    return "cut the little link behind its last cup, and trim what is left of it"


def next_link(rest: float, *, last_piece: bool, soldered: bool) -> str:
    """What to do behind a piece that is measured off, for nobody knows the number of its links."""
    if last_piece and rest <= 0:
        return "the chain ends here"
    return "cut through the next link" if soldered else "open the next link"


def behind(last: int, lost: tuple[int, ...], *, soldered: bool) -> str:
    """What to do between two pieces: cut through the lost links at both ends of them, or open."""
    if not soldered:
        if not lost:
            return f"open link {last + 1}"
        return f"open links {lost[0]} and {lost[-1] + 1}, {_numbers(lost)} left over"
    if len(lost) == 1:
        return f"cut through link {lost[0]}"
    cut = f"cut through links {lost[0]} and {lost[-1]}"
    return cut if len(lost) == 2 else f"{cut}, {_numbers(lost[1:-1])} falls away"


def at_end(last: int, rest: float, *, soldered: bool) -> str:
    """What to do behind the last piece: nothing where the chain ends with it."""
    if rest <= 0:
        return "the chain ends here"
    return f"{'cut through' if soldered else 'open'} link {last + 1}"


def _numbers(numbers: Sequence[int]) -> str:
    return f"link {numbers[0]}" if len(numbers) == 1 else f"links {numbers[0]}..{numbers[-1]}"
