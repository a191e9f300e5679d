"""A magnetic clasp: swallowed magnets, a child who wears it, and implants near it."""

from __future__ import annotations

from wellstrung.formulas import magnets
from wellstrung.rulebook import Answer, Ask, Caution, ClaspClosed, Rule
from wellstrung.rulebook.plan import Part
from wellstrung.rulebook.wording import number

#: a magnet of this flux index or more, kG² mm², that fits the small-parts cylinder is hazardous
#: where it comes loose (16 CFR 1262)
HAZARDOUS = 50.0


def check(join: ClaspClosed, ask: Ask) -> Answer:
    clasp = join.clasp
    if not clasp.traits.magnetic:
        return None
    age = ask.plan.written("wearer", "age")
    young = age is not None and str(age.value) in ("child", "under three")
    return Caution(
        f"`{clasp.name}` holds magnets: {_KEEP_AWAY[young]} (two swallowed ones clamp the bowel"
        " between them: see a doctor at once), and keep it 15 cm or more from a pacemaker or"
        f" another implant; {_flux(clasp)}; local law and qualified advice come first",
        clasp.place_of("type"),
    )


_KEEP_AWAY = {
    False: "keep it out of children's reach",
    True: "the wearer is a child, so take a clasp without any",
}


def _flux(clasp: Part) -> str:
    """What its flux index says, or that it is to be asked for."""
    index = _index(clasp)
    if index is None:
        return (
            "ask for its flux index and write `flux_index: ...` (a small loose magnet of"
            f" {number(HAZARDOUS)} kG² mm² or more is hazardous, 16 CFR 1262)"
        )
    told, limit = number(index), f"{number(HAZARDOUS)} kG² mm² (16 CFR 1262)"
    if index < HAZARDOUS:
        return f"its flux index of {told} is under the limit of {limit}"
    return (
        f"its flux index of {told} is not under the limit of {limit}: a small magnet that comes"
        " loose is hazardous"
    )


def _index(clasp: Part) -> float | None:
    """Its flux index, kG² mm², as stated or from the worst of its size; None where neither is."""
    stated, density = clasp.node_at("flux_index"), clasp.node_at("magnet", "flux_density")
    if stated is not None:
        return float(stated.value)
    if density is None:
        return None
    return magnets.flux_index(float(density.value), clasp.length("magnet", "outside").worst.high)


RULE = Rule(
    name="strong-magnet",
    family="wearer",
    subject=ClaspClosed,
    check=check,
    title="what magnets do to a child and to an implant is named wherever a clasp holds them",
    why="the magnets of a clasp are glued in, fall out with the years, and are bright and small",
    sources=(
        "flux index of 50 kG² mm² and more, loose or separable and small: 16 CFR 1262, copy seen",
        "15 cm (6 in) from an implant: How do magnets affect an ICD?, copy seen",
        "swallowed magnets: common knowledge of emergency care, from memory",
    ),
    good="magnet: {kind: clasp, type: magnetic, flux_index: 38}",
    level="caution",
)
