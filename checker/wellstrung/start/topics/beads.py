"""Beads: those of the way of making, proposed from what is on the table."""

from __future__ import annotations

from wellstrung.start.making import STYLES
from wellstrung.start.making.styles import Role
from wellstrung.start.question import Answers, Question
from wellstrung.start.topics.piece import style
from wellstrung.start.words import bead, beads, is_seed, one_bead, whole


def _role(answers: Answers, name: str) -> Role | None:
    return next((role for role in style(answers).roles if role.name == name), None)


def _proposed(name: str) -> Question:
    role = next(role for one in STYLES.values() for role in one.roles if role.name == name)

    def propose(answers: Answers) -> str:
        """What is on the table and of the usual sort, or else what is usual."""
        mine = _role(answers, name)
        usual = mine.proposes if mine is not None else role.proposes
        had = [one for one in answers["have"] or () if one.bead is not None]
        like = [one.said for one in had if is_seed(one.bead) == is_seed(bead(usual))]
        sized = [said for said in like if bead(said).get("size") == bead(usual).get("size")]
        if is_seed(bead(usual)):
            return next(iter(sized), like[0] if len(like) == 1 and _only(answers, name) else usual)
        return like[0] if like else usual

    return Question(
        name,
        lambda answers: (_role(answers, name) or role).asks,
        beads if role.several else one_bead,
        proposes=propose,
        applies=lambda answers: _role(answers, name) is not None,
    )


def _only(answers: Answers, name: str) -> bool:
    return [role.name for role in style(answers).roles] == [name]


def _fringed(answers: Answers) -> bool:
    return any(role.name == "fringe beads" for role in style(answers).roles)


_NAMES = tuple(dict.fromkeys(role.name for one in STYLES.values() for role in one.roles))
QUESTIONS = (
    *(_proposed(name) for name in _NAMES if name not in ("bezel bead", "edge bead")),
    Question(
        "legs",
        lambda answers: "How many beads down the longest leg of the fringe?",
        whole(2, 200, "beads"),
        proposes=lambda answers: "16",
        applies=_fringed,
    ),
    Question(
        "leg ends",
        lambda answers: "What ends each leg: a bead such as `4 mm bicone`, or nothing more?",
        lambda text, answers: (
            None if text.casefold() in ("nothing", "no", "none") else one_bead(text, answers)
        ),
        proposes=lambda answers: "nothing",
        applies=_fringed,
    ),
)
BEZEL = tuple(_proposed(name) for name in ("bezel bead", "edge bead"))
