"""The trail: how a line was read, from its words to the facts, the dropped ones too."""

from __future__ import annotations

from dataclasses import dataclass

from worklog_tui.extract.context import Context
from worklog_tui.extract.finish import Piece, finish
from worklog_tui.extract.reader import Passage, _sentences, read_sentence
from worklog_tui.extract.remember import remember
from worklog_tui.model import Fact, Machine
from worklog_tui.rulebook import Rulebook


@dataclass(frozen=True, slots=True)
class Trail:
    """The lines of the explanation, and the facts that came out."""

    lines: tuple[str, ...]
    facts: tuple[Fact, ...]


def explain(book: Rulebook, machine: Machine, words: str, track: str = "live") -> Trail:
    """How the words would be read as one note: tokens, rules with the words each took, what was let go and why."""
    context, lines, facts = Context.start(), [], []
    passage = Passage(words, (Piece("", 0, len(words), 0),), 0)
    for tokens in _sentences(passage, book, machine, track):
        scene, drafts = read_sentence(words, tokens, book, machine, context, track)
        for k, token in enumerate(scene.tokens):
            what = token.thing.name or "unknown name" if token.thing else ", ".join(sorted(token.classes))
            stances = f"  ({', '.join(sorted(token.stances))})" if token.stances else ""
            lines.append(f"{scene.said(k, k)}: {what}{stances}")
        for draft in drafts:
            filled = f", filled in: {', '.join(sorted(draft.filled))}" if draft.filled else ""
            lines.append(
                f"{draft.kind} by {draft.rule.id} from {scene.said(draft.first_used, draft.last_used)!r}{filled}"
            )
            lines += [f"    {step}" for step in draft.trail]
        lines += [f"dropped: {reason}" for reason in scene.dropped]
        facts += finish(drafts, scene, passage.pieces)
        context = remember(scene, drafts, context, len(scene.tokens))
    return Trail(tuple(lines), tuple(facts))
