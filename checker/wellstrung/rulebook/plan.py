"""What a plan is made of, and the edits of its text, for rules to name."""

from wellstrung.common.places import Edit as Edit
from wellstrung.common.places import Place as Place
from wellstrung.common.units import USUAL as USUAL
from wellstrung.model.beads import bead_mix as bead_mix
from wellstrung.model.beads import bead_rows as bead_rows
from wellstrung.model.beads import beads_in_order as beads_in_order
from wellstrung.model.beads import beads_named as beads_named
from wellstrung.model.beads import drops_of as drops_of
from wellstrung.model.item import Bead as Bead
from wellstrung.model.item import Item as Item
from wellstrung.model.parts import Part as Part
from wellstrung.model.parts import Role as Role
from wellstrung.model.plan import Goal as Goal
from wellstrung.model.plan import Hung as Hung
from wellstrung.model.plan import Plan as Plan
from wellstrung.model.plan import RunEntry as RunEntry
from wellstrung.model.plan import Step as Step
from wellstrung.model.references import STATEMENTS as STATEMENTS
from wellstrung.subjects.base import Eyes as Eyes
