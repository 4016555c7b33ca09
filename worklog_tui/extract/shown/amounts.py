"""How much there is of what a part should have, or should not: `hardly any lining left`, `way too much end play`."""

from __future__ import annotations

from worklog_tui.extract.owed.clause import Clause
from worklog_tui.extract.said import opening, says
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.shown.holder import behind, made, points_back, rule, stranger, subject
from worklog_tui.extract.shown.polarity import DENIES, Said
from worklog_tui.extract.shown.states import IS
from worklog_tui.extract.tokens import Token
from worklog_tui.rulebook.patterns import Rule

AMOUNT, LEFT = rule("amount", 0.6), rule("left", 0.62)
ANY = frozenset("any a an much many one single".split())
FLAWS, ALL = ("flaws", "wanted"), ("flaws", "blemishes", "wanted")
PAUSES = frozenset({"stop", "comma", "amount", "number"})
ADJECTIVES = 3
"Words between how much and of what."


def may_hold_some(scene: Scene) -> list[int]:
    """The tokens with which an amount of something may begin."""
    return opening(scene, "much", "some", "little", "nothing", "lots")


def amounts(clause: Clause, opens: list[int]) -> list[Draft]:
    """What a clause says that a thing has, much or little of it, from the tokens `opens` on."""
    scene = clause.scene
    if scene.tokens[clause.span.start].sense("do", "plan"):
        return []  # `spray some water round the flange`
    for q in opens:
        if scene.tokens[q].kind == "amount":
            continue
        for draft in (_leftover(clause, q), _amount(clause, q)):
            if draft is not None:
                return [draft]
    return []


def _amount(clause: Clause, q: int) -> Draft | None:
    scene = clause.scene
    name, n = max(((name, says(scene, name, q, 4)) for name in ("little", "much", "some")), key=lambda row: row[1])
    if not n or (name == "some" and (_set_so(clause) or _put_on(scene, q, n))):
        return None
    first = q
    if name != "little" and (no := _denied(clause, q)) is not None and scene.tokens[q].low.partition(" ")[0] in ANY:
        name, first = "little", no
    found = _noun(clause, q + n, name == "some")
    if found is None:
        return None
    flaw, last = found
    verdict = _verdict(name, flaw, scene.tokens[q].low)
    if not verdict:
        return None
    return _told(clause, AMOUNT, Said(verdict, first, last))


def _told(clause: Clause, of: Rule, said: Said) -> Draft | None:
    holder = _holder(clause, said.first, said.last)
    if holder is not None:
        return made(clause, of, said, holder[0])
    tokens, k = clause.scene.tokens, said.first - 1
    while k > clause.span.start and _has(clause.scene, tokens[k]) and _has(clause.scene, tokens[k - 1]):
        k -= 1
    has = k > clause.span.start and _has(clause.scene, tokens[k])
    other = stranger(clause, k) if has else None
    return made(clause, of, said, None, other) if other is not None else None


def _set_so(clause: Clause) -> bool:
    """`Adjusted it so there's a little play`: what it was set to."""
    first = clause.span.start
    tokens = clause.scene.tokens
    so = tokens[first].low == "so" or (first > 0 and tokens[first - 1].low == "so")
    return so and any(t.sense("did", "doing") for t in tokens[:first])


def _put_on(scene: Scene, q: int, n: int) -> bool:
    """`Fitted it with a bit of oil on the lip`: what was used."""
    tokens = scene.tokens
    with_it = q > 0 and tokens[q - 1].low in ("with", "w") and any(t.sense("did", "doing") for t in tokens[:q])
    used = [t.thing.kind for t in tokens[q + n : q + n + 2] if t.thing is not None]
    return with_it and not {"fluid", "material"}.isdisjoint(used)


def _verdict(name: str, flaw: bool, low: str) -> str:
    if name == "little":
        return "good" if flaw else "bad"
    if flaw:
        return "bad"
    if name == "much":
        return "bad" if low.startswith(("too", "way too", "far too", "excess", "so much")) else "good"
    return ""


def _noun(clause: Clause, k: int, some: bool) -> tuple[bool, int] | None:
    """Whether a flaw stands from token k on, or what is wanted, and its last token."""
    scene = clause.scene
    for i in range(k, min(k + ADJECTIVES, clause.span.stop)):
        token = scene.tokens[i]
        for name in FLAWS if some else ALL:
            if n := says(scene, name, i, 3):
                return (name != "wanted", i + n - 1) if not _goes_on(scene, i + n) else None
            if token.thing is not None and token.low.rpartition(" ")[2] in scene.book.owed[name]:
                return name != "wanted", i
        if token.thing is not None or token.kind in PAUSES or token.sense("did", "person"):
            return None
    return None


def _goes_on(scene: Scene, k: int) -> bool:
    """Whether the noun is but the first word of a name: `a water pump`."""
    return k < len(scene.tokens) and scene.tokens[k].thing is not None


def _denied(clause: Clause, q: int) -> int | None:
    for i in range(q - 1, max(clause.span.start, q - 5) - 1, -1):
        low = clause.scene.tokens[i].low
        if low in DENIES or low.partition(" ")[0] in DENIES:
            return i
    return None


def _holder(clause: Clause, first: int, last: int) -> tuple[int | None] | None:
    """What has it: behind a preposition, or before a word of having; (None,) where it is what was talked of."""
    scene, tokens = clause.scene, clause.scene.tokens
    if (k := behind(clause, last + 1)) is not None:
        return (k,)
    k = subject(clause, first)
    before = tokens[first - 1] if first > clause.span.start else None
    if k is not None:
        said = tokens[k + 1 : first]
        joined = scene.text[tokens[k].start : tokens[k].end].lower().endswith(IS)
        if joined or not said or any(_has(scene, t) or t.kind == "comma" for t in said):
            return (k,)
        return None
    if before is None or _has(scene, before):
        return (None,) if points_back(scene, clause, first) or before is None else None
    return None


def _has(scene: Scene, token: Token) -> bool:
    """Whether a word joins a thing and what it has."""
    return token.low.rpartition(" ")[2] in scene.book.owed["having"]


def _leftover(clause: Clause, q: int) -> Draft | None:
    """`Nothing left on these shoes`, `loads left on it`."""
    scene = clause.scene
    for name, verdict in (("nothing", "bad"), ("lots", "good")):
        n = says(scene, name, q, 3)
        if n and q + n + 1 < clause.span.stop and scene.tokens[q + n].low == "of":
            n += 2  # `years of copper left`
        if n and (m := says(scene, "leftover", q + n, 2)):
            last = q + n + m - 1
            return _told(clause, LEFT, Said(verdict, q, last))
    return None
