"""What a person corrected about the facts of a note; it is kept beside the words and wins over every reading of them.

A correction names the words that it is about, as they were then. After another reading it is applied to the fact of
the same kind of which at least half of those words are the same; where there is none, the fact stands as added by hand.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from difflib import SequenceMatcher
from typing import Any

from worklog_tui.model import Act, Fact, FactKey, Note, Span
from worklog_tui.model.facts import BY_HAND, from_plain

HALF = 0.5
_PARTS = {"reading": "subject", "finding": "part", "work": "part", "suspect": "cause", "follow_up": "topic"}
"The field that says what a fact is about."


@dataclass(frozen=True, slots=True)
class Counted:
    """The facts of a note as they count: for sure, and those to be asked about."""

    sure: tuple[Fact, ...]
    asked: tuple[Fact, ...]


def corrected(note: Note, read: Sequence[Fact], acts: Iterable[Act], line: float) -> Counted:
    """The facts of a note after what a person corrected; `acts` are those that stand, in their order."""
    facts = list(read)
    lost: list[Fact] = []
    for act in acts:
        value = act.value if isinstance(act.value, dict) else {}
        if act.verb == "set subject":
            if note.uid in value.get("notes", ()):
                facts = [_about(fact, value) for fact in facts]
        elif act.verb in ("correct fact", "strike fact", "add fact") and act.target.split("/", 1)[0] == note.uid:
            _apply(note, act, value, facts, lost)
    sure = _apart(fact for fact in facts if fact.confidence >= line)
    return Counted(sure, _apart([*(fact for fact in facts if fact.confidence < line), *lost], sure))


def _apply(note: Note, act: Act, value: Mapping[str, Any], facts: list[Fact], lost: list[Fact]) -> None:
    key = key_of(act.target)
    if key is None:
        return
    span, gone = now_at(key, str(value.get("words", note.words)), note.words)
    here = None if gone else _found(facts, key, span)
    if act.verb == "strike fact":
        if here is not None:
            del facts[here]
        return
    changes = value.get("to", {})
    if act.verb == "correct fact" and here is not None:
        facts[here] = changed(facts[here], changes)
        return
    fact = _made(value, changes, span)
    if fact is None:
        return
    if gone:
        lost.append(replace(fact, confidence=0.0))
    elif here is None or not _says(facts[here], fact):
        facts.append(fact)


def changed(fact: Fact, changes: Mapping[str, Any]) -> Fact:
    """The fact with other values in some fields; as it is when it says so already. Without any it is confirmed."""
    if not changes:
        return replace(fact, filled=(), rule=BY_HAND, confidence=1.0)
    new: dict[str, Any] = {
        name: tuple(v) if isinstance(v, list) else v for name, v in changes.items() if hasattr(fact, name)
    }
    if all(getattr(fact, name) == v for name, v in new.items()):
        return fact
    filled = tuple(name for name in fact.filled if name not in new)
    return replace(fact, **new, filled=filled, rule=BY_HAND, confidence=1.0)


def _made(value: Mapping[str, Any], changes: Mapping[str, Any], span: Span) -> Fact | None:
    try:
        fact = from_plain(dict(value["fact"]))
    except (KeyError, TypeError):
        return None
    made = replace(changed(fact, changes) if changes else fact, rule=BY_HAND, confidence=1.0)
    return replace(made, main=span, evidence=(span,))


def _about(fact: Fact, value: Mapping[str, Any]) -> Fact:
    """The fact about another thing, when its own was not said there or is the one that was wrong."""
    name = _PARTS.get(fact.kind, "")
    was = str(value.get("was", "")).casefold()
    if not name or (fact.about.casefold() != was if was else name not in fact.filled and fact.about):
        return fact
    return changed(fact, {name: str(value["subject"]), "name": str(value.get("name", ""))})


def _found(facts: Sequence[Fact], key: FactKey, span: Span) -> int | None:
    """The fact of that kind of which most of the words are the same; the one that stands there exactly before all."""
    best: tuple[float, int] | None = None
    for place, fact in enumerate(facts):
        if fact.kind != key.kind or fact.main.note != span.note:
            continue
        shared = min(fact.main.end, span.end) - max(fact.main.start, span.start)
        longer = max(fact.main.end - fact.main.start, span.end - span.start, 1)
        exact = (fact.main.start, fact.main.end, fact.nth) == (span.start, span.end, key.nth)
        share = 2.0 if exact else shared / longer
        if share >= HALF and (best is None or share > best[0]):
            best = share, place
    return best[1] if best else None


def _says(fact: Fact, other: Fact) -> bool:
    """Whether a fact that was read says what was added by hand."""
    plain = {"main", "evidence", "quote", "rule", "confidence", "filled", "nth", "name", "state"}
    names = [name for name in fact.__dataclass_fields__ if name not in plain]
    return all(getattr(fact, name) == getattr(other, name) for name in names)


def now_at(key: FactKey, then: str, now: str) -> tuple[Span, bool]:
    """Where the words of an anchor stand in the present wording, and whether more than half of them are gone."""
    span = Span(key.note, key.start, key.end)
    if then == now:
        return span, False
    if key.start == key.end:
        return span._replace(start=len(now), end=len(now)), False
    kept: list[int] = []
    for old, new, size in SequenceMatcher(None, then, now, autojunk=False).get_matching_blocks():
        first, last = max(old, key.start), min(old + size, key.end)
        kept += range(new + first - old, new + last - old)
    if len(kept) < max(HALF * (key.end - key.start), 1):
        return span._replace(start=0, end=0), True
    return Span(key.note, min(kept), max(kept) + 1), False


def key_of(anchor: str) -> FactKey | None:
    """The key that an anchor names as text; None when it names something else."""
    parts = anchor.rsplit("/", 4)
    if len(parts) != 5 or not all(part.isdecimal() for part in parts[2:]):
        return None
    return FactKey(parts[0], parts[1], int(parts[2]), int(parts[3]), int(parts[4]))


def _apart(facts: Iterable[Fact], besides: Iterable[Fact] = ()) -> tuple[Fact, ...]:
    """The facts, numbered where two of a kind stand on the same words."""
    seen = {fact.key for fact in besides}
    row = []
    for fact in facts:
        while fact.key in seen:
            fact = replace(fact, nth=fact.nth + 1)
        seen.add(fact.key)
        row.append(fact)
    return tuple(row)
