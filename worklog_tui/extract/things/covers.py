"""Covers: once the belt guard is off, what is looked at is the belt."""

from __future__ import annotations

from dataclasses import replace

from worklog_tui.extract.tokens import Thing, Token
from worklog_tui.rulebook import Rulebook

COVERS = frozenset("cover guard lid shroud cowl cowling casing panel".split())
GONE = frozenset("off up out open away".split())


def taken_off(tokens: list[Token], k: int, whatever: bool = False) -> bool:
    """Whether the thing at token k is a cover that is out of the way: `guard off`, `took the lid off`; with `whatever`
    anything counts that lay over what is talked of.
    """
    thing = tokens[k].thing
    if thing is None:
        return False
    if whatever and k + 1 < len(tokens) and tokens[k + 1].low in GONE:
        return True
    if (thing.own or thing.words).lower().rsplit(" ", 1)[-1] not in COVERS:
        return False
    near = [*tokens[max(0, k - 3) : k], *tokens[k + 1 : k + 3]]
    return any(
        t.low in GONE or t.low.rpartition(" ")[2] in GONE or _removes(t) for t in near if t.clause == tokens[k].clause
    )


def _removes(token: Token) -> bool:
    return any(s.name == "remove" for s in token.senses if s.cls in ("did", "do", "doing"))


def under(thing: Thing, book: Rulebook) -> Thing | None:
    """What lies under a cover that is named after it; None where its name does not tell."""
    words, _, last = (thing.own or thing.words).rpartition(" ")
    if last.lower() not in COVERS or not words:
        return None
    name = words.lower().rsplit(" ", 1)[-1]
    sense = next((s for said in (words.lower(), name) for s in book.table.get(said, ()) if s[0] == "part"), None)
    if sense is None:
        return None
    return replace(thing, words=words, own=words, name=sense[1], kind=sense[2], per=sense[3], of=None, also=())
