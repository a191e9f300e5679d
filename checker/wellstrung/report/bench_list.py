"""Every setting of a bench, for people and as JSON: its default, reason and who uses it."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping
from functools import cache
from pathlib import Path
from typing import Any

from msgspec import Struct

from wellstrung.common import units
from wellstrung.common.places import Place
from wellstrung.common.wording import hours, together
from wellstrung.judging.taught import SETTINGS
from wellstrung.model.plan import Plan
from wellstrung.reading.house_limits import Measures
from wellstrung.reading.pricing import NAMES as PRICING
from wellstrung.reading.settings import ALLOWANCES, PACES, RATES, Bench, HouseLimit, Setting
from wellstrung.report import learnt_list
from wellstrung.report.terminal import Page
from wellstrung.report.writer import Options
from wellstrung.rulebook import held_to_house_limits
from wellstrung.rulebook.installed import Installed

_GROUPS = {
    "allowances": "how far a bought or made size may be off",
    "limits": "what the checks hold a plan to",
    "rates": "how fast you are",
    "paces": "how many times as long it takes, you by these rates, a student by yours",
    "prices": "what a bead or a part costs, by its name in your plans",
    "budget": "what each piece may cost, if its plan does not say",
    "pricing": "what your hours and classes cost and what you ask, for `wellstrung kit`",
}
_NONE = Setting(0.0, "", "")


class Listed(Struct, frozen=True):
    """A setting, with what the bench in force writes of it, and the rules that use it."""

    group: str
    name: str
    default: Setting = _NONE
    used_by: tuple[str, ...] = ()
    now: str = ""
    place: Place | None = None

    @property
    def usual(self) -> str:
        """The default in words; empty for what has none."""
        return shown(self.default) if self.default.reason else ""


def listed(
    installed: Installed, bench: Bench | None, prices: Mapping[str, str], plan: Plan | None = None
) -> Iterator[Listed]:
    """Every setting there is; `prices` are those of what a plan takes, empty where it has none.

    A limit of the bench's own says which of the `plan` it is for.
    """
    known = {"allowances": ALLOWANCES, "limits": installed.limits, "rates": RATES, "paces": PACES}
    mine = bench or Bench(limits=installed.limits)
    of_stitches = {name: RATES["weaving"] for name in installed.stitches if name not in RATES}
    for group, defaults in known.items():
        in_force: Mapping[str, Setting] = getattr(mine, group)
        for name, default in {**defaults, **(of_stitches if group == "rates" else {})}.items():
            place = mine.places.get((group, name))
            now = shown(in_force[name]) if place is not None else ""
            yield Listed(group, name, default, _users(group, name, installed), now, place)
        if group == "limits":
            for limit in mine.house:
                now = limit.text + (_is_for(limit, plan) if plan is not None else "")
                yield Listed(group, limit.name, _NONE, ("bench-limit",), now, limit.place)
    money = [("prices", name, price) for name, price in {**prices, **mine.prices}.items()]
    for group, name, now in [*money, ("budget", "budget", mine.budget or "")]:
        yield Listed(group, name, _NONE, ("cost-limit",), now, mine.places.get((group, name)))
    for name in PRICING:
        now = mine.pricing.written.get(name, "")
        yield Listed("pricing", name, _NONE, (), now, mine.places.get(("pricing", name)))


def _is_for(limit: HouseLimit, plan: Plan) -> str:
    """What of a plan a limit of the bench's own is for."""
    held = [one for one in held_to_house_limits(plan) if one.limit is limit]
    names = [f"`{one.item.name}`" if one.item is not None else "the piece" for one in held]
    return f", for {together(names)}" if names else ", for nothing in this plan"


def write(
    settings: Iterable[Listed],
    bench: Bench | None,
    measures: Measures,
    options: Options,
    plan: Plan | None = None,
) -> str:
    """The settings by group, what the bench sets with its line; and what it may set limits to."""
    page, every = Page(options), list(settings)
    if bench is not None:
        own = sum(one.place is not None for one in every)
        page.line(f"bench: {bench.file}, which sets {own} of these", style="bold")
        page.line()
        if bench.learnt is not None:
            learnt_list.write(page, bench.learnt, plan)
    for group, what in _GROUPS.items():
        page.line(f"{group}: {what}", style="bold")
        for one in (one for one in every if one.group == group):
            _one(page, one)
        page.line()
    page.line("quantities: what a limit of your own may be for, as `piece.mass`", style="bold")
    for whose, units_of in measures.items():
        page.pair(whose, ", ".join(units_of), 2, gap=15)
    return page.text()


def _one(page: Page, one: Listed) -> None:
    if one.place is None:
        page.line(f"{one.name}  {one.now or one.usual or 'none'}", 2)
    else:
        instead = f", instead of {one.usual}" if one.usual else ""
        where = f"{one.place.file}:{one.place.line}"
        page.line(f"{one.name}  {one.now}{instead} ({where})", 2, style="bold")
    if one.default.reason:
        page.pair("why", one.default.reason, 4, gap=9)
    if one.default.choice is not None and not one.default.choice.careful:
        low, high, source, _ = one.default.choice
        span = f"{low:g} to {high:g} {one.default.unit}".rstrip()
        page.pair("others", f"{span}: makers differ{f', {source}' if source else ''}", 4, gap=9)
    page.pair("used by", ", ".join(one.used_by), 4, gap=9)


def shown(setting: Setting) -> str:
    """The value of a setting, as a bench would write it.

    >>> shown(Setting(10080.0, "min", "")), shown(Setting(0.05, "", ""))
    ('7 days', '0.05')
    """
    if setting.unit == "min" and setting.value >= 60:
        return hours(setting.value, days=True)
    return units.show(setting.value, setting.unit)


def as_json(settings: Iterable[Listed], bench: Bench | None, measures: Measures) -> str:
    """The same as JSON; quantities with their units, null where it differs from part to part."""
    found = {
        "bench": bench.file if bench else None,
        "settings": [_as_json(one) for one in settings],
        "quantities": measures,
        **({"learnt": learnt_list.as_json(bench.learnt)} if bench and bench.learnt else {}),
    }
    return json.dumps(found, indent=2, ensure_ascii=False)


def _as_json(one: Listed) -> dict[str, Any]:
    value, unit, reason, choice = one.default
    has = bool(reason)
    return {
        "group": one.group,
        "name": one.name,
        "default": value if has else None,
        "unit": unit,
        "reason": reason,
        "choice": choice._asdict() if choice is not None else None,
        "used_by": list(one.used_by),
        "set": one.now if one.place is not None else None,
        "place": one.place._asdict() if one.place is not None else None,
    }


def _users(group: str, name: str, installed: Installed) -> tuple[str, ...]:
    """The rules that ask for a setting: as they declare it, or as the cases of rules show."""
    if name in SETTINGS:
        return ("swatches",)
    declared = {
        rule.name
        for rule in installed.rules.values()
        if group == "limits" and any(limit.name == name for limit in rule.limits)
    }
    # all hands are timed alike, and every check of hours asks for all of them
    found = recorded()[group].get("any" if group in ("rates", "paces") else name, "").split(", ")
    return tuple(sorted({*declared, *(rule for rule in found if rule in installed.rules)}))


@cache
def recorded() -> Mapping[str, Mapping[str, str]]:
    """Which rules ask for which settings, as a test records it over the cases of all rules."""
    text = (Path(__file__).parent / "settings_used.json").read_text(encoding="utf-8")
    found: Mapping[str, Mapping[str, str]] = json.loads(text)
    return found
