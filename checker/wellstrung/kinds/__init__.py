"""The built-in kinds of parts, one module a kind (or a family that belongs together)."""

from __future__ import annotations

from wellstrung.kinds import (
    braid,
    chain,
    clasp,
    connector,
    end_cap,
    jump_ring,
    pendant,
    rope,
    strand,
    tools,
)
from wellstrung.model import Kind

KINDS: tuple[Kind, ...] = (
    rope.WOVEN_ROPE,
    braid.BRAID,
    strand.STRAND,
    end_cap.END_CAP,
    jump_ring.JUMP_RING,
    pendant.PENDANT,
    connector.CONNECTOR,
    clasp.CLASP,
    chain.CHAIN,
    chain.CHAIN_PIECE,
    *tools.TOOLS,
)
