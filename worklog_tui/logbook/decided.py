"""What a person's act does to an item: it wins over everything that was read."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from worklog_tui.logbook.corrections import key_of
from worklog_tui.logbook.matters import Matter, Matters, anchor_text
from worklog_tui.logbook.same_thing import same, thing
from worklog_tui.model import Act, Again, Due, FactKey


def decide(state: Matters, act: Act) -> Matters:
    """The state after the act; one on an anchor that nobody holds makes or keeps the item by hand.

    Values: "close item" {"state": "done" or "left so"}; "set item" {"call": other words, "as": other reason, "state",
    "due"}; "merge items" {"with": anchor}. Each may hold the "about" and "reason" that the item had, by which it is
    found after another reading.
    """
    value = act.value if isinstance(act.value, dict) else {}
    position = holding(state, act.target, value)
    if act.verb == "merge items":
        return _merge(state, position, holding(state, str(value.get("with", "")), {"about": value.get("with_about")}))
    if position is None:
        if not value.get("about"):
            return state
        state = state.add(_made(act, value))
        position = len(state.all) - 1
    old = state.all[position]
    match act.verb:
        case "close item":
            new = replace(old, state=str(value.get("state", "done")), by_hand=True, firm=True)
        case "reopen item":
            again = old.again if old.open else Again("opened by hand", None, "", old.closed)
            new = replace(old, state="open", closed=None, closed_by=None, by_hand=False, firm=True, again=again)
        case _:
            new = _set(old, value)
    return state.put(position, new)


def holding(state: Matters, anchor: str, value: Mapping[str, Any]) -> int | None:
    """The matter that an act means: it holds the anchor, or one on the same words, or is about the same thing."""
    if (found := state.holding(anchor)) is not None:
        if (into := state.all[found].into) is not None:
            return into
        return found
    key = key_of(anchor)
    about = thing(str(value.get("about") or ""))
    for place, matter in enumerate(state.all):
        if matter.into is not None or not about.words or not same(matter.thing, about):
            continue
        if key is None or (key.kind == "comment" and matter.comment is not None):
            return place
        if any(one.note == key.note for one in matter.anchors):
            return place
    if key is None or key.kind in ("act", "comment"):
        return None
    return next((n for n, m in enumerate(state.all) if any(_overlap(one, key) for one in m.anchors)), None)


def _overlap(one: FactKey, key: FactKey) -> bool:
    return one.note == key.note and one.kind == key.kind and one.start < key.end and key.start < one.end


def _set(old: Matter, value: Mapping[str, Any]) -> Matter:
    about = str(value.get("call", old.about))
    same_thing = thing(about, old.thing.name) if about != old.about else old.thing
    due = Due(**value["due"]) if isinstance(value.get("due"), dict) else (None if "due" in value else old.due)
    return replace(
        old, about=about, thing=same_thing, reason=str(value.get("as", old.reason)),
        state=str(value.get("state", old.state)), due=due, firm=True,
    )  # fmt: skip


def _made(act: Act, value: Mapping[str, Any]) -> Matter:
    about = str(value["about"])
    quote = str(value.get("quote", ""))
    return Matter(thing(about), about, str(value.get("reason", "to do")), (_anchor(act.target),), None, quote=quote)


def _anchor(text: str) -> FactKey:
    return key_of(text) or FactKey(text, "act", 0, 0)


def _merge(state: Matters, into: int | None, other: int | None) -> Matters:
    if into is None or other is None or into == other:
        return state
    first, second = sorted((into, other))
    kept, gone = state.all[first], state.all[second]
    merged = replace(
        kept, anchors=(*kept.anchors, *gone.anchors), people=kept.people + gone.people, firm=kept.firm or gone.firm
    )
    return state.put(first, merged).put(second, replace(gone, anchors=(), state="merged", firm=False, into=first))


def anchor_of(anchors: tuple[FactKey, ...], machine: str, comment: int | None) -> str:
    """How an act names an item: by its first anchor, or by the viewer's comment that raised it."""
    return anchor_text(anchors[0]) if anchors else f"{machine}/comment/{comment or 0}/{comment or 0}/0"
