"""What plans are judged by: all that plugins brought, but for the writers of reports."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from wellstrung.derived.measures import Units, measures
from wellstrung.derived.of_plan import Brought
from wellstrung.model.parts import Kind, Stitch
from wellstrung.reading.settings import LIMITS, Setting
from wellstrung.rulebook import Rule


class Installed(Struct, frozen=True):
    """Rules, kinds, stitches and quantities by name, and the plugin that owns each rule."""

    rules: Mapping[str, Rule]
    kinds: Mapping[str, Kind]
    stitches: Mapping[str, Stitch]
    quantities: Mapping[str, Brought]
    owners: Mapping[str, str]

    @property
    def fragments(self) -> Mapping[str, Mapping[str, object]]:
        """The schema fragment of each kind of part."""
        return {name: kind.fragment for name, kind in self.kinds.items()}

    @property
    def limits(self) -> Mapping[str, Setting]:
        """Every limit that a bench file can change: those of the rules, and those of the core."""
        declared = [limit for rule in self.rules.values() for limit in rule.limits]
        return {**LIMITS, **{limit.name: Setting(*limit[1:]) for limit in declared}}

    @property
    def measures(self) -> Mapping[str, Units]:
        """The unit of each quantity that a bench may set a limit of its own to, by whose it is."""
        return measures(self.kinds, self.stitches, self.quantities.values())
