"""A bench file: from its text to the maker's settings, or its faults, each at its place.

It is read, and refused, like a plan. It changes settings and nothing else: it cannot name code.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Iterator, Mapping
from pathlib import Path

from wellstrung.common import money, units
from wellstrung.common.patterns import Pattern
from wellstrung.common.places import Fault
from wellstrung.common.wording import article, same_as
from wellstrung.reading import parser, schema
from wellstrung.reading import pricing as prices_of_time
from wellstrung.reading import tree as reading
from wellstrung.reading.faults import fault
from wellstrung.reading.house_limits import BY_UNIT, Measures, house_limits, is_one
from wellstrung.reading.setting_names import unknown
from wellstrung.reading.settings import (
    ALLOWANCES,
    BEADS_PER_MINUTE,
    LIMITS,
    PACES,
    RATES,
    Bench,
    Setting,
)
from wellstrung_schemas import bench as bench_schema

BENCH = parser.Expected(
    "bench file",
    "write settings below `bench: 1`, or delete the file",
    "a bench file is made of named entries: begin with `bench: 1`",
)
_NUMBER = r"\d+(?:\.\d+)?"
_RATE = Pattern(rf"({_NUMBER}) ?(?:beads?)? ?(?:/|per|an?) ?(\S.*)", re.IGNORECASE)
_NOTHING = Pattern(r"\s*0+(?:\.0+)?(?=\s*[^\s\d.,/%±]+\s*$)")
_NO_MEASURES: Measures = {}
#: The fastest hands anyone has: beads a minute, a guess far above any known.
_FASTEST = 1000.0


def read(
    path: Path,
    stitches: Collection[str] = (),
    limits: Mapping[str, Setting] = LIMITS,
    measures: Measures = _NO_MEASURES,
) -> tuple[Bench | None, tuple[Fault, ...]]:
    """The bench of a file, or the faults that keep it from being one; never an exception.

    `stitches` are the stitches there are: each may have a rate of its own. `limits` are those of
    all that is installed, `measures` the units of quantities that limits of its own may be set to.

    >>> read(Path("no such bench.yaml"))[1][0].says
    '`no such bench.yaml` cannot be read: no such file or directory'
    """
    return _settings(parser.read(path, BENCH), stitches, limits, measures)


def read_text(
    text: str,
    file: str,
    stitches: Collection[str] = (),
    limits: Mapping[str, Setting] = LIMITS,
    measures: Measures = _NO_MEASURES,
) -> tuple[Bench | None, tuple[Fault, ...]]:
    r"""The bench of a text, or its faults.

    >>> bench, _ = read_text("bench: 1\nlimits: {pin grip: 8 mm}", "bench.yaml")
    >>> bench.limits["pin grip"]
    Setting(value=8.0, unit='mm', reason='bench.yaml:2, written `8 mm`', choice=None)
    >>> read_text("bench: 1\nlimits: {pin girp: 8 mm}", "bench.yaml")[1][0].says
    'there is no limit called `pin girp`: write `pin grip`'
    """
    return _settings(parser.read_text(text, file, BENCH), stitches, limits, measures)


def _settings(
    read: reading.Read,
    stitches: Collection[str],
    limits: Mapping[str, Setting],
    measures: Measures,
) -> tuple[Bench | None, tuple[Fault, ...]]:
    if read.tree is None or read.faults:
        return None, read.faults
    places = {
        (group, entry.key.text): entry.key.place
        for group in ("allowances", "limits", "rates", "paces", "prices", "pricing")
        for entry in _entries(read.tree, group)
    }
    faults = list(schema.against(read.tree, bench_schema(), "the bench file"))
    rates = {**{name: RATES["weaving"] for name in stitches}, **RATES}
    known = {"allowances": ALLOWANCES, "limits": limits, "rates": rates, "paces": PACES}
    own: dict[str, dict[str, Setting]] = {group: {} for group in known}
    for group, defaults in known.items():
        for entry in _entries(read.tree, group):
            name = entry.key.text
            if group == "limits" and is_one(name):
                continue
            name = name if name in defaults else same_as(name, defaults) or name
            try:
                if name not in defaults:
                    faults.append(unknown(entry.key, group, known))
                else:
                    own[group][name] = _setting(name, entry.node, defaults[name])
            except units.UnitFault as wrong:
                faults.append(fault(f"`{name}` of `{group}`: {wrong.says}", entry.node.place))
    house = tuple(house_limits(_of_house(read.tree), measures, faults))
    own_prices: dict[str, str] = {}
    for entry in _entries(read.tree, "prices"):
        try:
            own_prices[entry.key.text] = money.price(entry.node.value).text
        except units.UnitFault as wrong:
            says = f"`{entry.key.text}` of `prices`: {wrong.says}"
            faults.append(fault(says, entry.node.place))
    pricing = prices_of_time.read(_entries(read.tree, "pricing"), faults)
    budget = read.tree.value.get("budget")
    if budget is not None:
        places["budget", "budget"] = read.tree.entries["budget"].key.place
    if faults:
        return None, tuple(sorted(faults, key=lambda one: one.place))
    return (
        Bench(
            read.file,
            {**ALLOWANCES, **own["allowances"]},
            {**limits, **own["limits"]},
            {**RATES, **own["rates"]},
            {**PACES, **own["paces"]},
            own_prices,
            str(budget) if budget is not None else None,
            places,
            house,
            pricing,
            read if "swatches" in read.tree.entries else None,
        ),
        (),
    )


def _entries(tree: reading.Mapping, group: str) -> Iterator[reading.Entry]:
    """The entries of a group that hold one value; the schema reports the others."""
    entry = tree.entries.get(group)
    if entry is not None and isinstance(entry.node, reading.Mapping):
        for inner in entry.node.entries.values():
            if isinstance(inner.node, reading.Scalar) and inner.node.value is not None:
                yield inner


def _of_house(tree: reading.Mapping) -> Iterator[reading.Entry]:
    """The limits that are of a quantity."""
    entry = tree.entries.get("limits")
    if entry is not None and isinstance(entry.node, reading.Mapping):
        yield from (inner for name, inner in entry.node.entries.items() if is_one(name))


def _setting(name: str, node: reading.Node, default: Setting) -> Setting:
    """The maker's setting in the default's unit; raises UnitFault."""
    written = node.value
    if default.unit == BEADS_PER_MINUTE:
        value = _rate(written)
    elif default.unit in BY_UNIT:
        value = _measured(written, BY_UNIT[default.unit])
    elif default.unit:
        value = _named(written, default)
    else:
        value = _plain(written, default)
    where = f"{node.place.file}:{node.place.line}"
    reason = f"{where}, written `{' '.join(str(written).split())}`"
    careful = default.choice is not None and default.choice.careful
    return Setting(value, default.unit, reason, default.choice if careful else None)


def _measured(
    written: str | int | float, parse: Callable[[str | int | float], units.Parsed]
) -> float:
    """One value with its unit; nothing at all is an allowance too, so 0 is taken."""
    nothing = isinstance(written, str) and _NOTHING.match(written)
    parsed = parse(_NOTHING.sub("1", written) if nothing else written)
    if parsed.low != parsed.high:
        raise units.UnitFault(f"`{written}` is a range: write the one value that you work to")
    return 0.0 if nothing else parsed.value


def _rate(written: str | int | float) -> float:
    """Beads a minute."""
    text = " ".join(str(written).split())
    found = _RATE.fullmatch(text)
    if found is None:
        bare = re.fullmatch(_NUMBER, text)
        example = f"{text} beads per min" if bare else "9 beads per min"
        says = "needs beads and a time" if bare else "is not a rate of beads"
        raise units.UnitFault(f"`{text}` {says}: write `{example}`", example)
    time = found[2] if found[2][0].isdigit() else f"1 {found[2]}"
    value = float(found[1]) / units.duration(time).value
    if not 0 < value <= _FASTEST:
        raise units.UnitFault(f"`{text}` is not a speed of hands: write how many beads in a time")
    return value


def _plain(written: str | int | float, default: Setting) -> float:
    """A share or a number of times: `5 %`, 0.05 or 2.5."""
    text = " ".join(str(written).split())
    found = re.fullmatch(rf"({_NUMBER}) ?(%?)", text)
    if found is None:
        mended = re.sub(r"(?<=\d),(?=\d)", ".", text)
        if mended != text and re.fullmatch(rf"{_NUMBER} ?%?", mended):
            says = f"`{text}` has a comma as its decimal point: write `{mended}`"
            raise units.UnitFault(says, mended)
        example = units.show(default.value, "")
        raise units.UnitFault(f"`{text}` is not a number: write one such as `{example}` or `5 %`")
    value = float(found[1]) / (100 if found[2] else 1)
    if default.value < 1 < value and not found[2]:
        raise units.UnitFault(
            f"`{text}` may be a share or per cent: write `{text} %` or `{value / 100:g}`"
        )
    if not 0 <= value <= _FASTEST or (not value and default.value >= 1):
        raise units.UnitFault(f"`{text}` is far outside the usual range (about {default.value:g})")
    return value


def _named(written: str | int | float, default: Setting) -> float:
    """A number with a unit that is written just so, such as degrees."""
    text = " ".join(str(written).split())
    found = re.fullmatch(rf"({_NUMBER}) ?{re.escape(default.unit)}", text)
    if found is None:
        example = f"{default.value:g} {default.unit}"
        raise units.UnitFault(f"`{text}` is not {article(default.unit)}: write one as `{example}`")
    return float(found[1])
