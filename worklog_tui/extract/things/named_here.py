"""A name right before a number that the vocabulary does not know: `csft 372`, `the ripple is point three of a volt`."""

from __future__ import annotations

from worklog_tui.extract.scene import Scene
from worklog_tui.extract.tokens import Token

LONGEST = 4
BETWEEN = 4
"Small words that may stand between a name and its number."
SMALL = ("copula", "reads", "about", "setto", "degree")
NO_NAME = (
    "pronoun", "person", "break", "correct", "doubt", "did", "do", "does", "doing", "bad", "good", "noted",
    "how", "must", "want", "get", "not", "if", "would", "maybe", "book", "plan", "reported", "asked",
    "memory", "joke", "rule", "later", "plate", "proper", "filler", "cause", "new", "temporary",
    "suspicion", "trouble", "awaited",
)  # fmt: skip


def named_before(scene: Scene, i: int) -> str:
    """The words of the name that stands right before the number at token i; empty when there is none."""
    tokens, first = scene.tokens, scene.clause(i).start
    k = i - 1
    while k >= first and i - k <= BETWEEN and _small(tokens[k]):
        k -= 1
    last, small_words = k, scene.book.lists["small_words"]
    while k >= first and last - k < LONGEST and _of_name(tokens[k], small_words):
        k -= 1
    names = tokens[k + 1 : last + 1]
    if any(t.low in scene.book.topics or t.low in TOLD_BY for t in names):
        return ""  # what it was read off
    if not names or not any(t.kind == "word" and len(t.low) > 3 and t.low.isalpha() for t in names):
        return ""
    if all(t.low in OPENERS for t in names):
        return ""
    opens = k < first or tokens[k].kind in ("stop", "comma") or tokens[k].low in OPENERS
    return scene.said(k + 1, last) if opens else ""


TOLD_BY = frozenset(
    "laser clock dial gauge meter tach tacho scope multimeter stopwatch watch timer scale scales label".split()
)
OPENERS = frozenset("the a my his her its that this on at across over of and so now then okay right both".split())


def _small(token: Token) -> bool:
    return bool(token.sense(*SMALL)) or token.low in ("at", "=", ":", "to", "on", "up", "down", "about", "only", "now")


def _of_name(token: Token, small_words: frozenset[str]) -> bool:
    if token.thing is not None:
        return True
    if token.kind not in ("word", "term") or token.low in small_words or token.sense(*NO_NAME):
        return False
    return token.low.replace("-", "").isalpha() and len(token.low) > 2
