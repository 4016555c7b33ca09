"""Which larger thing a bare word belongs to: the seal of the gearbox that the same note speaks of."""

from __future__ import annotations

from worklog_tui.diagnosis.log import Log
from worklog_tui.diagnosis.words import SIDES, tokens
from worklog_tui.model import FactKey, Finding, Reading, Work

BARE = frozenset({
    "seal", "gasket", "bearing", "hose", "spring", "bolt", "cable", "nut", "pin", "filter", "belt", "kit", "pump",
    "valve", "switch", "ring", "washer", "shaft", "cover", "oil", "screw", "bush", "band", "element", "diaphragm",
    "pad", "shoe", "lining", "clip", "wire", "connector", "terminal", "guard", "knob", "handle", "o ring", "boot",
    "rubber", "chain", "fan", "motor", "box",
})  # fmt: skip
"""Words that name hundreds of parts: alone they say little (judgement)."""
OF_A_THING = frozenset({
    "level", "pressure", "temperature", "clearance", "tension", "play", "speed", "oil", "noise", "current",
    "resistance",
})  # fmt: skip
"""Words that end the name of what is measured on a thing: the gearbox of a gearbox level."""
NEAR = 1
"How many notes before a bare word its thing may have been named."


def owner(log: Log, words: str, anchors: tuple[FactKey, ...]) -> str:
    """The thing that a bare part belongs to, by what was spoken of just before it; empty when nothing tells."""
    said = [w for w in tokens(words) if w not in SIDES]
    if len(said) != 1 or said[0] not in BARE:
        return ""
    for key in anchors:
        at = log.when(key)
        before = [e for e in log.before(at, NEAR) if isinstance(e.fact, (Finding, Work, Reading)) and e.name]
        for event in reversed(before):
            named = _thing(event.name)
            if named and said[0] not in tokens(named) and not set(tokens(named)) <= BARE:
                return named
    return ""


def _thing(name: str) -> str:
    words = name.split()
    return " ".join(words[:-1]) if len(words) > 1 and words[-1] in OF_A_THING else name
