"""Along which edges of woven work an edging goes, and what an edging or a layer cannot be."""

from __future__ import annotations

from collections.abc import Iterator

from wellstrung.common.places import Place
from wellstrung.common.wording import article, one_of
from wellstrung.model.parts import EyeField, Part

#: words for several edges of a band
BOTH, ALL = "both edges", "all round"


def _woven(part: Part) -> dict[str, EyeField]:
    """The edges of a part that are holes of beads in a row."""
    eyes = part.kind.eyes.items()
    return {key: eye for key, eye in eyes if key.endswith("edge") and (eye.counted or eye.along)}


def edges_of(part: Part) -> list[str]:
    """The edges that its edging goes along; empty where it has none of that name."""
    woven, along = _woven(part), part.text("edging", "along")
    if along == ALL:
        return list(woven)
    if along == BOTH:
        return [key for key, eye in woven.items() if eye.along]
    return [along] if along in woven else []


def refuses(part: Part) -> Iterator[tuple[str, Place]]:
    """An edging along an edge that the part has."""
    if part.has("edging") and not edges_of(part):
        along, edges = part.text("edging", "along"), list(_woven(part))
        several = [BOTH, ALL] if any(eye.along for eye in _woven(part).values()) else [ALL]
        yield (
            f"`{part.name}` is {article(part.noun)} and has no {along}: write"
            f" {one_of([*several, *edges])}",
            part.place_of("edging", "along"),
        )
