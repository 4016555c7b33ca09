"""Second thoughts: `ignore that number`, said after a reading, makes the reading a doubtful one."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from worklog_tui.extract.context import Context
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Token
from worklog_tui.model import Fact, Reading

STRONG = frozenset(
    (
        "don't believe it|don't trust|do not trust|i don't trust|means nothing|unreliable|don't believe that|"
        "can't be right|can't trust that|won't trust that|take no notice|take no notice of that"
    ).split("|")
)


def may_disown(tokens: Sequence[Token]) -> bool:
    """Whether a sentence holds words that take back what was read before it."""
    return any("disown" in token.classes or token.low in STRONG for token in tokens)


def disowns(scene: Scene, drafts: list[Draft]) -> bool:
    """Whether a sentence without a reading of its own takes back what was read before it."""
    said = scene.holds("disown") or not (
        STRONG.isdisjoint(scene.lows())
        or any(draft.kind == "finding" for draft in drafts)  # `the pads look new but that means nothing`
    )
    return said and not any(draft.kind == "reading" for draft in drafts)


def doubted(facts: Sequence[Fact]) -> tuple[Fact, ...]:
    """The readings of the newest note among these facts, as doubtful ones; those that are so already are left out."""
    readings = [fact for fact in facts if isinstance(fact, Reading)]
    newest = [fact for fact in readings if fact.main.note == readings[-1].main.note] if readings else []
    last = newest[-1:] + [fact for fact in newest[:-1] if fact.quantity == newest[-1].quantity]
    return tuple(replace(fact, doubtful=True) for fact in last if not fact.doubtful)


def doubt(facts: list[Fact], context: Context) -> tuple[Fact, ...]:
    """Doubts the last readings of this passage in place; without any, gives those just before, doubted."""
    if any(isinstance(fact, Reading) for fact in facts):
        keys = {fact.key: fact for fact in doubted(facts)}
        facts[:] = [keys.get(fact.key, fact) for fact in facts]
        return ()
    return doubted([f for f in context.recent if f.main.note in context.notes[-2:]])
