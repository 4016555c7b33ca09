"""How well a state suits a thing that it may be said of: an engine knocks, a joint weeps, a tool was used."""

from __future__ import annotations

from functools import lru_cache

from worklog_tui.extract.scene import NONE, Scene
from worklog_tui.extract.tokens import Thing, Token

SUITS, SUITS_NOT = 1.0, -0.9
"For a state that is mostly said of some things: how much they gain, and what others lose."
NAMED = 0.3
"What is gained by a thing that a state is meant of by name."
QUALITY, LOOSE, FASTENER, FOREIGN, GAUGE = -0.3, 0.0, -0.2, -1.5, -0.4
"Lost by what hardly has states: a quality, a word that is often no part, a bolt, another machine, what it was read on."
OWN = frozenset({"engine", "electric motor", "motor", "machine", "car"})
"Machines that any other may have in it."


def fitness(scene: Scene, state: Token, thing: Thing, spoken_of: bool) -> float:
    """What a thing gains or loses as the bearer of a state; `spoken_of`: it is the subject of what is being said."""
    by = mostly(scene, state)
    if by:
        score = SUITS if suits(thing, by) else SUITS_NOT
    elif meant_of(state, thing):
        score = NAMED
    else:
        score = 0.0 if spoken_of or state.sense("judged") else _poor(thing)
    return score + (FOREIGN if not _of_here(scene, thing) else 0.0)


def meant_of(state: Token, thing: Thing) -> bool:
    """Whether a state is meant of a thing by its name or kind."""
    called = _called(thing.kind, thing.system, thing.name)
    return any(not called.isdisjoint(s.of) for s in state.senses if s.of)


def mostly(scene: Scene, state: Token) -> frozenset[str]:
    """What a state is mostly said of; empty where the grammars do not tell."""
    if (found := scene.bearers.get(state.start)) is None:
        bearers = scene.book.bearers
        found = bearers.get(state.low, NONE)
        for sense in state.senses:
            if sense.name in bearers:
                found |= bearers[sense.name]
        scene.bearers[state.start] = found
    return found


def suits(thing: Thing, by: frozenset[str]) -> bool:
    """Whether a thing is one of those named: of bearings is the front bearing too."""
    return not _called(thing.kind, thing.system, thing.name).isdisjoint(by)


@lru_cache(maxsize=4000)
def _called(kind: str, system: str, name: str) -> frozenset[str]:
    """All by which the grammars may mean a thing: its kind, its system, its name and the ends of it."""
    words = name.split()
    return frozenset((f"kind:{kind}", f"system:{system}", *(" ".join(words[n:]) for n in range(len(words)))))


def _poor(thing: Thing) -> float:
    """What a thing loses that states are seldom said of."""
    if thing.kind == "quality":
        return QUALITY
    if thing.system == "instruments and gauges":
        return GAUGE
    return (LOOSE if thing.loose else 0.0) + (FASTENER if thing.kind == "fastener" else 0.0)


def _of_here(scene: Scene, thing: Thing) -> bool:
    """Whether a machine is the one worked on, or may be a part of it."""
    if thing.kind != "machine" or thing.name in OWN:
        return True
    about = f"{scene.machine.name} {scene.machine.kind}".lower()
    return any(word in about for word in (thing.name, (thing.own or thing.words).lower()) if word)


def machine_talked_of(scene: Scene) -> Thing:
    """What the whole talk is about: the engine, or the machine that has none by its own name."""
    if scene.machine.fuel != "none":
        return scene.engine()
    return scene.once(("machine",), lambda: _machine(scene)) or scene.engine()


def _machine(scene: Scene) -> Thing | None:
    """The first words of the machine's kind that name a machine, the longest ones."""
    words = scene.machine.kind.lower().replace(",", " ").split()
    for first in range(len(words)):
        for last in range(min(len(words), first + LONGEST), first, -1):
            said = " ".join(words[first:last])
            sense = next((s for s in scene.book.table.get(said, ()) if s[0] == "part" and s[2] == "machine"), None)
            if sense is not None and sense[1] not in OWN:
                return Thing(said, sense[1], "machine", own=said)
    return None


LONGEST = 3
