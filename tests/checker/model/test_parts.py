"""Model: names that point nowhere, and parts that contradict themselves or each other."""

from __future__ import annotations

import pytest

from wellstrung.judging.checker import Checker
from wellstrung.testing.cases import changed

CASES: dict[str, tuple[dict[str, str], list[tuple[str, list[str], str]]]] = {
    "an unknown part in the run": (
        {"run: [toggle.a,": "run: [togle.a,"},
        [("23:7", [], "there is no part called `togle`: write `toggle`")],
    ),
    "a clasp without its half": (
        {"run: [toggle.a,": "run: [toggle,"},
        [
            (
                "23:7",
                ["21:3"],
                "`toggle` is not a place in the run: a clasp stands there by its halves, `toggle.a`"
                " and `toggle.b`",
            )
        ],
    ),
    "a half of what has none": (
        {"linked: 3}, cap, rope": "linked: 3}, cap.a, rope"},
        [
            (
                "23:43",
                ["15:3"],
                "`cap.a` is not a place in the run: `cap` has no halves, write `cap`",
            )
        ],
    ),
    "an unknown part hung": (
        {"{part: frame, from: rope": "{part: farme, from: rope"},
        [("25:12", [], "there is no part called `farme`: write `frame`")],
    ),
    "hung by what is no ring": (
        {"from: rope, by: carrier, times: 2": "from: rope, by: cap, times: 2"},
        [
            (
                "25:35",
                ["15:3"],
                "`cap` is an end cap, and `by` takes a jump ring or `thread`",
            )
        ],
    ),
    "unknown eyes": (
        {"eyes: bottom}": "eyes: botom}"},
        [("26:31", [], "there is no set of eyes of `frame` called `botom`: write `bottom`")],
    ),
    "an edge that a woven band has not": (
        {
            "kind: woven rope": "kind: woven band",
            "stitch: tubular peyote": "stitch: brick",
            "around: 10": "across: 10",
            "measured: {outside: 9.8 mm}": "measured: {width: 2 cm}",
            "  - {do: glue, part: cap, to: rope, with: glue, joints: 2}\n": "",
            "times: 2}": "times: 2}\n"
            "  - {part: drop, from: {part: rope, eyes: last edg}, by: thread}",
        },
        [("26:31", [], "there is no set of eyes of `rope` called `last edg`: write `last edge`")],
    ),
    "a part hung from itself": (
        {"{part: frame, from: rope": "{part: frame, from: frame"},
        [("25:12", ["25:25"], "`frame` hangs from itself: name what it hangs from")],
    ),
    "a hung circle": (
        {"{part: frame, from: rope": "{part: frame, from: drop"},
        [
            (
                "25:25",
                ["26:24"],
                "`frame` from `drop` from `frame` hangs in a circle: let one of them hang from the"
                " run",
            )
        ],
    ),
    "an unknown bead": (
        {"    beads: kelp": "    beads: kelb"},
        [("12:12", [], "there is no bead called `kelb`: write `kelp`")],
    ),
    "an unknown stitch": (
        {"stitch: tubular peyote": "stitch: tubular payote"},
        [("10:13", [], "there is no stitch called `tubular payote`: write `tubular peyote`")],
    ),
    "an odd ring of even peyote": (
        {"around: 10": "around: 11"},
        [
            (
                "11:13",
                ["10:13"],
                "`rope` has 11 beads around, and even tubular peyote needs an even ring: write"
                " `around: 10` or `around: 12`, or `stitch: odd tubular peyote`",
            )
        ],
    ),
    "a rope that does not count what goes around, and of what": (
        {"    around: 10\n": "", "    beads: kelp\n": ""},
        [
            (
                "8:3",
                ["10:13"],
                "`rope` does not say how many beads go around: write `around: 12`",
            ),
            ("8:3", ["10:13"], "`rope` does not say of which bead it is made: write `beads: reed`"),
        ],
    ),
    "a ring of two": (
        {"around: 10": "each_round: 1"},
        [
            (
                "11:17",
                ["10:13"],
                "`rope` has 2 beads around, too few to close a ring: write `around: 4` or more",
            )
        ],
    ),
    "an unknown row of a table": (
        {"type: two-part epoxy": "type: two part epoxy"},
        [
            (
                "22:32",
                [],
                "there is no row in the trade table `adhesives` called `two part epoxy`: write"
                " `two-part epoxy`",
            )
        ],
    ),
    "a bead the tables do not know": (
        {"size: 8/0, make: Japanese": "size: 10/0, make: Japanese"},
        [
            (
                "6:29",
                [],
                "the trade tables have no bead `round 10/0 Japanese`: they have `round 10/0 Czech`,"
                " `cylinder 10/0`; or write `type: other` with its own `outside`, `length` and"
                " `hole`",
            )
        ],
    ),
    "glue on the knots of a strand": (
        {
            "  glue: {kind": "  line: {kind: strand, stitch: strung, beads: kelp, count: 9}\n"
            "  glue: {kind",
            "{do: glue, part: cap, to: rope": "{do: glue, part: line, to: line",
        },
        [
            (
                "31:22",
                ["22:3"],
                "`line` is a strand: no check looks at glue on its knots, so leave this step out",
            )
        ],
    ),
    "a round bead with sizes of its own": (
        {"size: 8/0, make: Japanese": "outside: 8 mm, hole: 1.2 mm"},
        [
            (
                "6:16",
                [],
                "the bead `kelp` lacks its `size`: write one such as `size: 8/0`, or `type: other`"
                " for a bead with sizes of its own",
            )
        ],
    ),
    "a link the chain has not": (
        {"starts_with: loop": "starts_with: lop"},
        [("20:57", [], "there is no link of `bar chain` called `lop`: write `loop`")],
    ),
    "a piece of what is no chain": (
        {"of: bar chain": "of: toggle"},
        [
            (
                "20:33",
                ["21:3"],
                "`toggle` is a clasp, and `of` takes a chain",
            )
        ],
    ),
    "an unknown part in a step": (
        {"{do: weave, part: rope}": "{do: weave, part: rpoe}"},
        [("28:23", [], "there is no part called `rpoe`: write `rope`")],
    ),
    "an unknown part brought to the class": (
        {"title: Test collar": "title: Test collar\nclass: {length: 2 h, prepared: [drops]}"},
        [("3:33", [], "there is no part called `drops`: write `drop`")],
    ),
    "an unknown chain in the supplies": (
        {"- {chain: bar chain, length: 45 cm}": "- {chain: bare chain, length: 45 cm}"},
        [("36:13", [], "there is no part called `bare chain`: write `bar chain`")],
    ),
    "a spool that is no thread": (
        {"length: 39.7 cm": "length: 39.7 cm\n    thread: {spool: glue}"},
        [("14:21", ["23:3"], "`glue` is an adhesive, and `spool` takes a thread")],
    ),
    "glue that is none": (
        {"with: glue, joints: 2": "with: rope, joints: 2"},
        [
            (
                "30:43",
                ["8:3"],
                "`rope` is a woven rope, and `with` of `glue` takes an adhesive",
            )
        ],
    ),
    "a cap that is woven": (
        {"{do: weave, part: rope}": "{do: weave, part: cap}"},
        [
            (
                "28:23",
                ["15:3"],
                "`cap` is an end cap, and `part` of `weave` takes a woven rope, a woven band, a"
                " pouch, a bezel or a braid",
            )
        ],
    ),
    "a cap and a rope the wrong way round": (
        {"glue, part: cap, to: rope": "glue, part: rope, to: cap"},
        [
            (
                "30:22",
                ["8:3"],
                "`rope` is a woven rope, and `part` of `glue` takes an end cap or a clasp",
            ),
            (
                "30:32",
                ["15:3"],
                "`cap` is an end cap, and `to` of `glue` takes a woven rope or a braid",
            ),
        ],
    ),
    "glue in the run": (
        {"linked: 3}, cap, rope": "linked: 3}, glue, rope"},
        [
            (
                "23:43",
                ["22:3"],
                "`glue` is an adhesive, which has no place in the run: name another part",
            )
        ],
    ),
    "a link that is all wire": (
        {"loop: {length: 5 mm": "loop: {length: 1.6 mm"},
        [
            (
                "19:102",
                ["19:3"],
                "link `loop` of `bar chain` is 1.6 mm long and its wire is 0.8 mm: two wires leave"
                " no inside, so correct one of them",
            )
        ],
    ),
    "a bore wider than its cap": (
        {"outside: 11.5 mm": "outside: 9 mm"},
        [
            (
                "15:30",
                ["15:3"],
                "`cap` has bore 10 mm and outside 9 mm: the bore of an end cap is smaller than its"
                " outside, so correct one of them",
            )
        ],
    ),
    "two that fill the rest": (
        {
            "length: 39.7 cm": "length: fills the rest",
            "  glue: {kind": "  lace: {kind: strand, stitch: strung, beads: kelp,"
            " length: fills the rest}\n  glue: {kind",
            "cap, rope, cap": "cap, rope, lace, cap",
        },
        [
            (
                "22:61",
                ["13:13"],
                "`rope` and `lace` fill the rest: write the length of all but one",
            )
        ],
    ),
    "a rest of nothing": (
        {"length: 39.7 cm": "length: fills the rest", "finished_length: 46 cm ± 1 cm\n": ""},
        [
            (
                "12:13",
                [],
                "`rope` fills the rest, and the plan asks for no length of the piece: write"
                " `finished_length` or `inside`",
            )
        ],
    ),
    "a rest outside the run": (
        {"length: 39.7 cm": "length: fills the rest", "cap, rope, cap": "cap, cap"},
        [
            (
                "13:13",
                [],
                "`rope` fills the rest, and it has no place of its own in the run: write its"
                " length",
            )
        ],
    ),
    "strands side by side that fill the rest": (
        {
            "length: 39.7 cm": "length: fills the rest",
            "  glue: {kind": "  lace: {kind: strand, stitch: strung, beads: kelp,"
            " length: fills the rest}\n  glue: {kind",
            "cap, rope, cap": "cap, {strands: [rope, lace]}, cap",
        },
        [
            (
                "13:13",
                [],
                "`rope` fills the rest, and it lies side by side with other strands: write the"
                " length of each",
            ),
            (
                "22:61",
                [],
                "`lace` fills the rest, and it lies side by side with other strands: write the"
                " length of each",
            ),
        ],
    ),
    "a loop that stays open": (
        {"piece: necklace\n": "piece: necklace\nrun_is: loop\ncloses: open\n"},
        [
            (
                "5:9",
                ["4:9"],
                "the run is a loop, and the piece stays open: write `run_is: open`, or how it"
                " closes",
            )
        ],
    ),
    "more drops than a graduated fringe lists": (
        {
            "  glue: {kind": "  leg: {kind: bead drop, beads: kelp, count: {mirror: [3, 5, 7]}}\n"
            "  glue: {kind",
            "by: small, times: 7}": "by: small, times: 7}\n"
            "  - {part: leg, from: rope, by: thread, times: 7}",
        },
        [
            (
                "28:48",
                ["22:46"],
                "`leg` lists the counts of 5 drops, and 7 hang: write `times: 5`, or as many"
                " counts",
            )
        ],
    ),
    "a ring that is all wire": (
        {"outside: 6 mm, wire: 18 AWG": "outside: 6 mm, wire: 3 mm"},
        [
            (
                "17:49",
                ["17:3"],
                "`small` is 6 mm outside and its wire is 3 mm: two wires leave no inside, so"
                " correct one of them",
            )
        ],
    ),
}


@pytest.mark.parametrize("name", CASES)
def test_fault(name: str, checker: Checker, collar: str) -> None:
    changes, expected = CASES[name]
    text = changed(collar, changes)
    found = [
        (
            f"{remark.place.line}:{remark.place.column}",
            [f"{place.line}:{place.column}" for place in remark.also],
            remark.says,
        )
        for remark in checker.check_text(text).remarks
    ]
    assert found == expected


def test_several_names_that_point_nowhere_are_told_together(checker: Checker, collar: str) -> None:
    text = collar.replace("run: [toggle.a,", "run: [togle.a,").replace("beads: kelp", "beads: klp")
    assert [remark.says for remark in checker.check_text(text).remarks] == [
        "there is no bead called `klp`: write `kelp`",
        "there is no part called `togle`: write `toggle`",
    ]
