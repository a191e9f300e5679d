"""Answers in, a draft of the plan out: what each way of making needs, as a plan has it."""

from __future__ import annotations

from collections.abc import Mapping

from wellstrung.start.leaves import Noted, Plan
from wellstrung.start.making import bands, ears, hanging, lines, links, ropes, strands
from wellstrung.start.making.draft import UNKNOWN, Draft
from wellstrung.start.making.styles import BREAKAWAY, EYED, KNOT, OPEN, OVER_HEAD, THROUGH, Style
from wellstrung.start.question import Answers

STYLES: Mapping[str, Style] = {
    style.name: style
    for module in (ropes, bands, strands, links, ears, hanging)
    for style in module.STYLES
}
_CLOSES = {KNOT: "over the hand", OVER_HEAD: "over the head", THROUGH: "through its loop"}
#: what a wearer is measured by, for the pieces that go round something
ROUND = {"necklace": "neck", "bracelet": "wrist", "anklet": "ankle"}


def draft(answers: Answers) -> Plan:
    """The plan that follows from the answers; what is not answered takes what is proposed."""
    made, style = Draft(answers), STYLES[answers["stitch"]]
    _head(made, style)
    hanging.hang(made, style.work)
    style.build(made)
    if style.threads:
        lines.spool(made, style.threads)
    if answers["piece"].piece != "pendant":
        made.work.append({"do": "wear"})
    else:
        made.work.append({"do": "pack"})
    return made.plan()


def _head(made: Draft, style: Style) -> None:
    answers, head = made.answers, made.head
    piece = answers["piece"]
    head["title"] = answers["title"]
    head["piece"] = piece.piece
    if piece.makes > 1:
        head["makes"] = piece.makes
    wearer = {"age": answers["wearer"].age}
    measured = ROUND.get(piece.piece)
    if measured is not None:
        found = answers["measure"]
        note = f"measure it round the {measured}, without pulling: the fit is open until then"
        wearer[measured] = found.text if found is not None else Noted(None, note)
    if KNOT in style.closings:
        hand = answers["hand"]
        note = "measure round the closed hand: it must go over"
        wearer["hand"] = hand.text if hand is not None else Noted(None, note)
    head["wearer"] = wearer
    if answers["length"] is not None:
        field = "inside" if piece.piece in ("bracelet", "anklet") else "finished_length"
        what = "the way round inside" if field == "inside" else "laid taut"
        note = (
            UNKNOWN if answers.unsure("length") else f"{what}; give or take what your bench allows"
        )
        asked = answers["length"]
        give = _give(answers, style)
        if give and asked.low == asked.high:
            note = f"{what}, in a whole number of beads or links"
            head[field] = Noted(f"{asked.text} ± {give}", note)
        else:
            head[field] = Noted(asked.text, note)
    closing = answers["closing"]
    if closing is not None:
        head["closes"] = _CLOSES.get(closing, "open" if closing == OPEN else "clasp")
    for name in ("class", "budget"):
        if answers[name] is not None:
            head[name] = answers[name]


def _give(answers: Answers, style: Style) -> str:
    """The tolerance of what comes out in whole beads or links; empty where the bench's will do."""
    if answers["closing"] not in (*EYED, BREAKAWAY):
        return style.counted
    return "1 cm" if style.linked and answers["piece"].piece != "necklace" else ""
