"""What a step glues something to, a part or a layer under a stone; and what it sews the edge of."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from wellstrung.common.places import Place
from wellstrung.common.wording import either
from wellstrung.model.parts import Part
from wellstrung.reading import tree


def refuses(
    glued: Part, step: tree.Mapping, parts: Mapping[str, Part]
) -> Iterator[tuple[str, Place]]:
    """What is wrong with `to` of a step that glues a part, with its place."""
    layers = glued.traits.glued_on
    each = [f"`to: {layer}`" for layer in layers]
    if "to" not in step.entries:
        wanted = either(each or ["`to:` with the name of a part"])
        yield f"step `glue` lacks `to`: write {wanted}", step.place
    elif layers and "to" in parts:
        says = f"the stone of `{glued.name}` is glued to its {' or its '.join(layers)}"
        yield f"{says}: write {either(each)}", step.entries["to"].node.place


def refuses_edge(
    edged: Part, step: tree.Mapping, parts: Mapping[str, Part]
) -> Iterator[tuple[str, Place]]:
    """What is wrong with a step that sews an edge: only what lists beads for it has one."""
    if edged.has("edge_row"):
        return
    says = f"`{edged.name}` has no `edge_row` to sew on"
    if edged.takes("edge_row"):
        advice = "write the bead of its edge there, as in `edge_row: sand`"
    else:
        advice = "that is of an embroidered cabochon; name one, or take the step out"
        if edged.takes("edging"):
            advice = "its picots are its `edging`, and are sewn when it is woven; take the step out"
    yield f"{says}: {advice}", step.entries["part"].node.place


#: what is wrong with a step, by its verb
REFUSES = {"glue": refuses, "edge": refuses_edge}
