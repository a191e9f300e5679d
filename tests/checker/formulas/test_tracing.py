"""A formula gives its own text, and one that cannot is refused in plain words."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest

from wellstrung.formulas.arithmetic import (
    added,
    either,
    floor,
    least,
    most,
    opaque,
    pi,
    require,
    sqrt,
    tan,
)
from wellstrung.formulas.symbols import Symbolic
from wellstrung.formulas.tracing import traced


def clipped(pitch: float, ring: float) -> float:
    require(ring > 0, "a ring of {:g}", ring)
    return either(ring < 6, 0, most(0, pitch / tan(pi / ring) - 2 * pitch))


@opaque("smallest box round")
def box(*sizes: float) -> float:
    return sorted(sizes)[-1]


@pytest.mark.parametrize(
    ("function", "names", "text"),
    [
        (lambda a, b, c: a - (b - c), "abc", "a - (b - c)"),
        (lambda a, b, c: a - b - c, "abc", "a - b - c"),
        (lambda a, b, c: a / (b * c) * 2, "abc", "a / (b * c) * 2"),
        (lambda a, b: -((a + b) ** 2), "ab", "-(a + b)^2"),
        (lambda a, b: 2 ** (a / b), "ab", "2^(a / b)"),
        (lambda a: pi * a + pi / 4 * a**2 + pi**2 / 3, "a", "pi * a + pi / 4 * a^2 + pi^2 / 3"),
        (lambda a: a / (2 * pi), "a", "a / (2 * pi)"),
        (lambda a: 0.1 * a + 1 * a + 0 * a, "a", "0.1 * a + a"),
        (lambda a, b: sqrt(least(a, b)) + abs(a), "ab", "sqrt(min(a, b)) + abs(a)"),
        (lambda a, b: added([a, b, 1.0]), "ab", "a + b + 1"),
        (lambda a: 3 * (a if floor(2.5) > 1 else 0), "a", "3 * a"),
        (lambda a, b: box(a, b, 1) - a, "ab", "smallest box round (a, b, 1) - a"),
        (
            clipped,
            ("pitch", "ring"),
            "0 if ring < 6 else max(0, pitch / tan(pi / ring) - 2 * pitch)",
        ),
    ],
)
def test_text(function: Callable[..., float], names: str, text: str) -> None:
    assert traced(function, tuple(names)).text() == text


def test_a_sum_of_many_is_told_like_one_of_few() -> None:
    names = tuple(f"step{number}" for number in range(3000))
    total = traced(lambda **steps: added(steps.values()), names)
    assert total.text() == " + ".join(names) and total.is_linear(names)


@pytest.mark.parametrize(
    ("function", "message"),
    [
        (lambda a, b: a if a > b else b, "a formula must not decide by `a > b`: use `either`"),
        (lambda a, b: max(a, b), "must not decide by `b > a`"),
        (lambda a, b: (a or 1) * b, "must not decide by `a`"),
        (lambda a, b: b if a == 2 else a, "must not decide by `a == 2`"),
        (lambda a, b: a * math.sin(b), "a formula needs the number of `b`"),
        (lambda a, b: a * round(b), "a formula needs the number of `b`"),
        (lambda a, b: math.hypot(a, b), "a formula needs the number of `a`"),
        (lambda a, b: sum(range(a)) + b, "a formula needs the number of `a`"),
        (lambda a, b: {1.0: a}[b], "a formula needs the number of `b`"),
    ],
)
def test_a_formula_that_branches_or_needs_a_number_is_refused(
    function: Callable[..., float], message: str
) -> None:
    with pytest.raises(Symbolic, match=message.replace("(", "[(]")):
        traced(function, ("a", "b"))


@pytest.mark.parametrize(
    ("function", "left_out"),
    [(lambda a, b: 5.0, "a, b"), (lambda a, b: 2 * a, "b"), (lambda a, b: a * 0 + b, "a")],
)
def test_a_formula_that_leaves_an_argument_out_is_refused(
    function: Callable[..., float], left_out: str
) -> None:
    with pytest.raises(TypeError, match=f"makes no use of {left_out}: its formula is"):
        traced(function, ("a", "b"))


def test_a_formula_takes_nothing_but_constants_from_around_it() -> None:
    sizes = [1.0, 2.0]
    with pytest.raises(TypeError, match="depends on `sizes`: make it an argument"):
        traced(lambda a: a * sizes[0], ("a",))


def test_a_formula_made_again_with_other_constants_is_another() -> None:
    def times(share: float) -> Callable[[float], float]:
        return lambda a: share * a

    assert [traced(times(share), ("a",)).text() for share in (2, 3, 2)] == [
        "2 * a",
        "3 * a",
        "2 * a",
    ]


@pytest.mark.parametrize(
    ("function", "varying", "linear"),
    [
        (lambda a, b, c: (a - b) / c + 2, "ab", True),
        (lambda a, b, c: (a - b) / c + 2, "c", False),
        (lambda a, b, c: a * b + b * c, "ac", True),
        (lambda a, b, c: a * b + b * c, "ab", False),
        (lambda a, b, c: most(0, a - b) * c, "c", True),
        (lambda a, b, c: most(0, a - b) * c, "a", False),
        (lambda a, b, c: either(a < 6, b, b + c), "bc", True),
        (lambda a, b, c: either(a < 6, b, b + c), "a", False),
        (lambda a, b, c: -a + b**2 + c, "ac", True),
        (lambda a, b, c: box(a, b) * c, "a", False),
        (lambda a, b, c: box(a, b) * c, "c", True),
    ],
)
def test_linear(function: Callable[..., float], varying: str, linear: bool) -> None:
    assert traced(function, ("a", "b", "c")).is_linear(tuple(varying)) is linear


def test_formulas_of_floats_are_plain_arithmetic() -> None:
    assert clipped(2.0, 5) == 0
    assert clipped(2.0, 12) == pytest.approx(2 / math.tan(math.pi / 12) - 4)
    with pytest.raises(ValueError, match="a ring of 0"):
        clipped(2.0, 0)
