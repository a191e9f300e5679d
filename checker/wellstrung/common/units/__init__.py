"""Values with units, as authors write them.

Text in; a number in the base unit out, with the tolerance that was written, and back to text again.
Base units: mm, g, ml, N, minutes, °C.
"""

from wellstrung.common.units.age import CHILD as CHILD
from wellstrung.common.units.age import UNDER_THREE as UNDER_THREE
from wellstrung.common.units.age import age as age
from wellstrung.common.units.amount import Parsed as Parsed
from wellstrung.common.units.amount import UnitFault as UnitFault
from wellstrung.common.units.amount import lacks_unit as lacks_unit
from wellstrung.common.units.known import FORCES as FORCES
from wellstrung.common.units.known import INCH as INCH
from wellstrung.common.units.known import KILOGRAM_FORCE as KILOGRAM_FORCE
from wellstrung.common.units.known import LENGTHS as LENGTHS
from wellstrung.common.units.known import MASSES as MASSES
from wellstrung.common.units.known import POUND_FORCE as POUND_FORCE
from wellstrung.common.units.known import TIMES as TIMES
from wellstrung.common.units.known import VOLUMES as VOLUMES
from wellstrung.common.units.readers import REST as REST
from wellstrung.common.units.readers import USUAL as USUAL
from wellstrung.common.units.readers import bead_figures as bead_figures
from wellstrung.common.units.readers import bead_size as bead_size
from wellstrung.common.units.readers import duration as duration
from wellstrung.common.units.readers import force as force
from wellstrung.common.units.readers import length as length
from wellstrung.common.units.readers import mass as mass
from wellstrung.common.units.readers import size as size
from wellstrung.common.units.readers import target as target
from wellstrung.common.units.readers import temperature as temperature
from wellstrung.common.units.readers import volume as volume
from wellstrung.common.units.ring_sizes import finger as finger
from wellstrung.common.units.show import Side as Side
from wellstrung.common.units.show import by_length as by_length
from wellstrung.common.units.show import hanging as hanging
from wellstrung.common.units.show import show as show
from wellstrung.common.units.wires import awg as awg
from wellstrung.common.units.wires import swg as swg
from wellstrung.common.units.wires import wire as wire
