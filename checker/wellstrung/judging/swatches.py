"""The swatches of a bench: from its text to what they teach, or what is wrong with them.

A swatch is written as a part of its stitch with what was measured of it. So it is read as such a
part, and answered as one: the swatches make a plan of their own, at their places in the bench,
whose quantities say what the tables expect of each.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from msgspec.structs import replace

from wellstrung.common.places import Fault
from wellstrung.common.trade_words import fields_meant, said
from wellstrung.common.wording import either, one_of
from wellstrung.derived.learnt import lot_of
from wellstrung.derived.of_plan import Quantities
from wellstrung.judging.readings import IN_ROWS, SIZES, WEIGHED, Swatch
from wellstrung.judging.taught import taught
from wellstrung.model import build
from wellstrung.model.parts import Stitch
from wellstrung.model.plan import Plan
from wellstrung.reading import schema, tree
from wellstrung.reading.faults import choose, fault, unknown
from wellstrung.reading.settings import RATES, Bench, Setting
from wellstrung.rulebook.installed import Installed
from wellstrung.short_forms import spelled_out

#: what a swatch has and no part does
_OWN = {
    *SIZES,
    *IN_ROWS,
    *("bead", "lot", "hand", "date", "note", "tension", "waxed", "relaxed", "columns"),
    *("knots", "adds", "do", "times", "time", WEIGHED),
}
_ANY_PART = {"kind": "adhesive", "type": "superglue"}
_ANY_BEAD = {"type": "other", "outside": "6 mm", "length": "6 mm", "hole": "1 mm"}


def learnt(bench: Bench, here: Installed) -> tuple[Bench | None, tuple[Fault, ...]]:
    """The bench with what its swatches teach, or their faults; the very same where it has none."""
    if bench.swatches is None:
        return bench, ()
    made = _Swatches(bench.swatches, here)
    bench = replace(bench, swatches=None, rates={**_of_any(here, bench), **bench.rates})
    plan = made.plan(bench)
    if plan is None:
        return None, made.sorted()
    maker = str(made.tree.value.get("maker") or "")
    found = taught(made.swatches, Quantities(plan, here.quantities), maker, made.faults)
    if made.faults:
        return None, made.sorted()
    return replace(bench, learnt=found), ()


def _of_any(here: Installed, bench: Bench) -> Mapping[str, Setting]:
    """The rate of any stitch that has none of its own: what is timed is of that stitch alone."""
    return dict.fromkeys(here.stitches, bench.rates["weaving"])


class _Swatches:
    """The swatches of one bench as parts of a plan."""

    def __init__(self, read: tree.Read, here: Installed) -> None:
        assert read.tree is not None
        self.read, self.tree, self.here = read, read.tree, here
        self.faults: list[Fault] = []
        self.swatches: list[Swatch] = []
        self._palette: dict[str, tree.Entry] = {}
        palette = self.tree.entries.get("beads")
        self._lots: dict[str, set[str]] = {}
        for node in getattr(self.tree.entries["swatches"].node, "items", ()):
            if "bead" in node.entries and (lot := _lot(node)):
                self._lots.setdefault(str(node.entries["bead"].node.value), set()).add(lot)
        self._beads = palette.node.entries if palette is not None else {}

    def sorted(self) -> tuple[Fault, ...]:
        """Its faults, each once, from the top of the file down."""
        return tuple(sorted(dict.fromkeys(self.faults), key=lambda one: one.place))

    def plan(self, bench: Bench) -> Plan | None:
        """The plan that the swatches make, with `swatches` filled; or None, with `faults`."""
        parts: dict[str, tree.Entry] = {}
        listed = self.tree.entries["swatches"]
        for number, node in enumerate(getattr(listed.node, "items", ()), 1):
            if isinstance(node, tree.Mapping):
                swatch = self._swatch(f"swatch {number}", node)
                if swatch is not None and swatch.part is not None:
                    key = tree.implied(node, swatch.name)
                    parts[swatch.name] = tree.Entry(key, swatch.part)
        if self.faults:
            return None
        for name in self._beads:
            self._palette.setdefault(name, self._beads[name])
        data = {"plan": 1, "title": "Swatches", "piece": "necklace"}
        entries = {name: _implied(listed.key, value) for name, value in data.items()}
        parts.setdefault("glue", _implied(listed.key, _ANY_PART))  # a plan has one at least
        entries["beads"] = tree.Entry(listed.key, tree.group(self.tree, self._palette))
        entries["parts"] = tree.Entry(listed.key, tree.group(self.tree, parts))
        return self._built(entries, bench)

    def _built(self, entries: dict[str, tree.Entry], bench: Bench) -> Plan | None:
        """The plan of these entries, through all the stages of any plan."""
        read = tree.Read(self.read.file, self.read.text, tree.group(self.tree, entries), ())
        kinds, stitches = self.here.fragments, self.here.stitches
        read, words = spelled_out(read, kinds, stitches)
        known = {one.place for one in words}
        shape = [one for one in schema.check(read, schema.Known(kinds)) if one.place not in known]
        self.faults += [*words, *shape]
        if self.faults:
            return None
        plan, faults = build.build(read, self.here.kinds, stitches, bench)
        self.faults += faults
        return plan

    def _swatch(self, name: str, written: tree.Mapping) -> Swatch | None:
        stitch = self._stitch(name, written)
        if stitch is None and "stitch" in written.entries:
            return None
        node = self._in_our_words(name, written, stitch)
        if node is None:
            return None
        if reason := self._lacks(name, node, stitch):
            self.faults.append(fault(f"`{name}` {reason}", node.place))
            return None
        bead = self._bead(name, node)
        if bead is None:
            return None
        worked = stitch is not None and {*SIZES, "knots"} & node.entries.keys()
        part = self._part(node, stitch, bead) if stitch is not None and worked else None
        found = Swatch(name, node, stitch, part, bead.value if bead is not node else "")
        self.swatches.append(found)
        return found

    def _in_our_words(
        self, name: str, written: tree.Mapping, stitch: Stitch | None
    ) -> tree.Mapping | None:
        """A swatch with its fields by our names; None where one is not known."""
        known = {*_OWN, "stitch", "count", *self._fields(stitch)}
        if stitch is None:
            known -= {*SIZES, "columns", "knots", "adds", "thread", "needle"}
        entries: dict[str, tree.Entry] = {}
        for word, entry in written.entries.items():
            meant = (word,) if word in known else fields_meant(word, known, "swatch")
            if len(meant) == 1 and meant[0] not in entries:
                entries[meant[0]] = entry
                continue
            bare = "" if stitch is not None else " without a `stitch`"
            says = f"`{name}` has no field called `{word}`{bare}"
            self.faults.append(
                fault(f"{says}: write {either(f'`{one}`' for one in meant)}", entry.key.place)
                if meant
                else unknown(entry.key, says, known)
            )
            return None
        return tree.group(written, entries)

    def _fields(self, stitch: Stitch | None) -> Iterable[str]:
        """The fields of a part of a stitch, and what a label may say beside them."""
        if stitch is None:
            return ()
        fields: Any = self.here.fragments[stitch.makes]["properties"]
        return {*fields, "passes"} - {"kind", "beads", "measured"}

    def _lacks(self, name: str, node: tree.Mapping, stitch: Stitch | None) -> str:
        """What a swatch lacks to teach anything, with what to write; empty for a whole one."""
        has = node.entries
        done = "weighed" if WEIGHED in has else "in a row" if {*IN_ROWS} & has.keys() else ""
        if done and not ("bead" in has and isinstance(has["bead"].node, tree.Scalar)):
            return f"has beads {done}, and does not say of which: write `bead: kelp`, one name"
        if WEIGHED in has and stitch is not None:
            loose = "`{bead: kelp, count: 100, mass: 2.86 g}`"
            return f"is woven, and what is weighed is loose beads: write {loose}, without a stitch"
        if "do" in has and "time" not in has:
            return "does not say how long it took: write `time: 12 min`"
        if "do" in has:
            verb = str(has["do"].node.value)
            if verb in ("weave", "string", *self.here.stitches):
                return "times beads: write `stitch: tubular peyote, count: 216, time: 28 min`"
            steps = [step for step, rate in RATES.items() if rate.unit == "min"]
            return "" if verb in steps else f"times `{verb}`: write {one_of(steps, verb)}"
        if "time" in has and "count" not in has:
            return "has a time and not how many beads it took: write `count: 216`"
        if stitch is None:
            if not {*IN_ROWS, WEIGHED, "time"} & has.keys():
                return "has nothing measured: write `stitch` with a size, or `in_a_row: 21 mm`"
            if "count" not in has:
                count = 100 if WEIGHED in has else 10
                return f"does not say how many beads are {done}: write `count: {count}`"
            return "" if "time" not in has else "has a time and no stitch: write `stitch: brick`"
        if ("knots" in has) != ("adds" in has):
            return "needs `knots` and what they add together: write `knots: 10, adds: 8.4 mm`"
        sizes = [what for what in SIZES if what in has]
        if not sizes and not {"adds", "time"} & has.keys():
            gives = [what for what, quantity in SIZES.items() if quantity in stitch.quantities]
            return f"has nothing measured: write {one_of(gives)}, as `{gives[0]}: 9.7 mm`"
        if "knots" in has and not stitch.knot:
            return f"has knots, and `{stitch.name}` has none: write `stitch: knotted`"
        counted = {"rows", "rounds", "count", "repeats"} & has.keys()
        if {"length", "thread_used"} & has.keys() and not counted:
            over = "count: 40" if stitch.makes == "strand" else "rows: 20"
            return f"does not say how many rows or beads its length is of: write `{over}`"
        if sizes and "bead" not in has and not (stitch.bare or stitch.cored):
            return "does not say of which bead it is: write `bead: kelp`, a name under `beads`"
        return ""

    def _stitch(self, name: str, node: tree.Mapping) -> Stitch | None:
        """The stitch of a swatch in whatever words; None where it has none, or one not known."""
        entry, stitches = node.entries.get("stitch"), self.here.stitches
        if entry is None:
            return None
        text = str(entry.node.value)
        if text in stitches:
            return stitches[text]
        round_work = {"around", "each_round"} & node.entries.keys()
        flat = {"across", "columns"} & node.entries.keys()
        kinds = ["woven rope"] if round_work else ["woven band"] if flat else []
        for kind in [*kinds, *dict.fromkeys(stitch.makes for stitch in stitches.values())]:
            for place in (f"stitch of {kind}", "stitch"):
                meant = said(place, text)
                if meant is not None and meant[0] in stitches:
                    return stitches[meant[0]]
        self.faults.append(
            choose(f"`{name}`: there is no stitch called `{text}`", entry.node, stitches)
        )
        return None

    def _bead(self, name: str, node: tree.Mapping) -> tree.Node | None:
        """The bead, or beads, of a swatch by their names in the palette; None for one not known.

        A bead of a lot, and one that is said in words, has a name of its own there. Where a bench
        knows one lot of a bead, all is of that.
        """
        entry = node.entries.get("bead")
        if entry is None:
            return node
        if not isinstance(entry.node, tree.Scalar):
            alien = [one for one in _listed(entry.node) if str(one.value) not in self._beads]
            self.faults += [self._alien(name, one) for one in alien]
            return None if alien else entry.node
        text = entry.node.text
        known = self._beads.get(text)
        if known is None and not any(sign in text for sign in " /0123456789"):
            self.faults.append(self._alien(name, entry.node))
            return None
        lots = {lot for lot in (_lot(node), *self._lots.get(text, ())) if lot}
        lot = _lot(node) or ("".join(lots) if len(lots) == 1 else "")
        called = " ".join([text.replace(".", ","), *([f"lot {lot}"] if lot else [])])
        self._palette.setdefault(called, known or tree.Entry(entry.key, entry.node))
        return tree.implied(entry.node, called)

    def _alien(self, name: str, node: tree.Node) -> Fault:
        """A bead that the bench does not have."""
        names = one_of(self._beads) if self._beads else "`beads: {kelp: 8/0 round Japanese}`"
        says = f"`{name}` is of `{node.value}`, which is no bead of the bench: write {names}"
        return fault(says, node.place)

    def _part(self, node: tree.Mapping, stitch: Stitch, bead: tree.Node) -> tree.Mapping:
        """The swatch as a part of its stitch."""
        strand = stitch.makes == "strand"
        known: Any = self.here.fragments[stitch.makes]["properties"]
        left = {
            word: entry
            for word, entry in node.entries.items()
            if word not in _OWN and word in known
        }
        fields: dict[str, Any] = {"kind": stitch.makes}
        if "columns" in node.entries:
            left["across"] = node.entries["columns"]
        if bead is not node:
            left["beads"] = tree.Entry(node.entries["bead"].key, bead)
        elif strand:
            fields["beads"] = "some bead"
            some = tree.implied_data(node, _ANY_BEAD)
            self._palette["some bead"] = tree.Entry(node.entries["stitch"].key, some)
        if not {"rows", "rounds", "count", "repeats", "length"} & left.keys():
            fields["count" if strand else "rows"] = 20
        if stitch.makes == "braid":
            fields["length"] = "10 cm"
            fields.pop("rows", None)
        part = tree.group(node, left)
        part = tree.with_more(part, {k: tree.implied_data(node, v) for k, v in fields.items()})
        stitch_node = tree.implied(node.entries["stitch"].node, stitch.name)
        return tree.with_more(part, {"stitch": stitch_node})


def _listed(beads: tree.Node) -> Iterable[tree.Node]:
    """The names in a repeat of beads, or in the shares of each."""
    if isinstance(beads, tree.Sequence):
        return beads.items
    return [entry.key for entry in beads.entries.values()]


def _implied(at: tree.Node, value: Any) -> tree.Entry:
    return tree.Entry(tree.implied(at, "implied"), tree.implied_data(at, value))


def _lot(node: tree.Node) -> str:
    """The lot of a swatch; empty where it has none."""
    entry = node.entries.get("lot")
    return lot_of(str(entry.node.value)).replace(".", ",") if entry is not None else ""
