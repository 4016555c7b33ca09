"""A list that is being told: `So, the shopping.`, and then one thing after the other, without a verb."""

from __future__ import annotations

from worklog_tui.extract.context import Context
from worklog_tui.extract.scene import Scene
from worklog_tui.extract.tokens import Token

OPENERS = {"shopping": "part needed", "jobs": "to do", "asksyou": "question"}
LISTS = frozenset({"part needed", "to do"})
"What goes on until something else is said; a question is one sentence."
TALK = ("person", "pronoun", "did", "do", "doing", "copula", "bad", "good")
"Classes of words that a list does not have."
IN_FRONT = ("filler", "break", "article")


def listing_after(scene: Scene, context: Context, upto: int) -> str:
    """The reason for which things are listed after the tokens before `upto`; empty outside a list."""
    if not context.listing and not scene.holds(*OPENERS):
        return ""
    words = [t for t in scene.tokens[:upto] if t.kind not in ("stop", "mark", "comma")]
    if not words:
        return context.listing
    last = [t for t in words if t.clause == words[-1].clause]
    opener = next((t for t in last if _opens(t) or not t.sense(*IN_FRONT)), None)
    if opener is not None and _opens(opener):
        return _opens(opener)
    told = words if context.listing_age else _member(scene, upto)
    if context.listing in LISTS and not any(t.sense(*TALK) for t in told if t.thing is None):
        return context.listing
    return ""


def _member(scene: Scene, upto: int) -> list[Token]:
    """What is listed in the note of its list: the words up to a comma, when a thing is the first; the rest is aside."""
    tokens = [t for t in scene.tokens[:upto] if t.kind not in ("stop", "mark")]
    first = next((k for k, t in enumerate(tokens) if t.kind != "comma" and not t.sense(*IN_FRONT)), 0)
    end = next((k for k in range(first, len(tokens)) if tokens[k].kind == "comma"), len(tokens))
    return tokens[:end] if first < len(tokens) and tokens[first].thing is not None else tokens


def _opens(token: Token) -> str:
    return next((reason for name, reason in OPENERS.items() if name in token.classes), "")
