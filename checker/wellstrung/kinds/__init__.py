"""The built-in kinds of parts, one module a kind (or a family that belongs together)."""

from __future__ import annotations

from wellstrung.kinds import (
    bail,
    band,
    bead_drop,
    bead_tip,
    braid,
    chain,
    clasp,
    cone,
    connector,
    core,
    crimp,
    ear_post,
    ear_wire,
    end_cap,
    jump_ring,
    pendant,
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
    braid.BRAID,
    strand.STRAND,
    end_cap.END_CAP,
    cone.CONE,
    crimp.CRIMP,
    bead_tip.BEAD_TIP,
    wire_link.WIRE_LINK,
    bead_drop.BEAD_DROP,
    ear_wire.EAR_WIRE,
    ear_post.EAR_POST,
    jump_ring.JUMP_RING,
    pendant.PENDANT,
    bail.BAIL,
    connector.CONNECTOR,
    spacer_bar.SPACER_BAR,
    clasp.CLASP,
    chain.CHAIN,
    chain.CHAIN_PIECE,
    core.CORE,
    *tools.TOOLS,
)
