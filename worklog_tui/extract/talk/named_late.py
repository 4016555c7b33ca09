"""A thing that is named only after what was told of it: `that's cracked right through / the distributor cap, I mean`.

It is named by words that say it was meant (`I mean`, `that is`, `talking about the`), against another (`the tank, not
the bowl`), or alone behind `this one` and the like, with nothing more told of it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from worklog_tui.extract.said import says
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Thing, Token
from worklog_tui.model import Fact, Finding
from worklog_tui.rulebook import Rulebook
from worklog_tui.rulebook.word_lists import OPENS

MOST = 16
"Tokens behind a state within which its thing is named."
TELLS = ("bad", "good", "noted", "did", "do", "does", "doing", "must", "plan", "asked")
"Classes of words that tell something, so that they do more than name."


def named_late(scene: Scene, state: int) -> int | None:
    """The token of the thing that is named behind the state at a token; None where none is, or one stood before it."""
    first = scene.clause(state).start
    if scene.things(range(first, state)):
        return None
    for k in range(state + 1, min(len(scene.tokens), state + MOST)):
        opens = scene.opens_note(k)
        if opens or scene.tokens[k - 1].kind in ("comma", "stop"):
            pointed = opens and any(says(scene, "points_at", n, 2) for n in range(first, state))
            found = _named(scene, k, pointed)
            if found is not None or opens:
                return found
    return None


def _named(scene: Scene, first: int, alone: bool) -> int | None:
    """The only thing told from token `first` on, said to be meant; set `alone`, named with nothing more behind it."""
    tokens, found, meant, k = scene.tokens, None, alone, first
    while k < len(tokens):
        token = tokens[k]
        if n := says(scene, "meant_by_it", k, 4):
            meant, k = True, k + n
        elif token.kind in ("stop", "comma") and found is not None and meant and not alone:
            break
        elif found is not None and token.low == "not":
            return found if _another(scene, k + 1) else None
        elif token.thing is not None and found is None and token.thing.kind not in ("unknown", "tool"):
            found, k = k, k + 1
        elif (
            token.kind in ("comma", "stop")
            or token.sense("article")
            or token.low in (LEADS if found is None else TRAILS)
        ):
            k += 1
        else:
            return None
    return found if meant else None


LEADS = frozenset("thats its this that is oh yes yeah aye".split())
TRAILS = frozenset("here there now then look mind".split())


def _another(scene: Scene, k: int) -> bool:
    """Whether another thing is named at token k, or another of them, and nothing told of it."""
    while k < len(scene.tokens) and scene.tokens[k].sense("article"):
        k += 1
    rest = scene.tokens[k : k + 4]
    named = rest and (rest[0].kind in ("thing", "which") or bool(rest[0].sense("side")))
    return bool(named) and not any(t.sense(*TELLS) for t in rest)


def joined(sentences: list[list[Token]], book: Rulebook) -> list[list[Token]]:
    """The sentences, such as only name what was meant with the one before them: `That's weeping. The tap, I mean.`"""
    found: list[list[Token]] = []
    for tokens in sentences:
        if found and len(tokens) <= MOST and len(found[-1]) <= MOST and _names(tokens, book):
            found[-1] = [*found[-1], *tokens]
        else:
            found.append(tokens)
    return found


def _names(tokens: list[Token], book: Rulebook) -> bool:
    """Whether a sentence has words that say what was meant, a part, and nothing that is told."""
    meant, lows = book.owed["meant_by_it"], [t.low for t in tokens]
    begins = [k for k, low in enumerate(lows) if low.partition(" ")[0] in book.owed[OPENS + "meant_by_it"]]
    if not any(" ".join(lows[k : k + n]) in meant for k in begins for n in range(1, 5)):
        return False
    return any("part" in t.classes for t in tokens) and not any(t.sense(*TELLS) for t in tokens)


def named_alone(scene: Scene, drafts: Sequence[Draft]) -> Thing | None:
    """The thing that a sentence only names, as what was meant before; None where it does more, or less."""
    if any(d.kind in ("finding", "work", "reading", "follow_up") for d in drafts) or len(scene.tokens) > MOST:
        return None
    found = _named(scene, 0, alone=False)
    return None if found is None else scene.tokens[found].thing


def renamed(thing: Thing, told: Sequence[Fact]) -> tuple[Fact, ...]:
    """The fact that was told, of that thing: where it is the only one, a finding for which no part had been named."""
    last = told[0] if len(told) == 1 else None
    if not isinstance(last, Finding) or "part" not in last.filled or last.verdict not in ("bad", "good"):
        return ()
    return (replace(last, part=thing.words, name=thing.name),)
