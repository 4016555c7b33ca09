"""What a rule needs of a sentence beside its words, so that where it is missing the words are not looked for at all."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from worklog_tui.extract.finders import numbers
from worklog_tui.extract.finders.accused import told_bad_here
from worklog_tui.extract.scene import Scene

Need = tuple[str, tuple[str, ...]]
"What is needed, and the words of which one must stand in the sentence."
FIGURE: Need = ("figure", ())


def needs(gives: Mapping[str, Any]) -> list[Need]:
    """What a rule needs by what it gives: a figure, or what names a cause beside its words may ask for."""
    if gives["kind"] == "number":
        return [FIGURE]
    if "names" not in gives:
        return []
    words = tuple(gives.get("follow", ()))
    return [(name, ()) for name in MET if gives.get(name)] + ([("follow", words)] if words else [])


def missing(scene: Scene) -> int:
    """The rules that cannot be read here, as `Patterns.triggered` takes them."""
    shut = 0
    for (name, words), rules in scene.book.patterns.needing(needs).items():
        if (scene.lows().isdisjoint(words) if words else not MET[name](scene)):
            shut |= rules
    return shut


def _may_follow_bad(scene: Scene) -> bool:
    return told_bad_here(scene) or scene.holds("bad", "trouble")


MET: dict[str, Callable[[Scene], bool]] = {
    "figure": numbers.may_stand,
    "queried": lambda scene: scene.tokens[-1].low == "?",
    "again": lambda scene: bool(scene.context.suspects),
    "after_bad": _may_follow_bad,
}
"How each need is met."
