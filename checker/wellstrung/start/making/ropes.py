"""Woven ropes: their beads and counts, and how they end."""

from __future__ import annotations

from typing import Any

from wellstrung.start.leaves import Choose, Noted
from wellstrung.start.making import ends, lines
from wellstrung.start.making.draft import Draft
from wellstrung.start.making.styles import BUTTON, EYED, OPEN, OVER_HEAD, THROUGH, Role, Style
from wellstrung.start.question import Choice
from wellstrung.start.words import Fields

_LENGTH = "what the clasp and the ends leave of the length asked for: worked out at each check"
_MEASURE = "weave 2 cm, measure it with calipers just touching, and write it here: the cap follows"
_PIECES = ("necklace", "bracelet", "anklet", "lariat")
_WOVEN = ("fused 6 lb", "fused 8 lb", "fused 4 lb", "nylon D", "nylon B", "gel-spun braided 10 lb")
_CLOSINGS = (*EYED, BUTTON, OVER_HEAD, THROUGH, OPEN)


def _spiral(draft: Draft) -> Fields:
    answers = draft.answers
    core = draft.bead(answers["core bead"], "core")
    outer = draft.repeat(answers["outer beads"], "outer", "second")
    of_loop = outer if len(outer) > 1 else outer * 3
    return {"core_bead": core, "outer": Noted(of_loop, "the beads of one loop")}


def _round(draft: Draft) -> Fields:
    answers = draft.answers
    names = draft.repeat(answers["rope beads"], "rope bead", "second")
    count = draft.asked("around", answers["around"], "beads in a round")
    mixed: Any = names[0] if len(names) == 1 else {name: names.count(name) for name in names}
    return {"around": count, "beads": mixed}


def _build(draft: Draft, stitch: str, fields: Fields, loop_bead: str) -> None:
    answers, closing = draft.answers, draft.answers["closing"]
    rope: Fields = {"kind": "woven rope", "stitch": stitch, **fields}
    rope["length"] = Noted("fills the rest", _LENGTH)
    rope |= lines.sewn(draft)
    measured = answers["rope measured"]
    if measured is not None:
        rope["measured"] = {"outside": Noted(measured.text, "measured on the first rows")}
    elif closing not in (BUTTON, OVER_HEAD):
        rope["measured"] = Noted(None, _MEASURE)
    draft.parts["rope"] = rope
    draft.do("weave", "rope")
    if closing not in (BUTTON, OVER_HEAD):
        draft.do("measure", "rope")
    draft.work += draft.before_ends
    _close(draft, closing, loop_bead)


def _close(draft: Draft, closing: str, loop_bead: str) -> None:
    if closing == BUTTON:
        ends.button(draft, "rope", loop_bead)
        draft.do("finish thread", "rope")
    elif closing == OVER_HEAD:
        draft.run = ["rope"]
        draft.head["run_is"] = "loop"
        draft.do("sew", "rope", to="rope")
        draft.do("finish thread", "rope")
    else:
        draft.do("finish thread", "rope")
        ends.cap(draft, "rope")
        ends.glued(draft, "rope")
        if closing == THROUGH:
            _through(draft)
        elif closing == OPEN:
            draft.run = ["cap", "rope", "cap"]
        else:
            ends.eyed(draft, ["rope"], ["cap"])


def _through(draft: Draft) -> None:
    """A ring at one end, which the other end goes through."""
    inside = Choose(tuple(f"{wide} mm" for wide in range(14, 34, 2)), "the other end goes through")
    loop: Fields = {"kind": "jump ring", "inside": inside, "wire": "2 mm", "closing": "soldered"}
    draft.parts["loop"] = draft.metal(loop)
    ends.ring(draft)
    draft.run = ["loop", "ring", "cap", "rope", "cap"]
    draft.do("close ring", "ring")


def _spiral_rope(draft: Draft) -> None:
    fields = _spiral(draft)
    _build(draft, "spiral rope", fields, fields["outer"].value[0])


def _tube(stitch: str) -> Any:
    def build(draft: Draft) -> None:
        fields = _round(draft)
        bead = fields["beads"]
        _build(draft, stitch, fields, bead if isinstance(bead, str) else next(iter(bead)))

    return build


def _style(
    name: str, about: str, counts: tuple[Choice, ...], usual: str, bead: str, *also: str
) -> Style:
    roles = (Role("rope beads", "Which beads is the rope of?", bead, several=True),)
    return Style(
        name, about, "woven", _PIECES, roles, _tube(name), _CLOSINGS, "around", counts, usual,
        _WOVEN, "cap", work="rope", also=also,
    )  # fmt: skip


STYLES = (
    Style(
        "spiral rope",
        "loops of beads that wind round a core; quick, and kind to beginners",
        "woven",
        _PIECES,
        (
            Role("core bead", "Which bead is the core of?", "8/0 Japanese"),
            Role("outer beads", "Which beads are a loop round it?", "11/0 Japanese", several=True),
        ),
        _spiral_rope,
        _CLOSINGS,
        threads=_WOVEN,
        ends="cap",
        work="rope",
        also=("spiral",),
    ),
    _style(
        "tubular herringbone",
        "a soft rope of columns that lean",
        (Choice("4", "thin"), Choice("6", "usual"), Choice("8", "thick")),
        "6",
        "11/0 Japanese",
        "herringbone rope",
        "ndebele",
    ),
    _style(
        "twisted herringbone",
        "the same, and its columns wind",
        (Choice("4", "thin"), Choice("6", "usual"), Choice("8", "thick")),
        "4",
        "11/0 Japanese",
    ),
    _style(
        "tubular peyote",
        "a firm tube",
        (Choice("8", "thin"), Choice("10"), Choice("12", "usual"), Choice("16", "thick")),
        "8",
        "11/0 Japanese",
    ),
    _style(
        "slip-stitch bead crochet",
        "strung first, then crocheted: a supple rope",
        (Choice("5", "thin"), Choice("6", "usual"), Choice("8", "thick")),
        "6",
        "11/0 Japanese",
        "crochet rope",
    ),
)  # fmt: skip
