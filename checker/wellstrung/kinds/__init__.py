"""The built-in kinds of parts, one module a kind (or a family that belongs together)."""

from __future__ import annotations

from wellstrung.kinds import (
    band,
    bead_drop,
    bezel,
    braid,
    chain,
    clasp,
    cone,
    connector,
    core,
    crimp,
    ear_wire,
    end_cap,
    jump_ring,
    pendant,
    pouch,
    rope,
    spacer_bar,
    strand,
    tools,
    wire_link,
)
from wellstrung.model import Kind

KINDS: tuple[Kind, ...] = (
    rope.WOVEN_ROPE,
    band.WOVEN_BAND,
    pouch.POUCH,
    bezel.BEZEL,
    braid.BRAID,
    strand.STRAND,
    end_cap.END_CAP,
    cone.CONE,
    crimp.CRIMP,
    wire_link.WIRE_LINK,
    bead_drop.BEAD_DROP,
    ear_wire.EAR_WIRE,
    jump_ring.JUMP_RING,
    pendant.PENDANT,
    connector.CONNECTOR,
    spacer_bar.SPACER_BAR,
    clasp.CLASP,
    chain.CHAIN,
    chain.CHAIN_PIECE,
    core.CORE,
    *tools.TOOLS,
)
