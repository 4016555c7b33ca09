"""What was wrong a while ago and is right now: `the knock is gone`, `dry now` mean that thing again."""

from __future__ import annotations

from worklog_tui.extract.finders.fitness import mostly
from worklog_tui.extract.scene import Scene
from worklog_tui.extract.tokens import Thing
from worklog_tui.model import Finding

STEM = 4
"Letters by which `knock`, `knocks` and `knocking` are the same noise."
NOW = frozenset("now again longer anymore".split())


def put_right(scene: Scene, first: int, state: int) -> Thing | None:
    """The part of the last fault told before that the words from token `first` to the state's token take back."""
    faults = scene.once(("told bad",), lambda: _faults(scene))
    if not faults:
        return None
    said = scene.tokens[min(first, state) : state + 1]
    stems = {w[:STEM] for t in said if t.sense("comes_and_goes", "bad") for w in t.low.split() if len(w) >= STEM}
    now = mostly(scene, scene.tokens[state]) if any(w in NOW for t in said for w in t.low.split()) else None
    good = {s.name for s in scene.tokens[state].senses if s.cls == "good"}
    if not (stems or now or good):
        return None
    for fact in faults:
        told = {w[:STEM] for w in fact.condition.lower().split()}
        alike = bool(now) and scene.book.bearers.get(fact.state) == now  # `dry now`, of what dripped
        if stems & told or alike or (good and _opposite(scene, fact.state, good)):
            return Thing(fact.part, fact.name, _kind(scene, fact.name), own=fact.part)
    return None


def _faults(scene: Scene) -> list[Finding]:
    """What was found bad of a part, the last first."""
    return [f for f in reversed(scene.context.recent) if isinstance(f, Finding) and f.verdict == "bad" and f.part]


def _opposite(scene: Scene, fault: str, good: set[str]) -> bool:
    """Whether good states are what the fault is not: dry, of what wept."""
    return bool(fault) and any(s[1] == fault and s[2] in good for s in scene.book.table.get(fault, ()))


def _kind(scene: Scene, name: str) -> str:
    """The kind of a part by its name in the vocabulary."""
    return next((str(s[2]) for s in scene.book.table.get(name, ()) if s[0] == "part"), "part")
