"""A clause, and what may be asked of it: which words stand in it, what they are said of, whether it is put off."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from worklog_tui.extract.finders.owed_thing import returnable
from worklog_tui.extract.said import opening, says
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.things.subjects import earlier, remembered
from worklog_tui.extract.tokens import Thing, Token
from worklog_tui.rulebook.patterns import Rule

__all__ = ["Clause", "clauses", "named_after", "named_before", "opening", "owed", "put_off", "rule", "says"]
MEANT = ["plan", "book", "not", "if", "maybe", "asked", "would", "meanwhile", "wondered"]
"Stances in which what is owed is told; what is only joked, remembered or told by others owes nothing."
AGAINST = frozenset({"joke", "memory", "reported", "rule"})
WITHIN = frozenset("in after within every another for".split())
"Words before a span of time that is still to go by."
EVENT = frozenset({"when", "once", "whenever", "after"})
"With these an event begins that is waited for."
REACH = 14
"Tokens within which the time is told."
FAR = ("day", "week", "month", "year")


@dataclass(frozen=True, slots=True)
class Clause:
    """A clause of a sentence."""

    scene: Scene
    span: range

    def tokens(self) -> list[Token]:
        """Its tokens."""
        return self.scene.tokens[self.span.start : self.span.stop]

    def against(self) -> bool:
        """Whether it is a joke, a memory, or said by somebody else."""
        return any(t.stances & AGAINST for t in self.tokens())

    def asked(self) -> bool:
        """Whether it is a question."""
        return any("asked" in t.stances for t in self.tokens())

    def says(self, name: str, k: int) -> int:
        """How many tokens from token k on are one of the words of a list of grammars/owed.toml; 0 for none."""
        return says(self.scene, name, k)

    def has(self, *classes: str) -> bool:
        """Whether a word of one of the classes stands in it."""
        return any(not t.classes.isdisjoint(classes) for t in self.tokens())

    def things(self, first: int, last: int) -> list[int]:
        """The indexes of things that can be come back to, from token first up to token last (exclusive)."""
        return [k for k in self.scene.things(range(first, last)) if _returns(self.scene.tokens[k])]


def clauses(scene: Scene) -> list[Clause]:
    """The clauses of a scene, in order; a stop ends one."""
    return [Clause(scene, span) for span in scene.once(("spans",), lambda: _spans(scene.tokens))]


def _spans(tokens: list[Token]) -> list[range]:
    spans: list[range] = []
    first = 0
    for k, (token, after) in enumerate(pairwise(tokens), 1):
        if after.clause != token.clause or token.kind == "stop":
            spans.append(range(first, k))
            first = k
    return [*spans, range(first, len(tokens))] if tokens else spans


def _returns(token: Token) -> bool:
    return token.thing is not None and (returnable(token.thing) or token.thing.kind == "unknown")


def put_off(scene: Scene, first: int, events: bool = True) -> bool:
    """Whether the words from token first to the end of the sentence put it off to another time."""
    tokens, clause = scene.tokens, scene.tokens[first].clause
    for k in range(first, min(first + REACH, len(tokens))):
        token = tokens[k]
        if token.kind == "stop":
            return False
        if token.clause != clause:
            if token.low.partition(" ")[0] not in EVENT:
                return False
            clause = token.clause
        if token.sense("later", "day") or says(scene, "sometime", k):
            return True
        if k and tokens[k - 1].low in WITHIN and token.amount is not None and token.amount.unit in FAR:
            return True
        if (
            events
            and k > first
            and token.low.partition(" ")[0] in EVENT
            and k + 1 < len(tokens)
            and tokens[k + 1].kind != "stop"
        ):
            return True
    return False


PLAIN = 3
"Words of a name that the vocabulary does not know, at most."
_NO_NAME = (
    "filler", "copula", "pronoun", "person", "break", "not", "did", "do", "doing", "article", "bad", "good", "day",
    "want",
)  # fmt: skip


def _names(token: Token) -> bool:
    return token.kind in ("word", "term") and token.low.isalpha() and len(token.low) > 2 and not token.sense(*_NO_NAME)


def named_before(scene: Scene, k: int, first: int) -> tuple[int, int] | None:
    """The tokens of a name that no vocabulary knows right before token k: `the dowser bulbs want …`."""
    at = k
    while at > first and k - at < PLAIN and _names(scene.tokens[at - 1]):
        at -= 1
    opens = at == first or bool(scene.tokens[at - 1].sense("article", "objectword", "break", "filler"))
    return (at, k - 1) if at < k and opens else None


def named_after(scene: Scene, k: int, last: int) -> tuple[int, int] | None:
    """The tokens of a name that no vocabulary knows behind token k and its article: `get the velvet`."""
    at = k
    while at < last and scene.tokens[at].sense("article", "objectword"):
        at += 1
    end = at
    while end < last and end - at < PLAIN and _names(scene.tokens[end]):
        end += 1
    return (at, end - 1) if k < at < end else None


def talked_of(scene: Scene, at: int) -> Thing | None:
    """What `it` before token `at` stands for: a thing of this sentence, else one of the last notes."""
    k = earlier(scene, at, returnable)
    if k is None:
        before = [n for n in scene.things(range(at)) if _returns(scene.tokens[n])]
        k = before[-1] if before else None
    return scene.tokens[k].thing if k is not None else remembered(scene, returnable, fresh=2)


def owed(scene: Scene, rule: Rule, first: int, last: int, words: str, thing: Thing | None, reason: str) -> Draft:
    """A follow-up that stands on the tokens first to last (inclusive)."""
    fields = {"topic": words, "reason": reason, "name": thing.name if thing is not None else ""}
    return Draft("follow_up", first, last, rule, fields, thing=thing, confidence=rule.confidence,
                 first_used=first, last_used=last)  # fmt: skip


def rule(name: str, confidence: float) -> Rule:
    """The name under which a reading of this room is explained."""
    return Rule(f"owed.{name}", "", {"kind": "follow_up", "even": MEANT, "reason": "to do"}, (), (), confidence)
