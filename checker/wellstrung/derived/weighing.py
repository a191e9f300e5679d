"""How a bead is weighed so that its mass is settled: how many, on which scales, what to write."""

from __future__ import annotations

from wellstrung.model.item import Bead

#: A load is at least so many times what the scales show: NIST Handbook 44, as Oregon's inspectors
#: of scales cite it (copy seen); half of what they show is then a hundredth of it.
_LEAST = 50
#: as many as are counted without losing count: common practice, no source
_COUNTS = (10, 20, 50, 100, 200)
#: what a good pocket scale shows, g: a page on weighing machines (copy seen)
_FINE = 0.01


def cure(bead: Bead, each: float) -> str:
    """How to settle what a bead of about so many g weighs, with the lines to write in the bench."""
    shows = bead.bench.allowances["gauge of scales"].value
    count, scales, setting = _enough(each, shows), "", ""
    if count is None:
        count = _enough(each, _FINE) or _COUNTS[-1]
        scales = f" on scales that show {_FINE} g"
        setting = f"`allowances: {{gauge of scales: {_FINE} g}}` and "
    line = f"`swatches: [{{bead: {bead.name}, count: {count}, mass: ... g}}]`"
    where = f"in the bench, with `{bead.name}` under its `beads`"
    return f"weigh {count} of `{bead.name}`{scales} and write {setting}{line} {where}"


def _enough(each: float, shows: float) -> int | None:
    """How many weigh enough for scales that show so much, g; None where too many would."""
    return next((count for count in _COUNTS if count * each >= _LEAST * shows), None)
