"""What reads each kind of value: lengths, masses, times and the others, and beads."""

from __future__ import annotations

import re
from functools import lru_cache

from wellstrung.common.patterns import Pattern
from wellstrung.common.units.amount import (
    REMEMBERED,
    Parsed,
    UnitFault,
    clean,
    measure,
    one_line,
    split,
)
from wellstrung.common.units.known import (
    LENGTH,
    MASS,
    RATING,
    TIME,
    VOLUME,
    WINDOW,
)

#: what an author writes for the length of the one part that fills what the others leave
REST = "fills the rest"
#: and for the size of a finding as any shop sells it
USUAL = "usual"
_BEAD = Pattern(r"([1-9][0-9]?) ?(?:/ ?0|°)")
_NEARLY_BEAD = r"[-−]?(?:size )?#? ?([1-9][0-9]?) ?(?:[-/] ?[oO0]|[oO])?"
#: what stands between the two figures of a bead's size
_TIMES = r"( ?[x×*] ?| by )"
_WARM, _HOTTEST = "18 °C", 50.0
_DEGREES = Pattern(
    r"(?P<first>-?\d+(?:\.\d+)?)(?:(?P<sign> ± | ?\.\. ?| to )(?P<last>-?\d+(?:\.\d+)?))?"
    r" ?(?:°|deg(?:rees)?\.?)? ?(?P<scale>[CFcf])(?:elsius|ahrenheit)?"
)


@lru_cache(maxsize=REMEMBERED)
def length(text: str | int | float) -> Parsed:
    """A length in mm; sums such as `5 ft 6 in` are taken.

    >>> length('16 1/2 in').value, length('8 ± 0.2 mm').low
    (419.1, 7.8)
    """
    return measure(text, LENGTH)


@lru_cache(maxsize=REMEMBERED)
def size(text: str | int | float) -> Parsed:
    """The size of a part, as `length`, but to be shown in mm, whatever the author's unit.

    >>> size('5/16 in').unit, size('5/16 in').text
    ('mm', '5/16 in')
    """
    return length(text)._replace(unit="mm")


@lru_cache(maxsize=REMEMBERED)
def mass(text: str | int | float) -> Parsed:
    """A mass in g.

    >>> mass('9 g').value
    9.0
    """
    return measure(text, MASS)


@lru_cache(maxsize=REMEMBERED)
def force(text: str | int | float) -> Parsed:
    """A pull or a thread's rating in N; `lb` is pound-force here.

    >>> round(force('8 lb').value, 2)
    35.59
    """
    return measure(text, RATING)


@lru_cache(maxsize=REMEMBERED)
def duration(text: str | int | float) -> Parsed:
    """A time in minutes; sums such as `1 h 30 min` are taken.

    >>> duration('24 h').value, duration('1 h 30 min').value
    (1440.0, 90.0)
    """
    return measure(text, TIME)


@lru_cache(maxsize=REMEMBERED)
def volume(text: str | int | float) -> Parsed:
    """A volume in ml; a fluid ounce is the one of the United States.

    >>> volume('25 ml').value, round(volume('1 fl oz').value, 2)
    (25.0, 29.57)
    """
    return measure(text, VOLUME)


@lru_cache(maxsize=REMEMBERED)
def target(text: str | int | float) -> Parsed:
    """A window of lengths to land in; one length alone has no tolerance yet.

    >>> target('46 cm ± 1 cm')[:3], target('46 cm')[:3]
    ((460.0, 450.0, 470.0), (460.0, 460.0, 460.0))
    """
    parsed = measure(text, WINDOW)
    if parsed.low == parsed.high and split(clean(text, WINDOW.name, WINDOW.example))[1]:
        raise UnitFault(f"`{one_line(text)}` needs a tolerance of more than 0")
    return parsed


@lru_cache(maxsize=REMEMBERED)
def temperature(text: str | int | float) -> Parsed:
    """How warm a room is, in °C, from degrees that name their scale.

    >>> temperature('12 °C').value, temperature('59 F').value, temperature('12..15 °C').low
    (12.0, 15.0, 12.0)
    """
    quoted = one_line(clean(text, "temperature", _WARM))
    found = _DEGREES.fullmatch(quoted)
    if found is None:
        bare = re.fullmatch(r"-?\d+(\.\d+)?( ?°)?", quoted)
        near = f"{quoted.rstrip(' °')} °C" if bare else None
        if near:
            temperature(near)  # what else is wrong with it is raised first
        says = f"may be °C or °F: write which, as in `{near}`" if bare else "is not a temperature"
        raise UnitFault(f"`{quoted}` {says}" + ("" if bare else f": write one as `{_WARM}`"), near)
    scale = found["scale"].upper()
    first, last = float(found["first"]), float(found["last"] or found["first"])
    if found["sign"] and "±" in found["sign"]:
        value, low, high = first, first - last, first + last
    else:
        value, low, high = (first + last) / 2, first, last
    if scale == "F":
        value, low, high = ((degrees - 32) / 1.8 for degrees in (value, low, high))
    if low > high:
        raise UnitFault(f"`{quoted}` runs from the warmer to the colder: write the colder first")
    if low < 0 or high > _HOTTEST:
        raise UnitFault(f"`{quoted}` is not a temperature to work in: write one from 0 to 50 °C")
    value, low, high = (round(degrees, 9) for degrees in (value, low, high))
    return Parsed(value, low, high, f"°{scale}", str(text))


@lru_cache(maxsize=REMEMBERED)
def bead_size(text: str | int | float) -> str:
    """A bead size such as `11/0`.

    >>> bead_size('8 / 0')
    '8/0'
    """
    written = clean(text, "bead size", "11/0")
    if found := _BEAD.fullmatch(written):
        return f"{found[1]}/0"
    if nearly := re.fullmatch(_NEARLY_BEAD, written):
        size = f"{nearly[1]}/0"
        raise UnitFault(f"`{one_line(text)}` is not a bead size: write `{size}`", size)
    if turned := re.fullmatch(r"0 ?/ ?([1-9][0-9]?)", written):
        size = f"{turned[1]}/0"
        raise UnitFault(f"`{one_line(text)}` is a bead size turned round: write `{size}`", size)
    raise UnitFault(f"`{one_line(text)}` is not a bead size: write one such as `11/0` or `6 mm`")


def _of_a_seed_bead(text: str | int | float, no_length: UnitFault) -> tuple[Parsed, ...]:
    """No figures, where a text is a seed bead's size; or the fault that says more."""
    try:
        bead_size(text)
    except UnitFault as no_size:
        raise (no_length if no_length.suggestion and not no_size.suggestion else no_size) from None
    return ()


@lru_cache(maxsize=REMEMBERED)
def bead_figures(text: str | int | float) -> tuple[Parsed, ...]:
    """The size that a bead is sold by, in mm: one figure or two; none of a seed bead's number.

    >>> [figure.value for figure in bead_figures('6 x 4 mm')], bead_figures('8/0')
    ([6.0, 4.0], ())
    """
    written = clean(text, "bead size", "11/0")
    first, times, last = (
        (part.strip() for part in re.split(_TIMES, written, maxsplit=1))
        if (re.search(_TIMES, written))
        else ("", "", written)
    )
    try:
        if not times:
            return (size(last),)
        unit = re.sub(r"^[\d. /]+", "", last)
        return size(first if re.search(r"[a-z\"]", first) else f"{first} {unit}"), size(last)
    except UnitFault as fault:
        if not times:
            return _of_a_seed_bead(text, fault)
        near = f"{written} mm" if fault.bare else None
        if "," in written and not near:
            near = re.sub(r"(?<=\d),(?=\d)", ".", written)
            bead_figures(near)
            raise UnitFault(
                f"`{one_line(text)}` has a comma as its decimal point: write `{near}`", near
            ) from None
        says = f"`{one_line(text)}` is not a bead size: write one such as `6 x 4 mm`"
        raise UnitFault(
            f"`{one_line(text)}` needs a unit: write `{near}`" if near else says, near
        ) from None
