"""A thing and a particle: `choke out`, `motor off`, `pump off the shelf` tell how it stands or whence it is."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene

WHILE = frozenset("w w/ with while when before until till without".split())
FOUND = frozenset("was were already".split())
SHOWS = frozenset({"lets", "let me"})
"`Plug out, let's look at it`: no plan for the plug."


def only_stands(made: Draft, scene: Scene) -> bool:
    """Whether `X off` tells how X stands and not that it was taken off: a switch, `with the cap off`."""
    k = made.thing_at
    if k is None or made.thing is None:
        return False
    words = (made.thing.own or made.thing.words).lower().split()
    named = {" ".join(words[n:]) for n in range(len(words))} | {made.thing.name}
    if scene.tokens[made.main].low in MOVED and any(s[0] == "worked_by_hand" for w in named for s in told(scene, w)):
        return True  # `choke out`, `decompressor off`: how it was set
    if made.thing.kind == "unknown" and scene.tokens[made.main].low == "back" and _is_so(scene, k, made.main):
        return True  # `that wasp is back`: who came, not what was fitted
    switch = scene.tokens[made.main].low in ("off", "on") and "back" not in scene.said(k, made.main)
    if switch and any(s[0] == "switched" for w in named for s in told(scene, w)):
        return True
    if scene.tokens[made.main].low == "on" and words[-1:] and words[-1] in scene.book.lists["pointers"]:
        return True  # `the needle's on one twenty`: what it shows
    after = scene.tokens[made.main + 1] if made.main + 1 < len(scene.tokens) else None
    if scene.tokens[made.main].low == "off" and (_whence(scene, made.main) or _hyphened(scene, k)):
        return True
    return (
        made.thing.kind == "tool"
        or any(t.low in WHILE for t in scene.tokens[scene.clause(k).start : k])
        or any(t.low in FOUND for t in scene.tokens[k + 1 : made.main + 2])
        or (after is not None and bool(after.sense("plan", "later")) and after.low not in SHOWS)
    )


def _is_so(scene: Scene, k: int, at: int) -> bool:
    """Whether a verb of being stands between a thing and the word of place."""
    return any(t.sense("copula") for t in scene.tokens[k + 1 : at])


MOVED = frozenset("off on in out".split())


def told(scene: Scene, words: str) -> tuple[tuple[str, ...], ...]:
    """What the vocabulary holds of some words."""
    found: tuple[tuple[str, ...], ...] = scene.book.table.get(words, ())
    return found


def _whence(scene: Scene, at: int) -> bool:
    """`Off the shelf`, `off the charger`, `off the other van`: where it comes from."""
    near, sources = scene.tokens[at + 1 : at + 5], scene.book.lists["taken_from"]
    stop = next((n for n, t in enumerate(near) if t.kind in ("stop", "comma")), len(near))
    return any(
        t.low in sources or (t.thing is not None and t.thing.kind in ("machine", "tool")) for t in near[:stop]
    ) and near[0].low in ("the", "a", "an", "my", "his", "that", "our")


def _hyphened(scene: Scene, k: int) -> bool:
    """`An alternator-off job`: one word."""
    return scene.text[scene.tokens[k].end : scene.tokens[k].end + 1] == "-"


def to_a_mark(scene: Scene, k: int) -> bool:
    """Whether `till` only says how far it was done: `turn the stop screw out till 2,740`, `until they just touch`."""
    after = scene.tokens[k + 1] if k + 1 < len(scene.tokens) else None
    return (
        scene.tokens[k].low in ("till", "until")
        and after is not None
        and (after.kind in ("number", "amount") or after.low in ("it", "they", "its", "theyre", "theres"))
    )


def turned(made: Draft, scene: Scene) -> bool:
    """`stop screw in`, `idle needle out another half`: what is screwed in or out was adjusted."""
    assert made.thing is not None
    low = scene.tokens[made.main].low
    return low in ("in", "out") and any(word in f"{made.thing.name} " for word in TURNED)


def by_turns(made: Draft, action: str, scene: Scene) -> bool:
    """`The screw eased out by half a turn`, `wound back in two turns`: it was not taken out, but set."""
    after = scene.tokens[made.main + 1 : made.main + 4]
    return action in ("remove", "fit") and any(t.amount is not None and t.amount.unit == "turn" for t in after)


TURNED = ("pilot screw", "stop screw", "mixture", "adjust", "idle", "governor screw", "needle")


def joined(action: str, made: Draft, scene: Scene) -> str:
    """A lead, a wire or a line that is off or back on was disconnected, connected."""
    if made.thing is None or scene.tokens[made.main].low not in ("off", "on", "back"):
        return action
    lead = (made.thing.own or made.thing.words).lower().split()[-1] in LEADS
    return {"remove": "disconnect", "fit": "connect"}.get(action, action) if lead else action


LEADS = frozenset("lead leads wire wires line lines terminal terminals connector linkage".split())
