"""Deeds that are meant and not done: `somebody should replace that sensor`, `I will open the duct next time`.

Behind a word of duty or of plan stands a verb, whatever it is. A duty is owed as it stands; a plan is what comes next
unless its sentence puts it off.
"""

from __future__ import annotations

from worklog_tui.extract.owed.clause import Clause, named_before, opening, owed, put_off, rule, talked_of
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Token

DUTY, PLAN = rule("duty", 0.6), rule("put-off", 0.62)
NEAR = 3
"Tokens between the word of duty and the verb."
LONGEST = 7
"Tokens of a deed as it is told."
BE = frozenset("be get have getting being having".split())
SEEN = "look at that"
"Said of a wonder; behind a duty a deed, of what was talked of."
AT = frozenset({"at", "into"})
"Behind `look` these tell a deed: `must look at that`, but `must look nice`."
BARE = frozenset("needs wants need want could use".split()) | {"could do with", "could use", "i want"}
"Behind these stands what is to be done to a thing: `wants changing`."


def may_owe(scene: Scene) -> list[int]:
    """The tokens at which a duty or a plan may begin."""
    return opening(scene, "duty", "intends")


def deeds(clause: Clause, opens: list[int]) -> list[Draft]:
    """The deed that a clause says is owed, if any, from the tokens `opens` on."""
    scene = clause.scene
    if clause.against():
        return []
    for i in opens:
        duty = clause.says("duty", i)
        length = duty or clause.says("intends", i)
        if not length or _denied(scene, i, length):
            continue
        made = _deed(clause, i, i + length, bool(duty))
        if made is not None:
            return [made]
    return []


def _denied(scene: Scene, i: int, length: int) -> bool:
    before, others = scene.tokens[max(0, i - 2) : i], scene.book.owed["others"]
    after = scene.tokens[i + length : i + length + 1]
    return any(t.sense("not") or t.low in others for t in before) or any(t.sense("not") for t in after)


def _deed(clause: Clause, i: int, end: int, duty: bool) -> Draft | None:
    scene = clause.scene
    at, passive = _verb(clause, i, end)
    if at is None or (duty and _figure(clause)) or clause.asked():
        return None
    late = put_off(scene, i) or _put_off_before(clause, i)
    if not (duty or late) or (passive and not duty and not late):
        return None
    thing_at = _object(clause, i, at, passive)
    thing = scene.tokens[thing_at].thing if thing_at is not None else None
    if thing is None and passive and (name := named_before(scene, i, clause.span.start)) is not None:
        words = f"{scene.said(*name)} {scene.tokens[at].low}"
        return owed(scene, DUTY if duty else PLAN, name[0], at, words, None, "to do")
    if thing is None:
        if not (passive or _refers(clause, at) or scene.tokens[at].low == SEEN):
            return None
        thing = talked_of(scene, i)
    if thing is None:
        return None
    verb = scene.tokens[at].low.removesuffix(" that")
    if thing_at is not None and at < thing_at <= at + LONGEST:
        words = scene.said(at, thing_at)
    else:
        words = f"{thing.words} {verb}" if passive else f"{verb} {thing.words}"
    made = owed(scene, DUTY if duty else PLAN, min(at, thing_at or at), max(at, thing_at or at), words, thing, "to do")
    if thing_at is None:
        made.filled.add("topic")
        made.confidence -= 0.06
    return made


def _verb(clause: Clause, i: int, end: int) -> tuple[int | None, bool]:
    """The index of the verb behind a word of duty or plan, and whether the thing is what it is done to."""
    tokens = clause.scene.tokens
    passive, bare = tokens[end - 1].low == "to be", tokens[end - 1].low in BARE
    for k in range(end, min(end + NEAR, clause.span.stop)):
        token = tokens[k]
        if token.low in BE:
            passive = True
        elif (
            token.thing is not None
            or token.kind not in ("word", "term")
            or (
                clause.says("no_deed", k)
                and not (token.low == "look" and tokens[k + 1 : k + 2] and tokens[k + 1].low in AT)
            )
        ):
            return None, False
        elif token.low == "to" or (token.sense("degree", "filler") and not token.sense("do", "did", "doing", "split")):
            continue
        elif passive or bare:
            return (k, True) if _done(token, passive) else (None, False)
        else:
            return (k, False) if token.low.isalpha() or " " in token.low else (None, False)
    return None, False


def _done(token: Token, passive: bool) -> bool:
    """Whether a word says what is done to a thing: `clipped`, `changing`."""
    if token.sense("bad", "good", "noted") and not token.sense("did", "doing"):
        return False
    if token.sense("did", "doing", "split"):
        return True
    return token.low.endswith("ed") if passive else token.low.endswith("ing")


def _figure(clause: Clause) -> bool:
    """Whether a figure stands in it: `should be set to two millimetres` is what the book says."""
    return any(t.kind in ("amount", "number", "thread") for t in clause.tokens())


def _put_off_before(clause: Clause, i: int) -> bool:
    """Whether the clause begins with the time: `next time I will open it`."""
    tokens = clause.scene.tokens[max(0, clause.span.start - 4) : i]
    return any(t.sense("later", "day") or t.low in clause.scene.book.owed["sometime"] for t in tokens)


def _object(clause: Clause, i: int, at: int, passive: bool) -> int | None:
    """The index of what it is done to: before the duty when it is the subject, else behind the verb."""
    before, after = clause.things(clause.span.start, i), clause.things(at + 1, clause.span.stop)
    if passive:
        return before[-1] if before else None
    return after[0] if after and after[0] - at <= LONGEST else None


def _refers(clause: Clause, at: int) -> bool:
    """Whether a small word stands for the thing: `I will do that`."""
    after = clause.scene.tokens[at + 1 : min(at + 4, clause.span.stop)]
    return any(t.low in ("it", "that", "them", "those", "this", "one", "these") for t in after)
