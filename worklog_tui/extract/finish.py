"""Drafts become facts: words quoted, places in the notes found, texts tidied."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from worklog_tui.extract.finders.findings import part_words
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.talk.sources import borrowed_at
from worklog_tui.extract.things.spelt_out import spelt_out
from worklog_tui.extract.tokens import Token
from worklog_tui.model import Fact, Finding, FollowUp, Number, Reading, Span, Suspect, Trait, Work

BOTH = 5
"Tokens of the two that a condition lies between."
LEADING = (
    "the ",
    "a ",
    "an ",
    "this ",
    "that ",
    "my ",
    "his ",
    "her ",
    "its ",
    "some ",
    "any ",
    "your ",
    "our ",
    "their ",
    "them ",
    "those ",
    "these ",
)


@dataclass(frozen=True, slots=True)
class Piece:
    """Words of a note within the text of a scene: scene characters start to end are the note's from `offset` on."""

    note: str
    start: int
    end: int
    offset: int
    typed: str = ""
    "What was typed there, where shorthand was written out; such words are taken whole."

    def within(self, start: int, end: int) -> Span:
        """The words of the note that stand from start to end."""
        if self.typed:
            return Span(self.note, self.offset, self.offset + len(self.typed))
        return Span(self.note, max(start, self.start) - self.start + self.offset,
                    min(end, self.end) - self.start + self.offset)  # fmt: skip


def finish(drafts: list[Draft], scene: Scene, pieces: tuple[Piece, ...]) -> list[Fact]:
    """The facts of a sentence, in the order of the text."""
    facts: list[Fact] = []
    seen: dict[tuple[str, str, int, int], int] = {}
    for draft in drafts:
        start, end = scene.tokens[draft.main].start, scene.tokens[draft.last].end
        main = spans(start, end, pieces)[0]
        key = (draft.kind, main.note, main.start, main.end)
        nth = seen.get(key, 0)
        seen[key] = nth + 1
        facts.append(_fact(draft, scene, main, nth, pieces))
    return facts


def spans(start: int, end: int, pieces: tuple[Piece, ...]) -> list[Span]:
    """The words start to end of the scene as words of notes; a thought may break across two."""
    found: list[Span] = []
    for piece in pieces:
        if piece.start < end and start < piece.end:
            span = piece.within(start, end)
            if found and found[-1].note == span.note and found[-1].end == span.start:
                span = Span(span.note, found.pop().start, span.end)
            found.append(span)
    return found or [Span(pieces[-1].note, 0, 0)]


def _as_typed(first: int, last: int, scene: Scene, pieces: tuple[Piece, ...]) -> str:
    """The words from one token to another as they stand in the notes."""
    if not any(piece.typed for piece in pieces):
        return scene.said(first, last)
    start, end = scene.tokens[first].start, scene.tokens[last].end
    said = (
        piece.typed or scene.text[max(start, piece.start) : min(end, piece.end)]
        for piece in pieces
        if piece.start < end and start < piece.end
    )
    return " ".join("".join(said).split())


def _fact(draft: Draft, scene: Scene, main: Span, nth: int, pieces: tuple[Piece, ...]) -> Fact:
    first, last = min(draft.first_used, draft.main), max(draft.last_used, draft.last)
    if draft.thing_at is not None:
        first, last = min(first, draft.thing_at), max(last, draft.thing_at)
    quote = _as_typed(first, last, scene, pieces)
    evidence = tuple(spans(scene.tokens[first].start, scene.tokens[last].end, pieces))
    name = draft.thing.name if draft.thing else ""
    f = draft.fields
    common: dict[str, Any] = {
        "main": main, "nth": nth, "evidence": evidence, "quote": quote, "rule": draft.rule.id,
        "confidence": round(draft.confidence, 3), "filled": tuple(sorted(draft.filled)),
    }  # fmt: skip
    match draft.kind:
        case "reading":
            fields = {k: f[k] for k in ("quantity", "value", "unit", "role", "condition", "doubtful")}
            source = borrowed_at(scene, draft.main) if f["role"] == "specified" else ""
            subject = uncapped(tidy(f["subject"]), scene)
            return Reading(**common, **fields, subject=subject, name=name, source=source)
        case "finding":
            part = uncapped(tidy(part_words(draft, scene)), scene)
            return Finding(**common, part=part, condition=_condition(draft, scene),
                           verdict=f["verdict"], name=name, state=f["state"])  # fmt: skip
        case "work":
            return Work(
                **common,
                action=f["action"],
                part=uncapped(tidy(draft.thing.words if draft.thing else ""), scene),
                used=uncapped(tidy(f["used"]), scene).removesuffix("'s").removesuffix("’s"),
                name=name,
            )
        case "suspect":
            cause = uncapped(tidy(_cause(draft, scene)), scene)
            return Suspect(**common, cause=cause, standing=f["standing"], name=f["name"])
        case "trait":
            return Trait(**common, **{k: f[k] for k in ("trait", "value", "source", "doubtful")})
        case "number":
            return Number(**common, **{k: f[k] for k in ("number", "of", "source")})
        case _:
            return FollowUp(**common, topic=uncapped(tidy(f["topic"]), scene), reason=f["reason"], name=f["name"])


def _cause(draft: Draft, scene: Scene) -> str:
    """The words of a suspect, shop shorthand spelt out."""
    words = " ".join(str(draft.fields["cause"]).split())
    return spelt_out(words, draft.thing.name) if draft.thing is not None else words


def _condition(draft: Draft, scene: Scene) -> str:
    words = uncapped(draft.fields.get("same") or scene.said(draft.main, _with_both(draft.last, scene)), scene)
    return f"not {words}" if draft.fields.get("denied") else words


def _with_both(last: int, scene: Scene) -> int:
    """The last token of a condition, with the two that it lies between: `blown between two and three`."""
    tokens = scene.tokens
    if not tokens[last].low.endswith(" between"):
        return last
    end = next((k for k in range(last + 1, len(tokens)) if not _one_of_two(tokens[k])), len(tokens))
    return min(end - 1, last + BOTH)


def _one_of_two(token: Token) -> bool:
    return token.low in ("and", "the", "both") or token.thing is not None or token.kind in ("number", "which")


def tidy(words: str) -> str:
    """Without an article in front, on one line."""
    flat = " ".join(words.split()).strip(" ,.;:")
    return flat.partition(" ")[2] if flat.lower().startswith(LEADING) else flat


def uncapped(words: str, scene: Scene) -> str:
    """What a sentence began with, with a small letter, where its first word is of the trade; a name keeps its own."""
    first = words.partition(" ")[0]
    if not (first[:1].isupper() and first[1:].islower()):
        return words
    low = first.lower().partition("'")[0]
    known = low in scene.book.table or bool(scene.book.table.goes_on(low))
    return low[0] + words[1:] if known else words
