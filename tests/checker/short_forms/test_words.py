"""Every word of the trade at its place: accepted as the plan's own, asked about, or answered."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import pytest
import yaml

import wellstrung_schemas as schemas
from generated.plans import seeded
from running import ROOT, SAMPLES
from wellstrung import tables
from wellstrung.common import units
from wellstrung.common.trade_words import (
    ACCEPTED,
    ASKED,
    KNOWN,
    answer,
    close,
    fields_meant,
    meaning,
    said,
    words,
)
from wellstrung.judging.checker import Checker
from wellstrung.judging.result import PlanResult
from wellstrung.plugins.host import Host
from wellstrung.reading import parser, tree
from wellstrung.short_forms import spelled_out
from wellstrung.short_forms.words import in_our_words
from wellstrung.testing.cases import changed

KINDS = {name: schemas.fragment(name) for name in schemas.kind_names()}
STITCHES = frozenset(ACCEPTED["stitch"])


def read(plan: Any) -> tuple[Any, tuple[str, ...]]:
    """What a plan means, and the messages about its words."""
    tree_of_it = parser.read_text(json.dumps(plan, ensure_ascii=False), "plan.yaml").tree
    assert tree_of_it is not None
    whole, faults = in_our_words(tree_of_it, KINDS, STITCHES)
    return whole.value, tuple(fault.says for fault in faults)


def with_word(place: str, word: str) -> Iterator[tuple[dict[str, Any], dict[str, Any]]]:
    """Plans with a word at a place, each with the group of fields that the word stands in."""
    called, _, holder = place.partition(" of ")
    match called:
        case "kind":
            group = {"kind": word}
            yield {"parts": {"x": group}}, group
        case "do":
            group = {"do": word}
            yield {"work": [group]}, group
        case "piece" | "called" | "closes":
            group = {called: word}
            yield group, group
        case "age":
            group = {"age": word}
            yield {"wearer": group}, group
        case "sold_as":
            group = {"sold_as": word}
            yield {"supplies": [group]}, group
        case "back":
            group = {"back": word}
            yield {"parts": {"x": {"kind": "bezel", "stone": group}}}, group
        case _:
            for kind, schema in KINDS.items():
                if called in schema["properties"] and holder in ("", kind):
                    group = {"kind": kind, called: word}
                    yield {"parts": {"x": group}}, group


def places(table: Mapping[str, Mapping[str, str]]) -> Iterator[tuple[str, str, str]]:
    """Every place, with the message for a word there and the word."""
    for place, entries in table.items():
        if not place.startswith(("field", "row")):
            for own, listed in entries.items():
                first, second = (own, listed) if table is ACCEPTED else (listed, own)
                for word in words(second):
                    yield place, first, word


@pytest.mark.parametrize(
    "place", [place for place in ACCEPTED if not place.startswith(("field", "row"))]
)
def test_an_accepted_word_means_the_plans_own(place: str) -> None:
    seen = 0
    for where, own, word in places(ACCEPTED):
        if where != place:
            continue
        value, *more = own.split(", ")
        for plan, group in with_word(place, word):
            found, told = read(plan)
            beside = [one.split(": ") for one in more]
            says = {field: int(said) if said.isdigit() else said for field, said in beside}
            own_group = {**group, group_key(place): value, **says}
            if place == "stitch" and meaning(f"stitch of {group['kind']}", word):
                continue  # which this kind takes in another sense
            assert told == (), (place, word, told)
            assert found == put(plan, group, own_group), (place, word)
            seen += 1
    assert seen


def group_key(place: str) -> str:
    return place.partition(" of ")[0]


def put(plan: Any, group: Any, own: Any) -> Any:
    """A plan with another group in the place of one."""
    if plan is group:
        return own
    if isinstance(plan, dict):
        return {name: put(value, group, own) for name, value in plan.items()}
    return [put(value, group, own) for value in plan] if isinstance(plan, list) else plan


@pytest.mark.parametrize("place", [place for place in {**ASKED, **KNOWN} if place != "field"])
def test_a_word_without_one_meaning_is_answered(place: str) -> None:
    for table in (ASKED, KNOWN):
        for where, advice, word in places(table):
            if where != place:
                continue
            for plan, group in with_word(place, word):
                if place == "stitch" and meaning(f"stitch of {group['kind']}", word):
                    continue
                found, told = read(plan)
                assert len(told) == 1, (place, word, told)
                assert f"`{word}`" in told[0], (place, word, told)
                assert told[0].endswith(advice), (place, word, told)
                assert found == plan


def test_every_stitch_has_words(installed: Host) -> None:
    assert {*installed.stitches} >= STITCHES
    assert {name for name in ACCEPTED["kind"] if ", " not in name} <= {*KINDS}


def test_no_word_is_in_two_tables() -> None:
    for place, entries in ACCEPTED.items():
        accepted = [close(word) for listed in entries.values() for word in words(listed)]
        others = {
            close(word)
            for table in (ASKED, KNOWN)
            for listed in table.get(place, ())
            for word in words(listed)
        }
        assert not others & {*accepted}, place
        assert not {*map(close, entries)} & others, place
        if not place.startswith("field"):  # where a name may be of several fields
            # both spellings of one thing may stand there, with a space and without
            meant = {
                (close(word), own) for own, listed in entries.items() for word in words(listed)
            }
            assert len(meant) == len({*accepted}), place


def groups() -> Iterator[tuple[str, Any, Any, list[str]]]:
    """Every group of fields that a schema has: its place, a plan with it, itself, its fields."""

    def inside(schema: Any, place: str, holder: Any, top: Any) -> Iterator[Any]:
        fields = schema.get("properties", {})
        if fields and schema.get("additionalProperties") is False:
            yield place, top, holder, [*fields]
        for name, inner in fields.items():
            ways = (
                (inner, lambda group: group),
                (inner.get("items"), lambda group: [group]),
                (inner.get("additionalProperties"), lambda group: {"x": group}),
            )
            for its, held in ways:
                if isinstance(its, dict) and "properties" in its:
                    group: dict[str, Any] = {}
                    holder[name] = held(group)
                    yield from inside(its, name, group, top)
                    del holder[name]

    for kind, schema in KINDS.items():
        part: dict[str, Any] = {"kind": kind}
        yield from inside(schema, kind, part, {"parts": {"x": part}})
    for verb, schema in schemas.verbs().items():
        step: dict[str, Any] = {"do": verb}
        yield from inside(schema, "step", step, {"work": [step]})
    plan: dict[str, Any] = {}
    yield from inside(schemas.plan(), "plan", plan, plan)


def test_a_field_by_another_name_means_the_field() -> None:
    """Or it asks, where the group has several fields that it may mean."""
    seen = set()
    for place, plan, group, fields in groups():
        for where in (f"field of {place}", "field"):
            for own, listed in ACCEPTED.get(where, {}).items():
                for word in words(listed):
                    if own not in fields or own in group or close(word) in map(close, fields):
                        continue
                    special = [one for one in meaning(f"field of {place}", word) if one in fields]
                    meant = special or [one for one in meaning("field", word) if one in fields]
                    group[word] = 1
                    found, told = read(plan)
                    del group[word]
                    assert len(told) == (len(meant) > 1), (place, word, told)
                    group[meant[0]] = 1
                    assert found == plan, (place, word)
                    del group[meant[0]]
                    seen.add(word)
    for where in ACCEPTED:
        if where.startswith("field"):
            for own, listed in ACCEPTED[where].items():
                assert own in ("kind", "do") or {*words(listed)} <= seen, own


def test_the_field_that_chooses_has_other_names_too() -> None:
    for word in words(ACCEPTED["field"]["kind"]):
        assert read({"parts": {"x": {word: "calotte"}}})[0] == {
            "parts": {"x": {"kind": "bead tip"}}
        }
    for word in words(ACCEPTED["field"]["do"]):
        assert read({"work": [{word: "try on"}]})[0] == {"work": [{"do": "wear"}]}


def disguised(text: str, turn: int) -> str:
    """A plan with words of the trade for its own, the next ones at each turn."""
    whole = parser.read_text(text, "plan.yaml").tree
    assert whole is not None
    edits = []
    for name, entry in whole.entries["parts"].node.entries.items():
        part, kind = entry.node, entry.node.value.get("kind", "")
        for field, inner in part.entries.items():
            if not isinstance(inner.node, tree.Scalar):
                continue
            places = (f"{field} of {kind}", field)
            for word in synonyms(places, str(inner.node.value), part.value)[turn::7][:1]:
                edits.append((inner.node.place, json.dumps(word)))
        for field in part.entries:
            props = KINDS[kind]["properties"] if kind in KINDS else {}
            for word in names(f"field of {kind}", field, [*props])[turn::3][:1]:
                edits.append((part.entries[field].key.place, json.dumps(word)))
        assert name
    return tree.replaced(text, edits)


def synonyms(places: tuple[str, ...], value: str, part: Mapping[str, Any]) -> list[str]:
    found = []
    for place in places:
        for own, listed in ACCEPTED.get(place, {}).items():
            first, *more = own.split(", ")
            says = dict(one.split(": ") for one in more)
            if first == value and all(part.get(name) == its for name, its in says.items()):
                found += [*words(listed)]
    # a kind may take the word in a sense of its own
    return [word for word in found if meaning(places[0], word)[:1] in ((), (value,))]


def names(place: str, field: str, fields: list[str]) -> list[str]:
    found = []
    for word in words(ACCEPTED["field"].get(field, "")):
        special = [one for one in meaning(place, word) if one in fields]
        meant = special or [one for one in meaning("field", word) if one in fields]
        if meant == [field] and close(word) not in map(close, fields):
            found.append(word)
    return found


def findings(result: PlanResult) -> Any:
    assert not result.failures
    remarks = [(one.rule, one.level, one.parts, one.place.line) for one in result.remarks]
    still = [(one.rule, one.parts) for one in result.unjudged]
    sizes = {name: (q.middle, q.worst.low, q.worst.high) for name, q in result.quantities.items()}
    return result.readable, remarks, len(result.held), still, sizes


PLANS = [path.read_text(encoding="utf-8") for path in sorted(SAMPLES.glob("*.yaml"))]
PLANS = [text for text in PLANS if "\nplan: 1" in text and "\ndrawer:" not in text]


@pytest.mark.parametrize("text", [*PLANS, *seeded(6)])
def test_a_plan_in_words_of_the_trade_gives_the_same_findings(text: str, installed: Host) -> None:
    checker = Checker(installed, quantities=True, trials=0)
    own = findings(checker.check_text(text))
    for turn in range(2):
        other = disguised(text, turn)
        assert other != text
        assert findings(checker.check_text(other)) == own


def test_the_metal_of_the_plan_is_that_of_findings_that_state_none() -> None:
    parts = {
        "cap": {"kind": "end cap", "bore": "8 mm"},
        "hook": {"kind": "ear wire", "metal": "niobium"},
        "shell": {"kind": "pendant"},
        "rope": {"kind": "woven rope"},
    }
    found, told = read({"metal": "925", "parts": parts})
    assert not told
    metals = {name: part.get("metal") for name, part in found["parts"].items()}
    assert metals == {"cap": "sterling silver", "hook": "niobium", "shell": None, "rope": None}


BASE = (ROOT / "tests" / "checker" / "reading" / "slips" / "base.yaml").read_text(encoding="utf-8")
TAKEN = yaml.safe_load(Path(__file__).with_name("taken.yaml").read_text(encoding="utf-8"))


@pytest.fixture(scope="module")
def quick(installed: Host) -> Checker:
    """A checker that tries no remedy."""
    return Checker(installed, trials=0)


@pytest.fixture(scope="module")
def of_base(quick: Checker) -> Any:
    return findings(quick.check_text(BASE))


@pytest.mark.parametrize("change", TAKEN, ids=str)
def test_what_is_taken_as_written(change: Mapping[str, str], quick: Checker, of_base: Any) -> None:
    assert findings(quick.check_text(changed(BASE, change))) == of_base


PLAN = """\
plan: 1
title: Jetty
piece: necklace
beads: {gull: {type: round, size: 8/0, make: Japanese}}
parts:
  tip: {kind: %s}
  strand: {kind: strand, stitch: strung, beads: gull, length: 40 cm}
run: [tip, strand]
"""


@pytest.mark.parametrize(
    ("part", "says"),
    [
        pytest.param(
            "lobster clasp, type: toggle",
            "`lobster clasp` says `type: lobster`, and `toggle` stands in `type`: correct one of"
            " them",
            id="two words that contradict each other",
        ),
        pytest.param(
            "clamshell, inside: 3 mm, weight: 1 g, mass: 2 g",
            "`tip` has `weight` and `mass`, which mean the same: keep one",
            id="a field twice, by two names",
        ),
        pytest.param(
            "calotte, diameter: 4 mm",
            "`diameter` of `tip` has more than one meaning: write `inside` or `outside`",
            id="a field that may be one of two",
        ),
        pytest.param(
            "cap",
            "`tip` is `cap`, which has more than one meaning: write `end cap` for a cup that takes"
            " the end of a rope, `cone` for one that several ends go into, or `type: other` under"
            " `beads` for a dish that sits over a bead",
            id="a kind with several meanings",
        ),
        pytest.param(
            "bead cap",
            "`tip` is `bead cap`, which a plan cannot describe yet: write it under `beads`, with a"
            " name of your own, and name it where it is strung, with `type: bead cap`",
            id="a kind that there is not",
        ),
        pytest.param(
            "calote",
            "`tip` is `calote`, which is not known: write `calotte`",
            id="a slip of a word of the trade",
        ),
    ],
)
def test_what_is_said_of_a_word(checker: Checker, part: str, says: str) -> None:
    remarks = checker.check_text(PLAN % part).remarks
    assert [one.says[: len(says)] for one in remarks if one.place.line == 6] == [says]


def test_the_author_reads_his_own_word(checker: Checker) -> None:
    hook = "calotte, inside: 3 mm}\n  hook: {kind: shepherd's hook, gauge: 20 AWG"
    plan = PLAN.replace("run: [tip, strand]", "run: [strand]\nwork: [{do: crimp, part: hook}]")
    found = checker.check_text(plan % hook)
    assert "`hook` is a shepherd's hook" in found.remarks[0].says


TRANSCRIPTS = yaml.safe_load(
    Path(__file__).with_name("transcripts.yaml").read_text(encoding="utf-8")
)
#: words that stand in phrases -> a plan that says them
IN_A_PHRASE = {
    "bead": "beads: {{x: {}}}\n",
    "thread": "parts: {{x: {{kind: strand, thread: {}}}}}\n",
}


def standing_of(place: str, word: str) -> str:
    """Whether a word is taken as written, asked about or answered where it stands."""
    if place == "length":
        return "taken" if units.length(word).value else ""
    if place in IN_A_PHRASE:
        plan = parser.read_text(IN_A_PHRASE[place].format(word), "plan.yaml")
        return "" if spelled_out(plan, KINDS, STITCHES)[1] else "taken"
    if place == "field":
        fields = {field for schema in KINDS.values() for field in schema["properties"]}
        return "taken" if fields_meant(word, fields) else ""
    known = {*ACCEPTED.get(place, ()), *KINDS, *tables.load("metals").rows}
    if said(place, word) is not None or word in known:
        return "taken"
    found = answer(place, word)
    return "" if found is None else "asked" if found[1] else "answered"


@pytest.mark.parametrize("one", TRANSCRIPTS, ids=lambda one: one["text"][:30])
def test_what_people_say_of_their_pieces_is_covered(one: Mapping[str, Any]) -> None:
    assert len(TRANSCRIPTS) == 10
    for standing in ("words", "asked", "answered"):
        for place, its in one.get(standing, {}).items():
            for word in its:
                expected = "taken" if standing == "words" else standing
                assert standing_of(place, word) == expected, (place, word)


def test_a_group_of_beads_that_repeats_is_written_out(checker: Checker) -> None:
    plan = PLAN.replace("run: [tip, strand]", "run: [strand]") % "calotte, inside: 3 mm"
    bare = "beads: gull, length: 40 cm"

    def strung(beads: str) -> PlanResult:
        return checker.check_text(plan.replace(bare, f"beads: {beads}, repeats: 1"))

    written_out = strung(f"[{', '.join(['gull'] * 61)}]")
    assert findings(strung("[{repeat: 30, of: [gull, gull]}, gull]")) == findings(written_out)
    wrong = strung("[{repeat: 0, of: [gull]}, {of: [gull]}]").remarks
    assert {one.rule for one in wrong} == {"plan-shape"}
    for alone in ("{repeat: 61, of: [gull]}", "{repeat: 61, of: gull}"):
        read = checker.check_text(plan.replace(bare, f"beads: {alone}"))
        assert findings(read) == findings(written_out)
    assert strung("{repeat: 1, of: [gull]}").readable
    for group in ("repeat: many, of: [gull]", "repeat: 0, of: gull", "repeat: 20000, of: gull"):
        for beads in (f"{{{group}}}", f"[{{{group}}}]"):
            [slip] = strung(beads).remarks
            assert slip.says.startswith("`repeat` of entry 1 of `beads`")


@pytest.mark.parametrize(
    ("most", "more"),
    [
        ("{repeat: 5000, of: [gull, gull]}", "{repeat: 5001, of: [gull, gull]}"),
        ("[{repeat: 9999, of: [gull]}, gull]", "[{repeat: 9999, of: [gull]}, gull, gull]"),
        ("{mirror: [4999 gull, gull]}", "{mirror: [5000 gull, gull]}"),
    ],
)
def test_more_beads_than_are_strung_in_one_list_are_refused(
    checker: Checker, most: str, more: str
) -> None:
    plan = PLAN.replace("run: [tip, strand]", "run: [strand]") % "calotte, inside: 3 mm"
    bare = "beads: gull, length: 40 cm"
    assert checker.check_text(plan.replace(bare, f"beads: {most}, length: 40 cm")).readable
    [slip] = checker.check_text(plan.replace(bare, f"beads: {more}, length: 40 cm")).remarks
    assert slip.says == (
        "`beads` of `strand` comes to more beads than can be checked (10,000 in a list, 100,000 in"
        " a plan): write its group once, and the `length` of `strand`"
    )


def test_a_thread_whose_words_are_refused_is_one_slip(checker: Checker) -> None:
    plan = PLAN.replace("{kind: %s}", "6 lb fused line, smoke, tail 15 cm")
    named = plan.replace("length: 40 cm", 'length: 40 cm, thread: "tip, tail 15 cm"')
    assert [one.says for one in checker.check_text(named).remarks] == [
        "`tip` says `15 cm`: a spool has no tail and no turns: write them in the `thread` of what"
        " it makes"
    ]


SAID = yaml.safe_load(Path(__file__).with_name("plans_in_words.yaml").read_text(encoding="utf-8"))


@pytest.mark.parametrize("plan", SAID, ids=lambda plan: plan["plan"].split("\n")[1])
def test_a_plan_as_a_beader_writes_it_is_read_or_asked_about(
    plan: Mapping[str, Any], checker: Checker
) -> None:
    result = checker.check_text(plan["plan"])
    slips = [one.found or one.says for one in result.remarks if one.level == "slip"]
    assert slips == plan.get("asked", [])


ONE_OF_EACH = """\
plan: 1
title: Lamp
piece: pendant
beads: {kelp: 11/0 round Japanese}
parts:
  bezel: {kind: bezel, stone: {outside: 20 mm}, beads: #kelp#, stitch: tubular peyote, around: 46}
  cap: {kind: end cap, bore: 8 mm, depth: 5 mm, states: #nickel free#}
  charm: {kind: pendant, top_eyes: {count: 3, hole: 2 mm, wire: 1 mm}}
  ring: 5 mm jump ring 18 AWG, open
  chain: {kind: chain, pattern: #loop#, links_are: open,
    links: {loop: {length: 5 mm, width: 4 mm, wire: 1 mm}}}
run: #bezel#
hung: [{part: ring, from: {part: charm, eyes: top}, at: #2#}]
work: #weave bezel#
class: {length: 2 h, bring: #needle#}
"""


def test_one_name_is_a_list_of_it(checker: Checker) -> None:
    """Each field by itself says what it says as a list, and is none for words with a comma."""
    listed = [scrap for scrap in ONE_OF_EACH.split("#")[1::2]]
    whole = re.sub("#([^#]*)#", r"[\1]", ONE_OF_EACH)
    expected = [remark.says for remark in checker.check_text(whole).remarks]
    assert checker.check_text(whole).readable and len(listed) == 7
    for scrap in listed:
        alone = checker.check_text(whole.replace(f"[{scrap}]", scrap))
        assert alone.readable and [remark.says for remark in alone.remarks] == expected, scrap
    several = checker.check_text(whole.replace("[weave bezel]", "weave bezel, wear"))
    assert [one.says for one in several.remarks] == [
        "`work` is `weave bezel, wear`: write a list, such as `[weave bezel, wear]`"
    ]
