"""No drawn shape changes unseen: a digest for each figure of plans that draw nearly all there is.

What changed is in the picture itself: look at it, and `pytest --rewrite` accepts it.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Iterator
from pathlib import Path
from xml.etree import ElementTree

from pages import ALL, checked, keeper, parsed
from running import ROOT, Pinned
from wellstrung.drawing.piece import drawings
from wellstrung.drawing.sections import sections
from wellstrung.judging.result import PlanResult
from wellstrung.testing.cases import cases

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
_NUMBER = re.compile(r"-?\d+\.\d+(?:e-?\d+)?")


def drawn() -> Iterator[tuple[str, PlanResult]]:
    """Each plan by its name, checked."""
    for path in (*ALL, *(STARTED / f"{name}.yaml" for name in STARTS)):
        yield path.stem, checked(path)
    for name in CASES:
        yield name, keeper().check_text(next(cases(RULES / f"{name}.yaml")).text)


def shapes(tree: ElementTree.Element) -> Iterator[str]:
    """Every shape in one line, to a hundredth; words are held elsewhere."""
    for one in tree.iter():
        tag = one.tag.rpartition("}")[2]
        if tag not in ("svg", "title", "desc", "text"):
            said = " ".join(f"{key}={value}" for key, value in sorted(one.attrib.items()))
            yield f"{tag} {_NUMBER.sub(lambda found: f'{float(found[0]):.2f}', said)}"


def test_no_shape_changes_unseen(pinned: Pinned) -> None:
    lines = []
    for name, result in drawn():
        for number, figure in enumerate((*drawings(result), *sections(result)), 1):
            found = list(shapes(parsed(figure.svg)))
            digest = hashlib.sha256("\n".join(found).encode()).hexdigest()[:12]
            lines.append(f"{name}, figure {number}: {len(found)} shapes, {digest}\n")
    pinned(Path(__file__).with_name("pictures.txt"), "".join(lines))
