"""The core's own kinds, stitches, times and writers, brought in as any plugin brings its own."""

from __future__ import annotations

from wellstrung.derived.of_plan import Brought
from wellstrung.derived.repair import REPAIR
from wellstrung.kinds import KINDS
from wellstrung.model.parts import Kind, Stitch
from wellstrung.plugins.hooks import hookimpl
from wellstrung.report import WRITERS
from wellstrung.report.writer import Writer
from wellstrung.stitches import chains, netting, strung
from wellstrung.stitches.bead_crochet import CROCHET
from wellstrung.stitches.beaded_braid import BEADED, BEADED_OF_MANY
from wellstrung.stitches.brick import BRICK
from wellstrung.stitches.cubic_right_angle import CUBIC
from wellstrung.stitches.dutch_spiral import DUTCH
from wellstrung.stitches.flat_herringbone import FLAT_HERRINGBONE
from wellstrung.stitches.flat_peyote import FLAT_PEYOTE
from wellstrung.stitches.flat_spiral import FLAT_SPIRAL
from wellstrung.stitches.hexagon import HEXAGON
from wellstrung.stitches.ladder import LADDER
from wellstrung.stitches.loom import LOOM
from wellstrung.stitches.odd_tubular_peyote import ODD_PEYOTE
from wellstrung.stitches.plain_braid import PLAIN_BRAID
from wellstrung.stitches.right_angle import RIGHT_ANGLE
from wellstrung.stitches.russian_spiral import RUSSIAN
from wellstrung.stitches.spiral_rope import SPIRAL
from wellstrung.stitches.square import SQUARE
from wellstrung.stitches.tubular_herringbone import HERRINGBONE
from wellstrung.stitches.tubular_peyote import PEYOTE
from wellstrung.stitches.tubular_square import TUBULAR_SQUARE
from wellstrung.stitches.twisted_herringbone import TWISTED
from wellstrung.stitches.two_hole import TWO_HOLE
from wellstrung.stitches.wrap import WRAP
from wellstrung.work.hours import HOURS


@hookimpl
def wellstrung_kinds() -> tuple[Kind, ...]:
    """The kinds of `wellstrung.kinds`."""
    return KINDS


@hookimpl
def wellstrung_stitches() -> tuple[Stitch, ...]:
    """The stitches of `wellstrung.stitches`."""
    return (
        PEYOTE,
        FLAT_PEYOTE,
        FLAT_HERRINGBONE,
        BRICK,
        LADDER,
        TWO_HOLE,
        SQUARE,
        LOOM,
        RIGHT_ANGLE,
        HEXAGON,
        netting.NETTING,
        netting.VERTICAL,
        netting.TUBULAR,
        WRAP,
        chains.DAISY,
        chains.SAINT_PETERSBURG,
        chains.CHEVRON,
        CUBIC,
        ODD_PEYOTE,
        HERRINGBONE,
        TWISTED,
        TUBULAR_SQUARE,
        CROCHET,
        SPIRAL,
        FLAT_SPIRAL,
        RUSSIAN,
        DUTCH,
        BEADED,
        BEADED_OF_MANY,
        PLAIN_BRAID,
        *strung.STITCHES,
    )


@hookimpl
def wellstrung_quantities() -> tuple[Brought, ...]:
    """The hours of `wellstrung.work`, and what came for repair."""
    return (*HOURS, *REPAIR)


@hookimpl
def wellstrung_writers() -> tuple[Writer, ...]:
    """The writers of `wellstrung.report`."""
    return WRITERS
