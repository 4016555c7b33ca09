"""What a person's act does to an item: it wins over everything that was read."""

from __future__ import annotations

from dataclasses import replace

from worklog_tui.logbook.matters import Matter, Matters
from worklog_tui.logbook.same_thing import thing
from worklog_tui.model import Act, FactKey


def decide(state: Matters, act: Act) -> Matters:
    """The state after the act; one on an anchor that nobody holds makes or keeps the item by hand.

    Values: "close item" {"state": "done" or "left so"}; "set item" {"about", "reason", "state"}; "merge items" {"with":
    anchor}.
    """
    position = state.holding(act.target)
    value = act.value if isinstance(act.value, dict) else {}
    if act.verb == "merge items":
        return _merge(state, position, state.holding(str(value.get("with", ""))))
    if position is None:
        return state if act.verb != "set item" or not value.get("about") else state.add(_made(act, value))
    old = state.all[position]
    match act.verb:
        case "close item":
            new = replace(old, state=str(value.get("state", "done")), by_hand=True, firm=True)
        case "reopen item":
            new = replace(old, state="open", closed=None, closed_by=None, by_hand=True, firm=True)
        case _:
            about = str(value.get("about", old.about))
            same = thing(about, old.thing.name) if about != old.about else old.thing
            reason, status = str(value.get("reason", old.reason)), str(value.get("state", old.state))
            new = replace(old, about=about, thing=same, reason=reason, state=status, firm=True)
    return state.put(position, new)


def _made(act: Act, value: dict[str, object]) -> Matter:
    about = str(value["about"])
    return Matter(thing(about), about, str(value.get("reason", "to do")), (_anchor(act.target),), None,
                  state=str(value.get("state", "open")))  # fmt: skip


def _anchor(text: str) -> FactKey:
    parts = text.rsplit("/", 4)
    if len(parts) == 5 and all(p.isdigit() for p in parts[2:]):
        return FactKey(parts[0], parts[1], int(parts[2]), int(parts[3]), int(parts[4]))
    return FactKey(text, "act", 0, 0)


def _merge(state: Matters, into: int | None, other: int | None) -> Matters:
    if into is None or other is None or into == other:
        return state
    first, second = sorted((into, other))
    kept, gone = state.all[first], state.all[second]
    merged = replace(
        kept, anchors=(*kept.anchors, *gone.anchors), people=kept.people + gone.people, firm=kept.firm or gone.firm
    )
    return state.put(first, merged).put(second, replace(gone, anchors=(), state="merged", firm=False))
