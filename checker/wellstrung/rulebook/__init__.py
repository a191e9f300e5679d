"""All that a rule may import: what a rule is, what it is handed, and what it may answer.

A rule looks at one subject and answers one of

* `Held(margin)` - it was kept, with this much to spare;
* `Misfit(margin, ...)` - it was not, over part or all of the margin's range;
* `Caution(...)` - a safety text whose condition is in the plan;
* `None` - the rule has nothing to do with this subject.

Asking for a value that the plan lacks raises `Missing`; the core then lists the subject as unjudged
with the field that would let it be judged.
"""

from wellstrung.common.places import Edit as Edit
from wellstrung.common.places import Place as Place
from wellstrung.common.wording import article as article
from wellstrung.derived.outline import side_by_side as side_by_side
from wellstrung.model.beads import bead_mix as bead_mix
from wellstrung.model.beads import drops_of as drops_of
from wellstrung.model.item import Item as Item
from wellstrung.model.item import Missing as Missing
from wellstrung.model.parts import Part as Part
from wellstrung.model.parts import Role as Role
from wellstrung.model.plan import Hung as Hung
from wellstrung.model.plan import Plan as Plan
from wellstrung.model.plan import RunEntry as RunEntry
from wellstrung.model.plan import Step as Step
from wellstrung.quantity.arithmetic import derived as derived
from wellstrung.quantity.arithmetic import exact as exact
from wellstrung.quantity.arithmetic import leaf as leaf
from wellstrung.quantity.arithmetic import times as times
from wellstrung.quantity.arithmetic import total as total
from wellstrung.quantity.causes import Cause as Cause
from wellstrung.quantity.causes import Spread as Spread
from wellstrung.quantity.causes import Window as Window
from wellstrung.quantity.value import Quantity as Quantity
from wellstrung.quantity.verdict import SLACK as SLACK
from wellstrung.quantity.verdict import Verdict as Verdict
from wellstrung.quantity.verdict import compare as compare
from wellstrung.quantity.verdict import holds as holds
from wellstrung.quantity.working import number as number
from wellstrung.quantity.working import working as working
from wellstrung.rulebook.answer import Answer as Answer
from wellstrung.rulebook.answer import Caution as Caution
from wellstrung.rulebook.answer import Held as Held
from wellstrung.rulebook.answer import Level as Level
from wellstrung.rulebook.answer import Misfit as Misfit
from wellstrung.rulebook.answer import Remedy as Remedy
from wellstrung.rulebook.answer import kept as kept
from wellstrung.rulebook.answer import tightest as tightest
from wellstrung.rulebook.answer import worded as worded
from wellstrung.rulebook.ask import Ask as Ask
from wellstrung.rulebook.ask import Limit as Limit
from wellstrung.rulebook.loads import pull_to_spare as pull_to_spare
from wellstrung.rulebook.loads import weakest as weakest
from wellstrung.rulebook.loads import weight as weight
from wellstrung.rulebook.remedies import bead_packs as bead_packs
from wellstrung.rulebook.remedies import sized_by as sized_by
from wellstrung.rulebook.remedies import stronger_line as stronger_line
from wellstrung.rulebook.remedies import thicker_wires as thicker_wires
from wellstrung.rulebook.remedies import thinner_wires as thinner_wires
from wellstrung.rulebook.remedies import wider_bore as wider_bore
from wellstrung.rulebook.remedies import wider_ring as wider_ring
from wellstrung.rulebook.rule import Rule as Rule
from wellstrung.rulebook.wording import about as about
from wellstrung.rulebook.wording import between as between
from wellstrung.rulebook.wording import hours as hours
from wellstrung.rulebook.wording import in_unit_of as in_unit_of
from wellstrung.rulebook.wording import often as often
from wellstrung.rulebook.wording import spelled as spelled
from wellstrung.rulebook.wording import spelled_time as spelled_time
from wellstrung.subjects.alone import ClaspClosed as ClaspClosed
from wellstrung.subjects.alone import CoreInRope as CoreInRope
from wellstrung.subjects.alone import Named as Named
from wellstrung.subjects.alone import PaletteBead as PaletteBead
from wellstrung.subjects.alone import Piece as Piece
from wellstrung.subjects.alone import WireLink as WireLink
from wellstrung.subjects.along_the_run import Centred as Centred
from wellstrung.subjects.along_the_run import SlidesOn as SlidesOn
from wellstrung.subjects.along_the_run import TailThroughLoop as TailThroughLoop
from wellstrung.subjects.base import Eyes as Eyes
from wellstrung.subjects.base import Subject as Subject
from wellstrung.subjects.chain import ChainCut as ChainCut
from wellstrung.subjects.chain import EndLink as EndLink
from wellstrung.subjects.chain import PieceCut as PieceCut
from wellstrung.subjects.counts import pieces_hung as pieces_hung
from wellstrung.subjects.glued import Glue as Glue
from wellstrung.subjects.glued import GluedEnd as GluedEnd
from wellstrung.subjects.glued import GluedJoint as GluedJoint
from wellstrung.subjects.glued import Glues as Glues
from wellstrung.subjects.glued import GlueUsed as GlueUsed
from wellstrung.subjects.glued import Mixed as Mixed
from wellstrung.subjects.glued import caps_at as caps_at
from wellstrung.subjects.hung import BailAround as BailAround
from wellstrung.subjects.hung import HungByEyes as HungByEyes
from wellstrung.subjects.hung import HungOnEyes as HungOnEyes
from wellstrung.subjects.hung import evenly as evenly
from wellstrung.subjects.joins_made import JoinAtWork as JoinAtWork
from wellstrung.subjects.linked import EyesMeet as EyesMeet
from wellstrung.subjects.linked import Hangs as Hangs
from wellstrung.subjects.linked import RingHolds as RingHolds
from wellstrung.subjects.linked import RingInUse as RingInUse
from wellstrung.subjects.linked import RingThroughEye as RingThroughEye
from wellstrung.subjects.on_thread import OnThread as OnThread
from wellstrung.subjects.on_thread import Threaded as Threaded
from wellstrung.subjects.on_thread import Woven as Woven
from wellstrung.subjects.on_thread import bare_edges as bare_edges
from wellstrung.subjects.on_thread import edges_of as edges_of
from wellstrung.subjects.on_thread import fringe_passes as fringe_passes
from wellstrung.subjects.on_thread import passes_of as passes_of
from wellstrung.subjects.run import BandInClasp as BandInClasp
from wellstrung.subjects.run import LinkThroughCone as LinkThroughCone
from wellstrung.subjects.run import RopeInCap as RopeInCap
from wellstrung.subjects.run import StrandInCrimp as StrandInCrimp
from wellstrung.subjects.run import StrandsAtHoles as StrandsAtHoles
from wellstrung.subjects.run import StrandsBeside as StrandsBeside
from wellstrung.subjects.run import StrandsInCone as StrandsInCone
from wellstrung.subjects.run import TipOnStrands as TipOnStrands
from wellstrung.subjects.run import Toggle as Toggle
from wellstrung.subjects.run import taken as taken
from wellstrung.subjects.steps import ClassMeets as ClassMeets
from wellstrung.subjects.steps import Cutting as Cutting
from wellstrung.subjects.steps import PartAtWork as PartAtWork
from wellstrung.subjects.steps import RingOnCappedRope as RingOnCappedRope
from wellstrung.subjects.steps import ThreadEnds as ThreadEnds
from wellstrung.subjects.steps import done_at_home as done_at_home
from wellstrung.subjects.supplies import BeadsNeeded as BeadsNeeded
from wellstrung.subjects.supplies import Budgeted as Budgeted
from wellstrung.subjects.supplies import RingsNeeded as RingsNeeded
from wellstrung.subjects.supplies import ThreadNeeded as ThreadNeeded
from wellstrung.subjects.worn import Fitted as Fitted
from wellstrung.subjects.worn import InEar as InEar
from wellstrung.subjects.worn import MetalParts as MetalParts
from wellstrung.subjects.worn import PutOn as PutOn
from wellstrung.subjects.worn import Rigid as Rigid
from wellstrung.subjects.worn import Worn as Worn
from wellstrung.work.dependencies import most_joints as most_joints
from wellstrung.work.dependencies import over_easier_cap as over_easier_cap
