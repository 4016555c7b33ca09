"""The acts on a machine's log, one line each, with what was taken back and what clashes."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from worklog_tui.bench.history import history
from worklog_tui.bench.undoing import SAID
from worklog_tui.logbook.clashes import clashes
from worklog_tui.logbook.standing import standing
from worklog_tui.model import Act
from worklog_tui.model.acts import WORDED

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk


@dataclass(frozen=True, slots=True)
class ActLine:
    """An act, and what became of it."""

    act: Act
    says: str
    stands: bool
    "False when it was taken back."
    ours: bool
    "Whether this device did it, and may take it back."
    clashes: bool
    "Whether another device did something else to the same at the same time; the later one counts."


def acts(desk: Desk, machine_name: str) -> list[ActLine]:
    """All acts on a machine, in their order, without the undos themselves."""
    known = history(desk, machine_name).acts
    still = {act.uid for act in standing(known)}
    clash = {act.uid for one in clashes(known) for act in (one.earlier, one.later)}
    return [
        ActLine(act, says(act), act.uid in still, act.device == desk.device, act.uid in clash)
        for act in known
        if act.verb != "undo"
    ]


def says(act: Act) -> str:
    """An act in a few words, with what it is about as far as it tells."""
    value = act.value if isinstance(act.value, dict) else {}
    what = SAID.get(act.verb, act.verb)
    if act.verb in WORDED and act.value is None:
        return f"{what}; its words were erased"
    match act.verb:
        case "edit note":
            return f"{what}: “{value.get('words', '')}”"
        case "mend word":
            return f"{what}: “{value.get('said', '')}” to “{value.get('meant', '')}”"
        case "correct fact":
            to = ", ".join(f"{name} {new}" for name, new in value.get("to", {}).items() if name != "name")
            return f"{what}: “{value.get('quote', '')}” to {to}"
        case "strike fact" | "add fact":
            return f"{what}: “{value.get('quote', '')}”"
        case "set subject":
            return f"{what}: {value.get('subject', '')}"
        case "close item" | "reopen item" | "merge items" | "set item":
            return f"{what}: {value.get('about', '')}"
    return what
