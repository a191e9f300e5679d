"""Elastic against the skin: its core may be natural rubber, which holds latex."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Caution, OnElastic, Rule
from wellstrung.rulebook.wording import listed
from wellstrung_rules.wearer import LAW_FIRST


def check(elastic: OnElastic, ask: Ask) -> Answer:
    return Caution(
        f"{listed(part.name for part in elastic.strung)}: elastic cord that is covered with thread"
        " often has a core of natural rubber, which holds latex and can start or set off an"
        " allergy; clear stretch cord mostly holds none: ask the supplier what yours is made of,"
        f" and tell whoever makes or wears the piece; {LAW_FIRST}",
        elastic.place,
        tuple(s for s in ask.plan.steps_that("string") if s.parts["part"] in elastic.strung),
    )


RULE = Rule(
    name="latex",
    family="wearer",
    subject=OnElastic,
    check=check,
    fault="latex in elastic",
    title="elastic comes with a question about latex",
    why="a covered cord does not show its core, and somebody who knows of an allergy to gloves"
    " does not expect it in a bracelet",
    sources=(
        "cores of natural rubber, of synthetic rubber or of elastane: What Materials are Used to"
        " Make Round Elastic Cord, tekislastik.com, copy seen",
        "clear cord is mostly polyurethane: common practice, no source",
    ),
    good="bracelet: {kind: strand, ..., thread: {type: elastic, outside: 0.7 mm}}",
    level="caution",
)
