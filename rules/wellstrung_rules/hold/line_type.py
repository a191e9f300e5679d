"""The type of a line, where the word for it may mean several."""

from __future__ import annotations

from wellstrung.rulebook import Answer, Ask, Missing, Rule, ThreadNeeded, types_of
from wellstrung.rulebook.wording import either


def check(need: ThreadNeeded, ask: Ask) -> Answer:
    for part in need.woven:
        if part.of_thread("type") and len(types_of(part)) > 1:
            which = either(f"`{kind}`" for kind in types_of(part))
            says = f"`thread.type` of `{part.name}`, since `{part.thread_said}` may be {which}"
            raise Missing(says)
    return None  # its word names one type, or it has none yet


RULE = Rule(
    name="line-type",
    family="hold",
    subject=ThreadNeeded,
    check=check,
    fault="line of an unclear type",
    title="the word for a line names one type; until it does, its size and strength may be any's",
    why="shops sell fused line as braided line; the two differ in thickness at the same rating",
    sources=(
        "fused line is thicker than plain braid of its rating: trade table `threads`",
        "which words are used for both: common practice, no source",
    ),
    good="rope: {..., thread: fused 8 lb}",
    level="caution",
)
