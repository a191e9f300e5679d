"""Plans that come with files of their maker's own: a drawer of parts, a bench of settings."""

from __future__ import annotations

from typing import Any, NamedTuple

from hypothesis import strategies as st

from generated.choices import Choices, Drawn, Seeded, between, chance, pick
from generated.draft import Fields
from generated.layout import Layout
from generated.plans import PIECES, Piece, whole

#: parts that are bought, and that a maker keeps in a drawer
_KEPT = (
    "end cap", "jump ring", "clasp", "cone", "crimp", "bead tip", "connector", "spacer bar",
    "pendant", "bail", "chain", "ear wire", "ear post", "spectacle loop", "adhesive",
    "thread", "core",
)  # fmt: skip
#: a few settings of each group, with values that a maker might write
_SETTINGS: dict[str, dict[str, tuple[str | float, ...]]] = {
    "allowances": {
        "ring size": ("0.1 mm", "0.3 mm"), "cap size": ("0.05 mm", "0.2 mm"),
        "eye size": ("0.2 mm", "0 mm"), "woven length": ("5 mm", "1 mm"),
        "part length": ("0.1 mm", "0.5 mm"), "wire": ("0.01 mm", "0.05 mm"),
    },
    "limits": {
        "cap loose": ("2 mm", "1 mm"), "cap tight": ("4 %", "10 %"), "ring swing": ("0.3 mm",),
        "hold factor": (8, 3), "magnet factor": (3,), "ear weight": ("6 g", "12 g"),
        "spare Japanese beads": ("5 %", "20 %"), "fringe crowd": (1.2, 2), "pin grip": ("15 mm",),
        "centre off": ("1 mm", "10 mm"), "minutes a joint": ("1 min", "3 min"),
    },
    "rates": {
        "tubular peyote": ("9 beads per min", "4 beads/min"), "glue": ("4 min",),
        "stringing": ("30 beads per min",), "close ring": ("30 s", "2 min"), "sew": ("6 min",),
        "weaving": ("6 beads per min",), "flat peyote": ("10 beads a min",),
    },
    "paces": {"student": (2.5, 3), "maker": (1.2, 0.8)},
}  # fmt: skip


class Folder(NamedTuple):
    """A plan, and the drawer and the bench beside it; empty where there is none."""

    plan: str
    drawer: str = ""
    bench: str = ""

    def files(self, plan: str = "plan.yaml") -> dict[str, str]:
        """What to write, by name of file."""
        files = {plan: self.plan, "drawer.yaml": self.drawer, "bench.yaml": self.bench}
        return {name: text for name, text in files.items() if text}


def written(choices: Choices, piece: Piece | None = None) -> Folder:
    """A plan with a drawer, a bench, or both."""
    plan = whole(choices, piece)
    way = pick(choices, ("drawer", "bench", "both"))
    drawer = _drawer(choices, plan) if way != "bench" else ""
    bench = _bench(choices, plan) if way != "drawer" else ""
    return Folder(Layout(choices).text(plan), drawer, bench)


def _drawer(choices: Choices, plan: Fields) -> str:
    """Puts some of a plan's bought parts into a drawer, and takes them from there."""
    kept: dict[str, Any] = {}
    for name, part in plan["parts"].items():
        if part["kind"] not in _KEPT or not chance(choices, 70):
            continue
        if part["kind"] == "bead tip" and part.get("covers") in plan["parts"]:
            continue
        called = f"my {name}" if chance(choices, 60) else name
        taken: Fields = {"from": called}
        whole_part = dict(part)
        for field in ("mass", "note", "metal"):
            if field in part and chance(choices, 20):
                taken[field] = part[field]
                if chance(choices, 50):
                    del whole_part[field]
        kept[called] = whole_part
        plan["parts"][name] = taken
    if not kept:
        return ""
    entries = list(plan.items())
    plan.clear()
    plan.update([*entries[:2], ("drawer", "drawer.yaml"), *entries[2:]])
    head: Fields = {"drawer": 1}
    if chance(choices, 40):
        head["note"] = "what lies in the top drawer"
    return Layout(choices).text({**head, "parts": kept})


def _bench(choices: Choices, plan: Fields) -> str:
    """Settings of a maker's own, and prices of what the plan takes."""
    bench: Fields = {"bench": 1}
    for group, settings in _SETTINGS.items():
        own = {
            name: pick(choices, values) for name, values in settings.items() if chance(choices, 30)
        }
        if own:
            bench[group] = own
    named = [*plan.get("beads", {}), *plan["parts"]]
    if chance(choices, 70):
        bench["prices"] = {
            name: f"{between(choices, 0.2, 9, 0.1):.2f} EUR {_per(choices, plan, name)}"
            for name in named
            if chance(choices, 85)
        }
    if chance(choices, 40):
        bench["budget"] = pick(choices, ("40 EUR", "15 EUR", "90 EUR"))
    return Layout(choices).text(bench)


def _per(choices: Choices, plan: Fields, name: str) -> str:
    """What a price is for: beads by weight or each, thread by the spool, chain by the metre."""
    part = plan["parts"].get(name, {})
    if name in plan.get("beads", {}):
        return pick(choices, ("per 10 g", "per 10 g", "each"))
    by_kind = {"thread": "per spool", "chain": "per m"}
    return by_kind.get(str(part.get("kind")), "each")


@st.composite
def folders(draw: st.DrawFn) -> Folder:
    """A right plan with a drawer, a bench, or both beside it."""
    return written(Drawn(draw))


def seeded_folders(n: int, seed: int = 0) -> list[Folder]:
    """`n` plans with their files, the same whenever they are asked for."""
    return [
        written(Seeded(f"folder {seed}/{number}"), PIECES[number % len(PIECES)])
        for number in range(n)
    ]
