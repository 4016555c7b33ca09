"""What two computers did to one thing without knowing of each other: both are kept, the later counts until asked."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from itertools import combinations
from typing import Any

from worklog_tui.logbook.outcomes import Clash
from worklog_tui.logbook.standing import standing
from worklog_tui.model import Act

_SETS = {
    "edit note": "words", "correct fact": "fact", "strike fact": "fact", "close item": "item", "reopen item": "item",
    "set item": "item", "date session": "date", "move session": "machine", "set card": "card",
}  # fmt: skip
"The acts that give a thing a value, by what they give it; two acts that do not share that cannot clash."
_BESIDE = frozenset({"about", "reason", "quote", "after", "words", "fact"})
"What the value of an act on a fact or an item repeats of what was there."


def clashes(acts: Iterable[Act]) -> list[Clash]:
    """Every pair of standing acts that want something else of one thing, until an act that has seen both settles it."""
    rows: dict[tuple[str, str], list[Act]] = {}
    for act in standing(acts):
        if act.verb in _SETS:
            rows.setdefault((act.target, _SETS[act.verb]), []).append(act)
    return [
        Clash(one, later)
        for row in rows.values()
        for one, later in combinations(row, 2)
        if one.device != later.device and one.uid not in later.seen and _differ(one, later)
        and not any({one.uid, later.uid} <= set(act.seen) for act in row)
    ]  # fmt: skip


def told(act: Act) -> str:
    """What an act makes of a thing, in a few words."""
    wants = _wants(act)
    match act.verb:
        case "edit note":
            return f"“{wants['words']}”"
        case "strike fact":
            return "struck out"
        case "correct fact":
            return ", ".join(f"{name} {value}" for name, value in wants.items() if name != "name") or "as it was read"
        case "date session":
            start = wants.get("start")
            return str(start["utc"])[:10] if isinstance(start, Mapping) else "date not known"
        case "move session":
            return "another machine"
        case "set card":
            return "another machine card"
    return ", ".join(_of_item(name, value) for name, value in wants.items()) or "as it was"


def _of_item(name: str, value: Any) -> str:
    if name == "due":
        when = [str(part) for part in value.values() if part] if isinstance(value, Mapping) else []
        return f"due {' '.join(when)}" if when else "due at no set time"
    if name == "state":
        return "left so on purpose" if value == "left so" else str(value)
    return f"called {value}" if name == "call" else str(value)


def _differ(one: Act, other: Act) -> bool:
    if "strike fact" in (one.verb, other.verb):
        return one.verb != other.verb
    first, second = _wants(one), _wants(other)
    return any(first[name] != second[name] for name in first.keys() & second.keys())


def _wants(act: Act) -> dict[str, Any]:
    value = dict(act.value) if isinstance(act.value, Mapping) else {}
    match act.verb:
        case "edit note":
            return {"words": value.get("words", "")}
        case "correct fact":
            return dict(value.get("to", {}))
        case "reopen item":
            return {"state": "open"}
        case "set card":
            return {"card": value}
    return {name: given for name, given in value.items() if name not in _BESIDE}
