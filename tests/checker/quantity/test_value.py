"""Quantities: shared causes count once, ranges hold every corner and every point inside."""

from __future__ import annotations

from collections.abc import Callable
from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from wellstrung.formulas.arithmetic import either, least, most, pi, tan
from wellstrung.formulas.thread import strength_left
from wellstrung.quantity.arithmetic import derived, exact, leaf, total
from wellstrung.quantity.assumed import ASSUMED, fails_anyway, rests_on
from wellstrung.quantity.causes import Cause, Spread, Window
from wellstrung.quantity.extremes import Node, climbed
from wellstrung.quantity.value import Quantity
from wellstrung.quantity.verdict import Verdict, compare
from wellstrung.quantity.working import described, formula_of, number, working

LOT, TENSION, PACK = (
    Cause("bead length", "`reed`"),
    Cause("tension", "`rope`"),
    Cause("pack", "`s`"),
)


def value(name: str, middle: float, *spreads: tuple[Cause, float]) -> Quantity:
    return leaf(name, middle, "mm", [Spread(cause, by, by) for cause, by in spreads])


def test_a_cause_used_twice_counts_once() -> None:
    a, b = value("a", 10.0, (LOT, 1.0)), value("b", 20.0, (LOT, 1.0))
    assert (a - b).worst == (-10.0, -10.0)
    assert (a + b).likely == (28.0, 32.0)


def test_independent_causes_combine_by_root_sum_square_and_straight() -> None:
    together = value("a", 10.0, (LOT, 0.3)) + value("b", 5.0, (PACK, 0.4))
    assert together.likely == pytest.approx((14.5, 15.5))
    assert together.worst == pytest.approx((14.3, 15.7))


def test_each_side_of_a_spread_keeps_its_own_size() -> None:
    hole = leaf("hole", 0.8, "mm", [Spread(LOT, 0.1, 0.0)])
    assert hole.likely == pytest.approx((0.7, 0.8))


def test_a_product_reaches_its_far_corner() -> None:
    side, other = value("side", 10.0, (LOT, 1.0)), value("other", 10.0, (PACK, 1.0))
    area = derived("area", "mm2", lambda a, b: a * b, a=side, b=other)
    assert area.worst == (81.0, 121.0)


@pytest.mark.parametrize(
    ("formula", "likely"), [(least, (9.0, 10.0)), (most, (10.0, 11.0))], ids=["least", "most"]
)
def test_the_likely_range_goes_no_further_than_causes_together_can(
    formula: Callable[..., float], likely: tuple[float, float]
) -> None:
    # each alone moves it by 1, and by root-sum-square both by 1.41
    a, b = value("a", 10.0, (LOT, 1.0)), value("b", 10.0, (PACK, 1.0))
    first, last = (derived("end", "mm", lambda a, b: formula(a, b), a=a, b=b) for _ in range(2))
    assert first.likely == likely
    assert (last.worst, last.likely) == ((9.0, 11.0), likely)  # asked for in the other order


def test_a_slope_is_taken_where_the_formula_has_a_value() -> None:
    knot = leaf("knot", 0.45, "", [Spread(LOT, 0.05, 0.1)])
    left = derived("left", "N", strength_left, breaking=exact("breaking", 40.0, "N"), knot=knot)
    assert left.worst == pytest.approx((16.0, 22.0))


def test_a_formula_that_turns_back_is_scanned_between_its_ends() -> None:
    x = leaf("x", 0.5, "", [Spread(LOT, 1.0, 1.0)])
    curve = derived("curve", "", lambda x: x * x, scan=True, x=x)
    assert curve.worst == pytest.approx((0.0, 2.25))


@pytest.mark.parametrize(
    ("low", "high", "verdict"),
    [
        (0.2, 1.0, Verdict.HOLDS),
        (0.0, 1.0, Verdict.HOLDS),
        (-0.0009, 1.0, Verdict.HOLDS),
        (-0.0011, 1.0, Verdict.MAY_FAIL),
        (-1.0, 0.0, Verdict.MAY_FAIL),
        (-1.0, -0.0009, Verdict.MAY_FAIL),
        (-1.0, -0.0011, Verdict.FAILS),
    ],
)
def test_compare_forgives_a_micrometre_and_no_more(
    low: float, high: float, verdict: Verdict
) -> None:
    middle = (low + high) / 2
    assert compare(value("margin", middle, (LOT, (high - low) / 2))) is verdict


def test_rules_of_safety_compare_over_the_worst_range() -> None:
    margin = value("margin", 0.6, (LOT, 0.5)) + value("more", 0.0, (PACK, 0.3))
    assert compare(margin) is Verdict.HOLDS
    assert compare(margin, over="worst") is Verdict.MAY_FAIL


def test_units_are_not_mixed() -> None:
    with pytest.raises(ValueError, match="rope is in mm, drop is in g"):
        exact("rope", 1.0, "mm") + exact("drop", 1.0, "g")


def test_the_working_shows_leaves_formula_numbers_and_result() -> None:
    length = value("reed.length", 2.1, (LOT, 0.18))
    pitch = derived(
        "rope.pitch",
        "mm",
        lambda length, k: length * k,
        length=length,
        k=exact("k", 1.05),
    )
    assert working(pitch) == [
        "reed.length = 2.1 mm (likely 1.92..2.28); bead length of `reed` ± 0.18",
        "rope.pitch = reed.length * k = 2.1 * 1.05 = 2.21 mm (likely 2.02..2.39)",
    ]


@pytest.mark.parametrize(
    ("given_value", "text"),
    [
        (8.0, "8"),
        (9.86, "9.86"),
        (0.8118, "0.812"),
        (123.456, "123.5"),
        (1440.0, "1440"),
        (-0.0001, "0"),
    ],
)
def test_numbers_read_as_a_beader_writes_them(given_value: float, text: str) -> None:
    assert number(given_value) == text


def test_a_value_without_spread_is_described_alone() -> None:
    assert described(exact("limit", 1.5, "mm")) == "1.5 mm"


spreads = st.lists(
    st.tuples(st.sampled_from([LOT, TENSION, PACK]), st.floats(0, 2), st.floats(0, 2)), max_size=3
)


@st.composite
def leaves(draw: st.DrawFn) -> Quantity:
    return leaf(
        draw(st.sampled_from("abcd")),
        draw(st.floats(5, 50)),
        "mm",
        [Spread(*spread) for spread in draw(spreads)],
    )


@st.composite
def graphs(draw: st.DrawFn) -> Quantity:
    terms = draw(st.lists(leaves(), min_size=1, max_size=3))
    shape = draw(st.sampled_from(["sum", "difference", "product", "peyote", "least", "most"]))
    if shape == "sum":
        return total("sum", "mm", terms)
    if shape == "difference":
        return terms[0] - terms[-1]
    if shape == "product":
        return derived("area", "mm2", lambda a, b: a * b, a=terms[0], b=terms[-1])
    if shape in ("least", "most"):
        work = least if shape == "least" else most
        return derived(shape, "mm", lambda a, b: work(a, b), a=terms[0], b=terms[-1])
    return derived(
        "outside",
        "mm",
        lambda p, d: p / tan(pi / 12) + d,
        p=terms[0],
        d=terms[-1],
    )


@given(graphs())
def test_worst_holds_every_corner(quantity: Quantity) -> None:
    low, high = quantity.worst
    for corner in product((-1.0, 0.0, 1.0), repeat=len(quantity.causes)):
        value_there = quantity.at(dict(zip(quantity.causes, corner, strict=True)))
        assert low - 1e-9 <= value_there <= high + 1e-9


@given(graphs(), st.data())
def test_worst_holds_every_point_inside(quantity: Quantity, data: st.DataObject) -> None:
    point = {cause: data.draw(st.floats(-1, 1)) for cause in quantity.causes}
    low, high = quantity.worst
    assert low - 1e-9 <= quantity.at(point) <= high + 1e-9


@given(graphs())
def test_middle_lies_in_likely_and_likely_in_worst(quantity: Quantity) -> None:
    likely = quantity.likely  # asked for first, it takes no more of the worst range than it needs
    assert quantity.worst.low - 1e-9 <= likely.low <= quantity.middle + 1e-9
    assert quantity.middle - 1e-9 <= likely.high <= quantity.worst.high + 1e-9


@given(graphs())
def test_a_range_is_the_same_whichever_is_asked_for_first(quantity: Quantity) -> None:
    """To the last bit: a plan checked in another process asks in another order."""
    other = replace(quantity)
    first = other.worst, other.likely
    assert (quantity.likely, quantity.worst) == first[::-1]


@given(st.lists(leaves(), min_size=7, max_size=9))
def test_many_causes_are_climbed_to_the_same_ends_as_counting_corners(
    terms: list[Quantity],
) -> None:
    own = [
        leaf(
            f"t{n}",
            term.middle,
            "mm",
            [
                Spread(Cause(f"{spread.cause.name} {n}"), spread.down, spread.up)
                for spread in term.spreads
            ],
        )
        for n, term in enumerate(terms)
    ]
    straight = sum(spread.up for term in own for spread in term.spreads)
    middle = sum(term.middle for term in own)
    assert total("sum", "mm", own).worst.high == pytest.approx(middle + straight)


def _climbed(function: Callable[..., float], many: int) -> Window:
    """Over so many causes, each of which is itself an argument of the function."""
    causes = [Cause(f"cause {number}") for number in range(many)]
    args = {f"a{n}": cause for n, cause in enumerate(causes)}
    rest = dict.fromkeys(args, 0.0)
    alone = {
        cause: {by: function(**{**rest, key: by}) for by in (-1.0, 1.0, 0.0)}
        for key, cause in args.items()
    }
    node = Node(
        0, causes, lambda at, _: function(**{key: at[cause] for key, cause in args.items()})
    )
    return climbed([node], 0.0, alone)


def test_a_climb_that_stops_is_no_narrower_than_its_causes_added_up() -> None:
    """Pairs that cancel where both start; more causes than a climb moves once each."""

    def apart(**moved: float) -> float:
        every = [*moved.values()]
        return sum((one - other) ** 2 for one, other in zip(every[::2], every[1::2], strict=True))

    assert _climbed(apart, 200).high >= 200


def test_a_climb_that_stops_adds_up_what_each_cause_does_and_no_more() -> None:
    """Half of the causes do nothing: what they add is nothing, too."""
    assert _climbed(lambda **moved: sum(map(abs, [*moved.values()][::2])), 400) == (0.0, 200.0)


#: how two values are compared, the span of the first, and the ways that are left; the second is 11
WAYS = [
    ("<", (8.0, 10.0), "a * 2"),
    ("<", (9.0, 11.0), "a * 2 if a < b else b * 3"),
    ("<", (11.0, 13.0), "b * 3"),
    (">", (9.0, 11.0), "b * 3"),
    (">", (11.0, 13.0), "a * 2 if a > b else b * 3"),
    (">", (12.0, 14.0), "a * 2"),
    ("<=", (9.0, 11.0), "a * 2"),
    ("<=", (11.0, 13.0), "a * 2 if a <= b else b * 3"),
    ("<=", (12.0, 14.0), "b * 3"),
    (">=", (8.0, 10.0), "b * 3"),
    (">=", (9.0, 11.0), "a * 2 if a >= b else b * 3"),
    (">=", (11.0, 13.0), "a * 2"),
    ("==", (11.0, 11.0), "a * 2"),
    ("==", (12.0, 12.0), "b * 3"),
    ("==", (10.0, 12.0), "a * 2 if a == b else b * 3"),
]
COMPARED: dict[str, Callable[[float, float], float]] = {
    "<": lambda a, b: either(a < b, a * 2, b * 3),
    ">": lambda a, b: either(a > b, a * 2, b * 3),
    "<=": lambda a, b: either(a <= b, a * 2, b * 3),
    ">=": lambda a, b: either(a >= b, a * 2, b * 3),
    "==": lambda a, b: either(a == b, a * 2, b * 3),
}


@pytest.mark.parametrize(("sign", "span", "left"), WAYS)
def test_a_way_that_cannot_be_is_left_out_of_the_formula(
    sign: str, span: tuple[float, float], left: str
) -> None:
    half = (span[1] - span[0]) / 2
    a, b = value("a", span[0] + half, (LOT, half)), exact("b", 11.0, "mm")
    assert formula_of(derived("q", "mm", COMPARED[sign], a=a, b=b), str) == left


def test_causes_are_one_by_name_and_scope_and_quantities_never() -> None:
    assert Cause("tension", "`a`") == Cause("tension", "`a`")
    assert (
        len({Cause(name, of) for name in ("lot", "tension") for of in ("`a`", "`b`", "`c`")}) == 6
    )
    for one, other in ((Cause("a", "x"), Cause("b", "x")), (Cause("a", "x"), Cause("a", "y"))):
        assert one != other and other != one
    assert exact("a", 1.0, "mm") != exact("a", 1.0, "mm")


def test_what_a_margin_rests_on_is_what_moves_it_most() -> None:
    hole = leaf("hole", 2.0, "mm", [Spread(LOT, 0.5, 0.5)], grade=ASSUMED)
    wall = leaf("wall", 1.0, "mm", [Spread(PACK, 0.1, 0.1)], grade=ASSUMED)
    margin = hole - wall - exact("wire", 1.2, "mm")
    assert [one.name for one in rests_on(margin, over="likely")] == ["hole"]
    stated = value("stated", 1.5, (TENSION, 2.0))
    assert not rests_on(wall - stated, over="likely"), "what is stated is what it doubts"
    near, far = hole - exact("wire", 2.9, "mm"), hole - exact("wire", 3.1, "mm")
    assert not fails_anyway(near, over="likely") and fails_anyway(far, over="likely")
