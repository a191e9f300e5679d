"""Every page in a real browser: quiet, off the network, whole on paper and on a phone, readable."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import cycle
from pathlib import Path
from typing import Any

import pytest
from msgspec.structs import replace
from playwright.sync_api import Browser

from browser import PIXELS, Watched, started
from pages import ALL, checked
from reports import report
from running import middle_of
from turns import some
from wellstrung.judging.result import Result
from wellstrung.judging.since import since
from wellstrung.report.pages import folder, sheet
from wellstrung.report.pages.steps import steps

pytestmark = pytest.mark.slow

#: plans whose instructions are looked at as well: one as it should be, and one to fix
STEPS = [path for path in ALL if path.stem in ("slack_tide_collar", "lantern_collar")]
#: a row of tests for each page
NAMES = [
    "index", "since", *(path.stem for path in ALL), *(f"{path.stem}-steps" for path in STEPS)
]  # fmt: skip
#: least contrast of words by WCAG 2.2, 1.4.3
CONTRAST = 4.5
#: width between the margins of each paper, mm
PAPERS = {"A4": 180.0, "Letter": 185.9}


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    with started() as found:
        yield found


@pytest.fixture(scope="module")
def home(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the pages of all samples."""
    home = tmp_path_factory.mktemp("pages")
    for name, page in folder(Result(tuple(map(checked, ALL)))).items():
        (home / name).write_text(page, encoding="utf-8")
    right, wrong = (checked(path) for path in sorted(STEPS, reverse=True))
    later = replace(right, since=since(wrong, right))
    (home / "since.html").write_text(sheet(later), encoding="utf-8")
    for path in STEPS:
        (home / f"{path.stem}-steps.html").write_text(steps(checked(path)), encoding="utf-8")
    return home


@pytest.fixture
def opened(browser: Browser, home: Path, request: pytest.FixtureRequest) -> Iterator[Watched]:
    context = browser.new_context(**getattr(request, "param", {}))
    watched = Watched(context.new_page())
    yield watched
    context.close()


def go(opened: Watched, home: Path, name: str) -> str:
    url = (home / f"{name}.html").as_uri()
    opened.page.goto(url, wait_until="load")
    return url


@pytest.mark.parametrize("name", some(NAMES, 4))
def test_a_page_asks_nothing_of_the_network_and_has_nothing_to_complain_of(
    name: str, opened: Watched, home: Path
) -> None:
    url = go(opened, home, name)
    assert opened.asked == [url] and opened.said == []
    assert opened.page.title()


@pytest.mark.parametrize("name", some(NAMES, 4, 1))
@pytest.mark.parametrize("opened", [{"viewport": {"width": 360, "height": 740}}], indirect=True)
def test_nothing_sticks_out_on_a_phone(name: str, opened: Watched, home: Path) -> None:
    """Drawings and wide tables may be moved in a frame of their own; the page itself never."""
    go(opened, home, name)
    assert opened.page.evaluate("document.scrollingElement.scrollWidth") <= 360
    assert opened.page.evaluate(STICKING_OUT, "div.drawn, div.wide") == []
    # a frame that moves can be reached by key and has a name
    assert opened.page.evaluate(UNREACHABLE) == 0


@pytest.mark.parametrize(("name", "paper"), list(zip(some(NAMES, 4, 2), cycle(PAPERS))), ids=str)
def test_a_page_prints_without_being_cut_off(
    name: str, paper: str, opened: Watched, home: Path
) -> None:
    go(opened, home, name)
    opened.page.emulate_media(media="print")
    opened.page.set_viewport_size({"width": int(PAPERS[paper] * PIXELS), "height": 900})
    assert opened.page.evaluate(STICKING_OUT, "nothing") == []
    printed = opened.page.pdf(format=paper, print_background=False)
    sizes = re.findall(rb"/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]", printed)
    wide = {"A4": 595, "Letter": 612}[paper]
    assert 1 <= len(sizes) <= 20 and all(
        round(float(width)) in (wide, wide + 1) for width, _ in sizes
    )
    assert opened.page.evaluate(TALLEST) <= 250 * PIXELS


@pytest.mark.parametrize("name", some(NAMES, 6))
@pytest.mark.parametrize(
    "opened",
    [{"color_scheme": "light"}, {"color_scheme": "dark"}],
    indirect=True,
    ids=["light", "dark"],
)
def test_words_stand_out_from_what_is_behind_them(name: str, opened: Watched, home: Path) -> None:
    go(opened, home, name)
    found: list[dict[str, Any]] = opened.page.evaluate(WORDS)
    assert len(found) > 20
    assert [one for one in found if one["contrast"] < CONTRAST] == []


def test_light_and_dark_differ(opened: Watched, home: Path) -> None:
    grounds = []
    for scheme in ("light", "dark"):
        opened.page.emulate_media(color_scheme=scheme)
        go(opened, home, "index")
        grounds.append(opened.page.evaluate("getComputedStyle(document.body).backgroundColor"))
    assert grounds[0] != grounds[1]


@pytest.mark.parametrize("path", some(ALL, 3), ids=lambda path: path.stem)
def test_drawn_shapes_are_as_large_as_the_report_says(
    path: Path, opened: Watched, home: Path
) -> None:
    """What the browser draws, measured, is the report's millimetres times the stated scale."""
    go(opened, home, path.stem)
    [plan] = report(checked(path))["plans"]
    shapes: list[dict[str, Any]] = opened.page.evaluate(SHAPES)
    assert shapes
    for shape in shapes:
        mm = middle_of(plan, shape["quantity"])
        assert shape["pixels"] == pytest.approx(mm * shape["scale"] * PIXELS, rel=2e-3, abs=0.06)


@pytest.mark.parametrize("path", some(ALL, 3, 1), ids=lambda path: path.stem)
def test_numbers_in_a_drawing_are_those_of_the_report(
    path: Path, opened: Watched, home: Path
) -> None:
    go(opened, home, path.stem)
    [plan] = report(checked(path))["plans"]
    values = [middle_of(plan, name) for name in plan["quantities"]]
    said: list[str] = opened.page.evaluate(
        "[...document.querySelectorAll('svg.piece text.label')].map(t => t.textContent)"
    )
    numbers = [float(found) for words in said for found in re.findall(r", ([\d.]+) mm", words)]
    assert numbers
    for number in numbers:
        assert any(value == pytest.approx(number, rel=1e-3, abs=6e-3) for value in values)


@pytest.mark.parametrize("path", some(ALL, 3, 2), ids=lambda path: path.stem)
def test_no_words_of_a_drawing_lie_over_other_words(
    path: Path, opened: Watched, home: Path
) -> None:
    """As the browser's own letters have it."""
    go(opened, home, path.stem)
    assert opened.page.evaluate(OVER_EACH_OTHER) == []


#: elements whose right edge lies beyond the page, but those within a frame that moves, and words
#: that a line of paper cuts
STICKING_OUT = """(frames) => [...document.body.querySelectorAll('*')].filter(e =>
  !e.closest('svg *') && !(e.parentElement && e.parentElement.closest(frames)) &&
  !e.closest('.unseen') && getComputedStyle(e).clipPath === 'none' &&
  !(e.closest('thead') && getComputedStyle(e.closest('thead')).clipPath !== 'none') &&
  !(e.parentElement && getComputedStyle(e.parentElement).textOverflow === 'ellipsis') &&
  e.getBoundingClientRect().right > document.documentElement.clientWidth + 1
).map(e => e.tagName + '.' + e.className + ' ' + e.getBoundingClientRect().right)"""

#: frames that move and have no name, or cannot be reached by key
UNREACHABLE = """[...document.querySelectorAll('div.drawn, div.wide')].filter(
  e => e.tabIndex !== 0 || !e.ariaLabel).length"""

#: height of the tallest drawing, in pixels
TALLEST = """Math.max(0, ...[...document.querySelectorAll('svg')].map(
  svg => svg.getBoundingClientRect().height))"""

#: every piece of text with its contrast to what is painted behind it
WORDS = """() => {
  const channel = c => { c /= 255; return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4 };
  const light = ([r, g, b]) => 0.2126 * channel(r) + 0.7152 * channel(g) + 0.0722 * channel(b);
  const parse = text => { const n = text.match(/[\\d.]+/g); return n ? n.map(Number) : null };
  const solid = colour => colour && (colour.length < 4 || colour[3] === 1);
  const contrast = (a, b) => {
    const [x, y] = [light(a), light(b)]; return (Math.max(x, y) + 0.05) / (Math.min(x, y) + 0.05) };
  const ground = element => {
    for (let e = element; e; e = e.parentElement) {
      const colour = parse(getComputedStyle(e).backgroundColor);
      if (solid(colour)) return colour;
    }
    return [255, 255, 255];
  };
  const behind = element => {
    const box = element.getBoundingClientRect();
    const at = [box.left + box.width / 2, box.top + box.height / 2];
    for (const e of document.elementsFromPoint(...at)) {
      if (e === element || e.tagName === 'text') continue;
      if (e instanceof SVGGeometryElement) {
        const style = getComputedStyle(e);
        const point = new DOMPoint(...at).matrixTransform(e.getScreenCTM().inverse());
        if (style.fill !== 'none' && e.isPointInFill(point)) return parse(style.fill);
      } else if (!(e instanceof SVGElement) || e.tagName === 'svg') return ground(e);
    }
    return ground(element);
  };
  const found = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walker.nextNode()) {
    const element = walker.currentNode.parentElement;
    if (!walker.currentNode.textContent.trim() || element.closest('.unseen, title, desc')) continue;
    if (!element.getClientRects().length) continue;  // the drawing for other screens
    const inside = element.closest('svg');
    element.scrollIntoView({block: 'center', inline: 'center'});
    const style = getComputedStyle(element);
    const ink = parse(inside ? style.fill : style.color);
    found.push({text: walker.currentNode.textContent.trim().slice(0, 40),
      contrast: contrast(ink, inside ? behind(element) : ground(element))});
  }
  return found;
}"""

#: every shape that draws a quantity: its name, its side in pixels, and the scale of its drawing
SHAPES = """() => [...document.querySelectorAll('svg.piece [data-quantity]')].filter(
  e => e.getClientRects().length).map(e => ({
  quantity: e.dataset.quantity,
  pixels: e.getBoundingClientRect()[e.dataset.side || 'width'],
  scale: Number(e.closest('svg').dataset.scale)}))"""

#: pairs of texts in a drawing whose boxes share more than a pixel
OVER_EACH_OTHER = """() => [...document.querySelectorAll('svg')].flatMap(svg => {
  const texts = [...svg.querySelectorAll('text')].map(
    t => [t.textContent, t.getBoundingClientRect()]);
  const inner = b => ({left: b.left + 1, right: b.right - 1, top: b.top + b.height * 0.2,
    bottom: b.bottom - b.height * 0.2});
  return texts.flatMap(([a, boxA], i) => texts.slice(i + 1).filter(([, boxB]) => {
    const [p, q] = [inner(boxA), inner(boxB)];
    return p.left < q.right && q.left < p.right && p.top < q.bottom && q.top < p.bottom;
  }).map(([b]) => a + ' / ' + b));
})"""


#: the height of the smallest letters of the drawings that are seen, in pixels
LETTERS = """Math.min(...[...document.querySelectorAll('svg text')].filter(
  t => t.getClientRects().length).map(t => {
    const svg = t.closest('svg'), box = svg.getBoundingClientRect();
    return parseFloat(getComputedStyle(t).fontSize) * box.width / svg.viewBox.baseVal.width }))"""


#: how wide and high each shape is that another drawing lends, in pixels
LENT = """[...document.querySelectorAll('svg.narrow use')].map(use => {
  const box = use.getBoundingClientRect(); return [box.width, box.height] })"""


@pytest.mark.parametrize("name", some(NAMES, 4, 3))
@pytest.mark.parametrize("opened", [{"viewport": {"width": 390, "height": 844}}], indirect=True)
def test_the_letters_of_drawings_are_read_on_a_phone(
    name: str, opened: Watched, home: Path
) -> None:
    """And the shapes are there: another drawing of the page lends them."""
    go(opened, home, name)
    assert opened.page.evaluate(LETTERS) >= 11.9
    for width, height in opened.page.evaluate(LENT):
        assert width > 10 and height > 3
