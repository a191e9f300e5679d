"""Units: what is taken, and what is said of what is not."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wellstrung import units

TAKEN: list[tuple[Callable[[str], units.Parsed], str, tuple[float, float, float, str]]] = [
    (units.length, "8 mm", (8, 8, 8, "mm")),
    (units.length, "8mm", (8, 8, 8, "mm")),
    (units.length, "46 cm", (460, 460, 460, "cm")),
    (units.length, "1.8 m", (1800, 1800, 1800, "m")),
    (units.length, "16 1/2 in", (419.1, 419.1, 419.1, "in/")),
    (units.length, "16-1/2 in", (419.1, 419.1, 419.1, "in/")),
    (units.length, '1/2"', (12.7, 12.7, 12.7, "in/")),
    (units.length, "½ in", (12.7, 12.7, 12.7, "in/")),
    (units.length, "5½ inches", (139.7, 139.7, 139.7, "in/")),
    (units.length, "0.39 in", (9.906, 9.906, 9.906, "in")),
    (units.length, "2 ft", (609.6, 609.6, 609.6, "ft")),
    (units.length, "2 yards", (1828.8, 1828.8, 1828.8, "yards")),
    (units.length, "8 ± 0.2 mm", (8, 7.8, 8.2, "mm")),
    (units.length, "8 mm +/- 0.2 mm", (8, 7.8, 8.2, "mm")),
    (units.length, "46 cm ± 5 mm", (460, 455, 465, "cm")),
    (units.length, "8..9 mm", (8.5, 8, 9, "mm")),
    (units.length, "8 to 9 mm", (8.5, 8, 9, "mm")),
    (units.length, "8\u00a0mm", (8, 8, 8, "mm")),
    (units.mass, "0.5 oz", (14.1747615625, 14.1747615625, 14.1747615625, "oz")),
    (units.mass, "5 carat", (1, 1, 1, "carat")),
    (units.force, "35 N", (35, 35, 35, "N")),
    (units.duration, "5 min", (5, 5, 5, "min")),
    (units.duration, "3 days", (4320, 4320, 4320, "days")),
    (units.duration, "1 h 30 min", (90, 90, 90, "min")),
    (units.duration, "24..72 h", (2880, 1440, 4320, "h")),
    (units.wire, "0.8 mm", (0.8, 0.8, 0.8, "mm")),
    (units.wire, "21 SWG", (0.8128, 0.8128, 0.8128, "SWG")),
]


@pytest.mark.parametrize(("read", "text", "parsed"), TAKEN)
def test_taken(
    read: Callable[[str], units.Parsed], text: str, parsed: tuple[float, float, float, str]
) -> None:
    found = read(text)
    assert found[:3] == pytest.approx(parsed[:3], rel=1e-12)
    assert (found.unit, found.text) == (parsed[3], text)


REFUSED: list[tuple[Callable[[str | int | float], object], str | int | float, str, str | None]] = [
    (units.length, 8, "a length needs a unit: write `8 mm` or `8 cm`", "8 mm"),
    (units.length, 0, "a length needs a unit: write `0 mm` or `0 cm`", None),
    (units.length, "9" * 400 + " mm", "this length is larger than any piece: write it again", None),
    (units.length, "11/0", "`11/0` lacks a unit: write `11/0 mm` or `11/0 cm`", None),
    (units.length, "8", "`8` lacks a unit: write `8 mm` or `8 cm`", "8 mm"),
    (units.length, "8 mn", "`mn` in `8 mn` is not a unit of length: write `8 mm`", "8 mm"),
    (units.length, "8 g", "`g` in `8 g` is not a unit of length: use mm, cm, m, in, ft, yd", None),
    (units.length, "8,5 mm", "`8,5 mm` has a comma for its point: write `8.5 mm`", "8.5 mm"),
    (units.length, "8-9 mm", "`8-9 mm` may be a range or a fraction: write `8..9 mm`", "8..9 mm"),
    (units.length, "9..8 mm", "`9..8 mm` runs from the larger to the smaller: write the"
     " smaller first", None),
    (units.length, "-3 mm", "`-3 mm` is negative: a length is more than 0", None),
    (units.length, "0 mm", "`0 mm` is nothing: a length is more than 0", None),
    (units.length, "2 ± 3 mm", "in `2 ± 3 mm` the tolerance is as large as the value: write a"
     " smaller one", None),
    (units.length, "1/0 in", "`1/0 in` divides by nothing: write the fraction again", None),
    (units.length, "long", "`long` is not a length: write a number and a unit, such"
     " as `8 mm`", None),
    (units.target, "46 cm", "`46 cm` leaves no room to land in: write `46 cm ± 1 cm`",
     "46 cm ± 1 cm"),
    (units.wire, "20 ga", "`20 ga` may be 20 AWG (0.81 mm) or 20 SWG (0.91 mm): write which",
     "20 AWG"),
    (units.wire, "99 AWG", "99 AWG is finer than any wire sold: write mm", None),
    (units.wire, "5 SWG", "5 SWG is not in the table, which runs from 10 to 30: write mm", None),
    (units.bead_size, "11", "`11` is not a bead size: write one such as `11/0`", "11/0"),
    (units.needle, "11", "`11` lacks the needle's class: write `beading 11`", "beading 11"),
]  # fmt: skip


@pytest.mark.parametrize(("read", "given_text", "says", "suggestion"), REFUSED)
def test_refused(
    read: Callable[[str | int | float], object],
    given_text: str | int | float,
    says: str,
    suggestion: str | None,
) -> None:
    with pytest.raises(units.UnitFault) as caught:
        read(given_text)
    assert (caught.value.says, caught.value.suggestion) == (says, suggestion)


READERS = (units.length, units.mass, units.force, units.duration, units.wire, units.target)
odd = st.text(alphabet="0123456789 ./-±+½mcingAWGhftlb\"'°,", max_size=14)


@given(st.one_of(odd, st.text(max_size=12), st.integers(), st.floats()))
def test_anything_gives_a_value_or_a_fault(text: str | int | float) -> None:
    for read in (*READERS, units.bead_size, units.needle):
        try:
            found = read(text)
        except units.UnitFault as fault:
            assert fault.says
        else:
            if isinstance(found, units.Parsed):
                assert 0 < found.low <= found.value <= found.high < float("inf")


@given(st.integers(1, 99_999), st.sampled_from(["mm", "cm"]))
def test_what_is_shown_can_be_read_again(hundredths: int, unit: str) -> None:
    value = hundredths / 100 * (10 if unit == "cm" else 1)
    assert units.length(units.show(value, unit)).value == pytest.approx(value)


@given(st.integers(1, 800))
def test_sixteenths_are_shown_as_they_are_written(sixteenths: int) -> None:
    value = sixteenths / 16 * units.INCH
    again = units.length(units.show(value, "in/"))
    assert again.value == pytest.approx(value)


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        (8.0, "mm", "8 mm"),
        (9.857, "mm", "9.86 mm"),
        (460.0, "cm", "46 cm"),
        (419.1, "in/", "16 1/2 in"),
        (25.4, "in/", "1 in"),
        (0.4, "in/", "0 in"),
        (10.0, "in", "0.394 in"),
        (0.8118, "AWG", "0.81 mm"),
        (12.7, '"', '0.5"'),
    ],
)
def test_shown(value: float, unit: str, text: str) -> None:
    assert units.show(value, unit) == text
