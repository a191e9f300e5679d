"""A magnetic clasp: swallowed magnets, a child who wears it, and implants near it."""

from __future__ import annotations

from wellstrung.formulas import magnets
from wellstrung.rulebook import Answer, Ask, Caution, ClaspClosed, Rule
from wellstrung.rulebook.plan import Part
from wellstrung.rulebook.wording import number
from wellstrung_rules.wearer import CHILDREN, LAW_FIRST

#: a magnet of this flux index or more, kG² mm², that fits the small-parts cylinder is hazardous
#: where it comes loose (16 CFR 1262)
HAZARDOUS = 50.0


def check(join: ClaspClosed, ask: Ask) -> Answer:
    clasp = join.clasp
    if not clasp.traits.magnetic:
        return None
    young = ask.plan.age in CHILDREN
    return Caution(
        f"`{clasp.name}` holds magnets: {_KEEP_AWAY[young]} (two that are swallowed clamp the"
        " bowel between them: see a doctor at once), and keep it 15 cm or more from a pacemaker or"
        f" other implant; {_flux(clasp)}; {LAW_FIRST}",
        clasp.place_of("type"),
    )


_KEEP_AWAY = {
    False: "keep it out of children's reach",
    True: "the wearer is a child, so take a clasp without magnets",
}


def _flux(clasp: Part) -> str:
    """Its flux index against the limit: as stated, or worked out for the largest it may be."""
    limit = f"{number(HAZARDOUS)} kG² mm²"
    stated, density = clasp.node_at("flux_index"), clasp.node_at("magnet", "flux_density")
    if stated is not None:
        index = float(stated.value)
    elif density is not None:
        outside = clasp.size("magnet", "outside").worst.high
        index = magnets.flux_index(float(density.value), outside)
    else:
        return (
            f"ask for its flux index and write `flux_index: ...` (a small loose magnet of {limit}"
            " or more is hazardous, 16 CFR 1262)"
        )
    if index < HAZARDOUS:
        return f"its flux index of {number(index)} is under the limit of {limit} (16 CFR 1262)"
    return (
        f"its flux index of {number(index)} is not under the limit of {limit} (16 CFR 1262): a"
        " small magnet that comes loose is hazardous"
    )


RULE = Rule(
    name="strong-magnet",
    family="wearer",
    subject=ClaspClosed,
    check=check,
    fault="magnets",
    title="every magnetic clasp comes with a warning for children and for implants",
    why="the magnets of a clasp are small and bright, and over the years their glue lets go",
    sources=(
        "flux index of 50 kG² mm² and more, loose or separable and small: 16 CFR 1262, copy seen",
        "15 cm (6 in) from an implant: How do magnets affect an ICD?, copy seen",
        "swallowed magnets: common knowledge of emergency care, from memory",
    ),
    good="magnet: {kind: clasp, type: magnetic, flux_index: 38}",
    level="caution",
)
