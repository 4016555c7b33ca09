"""The machine itself, as its card calls it: what is told of the whole is told of this."""

from __future__ import annotations

import re

from worklog_tui.extract.scene import Scene
from worklog_tui.extract.tokens import Thing

BEHIND = re.compile(r"(?<!-)\b(?:with|for|of|on|in|and|by|from|driven|powered|mounted)\b|[,;(]")
"Behind these a kind of machine tells what belongs to it: `fan in a wooden box, driven by a motor`."


def machine_word(kind: str) -> str:
    """The word for a machine in what the card says of it: `electric chain hoist with a brake` is a hoist."""
    words = BEHIND.split(kind.strip().lower())[0].split()
    return words[-1] if words else ""


def whole(scene: Scene, upto: int | None = None) -> Thing:
    """The machine, as the sentence calls it before token `upto`, else by the word of its kind: of `electric traction
    goods lift, worm gearbox`, the lift.
    """
    word = machine_word(scene.machine.kind)
    names = {word, scene.machine.name.lower().split()[-1] if scene.machine.name.strip() else ""} - {""}
    for k in reversed(scene.things(range(len(scene.tokens) if upto is None else upto))):
        thing = scene.tokens[k].thing
        if thing is not None and thing.words.lower().split()[-1:] and thing.words.lower().split()[-1] in names:
            return Thing(thing.words, thing.name, "machine")
    return Thing(word, word, "machine") if word else Thing("machine", "machine", "machine")
