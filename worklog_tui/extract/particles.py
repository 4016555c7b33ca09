"""Verbs with a particle after their object: `took the head off` is one action, as `took off the head` is."""

from __future__ import annotations

from functools import lru_cache

from worklog_tui.extract.met import meet
from worklog_tui.extract.terms import BEFORE_NOUN, DOERS, PARTICLES
from worklog_tui.extract.tokens import Token
from worklog_tui.rulebook import Rulebook, Sense
from worklog_tui.rulebook.classes import token_classes

REACH = 7
DOES = frozenset({"did", "do", "does", "doing"})
_classes = lru_cache(maxsize=2000)(token_classes)
"The same verbs are said again and again."


def join_particles(tokens: list[Token], book: Rulebook) -> None:
    """Gives a split verb its action where its particle stands within reach, in place; else takes the promise away."""
    for i, token in enumerate(tokens):
        if "split" not in token.classes:
            continue
        promises = [s for s in token.senses if s.cls == "split"]
        found = None if _is_name(tokens, i) else _particle(tokens, i, {s.kind for s in promises})
        if found is None and "part" not in token.classes:
            token.senses, token.classes = book.answers(_unsplit)[token.low]
            continue
        kept = tuple([s for s in token.senses if s.cls != "split"])
        if found is not None:
            done = [s for s in promises if s.kind == tokens[found].low]
            kept = (
                *(Sense(s.per, s.name, of=s.of, system=s.system) for s in done),
                *(s for s in kept if s.cls not in DOES),
            )
            tokens[found].senses = ()
            tokens[found].classes = frozenset({"other"})
            tokens[found].low = "\u2026" + tokens[found].low
        if _is_verb(tokens, i):
            kept = tuple([s for s in kept if s.cls != "part"])
        token.senses = kept
        token.classes = _classes(kept, token.low, book.named)


def _unsplit(book: Rulebook, low: str) -> tuple[tuple[Sense, ...], frozenset[str]]:
    """The senses of a verb whose particle is not there, and their classes."""
    kept = tuple([s for s in meet(low, book).senses if s.cls != "split"])
    return kept, token_classes(kept, low, book.named)


def _is_verb(tokens: list[Token], i: int) -> bool:
    """`Plug her in`, `the motor draws two amps`: what somebody does to something, or a thing shows, is no part."""
    after, before = tokens[i + 1 : i + 2], tokens[i - 1 : i] if i else []
    if before and before[0].sense("article"):
        return False  # `pulled the plug it was black`
    if after and after[0].low in ("her", "him", "it", "them"):
        return True
    return bool(before) and before[0].sense("part") is not None and tokens[i].sense("reads") is not None


def _is_name(tokens: list[Token], i: int) -> bool:
    """`A new screw in the hole`, `plugs back in`, `a drop of oil in the cup`: a name, no verb."""
    if i + 1 < len(tokens) and tokens[i + 1].low == "of":
        return True
    if tokens[i].sense("part") is None:
        return False
    before = tokens[i - 1] if i else None
    if tokens[i + 1 : i + 2] and tokens[i + 1].low == "back" and (before is None or before.kind in ("stop", "comma")):
        return True  # `bung back in`
    after = tokens[i + 1] if i + 1 < len(tokens) else None
    if after is not None and after.low in PARTICLES and _ends(tokens, i + 2):
        return True  # `cap off. Plug in, lead on`
    if before is not None and before.low in BEFORE_NOUN:
        return True
    plural = {s.per for s in tokens[i].senses if s.cls == "split"} == {"does"}
    return plural and (before is None or (before.low not in DOERS and before.sense("part") is None))


def _ends(tokens: list[Token], k: int) -> bool:
    """Whether nothing follows from token k on that something could be done to."""
    return k >= len(tokens) or tokens[k].kind in ("stop", "comma") or tokens[k].low == "and"


def _particle(tokens: list[Token], i: int, wanted: set[str]) -> int | None:
    for j in range(i + 1, min(i + 1 + REACH, len(tokens))):
        other = tokens[j]
        if other.kind in ("stop", "comma") or other.low in ("i", "we"):
            return None
        if "break" in other.classes and other.sense("break"):
            return None
        if other.low in wanted:
            return None if _leads_somewhere(tokens, j) else j
        if (
            not DOES.isdisjoint(other.classes)
            and any(s.cls in DOES for s in other.senses)
            and other.sense("part") is None
        ):
            return None
    return None


def _leads_somewhere(tokens: list[Token], j: int) -> bool:
    """Whether a particle only tells where: `took it up the lane`, `ran her down the hill`."""
    after = tokens[j + 1] if j + 1 < len(tokens) else None
    way = tokens[j].low in WAYS and tokens[j - 1].low in ("it", "her", "him", "that")
    return way and after is not None and after.low == "the"


WAYS = frozenset("up down round along".split())
