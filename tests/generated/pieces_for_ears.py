"""Earrings: on wires and posts, with panels, pins, bezels, chain and drops."""

from __future__ import annotations

from typing import Any

from generated import chains, ears, findings, hangers, strung, woven
from generated.draft import Draft


def earrings(draft: Draft) -> None:
    """A pair of earrings."""
    wire = ears.ear_post(draft) if draft.chance(45) else ears.ear_wire(draft)
    way = draft.pick("panel", "pin", "charm", "chain", "bezel", "drops")
    {"panel": _panel, "pin": _pin, "charm": _charm, "chain": _chain, "bezel": _bezel,
     "drops": _drops}[way](draft, wire)  # fmt: skip
    draft.head["piece"] = "earrings"
    if draft.chance(88):
        draft.head["makes"] = 2
    draft.maybe(75, draft.head, wearer={"age": draft.pick("adult", "adult", "adult", "child")})


def _held(draft: Draft, wire: str, *more: Any) -> None:
    draft.run = [wire, *more]


def _panel(draft: Draft, wire: str) -> None:
    panel = woven.panel(draft, draft.whole(5, 12))
    draft.step("make", "weave", panel.name)
    draft.step("finish", "finish thread", panel.name)
    fields, size = draft.parts[panel.name], (2.4, 3.2)
    onto = fields["stitch"] == "brick" and draft.chance(50)
    if onto:
        size = (1.25 * panel.width / 3.14, 2.0 * panel.width / 3.14)
    shut = findings.ring(draft, inside=size, closing=draft.pick("soldered", "closed"))
    _held(draft, wire, shut.name, panel.name)
    if onto:
        fields["started_on"] = shut.name
    else:
        draft.step("sew", "sew", shut.name, to=panel.name)
    draft.step("hang", "hang", shut.name, from_=wire)
    if draft.chance(75):
        hangers.fringe(draft, panel.name, "first edge", panel.across, panel.bead)


def _pin(draft: Draft, wire: str) -> None:
    if draft.chance(20):
        _held(draft, wire, strung.wrapped_drop(draft))
        return
    pin = strung.wire_link(draft, draft.pick("head pin", "eye pin"))
    draft.step("wire", "wrap loop", pin.name)
    if draft.chance(50):
        link = strung.wire_link(draft, "link")
        draft.step("wire", "wrap loop", link.name, times=2)
        _held(draft, wire, link.name)
        hangers.hang(draft, pin.name, link.name)
    elif draft.chance(50):
        _held(draft, wire, pin.name)
        draft.step("hang", "hang", pin.name, from_=wire)
    else:
        _held(draft, wire)
        hangers.hang(draft, pin.name, wire)


def _charm(draft: Draft, wire: str) -> None:
    bottom = draft.pick(0, 1, 3, 5)
    charm = findings.pendant(draft, grams=draft.between(1, 6, 0.5), bottom=bottom)
    _held(draft, wire)
    if draft.chance(60):
        ring = findings.ring(draft, inside=(2.6, 3.6))
        hangers.hang(draft, charm.name, wire, ring.name)
    else:
        hangers.hang(draft, charm.name, wire)
    hangers.underneath(draft, charm)


def _chain(draft: Draft, wire: str) -> None:
    piece = chains.piece(draft, draft.between(15, 50, 5))
    chains.cut(draft, piece)
    ring = findings.ring(draft, inside=(3.0, 4.0))
    _held(draft, wire)
    times = draft.pick(1, 1, 1, 3)
    hangers.hang(draft, piece.name, wire, ring.name, times)
    if draft.chance(50):
        charm = findings.pendant(draft, grams=1.0)
        eyes = {"part": piece.name, "eyes": draft.pick("last link", "last link", "first link")}
        hangers.hang(draft, charm.name, eyes, ring.name, times)


def _bezel(draft: Draft, wire: str) -> None:
    setting = woven.bezel(draft, eye=True)
    draft.step("make", "weave", setting.name)
    draft.step("finish", "finish thread", setting.name)
    closing = draft.pick("soldered", "open")
    ring = findings.ring(draft, inside=(3.0, 4.0), closing=closing)
    _held(draft, wire, ring.name, setting.name)
    draft.step("sew", "sew", ring.name, to=setting.name)
    if closing == "open":
        draft.step("close", "close ring", ring.name)
    else:
        draft.step("hang", "hang", ring.name, from_=wire)


def _drops(draft: Draft, wire: str) -> None:
    drop = strung.drop(draft, legs=draft.pick(0, 3))
    closing = "open" if draft.chance(20) else draft.pick("closed", "soldered")
    shut = findings.ring(draft, inside=(3.0, 5.0), closing=closing)
    _held(draft, wire, shut.name)
    draft.step("hang", "hang", shut.name, from_=wire)
    if closing == "open":
        draft.step("close", "close ring", shut.name)
    times = drop.listed or draft.pick(1, 2, 3)
    hangers.hang(draft, drop.name, shut.name, "thread", times, stage="fringe", passes=2)


ALL = (earrings, earrings, earrings, earrings)
