"""What beads, thread and findings are sold in, beside their weight: the words of shops.

Common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from wellstrung.common.patterns import Pattern

#: a word of a shop -> what a line of supplies is `sold_as`
SOLD_AS: Mapping[str, str] = {
    word: name
    for name, words in {
        "pack": "pack, packet, packs, packets",
        "tube": "tube, tubes, vial, vials",
        "hank": "hank, hanks, half hank, half hanks",
        "strand": "strand, strands, string, strings",
        "loop": "loop, loops",
        "spool": "spool, spools, reel, reels, bobbin, bobbins",
        "card": "card, cards",
        "bag": "bag, bags",
        "box": "box, boxes",
        "bottle": "bottle, bottles",
    }.items()
    for word in words.split(", ")
}
#: what beads come strung in, and are counted by their length
STRUNG = frozenset({"hank", "strand", "loop"})
_COUNTED = "count|ct|pcs?|pieces?|beads?|pairs?|dozen|gross"
_SAID = Pattern(rf"\b(?:{'|'.join(SOLD_AS)}|{_COUNTED})\b", re.IGNORECASE)


def in_words(value: object) -> bool:
    """Whether a pack uses the words of a shop, more than a weight.

    >>> in_words("half hank"), in_words("100 count"), in_words("7.2 g")
    (True, True, False)
    """
    return isinstance(value, str) and bool(_SAID.search(value))
