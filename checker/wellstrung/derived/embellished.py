"""What an edging and a second layer add to woven work: their beads, thread and mass, its sizes.

A picot is a few beads picked up from one bead of an edge to the next; a layer has a bead or a few
over every so many beads of the work. All of it is counting and geometry, worked out for this
project; no print was found of how high a picot stands.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import partial

from wellstrung.derived.base_bands import (
    SHARE,
    base_beads,
    base_length,
    base_thread,
    counted,
    mean_of,
)
from wellstrung.derived.declared import FITTED, GEOMETRY, formula, hand, of_each, same_as
from wellstrung.formulas.arithmetic import floor, most, sqrt
from wellstrung.model.beads import beads_named
from wellstrung.model.edging import edges_of
from wellstrung.model.parts import Formula, Part
from wellstrung.model.plan import Quantities
from wellstrung.quantity.arithmetic import derived, exact, product, times, total
from wellstrung.quantity.value import Quantity

#: what a part with an edging or a layer gives beside what all woven work gives
GIVES = {
    "base": ("base.beads", "base.length"),
    "edging": ("edging.picots", "edging.beads", "edging.height"),
    "layer": ("layer.beads", "layer.thickness"),
}
#: How high the picots stand, against beads that stand on end; how deep a bead of a layer sinks
#: between those below it: no print of either.
_STANDS, _SINKS = (0.75, 0.95, 1.1), (0.6, 0.8, 1.0)


def height(beads: float, length: float, outside: float, gap: float) -> float:
    """How far a picot stands out, mm: its legs aslant over the gap, and the bead on top of them.

    Geometry, worked out for this project.

    >>> round(height(beads=3, length=1.2, outside=1.5, gap=2.1), 2), height(1, 1.2, 1.5, 2.1)
    (2.61, 1.5)
    """
    leg, aside = (beads - 1) / 2 * length, most(0, gap - length) / 2
    return sqrt(most(0, leg**2 - aside**2)) + outside


def thread_of_picot(beads: float, length: float, edge_length: float, edge_outside: float) -> float:
    """Thread for one picot, mm: its beads, down a bead of the edge and up the next.

    Counted passes and half a step, worked out for this project, +/- 20 %.

    >>> round(thread_of_picot(beads=3, length=1.2, edge_length=1.5, edge_outside=2.0), 2)
    7.6
    """
    return beads * length + 2 * edge_length + edge_outside / 2


def in_one(part: Part, field: str) -> int:
    """How many beads one picot, or one place of a layer, has."""
    return sum(beads_named(part, field, "beads").values())


def _every(part: Part, field: str) -> int:
    return part.count(field, "every", default=1)


def _bead(field: str, what: str) -> Formula:
    return lambda part, ask: mean_of(part, what, ask, field, "beads")


def _base(what: str) -> Formula:
    return lambda part, ask: mean_of(part, what, ask, "beads")


def _picots(part: Part, ask: Quantities) -> Quantity:
    """One from each bead of an edge to the next, or to every so many of them."""
    edges = [
        derived(
            f"picots along the {edge}",
            "",
            lambda beads, every, closed: floor((beads - 1 + closed) / every + 1e-9),
            beads=_edge_beads(part, edge, ask),
            every=counted("every", _every(part, "edging")),
            closed=counted("closed", int(part.kind.eyes[edge].closed)),
            source="counting, from one bead of the edge to the next",
        )
        for edge in edges_of(part)
    ]
    return total(f"{part.name}.picots", "", edges)


def _edge_beads(part: Part, edge: str, ask: Quantities) -> Quantity:
    eye = part.kind.eyes[edge]
    if eye.counted is not None:
        return counted("beads of the edge", eye.counted(part))
    return ask.of(part, "edge_beads")


def _gap(part: Part, ask: Quantities) -> Quantity:
    """From where a picot leaves an edge to where it comes back, mm."""
    spacing = ask.of(part, f"{edges_of(part)[0]}.spacing")
    return times(spacing, _every(part, "edging"))


def _in_one(field: str) -> Formula:
    return lambda part, ask: counted(f"beads of one of {field}", in_one(part, field))


def _over(part: Part, ask: Quantities) -> Quantity:
    """Over how many places of the work a layer has a bead, or a few."""
    return derived(
        f"{part.name}.places of the layer",
        "",
        lambda beads, every: floor(beads / every + 1e-9),
        beads=ask.of(part, "beads"),
        every=counted("every", _every(part, "layer")),
        source="counting",
    )


def _beads(field: str, places: Formula | str) -> Formula:
    return formula(
        f"beads of its {field}",
        "",
        lambda places, each: places * each,
        places=places,
        each=_in_one(field),
        source="counting",
    )


def _thread(field: str, places: Formula | str) -> Formula:
    return formula(
        f"thread of its {field}",
        "mm",
        lambda places, each, length, edge_length, edge_outside, share: (
            places * thread_of_picot(each, length, edge_length, edge_outside) * share
        ),
        places=places,
        each=_in_one(field),
        length=_bead(field, "length"),
        edge_length=_base("length"),
        edge_outside=_base("outside"),
        share=SHARE,
    )


def _mass(field: str) -> Formula:
    def weighed(part: Part, ask: Quantities) -> Quantity:
        mix, beads = beads_named(part, field, "beads"), ask.of(part, f"{field}.beads")
        of_all = sum(mix.values())
        weighs = of_each((part.beads[name] for name in mix), "per_gram", ask)
        return total(
            f"{part.name}.mass of its {field}",
            "g",
            [
                derived(
                    f"{part.name}.mass of {name} in its {field}",
                    "g",
                    lambda beads, share, per_gram: beads * share / per_gram,
                    beads=beads,
                    share=exact("share", count / of_all),
                    per_gram=per_gram,
                )
                for (name, count), per_gram in zip(mix.items(), weighs, strict=True)
            ],
        )

    return weighed


_OWN: dict[str, dict[str, Formula]] = {
    "base": {"base.beads": base_beads, "base.length": base_length},
    "edging": {
        "edging.picots": _picots,
        "edging.beads": _beads("edging", "edging.picots"),
        "edging.height": formula(
            "height of its picots",
            "mm",
            lambda beads, length, outside, gap, stands: (
                height(beads, length, outside, gap) * stands
            ),
            beads=_in_one("edging"),
            length=_bead("edging", "length"),
            outside=_bead("edging", "outside"),
            gap=_gap,
            stands=hand(
                "how the picots stand",
                _STANDS,
                source=f"beads on end, {FITTED}",
                cure="sew ten picots along {part}, measure it, write `measured: {width: ...}`",
            ),
            source=GEOMETRY,
        ),
    },
    "layer": {
        "layer.beads": _beads("layer", _over),
        "layer.thickness": formula(
            "thickness of its layer",
            "mm",
            lambda outside, sinks: outside * sinks,
            outside=_bead("layer", "outside"),
            sinks=hand(
                "how deep its layer lies between its beads",
                _SINKS,
                source=f"of a bead, {FITTED}",
                cure="sew 2 cm of the layer of {part} and measure how thick it is",
            ),
            source=GEOMETRY,
        ),
    },
}
_ADDED: dict[str, dict[str, Formula]] = {
    "base": {"thread": base_thread, "mass": _mass("base"), "length": same_as("base.length")},
    "edging": {"thread": _thread("edging", "edging.picots"), "mass": _mass("edging")},
    "layer": {"thread": _thread("layer", _over), "mass": _mass("layer")},
}


def _wider(part: Part) -> int:
    """On how many of its long edges picots make it wider."""
    return sum(part.kind.eyes[edge].along for edge in edges_of(part))


def _sides(field: str, count: int) -> Formula:
    what = "edging.height" if field == "edging" else "layer.thickness"
    return lambda part, ask: times(ask.of(part, what), count)


def embellished(part: Part, offers: Mapping[str, Formula]) -> Mapping[str, Formula]:
    """What a part gives, with what its edging and its layer add; sizes as woven by `woven.`."""
    found = dict(offers)
    for field in GIVES:
        if not part.has(field):
            continue
        found |= _OWN[field]
        added = dict(_ADDED[field])
        if field == "edging" and _wider(part) and "width" in found:
            found["woven.width"] = offers["width"]
            added["width"] = _sides(field, _wider(part))
        elif field == "layer":
            thick = "thickness" if "thickness" in found else "outside"
            added[thick] = _sides(field, 1 if thick == "thickness" else 2)
        for what, more in added.items():
            if what in offers and not part.has("measured", what):
                found[what] = partial(_with, what, found[what], more)
    return found


def _with(what: str, woven: Formula, more: Formula, part: Part, ask: Quantities) -> Quantity:
    return total(f"{part.name}.{what}", woven(part, ask).unit, [woven(part, ask), more(part, ask)])


def beads_worked(part: Part, ask: Quantities) -> Quantity:
    """All the beads that are picked up for a part, those of its edging and its layer too."""
    added = [ask.of(part, f"{field}.beads") for field in GIVES if part.has(field)]
    woven = ask.of(part, "beads")
    return total(f"{part.name}.beads in all", "", [woven, *added]) if added else woven


def beads_added(part: Part, name: str, ask: Quantities) -> list[Quantity]:
    """How many of one bead the edging and the layer of a part take."""
    found = []
    for field in GIVES:
        mix = beads_named(part, field, "beads")
        if name in mix:
            share = exact("share", mix[name] / sum(mix.values()))
            beads = ask.of(part, f"{field}.beads")
            found.append(product(f"{name} in the {field} of {part.name}", "", beads, share))
    return found
