"""The colour of a bead as drawn, from the words of its plan: `#rrggbb`, or colour words.

A word such as `green` names many colours; here it stands for one of them. The figures of the words,
and how far a word such as `pale` shades them, are from memory, no source. How light a colour is and
how far two stand out from each other are the formulas of WCAG 2. Where words name no colour, the
drawing takes a grey.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping

_FIGURE = re.compile(r"#([0-9a-f]{6}|[0-9a-f]{3})(?![0-9a-z])", re.IGNORECASE)
_WORD = re.compile(r"[^\W\d_]+")
#: words by their sRGB figures, from memory, no source
_CALLED: Mapping[str, str] = {
    # white to black
    "ffffff": "white",
    "f7f7f2": "chalk snow",
    "f6f4ee": "pearl milk foam",
    "eef1f2": "ghost frost",
    "e4e6e6": "marble china mist",
    "d9dde0": "platinum",
    "c3c7cb": "silver fog",
    "9a9c9e": "pewter steel stone",
    "808488": "grey gray granite smoke",
    "6b737c": "slate stormy graphite",
    "5a5e63": "gunmetal",
    "464b50": "hematite haematite lead",
    "3a3f44": "charcoal",
    "1b1b1d": "black jet onyx ebony tar ink coal",
    # cream to brown
    "fffff0": "ivory",
    "f5ecd2": "cream vanilla eggshell ecru",
    "efe3cf": "shell",
    "efe0c0": "champagne",
    "e6d8b8": "beige oat",
    "dcc79b": "sand straw",
    "cdb38b": "tan buff",
    "b9a37c": "khaki",
    "c19a6b": "camel cork",
    "a98e6d": "taupe driftwood",
    "9a6b3f": "wood teak",
    "8a5a34": "brown sepia",
    "7a4a2a": "nut walnut smoky",
    "6b432a": "cinnamon tobacco",
    "5a3a26": "chocolate coffee",
    "a0522d": "sienna",
    "8e4a2f": "umber picasso",
    "a9552f": "terracotta brick",
    # yellow to orange
    "fff27a": "lemon citrine",
    "ffe23f": "yellow canary sunflower",
    "f6d34a": "spark straw-yellow",
    "d9a92f": "gold golden",
    "c9a24a": "brass",
    "c99a2c": "mustard ochre",
    "e0a02c": "honey topaz saffron",
    "d98a1f": "amber",
    "b0772f": "bronze",
    "f08a24": "orange tangerine pumpkin",
    "e2622b": "flame sunset",
    "fbc79a": "apricot peach",
    "b8662f": "copper",
    "ad4f24": "rust",
    # pink to red
    "fbdcd9": "blush",
    "f5c3c2": "rose rosy",
    "f4a7b9": "pink",
    "f6907f": "salmon",
    "f1705c": "coral",
    "d9532f": "carnelian vermilion",
    "d7263d": "red scarlet signal poppy",
    "b3162f": "cherry crimson",
    "9e1030": "ruby",
    "7b1230": "garnet burgundy claret oxblood maroon",
    "722f37": "wine",
    "c2185b": "raspberry cerise",
    "8e2150": "berry cranberry",
    "d81b9a": "fuchsia magenta",
    # purple
    "c9a8cf": "mauve orchid",
    "c5b3e0": "lavender",
    "b39ad6": "lilac heather",
    "9966cc": "amethyst",
    "7b3fa0": "violet",
    "6a2c8c": "purple",
    "5b2a4e": "plum aubergine eggplant mulberry",
    # blue
    "cfe3f2": "ice",
    "a9d3ee": "sky",
    "8cb4dc": "cornflower periwinkle",
    "4f8fc6": "azure capri",
    "2f63b5": "blue",
    "1f4fa0": "sapphire cobalt royal ultramarine",
    "3f5f8a": "denim",
    "2f5f8a": "montana",
    "3a3f8f": "indigo lapis",
    "1d2f55": "navy midnight night",
    # blue to green
    "bfe8e6": "aqua aquamarine water",
    "46bfc0": "turquoise",
    "2aa7b5": "cyan",
    "1f7f86": "teal peacock",
    "0f5f66": "petrol lagoon",
    # green
    "bfe8cf": "mint celadon",
    "8fbf9f": "jade verdigris",
    "9fb59a": "sage",
    "b8d84a": "lime chartreuse",
    "a3bf4f": "peridot",
    "7a8f3f": "moss",
    "6f7330": "olive",
    "3f8f4f": "green grass weed",
    "1f8a5a": "emerald malachite",
    "2f5f3f": "forest kelp bottle pine",
    # shown as they look over white
    "e9eef0": "clear crystal transparent",
    "e8e6ee": "opal moonstone",
}
_WORDS = {word: figure for figure, words in _CALLED.items() for word in words.split()}
#: clear beads show what lies behind them: these words count where no other colour is named
_SEEN_THROUGH = frozenset(
    {"clear", "crystal", "transparent", "opal", "moonstone", "ghost", "frost"}
)
#: how near to white or to black a word takes the colour beside it: from memory, no source
_LIGHTER = {"pale": 0.45, "light": 0.35, "soft": 0.25, "baby": 0.4, "pastel": 0.5}
_DARKER = {"dark": 0.35, "deep": 0.25, "old": 0.15, "antique": 0.15}

Rgb = tuple[int, int, int]


def colour_of(words: str) -> str | None:
    """The colour that words name, as `#rrggbb`; None where they name none.

    A figure counts before words. Of several words the last names the colour, and the word just
    before shades it by a third, as in `slate blue`: our own choice. A clear bead has the colour of
    its lining.

    >>> colour_of("#2E6B4F"), colour_of("matte signal red"), colour_of("harbour light")
    ('#2e6b4f', '#d7263d', None)
    >>> colour_of("red-lined clear") == colour_of("red"), colour_of("pale blue")
    (True, '#8da9d6')
    """
    written = _FIGURE.search(words)
    if written:
        digits = written[1].lower()
        return f"#{digits if len(digits) == 6 else ''.join(2 * one for one in digits)}"
    said = [word.casefold() for word in _WORD.findall(words)]
    known = [word for word in said if word in _WORDS]
    named = [word for word in known if word not in _SEEN_THROUGH] or known
    if not named:
        return None
    colour = f"#{_WORDS[named[-1]]}"
    if len(named) > 1 and said.index(named[-2]) + 1 == said.index(named[-1]):
        colour = mixed([(colour, 2), (_WORDS[named[-2]], 1)])
    for shades, end in ((_LIGHTER, "#ffffff"), (_DARKER, "#000000")):
        for word in said:
            share = shades.get(word, 0.0)
            colour = mixed([(colour, 1 - share), (end, share)])
    return colour


def rgb(figure: str) -> Rgb:
    """Red, green and blue of a figure with or without its #."""
    digits = figure.removeprefix("#")
    return int(digits[:2], 16), int(digits[2:4], 16), int(digits[4:], 16)


def mixed(colours: Iterable[tuple[str, float]]) -> str:
    """The colour that several have from afar, each by its share.

    >>> mixed([("#ff0000", 1), ("#0000ff", 3)])
    '#4000bf'
    """
    shares = [(rgb(colour), share) for colour, share in colours]
    whole = sum(share for _, share in shares)
    parts = (sum(one[n] * share for one, share in shares) / whole for n in range(3))
    return "#" + "".join(f"{round(part):02x}" for part in parts)


def luminance(figure: str) -> float:
    """How light a colour is, from 0 to 1: the relative luminance of WCAG 2.

    >>> luminance("#ffffff"), luminance("#000000"), round(luminance("#808080"), 3)
    (1.0, 0.0, 0.216)
    """
    linear = [
        one / 12.92 if one <= 0.04045 else ((one + 0.055) / 1.055) ** 2.4
        for one in (part / 255 for part in rgb(figure))
    ]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    """How far two colours stand out from each other, from 1 to 21: the contrast of WCAG 2.

    >>> round(contrast("#ffffff", "#000000"), 1)
    21.0
    """
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)
