"""The names that a plan gives: which field may name which kind of part, and what is not there.

A schema cannot see a name that points nowhere, or to a part of the wrong kind; all such faults of
a plan are gathered here and shown at once.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping

from msgspec import Struct

from wellstrung import tables
from wellstrung.common.places import Edit, Fault, Place
from wellstrung.common.wording import (
    article,
    either,
    nearest,
    one_of,
    same_as,
    split_count,
)
from wellstrung.model import edging, layers
from wellstrung.model.beads import ADDED
from wellstrung.model.item import Bead
from wellstrung.model.palette import wrong_with
from wellstrung.model.parts import WOVEN_WORK, Kind, Part, Role, Stitch
from wellstrung.reading import tree as reading
from wellstrung.reading.faults import EVERY_WORD
from wellstrung.short_forms.beads import says_a_bead


class Reference(Struct, frozen=True):
    """A field of a part that names another: by what roles, or by a word of its own instead."""

    path: tuple[str, ...]
    roles: Collection[Role]
    words: tuple[str, ...] = ()


#: What a bead tip may cover beside a crimp: the knots whose width trade table `knots` has.
KNOTS = ("overhand", "double overhand", "figure eight")
#: What a supplier may state of a metal; other words, such as `hypoallergenic`, state nothing.
STATEMENTS = ("nickel free", "nickel release below the limit", "lead free", "cadmium free")
#: Where a clasp names the woven ropes that its halves are made of.
WOVEN_HALVES = (("ring", "woven"), ("bar", "woven"))
#: what a pin can be sewn or glued behind
BEHIND = (Role.ROPE, Role.BAND, Role.WOVEN, Role.EYED)
#: Where a part may name another part.
_PARTS_AT = (
    Reference(("thread", "spool"), (Role.THREAD,)),
    Reference(("core",), (Role.CORE,), ("yes", "no")),
    Reference(("started_on",), (Role.RING, Role.EYED)),
    Reference(("covers",), (Role.CRIMP,), KNOTS),
    Reference(("cover",), (Role.COVER,)),
    Reference(("held_by",), (Role.CRIMP, Role.GLUE), ("knots",)),
    Reference(("behind",), BEHIND),
    Reference(("over",), (Role.CONE, Role.CAP)),
    Reference(("of",), (Role.CHAIN,)),
    *(Reference(path, (Role.ROPE,)) for path in WOVEN_HALVES),
    Reference(("rings",), (Role.RING,)),
)
#: Where a part may name beads of the palette.
_BEADS_AT = (
    ("beads",), ("core_bead",), ("outer",), ("turn",), ("sides",), ("loop", "beads"), ("bezel",),
    ("edge_row",), *ADDED,
)  # fmt: skip
#: so many known names are held against unknown ones in all: what is far beyond any slips
_MOST_COMPARED = 200_000
#: what a ring or a bail can slide along
LONG = (Role.ROPE, Role.BAND, Role.STRAND)
#: what has knots that some makers glue, in the step that ties them
_KNOTTED = (Role.STRAND, Role.TIP)
#: what a step works on: verb and field -> roles of the part
WORKS_ON: Mapping[tuple[str, str], Collection[Role]] = {
    ("weave", "part"): WOVEN_WORK,
    ("finish thread", "part"): WOVEN_WORK,
    ("slide", "onto"): LONG,
    ("glue", "part"): (Role.CAP, Role.CLASP, Role.BACK),
    ("glue", "to"): (Role.ROPE,),
    ("glue", "with"): (Role.GLUE,),
    ("close ring", "part"): (Role.RING,),
    ("hang", "by"): (Role.RING,),
    ("knot", "part"): (Role.STRAND,),
    ("knot", "with"): (Role.GLUE,),
    ("crimp", "part"): (Role.CRIMP, Role.CLASP, Role.CAP, Role.TIP),
    ("crimp", "to"): LONG,
}


class Names:
    """The parts and beads of a plan by name, and the faults of what names them."""

    def __init__(
        self,
        kinds: Mapping[str, Kind],
        parts: dict[str, Part],
        beads: Mapping[str, Bead],
        unread: Collection[tuple[str, str]] = (),
        doubtful: Collection[str] = (),
    ) -> None:
        self._unread, self._doubtful = unread, doubtful
        self.kinds, self.parts, self.beads = kinds, parts, beads
        self.faults: list[Fault] = []
        self._compared = 0

    def fault(
        self, says: str, place: Place, *also: Place, found: str = "", needed: str = "",
        new: str = "",
    ) -> None:  # fmt: skip
        """Add a fault of the plan's shape; `new` is what to write in its place."""
        edits = (Edit(place, new),) if new else ()
        self.faults.append(Fault("plan-shape", says, place, found, needed, also=also, edits=edits))

    def unknown(
        self,
        what: str,
        name: str,
        known: Mapping[str, object],
        node: reading.Node,
        fitting: Collection[str] = (),
        see: str = "",
    ) -> None:
        """Add the fault of a name that points nowhere, with the nearest that does not.

        `see` is the command that lists all that are known.
        """
        unread = [called for kind, called in self._unread if kind in what.split()]
        if name in unread:
            return
        if unread:
            known = {**known, **dict.fromkeys(sorted(unread))}
        self._compared += len(known)
        may_look = self._compared <= _MOST_COMPARED
        found = nearest(name, known) if may_look else None
        says, advice = f"there is no {what} called `{name}`", ""
        if found:
            advice = f"write `{found}`"
        elif not may_look:
            says = f"{says}, and too many names are unknown to look for one that is near"
        elif what in ("part", "bead"):
            says, advice = self._otherwise(what, name, known) or (f"{says} in the plan", "")
        edits = (Edit(node.place, found),) if found else ()
        needed = f"`{found}`" if found else "" if advice else one_of(fitting or known, name, see)
        says = f"{says}: {advice}" if advice else says
        self.faults.append(Fault("plan-shape", says, node.place, name, needed, advice, edits=edits))

    def _otherwise(
        self, what: str, name: str, known: Mapping[str, object]
    ) -> tuple[str, str] | None:
        """What to say of a name that holds one or more known ones, or names the other sort."""
        number, one = split_count(name)
        if one != name and (called := one if one in known else same_as(one, known)):
            many = f", and how many of it in a field of its own, {number}" if number else ""
            return f"`{name}` is not the name of a {what}", f"write `{called}` alone{many}"
        several = re.split(r" and | & | \+ |, ", name)
        if len(several) > 1 and {*several} <= {*known}:
            return f"`{name}` names {len(several)} {what}s", "write a line or an entry for each"
        if what == "part" and name in self.beads:
            return f"`{name}` is a bead, and this takes a part", "name the part that it is in"
        if what == "bead" and name in self.parts:
            return f"`{name}` is a part, and this takes a bead", "write `part:` for `bead:`"
        if what == "bead" and says_a_bead(name):
            return (
                f"`{name}` is not the name of a bead in the plan",
                f"write it under `beads:` by a name of your own, as in `my bead: {name}`,"
                " and that name here",
            )
        return None

    def part(
        self, node: reading.Node, roles: Collection[Role] = (), words: Collection[str] = ()
    ) -> Part | None:
        """The part that a node names; a fault where there is none, with those of these roles.

        Words that may stand in its place are offered before them, but for a bare yes or no.
        """
        part = self.parts.get(str(node.value))
        if part is None:
            fitting = {name: one for name, one in self.parts.items() if one.kind.role in roles}
            may = {word: None for word in words if word not in ("yes", "no")}
            known = {**may, **self.parts}
            self.unknown("part", str(node.value), known, node, fitting={**may, **fitting})
        return part

    def takes(
        self,
        field: str,
        part: Part,
        node: reading.Node,
        roles: Collection[Role],
        words: tuple[str, ...] = (),
    ) -> None:
        """A fault where a field names a part of a role that it does not take."""
        if part.kind.role in roles:
            return
        kinds = [article(kind.name) for kind in self.kinds.values() if kind.role in roles]
        taken = either([*kinds, *(f"`{word}`" for word in words)])
        says = f"`{part.name}` is {article(part.noun)}, and {field} takes {taken}"
        there = [one.name for one in self.parts.values() if one.kind.role in roles]
        needed = f"{taken}: {one_of(there, part.name)}" if there else taken
        self.fault(says, node.place, part.key.place, found=part.noun, needed=needed)

    def check_bead(self, bead: Bead) -> None:
        """What is wrong with a bead's type and size, where it can be read."""
        if bead.name not in self._doubtful:
            self.faults += wrong_with(bead)
        node = bead.node_at("woven")
        part = self.part(node) if node is not None else None
        if node is not None and part is not None and part.traits.made_round != "core":
            says = f"`{part.name}` is {article(part.noun)}, and `woven` takes a beaded bead"
            self.fault(says, node.place, part.key.place, found=part.noun)

    def check_part(self, part: Part, stitches: Mapping[str, Stitch]) -> None:
        """Every name that a part gives: of its stitch, of beads, parts, links and table rows."""
        self._check_stitch(part, stitches)
        for path in _BEADS_AT:
            for bead in _bead_names(part.node_at(*path)):
                if str(bead.value) not in self.beads:
                    self.unknown("bead", str(bead.value), self.beads, bead)
                elif self.beads[str(bead.value)].has("woven"):
                    self._check_woven(part, self.beads[str(bead.value)], bead)
        self._check_words(part)
        for named in _PARTS_AT:
            node = part.node_at(*named.path)
            if isinstance(node, reading.Scalar) and str(node.value) not in named.words:
                other = self.part(node, named.roles, named.words)
                if other is not None:
                    field = f"`{named.path[-1]}`"
                    self.takes(field, other, node, named.roles, named.words)
        chain = part.part("of")
        if chain and chain.kind.role is Role.CHAIN and chain.name not in self._doubtful:
            self._check_links(part, chain)

    def _check_woven(self, part: Part, bead: Bead, node: reading.Node) -> None:
        """Beaded beads are strung, so many of them as one says, and none is woven of others."""
        if part.kind.role in WOVEN_WORK:
            says = f"`{bead.name}` is a beaded bead, and `{part.name}` is woven: string it, on a"
            self.fault(f"{says} strand, a wire link or a bead drop", node.place, bead.key.place)
        elif (
            part.kind.role is Role.STRAND
            and part.name not in self._doubtful  # a count that is wrong is not missing
            and not (part.has("count") or part.has("repeats"))
        ):
            says = f"`{bead.name}` is made at the bench, and `{part.name}` does not say how many"
            self.fault(f"{says}: write `count` or `repeats` in place of its `length`", node.place)

    def _check_words(self, part: Part) -> None:
        """An adhesive is in its table; a metal, a line and a statement are no slips of another.

        A metal that no table has is an unknown one, and other statements state nothing.
        """
        glue, stated = part.node_at("type"), part.node_at("states")
        adhesives, metals = tables.load("adhesives").rows, tables.load("metals").rows
        if glue and part.kind.role is Role.GLUE and str(glue.value) not in adhesives:
            called, see = "row in the trade table `adhesives`", "wellstrung tables adhesives"
            self.unknown(called, str(glue.value), adhesives, glue, see=see)
        self._no_slip("row in the trade table `metals`", part.node_at("metal"), metals)
        line = part.node_at("thread", "type")
        for node in (glue if part.kind.role is Role.THREAD else None, line):
            if node is not None and str(node.value) not in part.threads:
                sure = {kind: kind for kind in part.threads if not tables.line_may_be(kind)}
                see = "wellstrung tables line_types"
                self.unknown("type of thread", str(node.value), sure, node, see=see)
        for field in ("turns", "coil"):
            node = part.node_at("thread", field)
            if node is not None and line is not None and not part.thread.springs:
                says = f"`{field}` is of memory wire, and the thread of `{part.name}` is"
                self.fault(f"{says} {line.value}: leave `{field}` out", node.place, line.place)
        for each in stated.items if isinstance(stated, reading.Sequence) else ():
            word, known = str(each.value), dict.fromkeys(STATEMENTS)
            if word not in known and nearest(word, known):  # also where it is only spelt otherwise
                self.unknown("statement", word, known, each)

    def _no_slip(self, what: str, node: reading.Node | None, known: Mapping[str, object]) -> None:
        """A fault where a word is a slip of a known one; any other word may stand."""
        word = str(node.value) if node is not None else ""
        if node is None or word in known or same_as(word, known) or not nearest(word, known):
            return
        self.unknown(what, word, known, node)

    def _check_stitch(self, part: Part, stitches: Mapping[str, Stitch]) -> None:
        node, stitch = part.node_at("stitch"), part.stitch
        if node is None:
            return
        if stitch is None:
            self.unknown("stitch", str(node.value), stitches, node, see=EVERY_WORD)
        elif part.kind.name not in (stitch.makes, *stitch.also_makes):
            self.fault(
                f"`{stitch.name}` makes {article(stitch.makes)}, and `{part.name}` is"
                f" {article(part.noun)}: write `kind: {stitch.makes}`, or another stitch",
                node.place,
                part.place_of("kind"),
            )
        elif part.name not in self._doubtful:
            for says, place in (*stitch.refuses(part), *edging.refuses(part)):
                self.fault(says, place, node.place)

    def _check_links(self, piece: Part, chain: Part) -> None:
        known = {link: link for link in chain.texts("pattern")}
        named = [piece.node_at("starts_with"), piece.node_at("ends_with")]
        counted = piece.node_at("count_of")
        if isinstance(counted, reading.Mapping):
            named += [entry.key for entry in counted.entries.values()]
        for node in named:
            if node is not None and str(node.value) not in known:
                self.unknown(f"link of `{chain.name}`", str(node.value), known, node)

    def check_glued_to(self, verb: str, node: reading.Mapping, parts: Mapping[str, Part]) -> None:
        """A step that glues says what to: a stone on one of its layers, all else on a part."""
        part = parts.get("part") if verb in layers.REFUSES else None
        if part is not None and not (verb == "glue" and part.kind.role in _KNOTTED):
            for says, place in layers.REFUSES[verb](part, node, parts):
                self.fault(says, place)

    def check_use(
        self, verb: str, field: str, node: reading.Node, parts: Mapping[str, Part]
    ) -> None:
        """A step works on the kind of part it is meant for; a clasp is glued to a band."""
        roles, glued = WORKS_ON.get((verb, field)), parts.get("part")
        if verb == "glue" and field != "with" and glued and glued.traits.glued_on:
            return  # said by `check_glued_to`
        if (verb, field) == ("glue", "to") and glued:
            roles = {Role.CLASP: (Role.BAND,), Role.BACK: BEHIND}.get(glued.kind.role, roles)
            if parts[field].thread.springs:
                roles = (Role.ROPE, Role.STRAND)  # a cap or a ball on the end of its wire
        if field == "to" and glued and glued.traits.cups:
            roles = (Role.EYED,)  # the last cup, with a drop of glue under it or without
        if verb == "glue" and glued and glued.kind.role in _KNOTTED:
            if field == "part":
                says = f"`{glued.name}` is {article(glued.noun)}: a drop of glue on its"
                says += " knots goes with them: write `with` in the step `knot`"
                self.fault(says, node.place, glued.key.place)
        elif verb == "knot" and field == "part" and parts[field].traits.slides:
            return
        elif roles is not None and not (field == "part" and parts[field].traits.made_by == verb):
            self.takes(f"`{field}` of `{verb}`", parts[field], node, roles)


def _bead_names(node: reading.Node | None) -> Iterator[reading.Scalar]:
    """The names of beads where a part lists them: one, a repeat of several, or shares."""
    if isinstance(node, reading.Mapping):
        yield from (entry.key for entry in node.entries.values())
        return
    for name in node.items if isinstance(node, reading.Sequence) else (node,):
        if isinstance(name, reading.Sequence):
            yield from _bead_names(name)  # several that repeat in one round
        elif isinstance(name, reading.Scalar):
            yield name
