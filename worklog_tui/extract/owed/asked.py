"""Questions that stay open: put to the viewers, or what the speaker says that he does not know.

Whoever is asked stands beside a verb of knowing or having, in any order: `anybody watching knows where to get these`,
`what size that is I could not tell you, holler if any of you know`.
"""

from __future__ import annotations

from worklog_tui.extract.owed.clause import opening, owed, rule, says, talked_of
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Thing
from worklog_tui.rulebook.patterns import Rule

ASKED, NOT_KNOWN = rule("asked", 0.6), rule("not-known", 0.56)
NEAR = 5
"Tokens between those who are asked and what they know."
LONGEST = 10
"Tokens of a question as it is told."
SPEAKER = frozenset({"me", "us"})
SHORT = 3
"Tokens of a question that only points back: `do you know that?`."


def asked(scene: Scene) -> list[Draft]:
    """The questions of a sentence, one for each sentence at most."""
    made: list[Draft] = []
    opens = opening(scene, "people", "not_known")
    if not opens:
        return made
    first = 0
    for k, token in enumerate(scene.tokens):
        if token.kind == "stop" or k + 1 == len(scene.tokens):
            draft = _question(scene, [i for i in opens if first <= i <= k], first, k + 1)
            made += [draft] if draft is not None else []
            first = k + 1
    return made


def _question(scene: Scene, opens: list[int], first: int, end: int) -> Draft | None:
    for k in opens:
        if any(t.stances & {"joke", "memory", "reported"} for t in scene.tokens[first : k + 1]):
            return None
        if (n := says(scene, "people", k)) and (at := _knows(scene, k + n, end)) is not None:
            return _told(scene, ASKED, first, at, end)
        if n := says(scene, "not_known", k):
            n += k + n < end and scene.tokens[k + n].low == "is"
            if says(scene, "unknowns", k + n):
                return _told(scene, NOT_KNOWN, first, k + n, end)
    return None


def _knows(scene: Scene, k: int, end: int) -> int | None:
    """The index of the token behind the verb of knowing; None without one, or without anything that is asked."""
    for i in range(k, min(k + NEAR, end)):
        if scene.tokens[i].low in SPEAKER:
            return None  # `somebody wants me to say` asks nobody
        if n := says(scene, "knows", i):
            asks = any(says(scene, "asks", m) for m in range(i + n, min(i + n + NEAR, end)))
            ends = scene.tokens[end - 1].low == "?" or end - i - n <= 1
            return i + n if asks or ends else None
    return None


def _told(scene: Scene, of: Rule, first: int, at: int, end: int) -> Draft | None:
    """What is asked behind token `at`; what stands before when nothing does; with the thing talked of."""
    last = min(at + LONGEST, end)
    ends = scene.book.owed["asked_till"]
    last = next((k for k in range(at + 1, last) if scene.tokens[k].low in ends or scene.tokens[k].kind == "stop"), last)
    while last > at and scene.tokens[last - 1].kind in ("stop", "comma"):
        last -= 1
    if of is NOT_KNOWN:
        last = next((k for k in range(at + 1, last) if scene.tokens[k].kind == "comma"), last)
    named = [t.thing for t in scene.tokens[at:last] if t.thing is not None and t.thing.kind != "unknown"]
    thing = named[0] if named else talked_of(scene, min(at, end - 1))
    words = scene.said(at, last - 1) if last > at else ""
    if thing is None:
        return None if len(words.split()) < SHORT else _made(scene, of, at, last, words, None)
    if not named:
        words = f"{thing.words}: {words}" if words else thing.words
    return _made(scene, of, min(at, end - 1), last, words, thing)


def _made(scene: Scene, of: Rule, at: int, last: int, words: str, thing: Thing | None) -> Draft:
    return owed(scene, of, at, max(at, last - 1), words, thing, "question")
