"""Words of work that tell of none: `blew down it`, `plugged it in` of a screw, `somebody dropped this moped off`."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene


def no_deed(made: Draft, action: str, scene: Scene) -> bool:
    """Whether such words were not meant as work."""
    return (
        (action == "start" and _no_start(made, scene))
        or _of_air(action, made)
        or _of_a_place(made, scene)
        or _of_the_whole(made, action, scene)
    )


def _of_air(action: str, made: Draft) -> bool:
    """`letting the air out`, `air in`: nothing was done to the air."""
    return made.thing is not None and made.thing.name == "air" and action not in ("bleed", "test", "check")


def _of_a_place(made: Draft, scene: Scene) -> bool:
    """Whether a little word only tells where, for an `it` follows: `I blew down it`; or no plug is put into a screw."""
    word, after = scene.tokens[made.main], scene.tokens[made.main + 1 : made.main + 2]
    if "part" in made.filled and word.low.startswith("plug") and made.thing is not None:
        return made.thing.kind in ("fastener", "joint")
    where = word.low.endswith(" down") and word.low.count(" ") == 1 and not scene.typed
    return where and bool(after) and after[0].low in ("it", "them", "her")


def _of_the_whole(made: Draft, action: str, scene: Scene) -> bool:
    """Whether it is the machine itself, which comes off nothing."""
    whole = made.thing.words.lower() if made.thing is not None and made.thing.kind == "machine" else ""
    if not whole or whole.rpartition(" ")[2] in DRIVES:
        return False  # what drives it comes off
    return action == "remove" and whole in f"{scene.machine.kind} {scene.machine.name}".lower()


DRIVES = frozenset("motor engine".split())


def _no_start(made: Draft, scene: Scene) -> bool:
    """`Turned the disc over`, or `tried it again` with a figure behind it: nothing was started."""
    tokens, k = scene.tokens, made.main
    low = tokens[k].low
    if low.startswith(("tried", "try")) and not scene.machine.fuel.replace("none", ""):
        return any(t.kind in ("amount", "number") for t in tokens[k + 1 : k + AHEAD])
    after = tokens[k + 1 : k + 3]
    if not low.startswith("turned") or len(after) < 2 or not after[0].sense("article"):
        return False
    turned = after[1].thing
    return turned is not None and turned.kind != "machine" and turned.name not in scene.book.lists["turned_to_start"]


AHEAD = 9
