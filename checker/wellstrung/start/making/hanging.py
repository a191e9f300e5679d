"""What hangs on a necklace, and the pendant that is a stone in a woven bezel."""

from __future__ import annotations

from typing import Any

from wellstrung.start.leaves import Choose, Noted
from wellstrung.start.making import lines
from wellstrung.start.making.draft import Draft
from wellstrung.start.making.styles import Role, Style
from wellstrung.start.words import Fields

NOTHING, BOUGHT, STONE = "nothing", "a pendant", "a stone in a bezel"


def hang(draft: Draft, onto: str) -> None:
    """What the author wants hung on the rope or strand of a necklace, on a bail."""
    what = draft.answers["hangs"]
    if what not in (BOUGHT, STONE):
        return
    _bail(draft)
    if what == STONE:
        _bezel(draft, draft.before_ends)
        draft.hung = [{"part": "bail", "from": onto}, _by_thread()]
        draft.before_ends.append({"do": "hang", "part": "setting", "from": "bail"})
        draft.before_ends.append({"do": "finish thread", "part": "setting"})
        draft.before_ends.append({"do": "slide", "part": "bail", "onto": onto})
    else:
        eyes = {"count": 1, "hole": "2.5 mm", "wire": "1.2 mm", "opens": False}
        fields: Fields = {"kind": "pendant", "top_eyes": eyes, "mass": "5 g"}
        draft.parts["pendant"] = Noted(draft.metal(fields), "measure yours and weigh it")
        draft.hung = [{"part": "bail", "from": onto}, {"part": "pendant", "from": "bail"}]
        draft.before_ends.append({"do": "slide", "part": "bail", "onto": onto})
        draft.before_ends.append({"do": "hang", "part": "pendant", "from": "bail"})


def _by_thread() -> Fields:
    return {"part": "setting", "from": "bail", "by": "thread"}


def _bail(draft: Draft) -> None:
    sizes = ("4 mm", "5 mm", "6 mm", "8 mm", "10 mm", "12 mm", "14 mm", "16 mm")
    inside = Choose(sizes, "slides over the work")
    stone = draft.answers["hangs"] == STONE
    eye = {"hole": "3 mm", "wire": "1.2 mm", "opens": not stone}
    fields: Fields = {"kind": "bail", "type": "loop", "inside": inside, "opens": False, "eye": eye}
    draft.parts["bail"] = draft.metal({**fields, "length": "14 mm", "mass": "1.2 g"})


def _bezel(draft: Draft, steps: list[Any]) -> None:
    answers = draft.answers
    wall, edge = answers["bezel bead"], answers["edge bead"]
    walls, edges = draft.bead(wall, "wall"), draft.bead(edge, "edge")
    fields: Fields = {"kind": "bezel", "stitch": "tubular peyote"}
    counts = tuple(range(16, 122, 2))
    fields["around"] = Choose(counts, "the first rounds go round the stone without a gap")
    rounds = [edges, edges, walls, walls, walls, edges, edges]
    fields["beads"] = Noted(rounds, "round by round, from the back to the front")
    across = answers["stone"]
    known = "you did not know: measure yours" if answers.unsure("stone") else "measure it across"
    stone = {"outside": Noted(across.text, known), "edge": "1.3 mm"}
    thick = {"thickness": "6 mm", "mass": "2.5 g"}
    fields["stone"] = {**stone, **thick}
    eyes = {"count": 1, "hole": "3 mm", "wire": "1.4 mm", "faces": "side", "opens": False}
    fields["top_eyes"] = Noted(eyes, "a loop of beads sewn to the bail")
    own = answers["technique"] not in (None, "woven")  # not on the wire or silk of the strand
    line = {"type": "fused", "rating": "6 lb"} if own else lines.thread(short=True)
    thread = {**line, "tail": "20 cm", "working_length": "1.2 m"}
    draft.parts["setting"] = {**fields, "thread": thread, "needle": "beading 12"}
    steps.append({"do": "weave", "part": "setting"})


def _pendant(draft: Draft) -> None:
    _bezel(draft, draft.work)
    eyes = {"count": 1, "hole": "3 mm", "wire": "1.4 mm", "faces": "side", "opens": True}
    draft.parts["setting"]["top_eyes"] = Noted(eyes, "a loop of beads, woven shut round the ring")
    ring: Fields = {"kind": "jump ring", "outside": "8 mm", "wire": "18 AWG", "closing": "soldered"}
    draft.parts["ring"] = draft.metal(ring)
    draft.run = ["ring", "setting"]
    draft.do("sew", "ring", to="setting")
    draft.do("finish thread", "setting")


BEZEL_ROLES = (
    Role("bezel bead", "Which bead is the wall of the bezel?", "11/0 cylinder"),
    Role("edge bead", "Which smaller bead draws it in over the edge?", "15/0 Japanese"),
)
STYLES = (
    Style(
        "stone in a bezel", "a stone held by rounds of peyote, on a ring", "woven", ("pendant",),
        BEZEL_ROLES, _pendant, threads=("fused 6 lb", "fused 4 lb", "nylon B"),
    ),
)  # fmt: skip
