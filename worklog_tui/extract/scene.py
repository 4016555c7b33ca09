"""A scene: one sentence as tokens, with everything that its reading may look at."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any, TypeVar

from worklog_tui.extract.card import Known, known_values
from worklog_tui.extract.context import Context
from worklog_tui.extract.numbers.amounts import Amount
from worklog_tui.extract.tokens import Thing, Token
from worklog_tui.model import Machine
from worklog_tui.rulebook import Rulebook
from worklog_tui.rulebook.patterns import Rule

T = TypeVar("T")
NONE: frozenset[str] = frozenset()


def announced(book: Rulebook, token: Token) -> str:
    """The quantity whose running test a word or a thing announces; empty when it announces none."""
    topics, low = book.topics, token.low
    if low in topics and (found := topics[low]):
        return found
    if token.thing is not None and (found := topics.get(token.thing.name, "")):
        return found
    return next((q for word in low.split() if (q := topics.get(word))), "") if " " in low else ""


def _announcements(book: Rulebook, tokens: list[Token]) -> list[str]:
    """What each token announces; most are plain words, of which the topics tell at once."""
    topics = book.topics
    return [
        topics.get(token.low, "") if token.thing is None and " " not in token.low else announced(book, token)
        for token in tokens
    ]


def suggested_by(book: Rulebook, token: Token) -> frozenset[str]:
    """The quantities that a word or a thing suggests when it stands near a number."""
    found = book.suggests.get(token.low, NONE)
    return found | book.suggests.get(token.thing.name, NONE) if token.thing is not None else found


def clauses_of(tokens: list[Token]) -> list[range]:
    """For each token the indexes of the tokens of its clause."""
    found: list[range] = []
    first, clause = 0, 0
    for k, token in enumerate(tokens):
        if token.clause != clause:
            found += [range(first, k)] * (k - first)
            first, clause = k, token.clause
    return found + [range(first, len(tokens))] * (len(tokens) - first)


BEHIND = 8
"Tokens behind a number that still say what it is."


@dataclass(slots=True)
class Scene:
    """One sentence, or an unfinished piece of talk, with its surroundings."""

    text: str
    tokens: list[Token]
    book: Rulebook
    machine: Machine
    context: Context
    typed: bool
    boundary: int = 0
    "Where in the text the note begins, behind the unfinished words of the one before."
    dropped: list[str] = field(default_factory=list)
    "What was read and let go again, in plain words, for the trail."
    again: list[tuple[str, Any, str]] = field(default_factory=list)
    "Figures of before that are said again only to be put right: quantity, value and unit."
    bearers: dict[int, frozenset[str]] = field(default_factory=dict)
    "What the states that were asked for are mostly said of, by where they begin in the text."
    saliences: dict[int, int] = field(default_factory=dict)
    "How much the things that were asked for are what the talk is about."

    bare: dict[int, tuple[str, str, float, float]] = field(default_factory=dict)
    "What bare numbers were taken for, by the index of their token: quantity, unit, factor and value in that unit."

    openings: dict[str, list[int]] | None = None
    "The tokens with which words of a list begin, by its name, once they were asked for."
    opened: list[frozenset[str]] | None = None
    "For each token the lists with whose words its first word begins, once they were asked for."

    complaint: bool | None = None
    "Whether it tells a complaint, once that was asked."

    _clauses: list[range] = field(default_factory=list)
    _suggested: dict[int, frozenset[str]] = field(default_factory=dict)
    _topics: list[str | None] = field(default_factory=list)
    _classes: frozenset[str] | None = None
    _lows: frozenset[str] | None = None
    _words: frozenset[str] | None = None
    _firsts: list[str] | None = None
    _things: list[int] | None = None
    _amounts: list[tuple[int, Amount]] | None = None
    _announced: list[str] | None = None
    _card: Known | None = None
    _known: dict[tuple[Any, ...], Any] = field(default_factory=dict)

    def once(self, key: tuple[Any, ...], work: Callable[[], T]) -> T:
        """What the work gives, which several rules ask for at the same words; the key names the work and its words."""
        if key not in self._known:
            self._known[key] = work()
        found: T = self._known[key]
        return found

    def clause(self, i: int) -> range:
        """The indexes of the tokens of the clause that token i stands in."""
        if not self._clauses:
            self._clauses = clauses_of(self.tokens)
        return self._clauses[i]

    def suggested(self, i: int) -> frozenset[str]:
        """The quantities that the words and things of the clause of token i suggest, up to a few behind it."""
        if (found := self._suggested.get(i)) is None:
            span = self.clause(i)
            near = range(span.start, min(span.stop, i + 1 + BEHIND))
            quantities = (suggested_by(self.book, self.tokens[k]) for k in near)
            found = self._suggested[i] = frozenset().union(*quantities)
        return found

    def opens_note(self, k: int) -> bool:
        """Whether the note begins at token k, behind unfinished words of the one before."""
        return k > 0 and self.tokens[k - 1].start < self.boundary <= self.tokens[k].start

    def said(self, first: int, last: int) -> str:
        """The words from token first to token last (inclusive), on one line."""
        return " ".join(self.text[self.tokens[first].start : self.tokens[last].end].split())

    def things(self, span: range) -> list[int]:
        """The indexes of the things in a span."""
        if self._things is None:
            self._things = [k for k, token in enumerate(self.tokens) if token.kind == "thing"]
        return [k for k in self._things if k in span]

    def amounts(self) -> list[tuple[int, Amount]]:
        """The amounts with the indexes of their tokens; most sentences have none."""
        if self._amounts is None:
            self._amounts = [(k, token.amount) for k, token in enumerate(self.tokens) if token.amount is not None]
        return self._amounts

    def topic_before(self, i: int) -> str | None:
        """The quantity whose test a word of this sentence announces before token i; the last one counts."""
        if not self._topics:
            said: str | None = None
            for found in self.announcements():
                self._topics.append(said)
                said = found or said
        return self._topics[i]

    def holds(self, *classes: str) -> bool:
        """Whether any token of the sentence has one of the classes."""
        if self._classes is None:
            self._classes = frozenset().union(*[token.classes for token in self.tokens])
        return not self._classes.isdisjoint(classes)

    def lows(self) -> frozenset[str]:
        """What is said in the sentence, token by token."""
        if self._lows is None:
            self._lows = frozenset([token.low for token in self.tokens])
        return self._lows

    def words(self) -> frozenset[str]:
        """All its words, one by one."""
        if self._words is None:
            self._words = frozenset(" ".join(self.lows()).split())
        return self._words

    def firsts(self) -> list[str]:
        """The first word of each token."""
        if self._firsts is None:
            self._firsts = [token.low.partition(" ")[0] for token in self.tokens]
        return self._firsts

    def announcements(self) -> list[str]:
        """For each token the quantity whose running test it announces, or an empty text."""
        if self._announced is None:
            self._announced = _announcements(self.book, self.tokens)
        return self._announced

    def card(self) -> Known:
        """What the machine card says in numbers."""
        if self._card is None:
            self._card = known_values(self.machine, self.book)
        return self._card

    def engine(self) -> Thing:
        """What `it runs` is said of: the engine, or the motor of a machine without one."""
        kind = set(self.machine.kind.lower().replace(",", " ").split())
        driven = not self.machine.fuel and self.book.lists["driven"] & kind and not self.book.lists["engined"] & kind
        if self.machine.fuel == "none" or driven:
            return Thing("motor", "electric motor", "machine")
        return Thing("engine", "engine", "machine")


@dataclass(slots=True)
class Draft:
    """A fact in the making."""

    kind: str
    main: int
    "Index of the token of the main words."
    last: int
    "Index of the last token of the main words."
    rule: Rule
    fields: dict[str, Any]
    thing: Thing | None = None
    thing_at: int | None = None
    filled: set[str] = field(default_factory=set)
    confidence: float = 0.8
    first_used: int = 0
    last_used: int = 0
    trail: list[str] = field(default_factory=list)

    @property
    def rank(self) -> tuple[float, int]:
        """Of two drafts of the same words, the higher one stays."""
        return (self.confidence - 0.05 * len(self.filled), self.last_used - self.first_used)
