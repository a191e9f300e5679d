"""Units: what is taken, and what is said of what is not."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from wellstrung.common import units

TAKEN: list[tuple[Callable[[str], units.Parsed], str, tuple[float, float, float, str]]] = [
    (units.length, "8 mm", (8, 8, 8, "mm")),
    (units.length, "8mm", (8, 8, 8, "mm")),
    (units.length, "46 cm", (460, 460, 460, "cm")),
    (units.length, "1.8 m", (1800, 1800, 1800, "m")),
    (units.length, "16 1/2 in", (419.1, 419.1, 419.1, "in/")),
    (units.length, "16-1/2 in", (419.1, 419.1, 419.1, "in/")),
    (units.length, "8-9 mm", (8.5, 8.0, 9.0, "mm")),
    (units.length, "8 mm – 9 mm", (8.5, 8.0, 9.0, "mm")),
    (units.length, "7-7 1/2 in", (184.15, 177.8, 190.5, "in/")),
    (units.length, "7-7.5″", (184.15, 177.8, 190.5, "″")),
    (units.length, "1/2-3/4 in", (15.875, 12.7, 19.05, "in/")),
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
    (units.length, "8..8 mm", (8, 8, 8, "mm")),
    (units.length, "8 ″", (203.2, 203.2, 203.2, "″")),
    (units.length, "6′", (1828.8, 1828.8, 1828.8, "′")),
    (units.length, "8\u00a0mm", (8, 8, 8, "mm")),
    (units.length, "８．５\u3000mm", (8.5, 8.5, 8.5, "mm")),
    (units.length, "16  1/2\tin", (419.1, 419.1, 419.1, "in/")),
    (units.length, "1⁄2 in", (12.7, 12.7, 12.7, "in/")),
    (units.length, "8 mm ± 1/64 in", (8, 7.603125, 8.396875, "mm")),
    (units.length, "18 in ± 1/2 in", (457.2, 444.5, 469.9, "in")),
    (units.length, "17 1/2..18 in", (450.85, 444.5, 457.2, "in/")),
    (units.length, "8 cm to 90 mm", (85, 80, 90, "mm")),
    (units.target, "7 to 7 1/2 in", (184.15, 177.8, 190.5, "in/")),
    (units.target, "16 1/2 in", (419.1, 419.1, 419.1, "in/")),
    (units.length, "5 ft 6 1/2 in", (1689.1, 1689.1, 1689.1, "in/")),
    (units.length, "5' 6\"", (1676.4, 1676.4, 1676.4, '"')),
    (units.length, "50 µm", (0.05, 0.05, 0.05, "µm")),
    (units.length, "50 μm", (0.05, 0.05, 0.05, "μm")),
    (units.mass, "0.5 oz", (14.1747615625, 14.1747615625, 14.1747615625, "oz")),
    (units.mass, "5 carat", (1, 1, 1, "carat")),
    (units.force, "35 N", (35, 35, 35, "N")),
    (units.force, "8 lb", (35.5857729221, 35.5857729221, 35.5857729221, "lbf")),
    (units.force, "2 kg", (19.6133, 19.6133, 19.6133, "kgf")),
    (units.duration, "5 min", (5, 5, 5, "min")),
    (units.duration, "3 days", (4320, 4320, 4320, "days")),
    (units.volume, "25 ml", (25, 25, 25, "ml")),
    (units.volume, "5 cl ± 5 ml", (50, 45, 55, "cl")),
    (units.volume, "2 fl oz", (59.147059125, 59.147059125, 59.147059125, "fl oz")),
    (units.temperature, "12 °C", (12, 12, 12, "°C")),
    (units.temperature, "12C", (12, 12, 12, "°C")),
    (units.temperature, "59 °F", (15, 15, 15, "°F")),
    (units.temperature, "59 deg F", (15, 15, 15, "°F")),
    (units.temperature, "12..15 °C", (13.5, 12, 15, "°C")),
    (units.temperature, "12 to 15 °C", (13.5, 12, 15, "°C")),
    (units.temperature, "68 ± 9 °F", (20, 15, 25, "°F")),
    (units.temperature, "0 °C", (0, 0, 0, "°C")),
    (units.temperature, "50 °C", (50, 50, 50, "°C")),
    (units.duration, "1 h 30 min", (90, 90, 90, "min")),
    (units.duration, "1 h 0 min", (60, 60, 60, "min")),
    (units.duration, "1 h 30 min ± 5 min", (90, 85, 95, "min")),
    (units.duration, "24..72 h", (2880, 1440, 4320, "h")),
    (units.duration, "24 to 72 hours", (2880, 1440, 4320, "hours")),
    (units.wire, "0.8 mm", (0.8, 0.8, 0.8, "mm")),
    (units.wire, "21 SWG", (0.8128, 0.8128, 0.8128, "SWG")),
    (units.wire, "20 SWG ± 0.02 mm", (0.9144, 0.8944, 0.9344, "SWG")),
    (units.wire, "20 ± 1 mm", (20, 19, 21, "mm")),
    (units.wire, "36 awg", (0.127, 0.127, 0.127, "AWG")),
    (units.wire, "0000 AWG", (11.684, 11.684, 11.684, "AWG")),
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
    (units.length, "8", "a length needs a unit: write `8 mm` or `8 cm`", "8 mm"),
    (units.length, "8 ± 2", "a length needs a unit: write `8 ± 2 mm` or `8 ± 2 cm`", "8 ± 2 mm"),
    (units.length, "8 cm+-0.2", "a length needs a unit: write `8 cm ± 0.2 cm`", "8 cm ± 0.2 cm"),
    (units.length, "16 1/2", "a length needs a unit: write `16 1/2 in`", "16 1/2 in"),
    (units.length, "8 ± 9", "in `8 ± 9` the tolerance is as large as the value: write a"
     " smaller one", None),
    (units.length, 0, "`0` is 0: write a length of more than 0", None),
    (units.length, "0 mm", "`0 mm` is 0: write a length of more than 0", None),
    (units.length, "0..8 mm", "`0..8 mm` begins at 0 or less: write a length of more than 0", None),
    (units.length, "-3 mm", "`-3 mm` is negative: write a length of more than 0", None),
    (units.length, "8 ± -1 mm", "`8 ± -1 mm` has a minus in its tolerance: write `8 ± 1 mm`",
     "8 ± 1 mm"),
    (units.length, "2 ± 3 mm", "in `2 ± 3 mm` the tolerance is as large as the value: write a"
     " smaller one", None),
    (units.length, "8 ± 8 mm", "in `8 ± 8 mm` the tolerance is as large as the value: write a"
     " smaller one", None),
    (units.length, "9..8 mm", "`9..8 mm` runs from the larger to the smaller: write the"
     " smaller first", "8..9 mm"),
    (units.length, "9 mm to 8 mm", "`9 mm to 8 mm` runs from the larger to the smaller: write the"
     " smaller first", "8 mm to 9 mm"),
    (units.length, "8 mn", "`mn` in `8 mn` is not a unit of length: write `8 mm`", "8 mm"),
    (units.length, "8 ± 1 inchs", "`inchs` in `8 ± 1 inchs` is not a unit of length: write"
     " `8 ± 1 inches`", "8 ± 1 inches"),
    (units.length, "8 g", "`g` in `8 g` is not a unit of length: use mm, cm, m, in, ft or yd",
     None),
    (units.length, "8 km", "`km` in `8 km` is not a unit of length: use mm, cm, m, in, ft or yd",
     None),
    (units.length, "8 ± 3%", "`%` in `8 ± 3%` is not a unit of length: use mm, cm, m, in, ft or"
     " yd", None),
    (units.length, "8,5 mm", "`8,5 mm` has a comma as its decimal point: write `8.5 mm`", "8.5 mm"),
    (units.length, "8,5 ± 0,2 mm", "`8,5 ± 0,2 mm` has a comma as its decimal point: write"
     " `8.5 ± 0.2 mm`", "8.5 ± 0.2 mm"),
    (units.length, "0,125 in", "`0,125 in` has a comma as its decimal point: write `0.125 in`",
     "0.125 in"),
    (units.length, "1,000 mm", "`1,000 mm` may be thousands or a decimal: write `1000 mm` or"
     " `1.000 mm`", None),
    (units.length, "1,500..2,000 mm", "`1,500..2,000 mm` may be thousands or a decimal: write"
     " `1500..2000 mm` or `1.500..2.000 mm`", None),
    (units.length, "16,875 in", "`16,875 in` has a comma as its decimal point: write `16.875 in`",
     "16.875 in"),
    (units.length, '16,875"', "`16,875\"` has a comma as its decimal point: write `16.875\"`",
     '16.875"'),
    (units.length, ".5 mm", "`.5 mm` has no digit before its decimal point: write `0.5 mm`",
     "0.5 mm"),
    (units.length, "5. mm", "`5. mm` has no digit after its decimal point: write `5 mm`", "5 mm"),
    (units.length, "16 in.", "`16 in.` has a full stop after its unit: write `16 in`", "16 in"),
    (units.length, "8 mm 9 mm", "`8 mm 9 mm` is not a length: write a number and a unit, such"
     " as `8 mm`", None),
    (units.length, "about\n8 mm", "`about 8 mm` has a word before its number: write `8 mm`",
     "8 mm"),
    (units.length, "~ 8 mm", "`~ 8 mm` has a word before its number: write `8 mm`", "8 mm"),
    (units.length, "8/9 mm", "`8/9 mm` may be a range or a fraction: write `8..9 mm`", "8..9 mm"),
    (units.length, "5 x 4 mm", "`5 x 4 mm` names two sizes: write one, and the other in a field of"
     " its own", None),
    (units.target, "46 cm ± 2 %", "`46 cm ± 2 %` has its tolerance in percent: write"
     " `46 cm ± 0.92 cm`", "46 cm ± 0.92 cm"),
    (units.duration, "half an hour", "`half an hour` has its number in words: write `1/2 hour`",
     "1/2 hour"),
    (units.length, "8 mil", "`mil` in `8 mil` is not a unit of length: use mm, cm, m, in, ft or yd",
     None),
    (units.length, "1/0 in", "`1/0 in` divides by 0: check the fraction", None),
    (units.length, "long", "`long` is not a length: write a number and a unit, such"
     " as `8 mm`", None),
    (units.length, " ", "a length is missing: write one such as `8 mm`", None),
    (units.length, "9" * 5000 + "/2 in", "`99999999999999999999...` is too long for a length:"
     " write one as `8 mm`", None),
    (units.length, "10001 m", "`10001 m` is larger than any piece: check it", None),
    (units.length, "0.00009 mm", "`0.00009 mm` is too small to measure: check it", None),
    (units.mass, "9 mm", "`mm` in `9 mm` is not a unit of mass: use g, kg, mg, oz, lb or ct",
     None),
    (units.mass, "9 gr", "`gr` in `9 gr` is not a unit of mass: use g, kg, mg, oz, lb or ct",
     None),
    (units.force, 8, "a rating needs a unit: write `8 lb` or `8 N`", "8 lb"),
    (units.force, "900 g", "`g` in `900 g` is not a unit of rating: use lb, kg or N", None),
    (units.temperature, "12", "`12` may be °C or °F: write which, as in `12 °C`",
     "12 °C"),
    (units.temperature, "12 °", "`12 °` may be °C or °F: write which, as in `12 °C`",
     "12 °C"),
    (units.temperature, "warm", "`warm` is not a temperature: write one as `18 °C`", None),
    (units.volume, "25 g", "`g` in `25 g` is not a unit of volume: use ml, cl, l or fl oz", None),
    (units.temperature, "-1 °C", "`-1 °C` is not a temperature to work in: write one from"
      " 0 to 50 °C", None),
    (units.temperature, "51 °C", "`51 °C` is not a temperature to work in: write one from"
      " 0 to 50 °C", None),
    (units.temperature, "15..12 °C",
     "`15..12 °C` runs from the warmer to the colder: write the colder first", None),
    (units.duration, "1 month", "`month` in `1 month` is not a unit of time: use s, min, h, d or"
     " week", None),
    (units.duration, "5 minuets", "`minuets` in `5 minuets` is not a unit of time: write"
     " `5 minutes`", "5 minutes"),
    (units.target, 46, "a length needs a unit: write `46 cm` or `46 in`", "46 cm"),
    (units.target, "8 ± 0 mm", "`8 ± 0 mm` needs a tolerance of more than 0",
     None),
    (units.wire, "20 ga", "`20 ga` does not say which gauge it is: write `20 AWG` (0.81 mm) or"
     " `20 SWG` (0.91 mm)", None),
    (units.wire, 20, "`20` does not say which gauge it is: write `20 AWG` (0.81 mm) or"
     " `20 SWG` (0.91 mm)", None),
    (units.wire, "5 gauge", "`5 gauge` may be AWG or SWG: write which, or write it in mm", None),
    (units.wire, 0.8, "a wire thickness needs a unit: write `0.8 mm`", "0.8 mm"),
    (units.wire, "AWG 20", "`AWG 20` is not a gauge: write its number and system, as in `20 AWG`",
     None),
    (units.wire, "20 AWG ± 3", "the tolerance in `20 AWG ± 3` is not a length: write one as in"
     " `20 AWG ± 0.02 mm`", None),
    (units.wire, "20 AWG ± 3 mm", "in `20 AWG ± 3 mm` the tolerance is as large as the value:"
     " write a smaller one", None),
    (units.wire, "41 AWG", "`41 AWG` is finer than any wire for beads: write it in mm", None),
    (units.wire, "5 SWG", "5 SWG is not in the table, which runs from 10 to 40: write mm", None),
    (units.bead_size, 8, "`8` is not a bead size: write `8/0`", "8/0"),
    (units.bead_size, "size 15/O", "`size 15/O` is not a bead size: write `15/0`", "15/0"),
    (
        units.bead_size,
        "3 mm",
        "`3 mm` is not a bead size: write one such as `11/0` or `6 mm`",
        None,
    ),
    (units.bead_size, "08/0", "`08/0` is not a bead size: write one such as `11/0` or `6 mm`",
     None),
    (units.bead_figures, 8, "`8` is not a bead size: write `8/0`", "8/0"),
    (units.bead_figures, "6 x 4", "`6 x 4` needs a unit: write `6 x 4 mm`", "6 x 4 mm"),
    (units.bead_figures, "6 x four mm", "`6 x four mm` is not a bead size: write one such as"
     " `6 x 4 mm`", None),
    (units.bead_figures, "6,5 mm", "`6,5 mm` has a comma as its decimal point: write `6.5 mm`",
     "6.5 mm"),
    (units.bead_figures, "6,5 x 4 mm", "`6,5 x 4 mm` has a comma as its decimal point: write"
     " `6.5 x 4 mm`", "6.5 x 4 mm"),
    (units.bead_figures, "large", "`large` is not a bead size: write one such as `11/0` or `6 mm`",
     None),
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


@pytest.mark.parametrize(
    ("text", "size"),
    [("11/0", "11/0"), ("8 / 0", "8/0"), ("15°", "15/0"), ("１１/0", "11/0")],
)
def test_bead_sizes(text: str, size: str) -> None:
    assert units.bead_size(text) == size


@pytest.mark.parametrize(
    ("text", "figures"),
    [
        ("8/0", []),
        ("6mm", [6.0]),
        ("5..8 mm", [6.5]),
        ("6 x 4 mm", [6.0, 4.0]),
        ("6mm x 4mm", [6.0, 4.0]),
        ("4×6mm", [4.0, 6.0]),
        ("1/4 in", [6.35]),
    ],
)
def test_figures_of_a_bead_size(text: str, figures: list[float]) -> None:
    assert [figure.value for figure in units.bead_figures(text)] == pytest.approx(figures)


def test_a_number_that_python_will_not_print() -> None:
    with pytest.raises(units.UnitFault) as caught:
        units.length(10**5000)
    says = "`99999999999999999999...` is too long for a length: write one as `8 mm`"
    assert caught.value.says == says


READERS = (
    units.length, units.mass, units.volume, units.force, units.duration, units.wire,
    units.temperature,
)  # fmt: skip
PIECES = (
    *"0123456789 ./-–±+½,°#\"'", "..", " to ", "+/-", "1/2", "mm", "cm", " in", "µm", " g", "kg",
    " h", " min", "lb", "AWG", "ga", "beading ", "xx", "٣", "²",
)  # fmt: skip
odd = st.lists(st.sampled_from(PIECES), max_size=10).map("".join)


@given(st.one_of(odd, st.text(max_size=80), st.integers(), st.floats()))
@example("9" * 5000 + "/2 in")
@example("0..1 mm")
@example("8 ± 7.9999999999 mm")
def test_anything_gives_a_value_or_a_fault(text: str | int | float) -> None:
    for read in (*READERS, units.target, units.bead_size):
        try:
            found = read(text)
        except units.UnitFault as fault:
            assert fault.says == fault.says.strip().rstrip(".") and "\n" not in fault.says
            assert len(fault.says) < 300
        else:
            if isinstance(found, units.Parsed):
                assert 0 < found.low <= found.value <= found.high < float("inf")


@given(odd)
@example("8 ± 2")
@example("8,5 ± 0,2 mm")
@example("٣mn")
def test_a_suggestion_can_be_put_in_place_of_what_was_written(text: str) -> None:
    for read in (*READERS, units.bead_size):
        try:
            read(text)
        except units.UnitFault as fault:
            if fault.suggestion is not None:
                assert read(fault.suggestion)


@given(st.integers(1, 99_999), st.sampled_from(["mm", "cm"]))
def test_what_is_shown_can_be_read_again(hundredths: int, unit: str) -> None:
    value = hundredths / 100 * (10 if unit == "cm" else 1)
    assert units.length(units.show(value, unit)).value == pytest.approx(value)


@given(st.integers(1, 3200), st.sampled_from([16, 32, 64]))
def test_fractions_of_an_inch_are_shown_as_they_are_written(over: int, under: int) -> None:
    value = over / under * units.INCH
    shown = units.show(value, "in/")
    assert units.length(shown).value == pytest.approx(value)
    assert units.show(-value, "in/") == f"-{shown}"


@given(st.integers(1, 9_999), st.integers(1, 9_999))
def test_a_tolerance_says_the_same_as_its_range(one: int, other: int) -> None:
    small, large = sorted((one, other))
    if small == large:
        large += 1
    by_tolerance = units.length(f"{large} ± {small} mm")
    by_range = units.length(f"{large - small}..{large + small} mm")
    assert by_tolerance[:3] == by_range[:3]


@given(st.integers(1, 99_999).map(lambda thousandths: thousandths / 1000))
def test_an_inch_is_an_inch_in_any_unit(inches: float) -> None:
    value = units.length(f"{inches:.3f} in").value
    assert units.length(f"{inches * 25.4:.7f} mm").value == pytest.approx(value, rel=1e-6)
    assert units.length(f"{inches * 25.4 / 10:.8f} cm").value == pytest.approx(value, rel=1e-6)


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        (8.0, "mm", "8 mm"),
        (9.857, "mm", "9.86 mm"),
        (460.0, "cm", "46 cm"),
        (419.1, "in/", "16 1/2 in"),
        (25.4, "in/", "1 in"),
        (-419.1, "in/", "-16 1/2 in"),
        (-12.7, "in/", "-1/2 in"),
        (0.79375, "in/", "1/32 in"),
        (10.0, "in/", "10 mm"),
        (0.4, "in/", "0.4 mm"),
        (0.0, "in/", "0 in"),
        (9.906, "in", "9.91 mm"),
        (-0.001, "mm", "0 mm"),
        (1800.0, "m", "1.8 m"),
        (35.5857729221, "lbf", "8 lb"),
        (19.6133, "kgf", "2 kg"),
        (453.59237, "lb", "1 lb"),
        (12.7, "”", "1/2 in"),
        (428.1, "in", "16 7/8 in"),
        (0.8118, "AWG", "0.81 mm"),
        (50.0, '"', "1 15/16 in"),
        (13.0, "°C", "13 °C"),
        (25.0, "°F", "77 °F"),
        (59.147059125, "fl oz", "2 fl oz"),
        (0.5, "ml", "0.5 ml"),
    ],
)
def test_shown(value: float, unit: str, text: str) -> None:
    assert units.show(value, unit) == text


@pytest.mark.parametrize(
    ("read", "text"), [(units.mass, "0.5oz ± 0lb"), (units.force, "16-1/2 lb ± 0 lb")]
)
def test_a_tolerance_of_nothing_leaves_the_value_in_its_range(
    read: Callable[[str], units.Parsed], text: str
) -> None:
    found = read(text)
    assert found.low <= found.value <= found.high
