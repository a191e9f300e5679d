"""Beads in the colours of their plan, told apart on a grey printer, with a key."""

from __future__ import annotations

import re
from itertools import product
from pathlib import Path

import pytest
import yaml

from pages import bounds, checked, keeper, looks, parsed, words_of
from running import SAMPLES
from wellstrung.drawing import canvas, colours, key
from wellstrung.drawing.looks import tones
from wellstrung.drawing.looks.sizes import Sizes
from wellstrung.drawing.piece import drawings
from wellstrung.drawing.sections import sections

HERE = Path(__file__).parents[1]
SHEETS = Path(canvas.__file__).parent
WORDS = yaml.safe_load((HERE / "short_forms" / "beads.yaml").read_text(encoding="utf-8"))["colours"]
#: what is said of a colour or of a finish, and no colour of its own
FINISHES = """
matte matt satin frosted glossy gloss lustre luster lined dyed rainbow iris opaque metallic
galvanised galvanized ceylon pearly vitrail aurora antique swirl dark light pale deep bright
medium mottled striped speckled shimmer sparkle foil faceted assorted mixed mix spring autumn
winter summer cool warm dawn dusk glass woody stony wool
"""
PLAN = """
plan: 1
title: Ten beads
piece: bracelet
beads:
{beads}
parts:
  row: {{kind: strand, stitch: strung, beads: [{names}], count: {count}}}
run: [row]
"""
SAID = ["black", "white", "jet", "signal red", '"#2e6b4f"', "navy", "", "pale blue", "hollow", ""]


def plan(said: list[str] = SAID) -> str:
    """A strand of beads of these colours, one of each."""
    names = [f"bead{number}" for number in range(len(said))]
    beads = "\n".join(
        f"  {name}: {{type: round, size: 8/0, make: Japanese{f', colour: {one}' if one else ''}}}"
        for name, one in zip(names, said, strict=True)
    )
    return PLAN.format(beads=beads, names=", ".join(names), count=len(said))


def sizes(text: str) -> Sizes:
    result = keeper().check_text(text)
    assert result.ask is not None, [remark.says for remark in result.remarks]
    return Sizes(result.ask)


@pytest.mark.parametrize("word", WORDS)
def test_every_colour_word_has_a_figure_and_no_finish_has_one(word: str) -> None:
    assert (colours.colour_of(word) is None) == (word in FINISHES.split())


@pytest.mark.parametrize(
    ("words", "like"),
    [
        ("#2E6B4F", "#2e6b4f"), ("matte #2e6b4f green", "#2e6b4f"), ("#abc", "#aabbcc"),
        ("Reed Green, matte", "green"), ("silver-lined amber", "amber"),
        ("green lined crystal", "green"), ("transparent", "clear"), ("#8", None),
        ("no. 46", None), ("the usual", None),
    ],
)  # fmt: skip
def test_words_name_a_colour(words: str, like: str | None) -> None:
    assert colours.colour_of(words) == (colours.colour_of(like) if like else None)


def test_a_word_shades_the_colour_beside_it() -> None:
    light, plain, dark = (
        colours.luminance(colours.colour_of(words) or "")
        for words in ("pale red", "red", "dark red")
    )
    assert light > plain > dark
    blue, slate = (colours.colour_of(word) or "" for word in ("blue", "slate"))
    assert colours.colour_of("slate blue") == colours.mixed([(blue, 2 / 3), (slate, 1 / 3)])


def test_beads_are_drawn_in_the_colours_that_the_plan_gives_else_in_grey() -> None:
    figure = drawings(keeper().check_text(plan()))[-1]
    styles = [bead.get("style", "") for bead in looks(parsed(figure.svg), "bead")][: len(SAID)]
    fills = [style.removeprefix("fill:") for style in styles]
    wanted = [colours.colour_of(said) for said in SAID]
    assert [fill for fill, own in zip(fills, wanted, strict=True) if own] == [
        o for o in wanted if o
    ]
    assert all(len({fill[n : n + 2] for n in (1, 3, 5)}) == 1 for fill in (fills[6], fills[8]))


def test_beads_too_small_to_see_have_their_colours_mixed_by_how_many_there_are() -> None:
    band = "kind: woven band, stitch: square, across: 4, beads: [bead0, bead0, bead0, bead1], rows:"
    strand = "kind: strand, stitch: strung, beads: [bead0, bead1], count:"
    text = plan(["red", "blue"])
    assert strand in text
    tree = parsed(drawings(keeper().check_text(text.replace(strand, band)))[0].svg)
    red, blue = (colours.colour_of(word) or "" for word in ("red", "blue"))
    [cloth] = looks(tree, "cloth")
    assert cloth.get("style") == f"fill:{colours.mixed([(red, 3), (blue, 1)])}"


def test_the_key_names_each_bead_that_is_drawn() -> None:
    tree = parsed(drawings(keeper().check_text(plan()))[-1].svg)
    words = [said for said, _ in words_of(tree)]
    for said in ("bead0: black", "bead4: #2e6b4f", "bead6, in grey: no colour given"):
        assert said in words
    assert "bead8: hollow, in grey" in words
    assert len(looks(tree, "bead")) == 2 * len(SAID)  # each once in the strand, once in the key


def test_a_fit_in_the_hole_of_a_bead_shows_its_colour_and_has_a_key() -> None:
    result = checked(SAMPLES / "quay_lamp_necklace.yaml")
    figures = [one for one in sections(result) if "in bead `flame`" in one.title]
    assert figures
    for figure in figures:
        tree = parsed(figure.svg)
        flame = f"fill:{colours.colour_of('lamp flame')}"
        rims = [one for one in looks(tree, "b3") if one.tag.endswith("path")]
        assert rims and all(one.get("style") == flame for one in rims)
        assert "flame: lamp flame" in [words for words, _ in words_of(tree)]


def test_the_key_lists_what_is_drawn_and_no_other_bead() -> None:
    unused = plan().replace("[bead0, ", "[").replace("count: 10", "count: 9")
    of = sizes(unused)
    everything = [entry.name for entry in key.entries(of)]
    assert everything == [f"bead{number}" for number in range(10)]
    words = [said for said, _ in words_of(parsed(drawings(keeper().check_text(unused))[-1].svg))]
    assert "bead1: white" in words and "bead0: black" not in words


def test_a_long_palette_is_summed_up() -> None:
    tree = parsed(drawings(keeper().check_text(plan(["red", "blue"] * 50)))[0].svg)
    assert "and 76 more beads" in [said for said, _ in words_of(tree)]


def test_no_two_beads_of_a_palette_are_marked_alike() -> None:
    """Greys and grains come round at different times: 56 beads without a colour differ."""
    pairs = {(tones.grey_of(number), tones.grain_of(number)) for number in range(56)}
    assert len(pairs) == 56


def test_a_grain_lies_on_its_bead_and_stands_out_from_it() -> None:
    tree = parsed(drawings(keeper().check_text(plan()))[-1].svg)
    beads = [bounds(bead) for bead in looks(tree, "bead")]
    grains = looks(tree, "grain")
    # the first bead is plain, and the ninth, for there are eight grains
    assert len(grains) == 2 * (len(SAID) - 2)
    for grain in grains:
        box = bounds(grain)
        assert any(
            bead.left <= box.left <= box.right <= bead.right
            and bead.top <= box.top <= box.bottom <= bead.bottom
            for bead in beads
        )


def test_a_grain_is_light_on_a_dark_bead_and_dark_on_a_light_one() -> None:
    tree = parsed(drawings(keeper().check_text(plan(["red", "white", "navy"])))[-1].svg)
    inks = [one.get("class", "").split()[-1] for one in looks(tree, "grain")]
    assert inks == ["dark", "light"] * 2  # in the strand, then in the key


def test_a_grain_stands_out_from_any_colour() -> None:
    known = [colours.colour_of(word) for word in WORDS]
    for colour in (*tones.GREYS, *(one for one in known if one)):
        assert max(colours.contrast(colour, ink) for ink in ("#000000", "#ffffff")) >= 3


def of_modes(name: str) -> list[str]:
    """The values of a colour in light, in dark and in print."""
    css = "".join((SHEETS / sheet).read_text("utf-8") for sheet in ("drawing.css", "piece.css"))
    found = re.findall(rf"--{name}: (#[0-9a-f]+);", css)
    return [one if len(one) == 7 else "#" + "".join(2 * n for n in one[1:]) for one in found]


def test_the_outline_of_a_bead_stands_out_from_the_page_in_light_dark_and_print() -> None:
    css = (SHEETS / "piece.css").read_text(encoding="utf-8")
    assert re.search(r"\.piece \.bead \{ stroke: var\(--ink\)", css)
    for name in ("paper", "cloth", "metal"):
        modes = list(zip(of_modes("ink"), of_modes(name), strict=True))
        assert len(modes) == 3
        assert all(colours.contrast(ink, ground) >= 3 for ink, ground in modes), name


@pytest.mark.parametrize(
    ("said", "loses"),
    [("8/0 round Japanese, #a1b2c3", True), ("8/0 round Japanese, #ffaabb", True),
     ("'8/0 round Japanese, #ffaabb'", False), ("8/0 round Japanese # for the edge", False)],
)  # fmt: skip
def test_a_figure_after_a_comment_sign_is_not_lost_in_silence(said: str, loses: bool) -> None:
    text = plan(["red"]).replace("{type: round, size: 8/0, make: Japanese, colour: red}", said)
    says = [remark.says for remark in keeper().check_text(text).remarks]
    assert any("starts a comment" in one for one in says) == loses


def test_a_colour_written_without_quotes_is_answered() -> None:
    for figure, ended in product(("#ffaabb", "#2e6b4f"), ("}", ", finish: matte}")):
        text = plan(["red"]).replace("colour: red}", f"colour: {figure}{ended}")
        (slip,) = keeper().check_text(text).remarks
        assert f'put the text in quotes, "{figure}"' in slip.says
