"""No drawn shape changes unseen: a digest for the figures of plans that draw nearly all there is.

What changed is in the picture itself: look at it, and `pytest --rewrite` accepts it.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from pages import ALL, checked, digest, keeper, parsed
from running import ROOT, Pinned, entries
from wellstrung.drawing.piece import drawings
from wellstrung.drawing.piece.worn import worn
from wellstrung.drawing.sections import sections
from wellstrung.judging.result import PlanResult
from wellstrung.testing.cases import cases

HERE = Path(__file__).parent
RULES = ROOT / "tests" / "rules"
STARTED = ROOT / "tests" / "checker" / "start" / "plans"
#: what these draw no sample does
STARTS = ("netted_collar", "strung_anklet", "three_strands_with_bars")
CASES = (
    "fit/bezel-rise", "fit/cone-bundle.tassel", "fit/core-in-rope.narrow", "fit/crimp-bore.apart",
    "fit/crimp-cover", "fit/fringe-along", "fit/hoop-beads", "fit/pin-behind",
    "fit/ring-around-rope", "fit/snap-width", "fit/toggle-bar.woven", "fit/top-drilled",
    "hold/sharp-edge.woven", "length/finished-length.either", "length/finished-length.sliding",
    "length/wearer-fit.wraps", "work/cure-time.linked", "work/join-made.bands",
    "work/join-made.ring", "work/step-parts.coils", "work/wrapped-too-soon",
)  # fmt: skip
#: of these rules the first misfit too, which a section marks
MARKED = (
    "fit/cap-bore", "fit/cap-depth", "fit/clasp-eye", "fit/cone-bundle", "fit/fringe-spread",
    "fit/hole-passes", "fit/link-clearance", "fit/pin-in-bead", "fit/ring-reach", "fit/ring-room",
    "fit/ring-through-eye", "fit/string-in-hole", "fit/toggle-bar", "fit/toggle-swing",
)  # fmt: skip


def plans() -> Iterator[tuple[str, PlanResult]]:
    """Each plan by its name, checked."""
    for path in (*ALL, *(STARTED / f"{name}.yaml" for name in STARTS)):
        yield path.stem, checked(path)
    for name in CASES:
        yield name, keeper().check_text(next(cases(RULES / f"{name}.yaml")).text)
    for name in MARKED:
        found = cases(RULES / f"{name}.yaml")
        misfit = next(one for one in found if one.expect in ("error", "warning"))
        yield f"{name}, {misfit.name}", keeper().check_text(misfit.text)
    for entry in entries(HERE / "gallery.yaml"):
        yield entry["name"], keeper().check_text(entry["plan"])


def test_no_shape_changes_unseen(pinned: Pinned) -> None:
    lines = []
    for name, result in plans():
        seen = worn(result)
        figures = {
            "piece": drawings(result),
            "worn": [seen] if seen else [],
            "sections": sections(result),
        }
        for what, drawn in figures.items():
            if drawn:
                found = digest(*(parsed(figure.svg) for figure in drawn))
                lines.append(f"{name}, {what}: {found}\n")
    pinned(HERE / "pictures.txt", "".join(lines))
