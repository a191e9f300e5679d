"""What a step glues something to: a part of the plan, or a layer under a stone that is sewn on."""

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
