"""What a rule needs of a sentence beside its words, so that where it is missing the words are not looked for at all."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from worklog_tui.extract.finders import numbers
from worklog_tui.extract.finders.accused import told_bad_here
from worklog_tui.extract.finders.follow_ups import VIEWERS
from worklog_tui.extract.scene import Scene
from worklog_tui.extract.talk.listing import LISTS

Need = tuple[str, tuple[str, ...]]
"What is needed, and the words of which one must stand in the sentence."


def needs(gives: Mapping[str, Any]) -> list[Need]:
    """What a rule needs by what it gives; the finder of its kind asks for the same once more, where it stands."""
    match gives["kind"]:
        case "number":
            return [("figure", ())]
        case "work":
            return [("typed", ())] if gives.get("typed") else []
        case "follow_up":
            return [(str(gives["reason"]), ())] if gives["reason"] in ("listed", VIEWERS) else []
        case "suspect":
            asked = OF_SUSPECTS + (OF_NAMES if "names" in gives else ())
            words = tuple(gives.get("follow", ())) if "names" in gives else ()
            return [(name, ()) for name in asked if gives.get(name)] + ([("follow", words)] if words else [])
    return []


OF_SUSPECTS, OF_NAMES = ("either", "again", "denies"), ("queried", "after_bad", "starts")
"What a rule for a suspect may ask for, and one that names a cause beside its words besides."


def missing(scene: Scene) -> int:
    """The rules that cannot be read here, as `Patterns.triggered` takes them."""
    shut, lows = 0, scene.lows()
    for (name, words), rules in scene.book.patterns.needing(needs).items():
        if lows.isdisjoint(words) if words else not MET[name](scene):
            shut |= rules
    return shut


def _may_follow_bad(scene: Scene) -> bool:
    return scene.holds("bad", "trouble") or told_bad_here(scene)


MET: dict[str, Callable[[Scene], bool]] = {
    "figure": numbers.may_stand,
    "typed": lambda scene: scene.typed,
    "starts": lambda scene: scene.typed,
    "listed": lambda scene: scene.context.listing in LISTS,
    VIEWERS: lambda scene: scene.context.listing == "question",
    "either": lambda scene: "or" in scene.words() and any(" or " in low for low in scene.lows()),
    "denies": lambda scene: scene.holds("not"),
    "queried": lambda scene: scene.tokens[-1].low == "?",
    "again": lambda scene: bool(scene.context.suspects),
    "after_bad": _may_follow_bad,
}
"How each need is met."
