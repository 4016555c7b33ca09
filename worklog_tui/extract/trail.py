"""The trail: how a line was read, from its words to the facts, the dropped ones too."""

from __future__ import annotations

from collections.abc import Iterator
from copy import copy
from dataclasses import dataclass

from worklog_tui.extract.context import Context
from worklog_tui.extract.finish import finish
from worklog_tui.extract.matching import matches
from worklog_tui.extract.passage import alone
from worklog_tui.extract.reader import _sentences, read_sentence
from worklog_tui.extract.remember import remember
from worklog_tui.extract.scene import Draft
from worklog_tui.extract.tokens import Token
from worklog_tui.model import Fact, Machine
from worklog_tui.rulebook import Rulebook

STANCES = {
    "not": "denied",
    "if": "supposed",
    "would": "supposed",
    "maybe": "perhaps",
    "plan": "planned",
    "book": "from the book",
    "asked": "asked",
    "reported": "told by others",
    "memory": "of the past",
    "doubt": "doubted",
    "disown": "taken back",
    "joke": "a joke",
    "rule": "a rule of thumb",
}
SENSES = {
    "bad": "fault", "good": "good", "noted": "noted", "did": "work done", "doing": "work going on", "do": "work named",
    "does": "work named", "cause": "cause",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Read:
    """A fact of the trail, with the words and the steps that made it."""

    fact: Fact
    words: str
    steps: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Met:
    """A pattern that stands in a line."""

    rule: str
    words: str
    kept: bool
    "Whether a fact was made by it."
    came: str
    "What came of it, in plain words."


@dataclass(frozen=True, slots=True)
class Trail:
    """What each word was taken for, what was read from them, and what was let go and why."""

    words: tuple[tuple[str, str], ...]
    read: tuple[Read, ...]
    dropped: tuple[str, ...]

    @property
    def facts(self) -> tuple[Fact, ...]:
        """The facts that came out."""
        return tuple(r.fact for r in self.read)

    @property
    def lines(self) -> tuple[str, ...]:
        """All of it as lines, for a test that fails."""
        return (
            *(f"{said}: {meaning}" for said, meaning in self.words),
            *(f"{r.fact.kind} from {r.words!r}: {'; '.join(r.steps)}" for r in self.read),
            *(f"let go: {reason}" for reason in self.dropped),
        )


def explain(book: Rulebook, machine: Machine, words: str, track: str = "live") -> Trail:
    """How the words would be read as one note."""
    context = Context.start()
    meanings: list[tuple[str, str]] = []
    read: list[Read] = []
    dropped: list[str] = []
    passage = alone(words, track, book)
    for tokens in _sentences(passage, book, machine, track):
        known = context._replace(recent=tuple(r.fact for r in read))
        scene, drafts = read_sentence(passage.text, tokens, book, machine, known, track)
        meanings += [(scene.said(k, k), said) for k, token in enumerate(scene.tokens) if (said := _meaning(token))]
        for draft, fact in zip(drafts, finish(drafts, scene, passage.pieces), strict=True):
            read.append(Read(fact, scene.said(draft.first_used, draft.last_used), _steps(draft)))
        dropped += scene.dropped
        context = remember(scene, drafts, context, len(scene.tokens))
    return Trail(tuple(meanings), tuple(read), tuple(dropped))


def patterns_met(book: Rulebook, machine: Machine, words: str, track: str = "live") -> list[Met]:
    """Every pattern that stands in the words, read as one note, in the order of the words."""
    found: list[tuple[int, Met]] = []
    passage = alone(words, track, book)
    for tokens in _sentences(passage, book, machine, track):
        scene, drafts = read_sentence(passage.text, tokens, book, machine, Context.start(), track)
        made = {(d.rule.id, d.first_used) for d in drafts}
        for match in matches(scene.tokens, book):
            said = scene.said(match.first, match.last - 1)
            kept = (match.rule.id, match.first) in made
            if not kept and "shape" in match.rule.gives:
                continue  # its words have not the shape that it asks for
            came = "kept" if kept else next((r for r in scene.dropped if match.rule.id in r), "nothing is made of it")
            found.append((scene.tokens[match.first].start, Met(match.rule.id, said, kept, came)))
    return [met for _, met in sorted(found, key=lambda at: at[0])]


def tokens_of(
    book: Rulebook, machine: Machine, words: str, track: str = "live"
) -> Iterator[tuple[list[Token], list[Token]]]:
    """For each sentence of the words, read as one note: its tokens as they were cut, and after things were folded."""
    passage = alone(words, track, book)
    for tokens in _sentences(passage, book, machine, track):
        cut = [copy(t) for t in tokens]
        scene, _ = read_sentence(passage.text, tokens, book, machine, Context.start(), track)
        yield cut, scene.tokens


def _steps(draft: Draft) -> tuple[str, ...]:
    filled = (f"not said but filled in: {', '.join(sorted(draft.filled))}",) if draft.filled else ()
    return (f"pattern {draft.rule.id}", *draft.trail, *filled)


def _meaning(token: Token) -> str:
    """What a token was taken for, in plain words; empty for words that only join others."""
    what = _kind(token)
    stances = ", ".join(sorted({STANCES[s] for s in token.stances if s in STANCES}))
    return f"{what} ({stances})" if what and stances else what


def _kind(token: Token) -> str:
    if token.thing is not None:
        which = f", {token.thing.which}" if token.thing.which else ""
        return f"part: {token.thing.name}{which}" if token.thing.known else "a name that the vocabulary does not know"
    if token.amount is not None:
        low, high = token.amount.low, token.amount.high
        return (
            f"amount: {low:g} {token.amount.unit}"
            if low == high
            else f"amount: {low:g} to {high:g} {token.amount.unit}"
        )
    if token.thread is not None:
        return f"thread: {token.thread.designation}"
    if token.which:
        return f"which one: {token.which}"
    if token.value is not None:
        return f"number: {token.value:g}" if token.high is None else f"number: {token.value:g} to {token.high:g}"
    return next((f"{SENSES[s.cls]}: {s.name}" for s in token.senses if s.cls in SENSES), "")
