"""Viewers' comments read against the log: what each is, what it is about, and the line that already answers it."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from worklog_tui.logbook.comment_kinds import kind_of
from worklog_tui.logbook.comment_topics import QUANTITIES, Asked, Table, asked_about, technical
from worklog_tui.logbook.comment_words import CommentWords
from worklog_tui.logbook.same_thing import Thing, same, thing
from worklog_tui.logbook.words import FILLER, one_form, raw_words
from worklog_tui.model import Comment, CommentReading, Fact, FollowUp, History, Place, Reading, Suspect

_ANSWERS = {
    "question": {"finding": 4.0, "reading": 3.5, "work": 3.0, "suspect": 2.0, "follow_up": 2.5},
    "suggestion": {"follow_up": 5.0, "work": 3.0, "suspect": 3.0, "finding": 2.5, "reading": 2.0},
}
"How well a kind of fact answers a kind of comment (judgement)."
TAKEN_UP = 0.6
"The share of the words of an own question that a comment must hold to be about it."
OF_THE_SAME = 0.35
"From what share of a suggestion's rarer words a line in which nothing was understood may answer it."
MUCH_ALIKE = 0.3
"From what share of a comment's rarer words a line speaks of the same without naming the thing."
ENOUGH = 4.0
"What a line must weigh to answer."


def read_all(
    history: History, words: CommentWords, table: Table, comments: Sequence[Comment]
) -> tuple[CommentReading, ...]:
    """Each comment read; the ones that ask the same share the wording of the first."""
    lines = Lines.of(history)
    groups: list[tuple[str, Asked, Place | None]] = []
    readings: list[CommentReading] = []
    for one in comments:
        kind = kind_of(words, one.words, technical(words, table, one.words))
        if kind.kind == "chatter":
            readings.append(CommentReading(one, "chatter"))
            continue
        asked = _own_question(lines, words.plain(one.words)) or asked_about(words, table, one.words, kind)
        group = next((g for g in groups if g[0] == kind.kind and g[1].keys & asked.keys), None)
        if group is None:
            group = (kind.kind, asked, answer(lines, kind.kind, asked, words.plain(one.words)))
            groups.append(group)
        readings.append(CommentReading(one, kind.kind, group[1].about, group[2]))
    return tuple(readings)


@dataclass(frozen=True, slots=True)
class Lines:
    """The log's lines with their words, rare words weighing more."""

    history: History
    facts: tuple[Fact, ...]
    stems: dict[str, frozenset[str]]
    "Note uid: its words in one form."
    weight: dict[str, float]

    @classmethod
    def of(cls, history: History) -> Lines:
        """The lines of a history."""
        stems = {n.uid: _stems(n.words) for r in history.sessions for n in r.notes}
        often = Counter(w for row in stems.values() for w in row)
        weight = {w: math.log(1 + len(stems) / n) for w, n in often.items()}
        return cls(history, tuple(history.facts()), stems, weight)

    def alike(self, note: str, words: frozenset[str]) -> float:
        """How much of the words a line holds, from 0 to 1, rare ones counting more."""
        whole = sum(self.weight.get(w, 0.0) for w in words)
        return sum(self.weight[w] for w in words & self.stems[note]) / whole if whole else 0.0


def _own_question(lines: Lines, comment: str) -> Asked | None:
    """What the person himself asked, when a viewer takes it up: most of its words are in the comment."""
    said = _stems(comment)
    for fact in lines.facts:
        if isinstance(fact, FollowUp) and fact.reason == "question":
            words = _stems(fact.topic)
            if len(words) >= 2 and len(words & said) >= TAKEN_UP * len(words):
                return Asked(fact.topic, frozenset({f"own {fact.topic}"}), (fact.topic,))
    return None


def answer(lines: Lines, kind: str, asked: Asked, comment: str) -> Place | None:
    """The line that best answers a comment, the earliest of equals; None when nothing does.

    What the person still asks himself is not answered by what he said before.
    """
    if asked.topic is not None:
        return _by_topic(lines, asked, comment)
    said = _stems(comment)
    wanted = [thing(name, name) for name in asked.names] or [thing(asked.about)]
    best: tuple[float, int, Place] | None = None
    asking = False
    for fact in lines.facts:
        alike = lines.alike(fact.main.note, said)
        fits = any(same(about, w) for about in _tellings(fact) for w in wanted)
        if fits and isinstance(fact, FollowUp) and fact.reason == "question":
            best, asking = None, True
            continue
        worth = (
            _worth(fact, kind, asked)
            if fits
            else _ANSWERS[kind].get(fact.kind, 0.0) * (alike >= MUCH_ALIKE and not asking)
        )
        place = lines.history.place(fact.main.note)
        score = worth + 2 * alike
        rank = (score, place.order if asked.latest else -place.order)
        if worth and score >= ENOUGH and (best is None or rank > best[:2]):
            best = (*rank, place)
    if best is None and kind == "suggestion" and not asking:
        return _by_words(lines, said)
    return best[2] if best else None


def _by_words(lines: Lines, said: frozenset[str]) -> Place | None:
    """The line that speaks most of the same, when it speaks much of it: a test that was done without naming a part."""
    best = max(lines.stems, key=lambda note: lines.alike(note, said), default=None)
    return lines.history.place(best) if best is not None and lines.alike(best, said) >= OF_THE_SAME else None


def _tellings(fact: Fact) -> tuple[Thing, ...]:
    """What a fact is about; a reading also by its quantity: the compression of cylinder 1 is the compression."""
    about = thing(fact.about, getattr(fact, "name", ""))
    if isinstance(fact, Reading) and fact.quantity in QUANTITIES:
        return about, thing(f"{fact.subject} {fact.quantity}"), thing(fact.quantity)
    return (about,)


def _worth(fact: Fact, kind: str, asked: Asked) -> float:
    if isinstance(fact, Suspect) and kind == "question" and fact.standing == "suspected":
        return 0.0
    worth = _ANSWERS[kind].get(fact.kind, 0.0)
    if asked.plan and isinstance(fact, FollowUp):
        worth += 4.0
    if isinstance(fact, Reading) and asked.quantity == fact.quantity:
        worth += 3.0 if fact.role == "specified" else 1.5
    return worth


def _by_topic(lines: Lines, asked: Asked, comment: str) -> Place | None:
    topic = asked.topic
    if topic is None or not (topic.answer or topic.things):
        return None
    said = _stems(comment)
    things = [thing(name, name) for name in topic.things]
    notes = {
        f.main.note
        for f in lines.facts
        if f.kind == "work" and any(same(thing(f.about, getattr(f, "name", "")), t) for t in things)
    }
    best: tuple[float, Place] | None = None
    for record in lines.history.sessions:
        for note in record.notes:
            words = " " + " ".join(raw_words(note.words)) + " "
            hits = sum(f" {a} " in words or (a[-1:].isalnum() and f" {a}s " in words) for a in topic.answer)
            if not hits and note.uid not in notes:
                continue
            score = hits + 2.0 * (note.uid in notes) + lines.alike(note.uid, said)
            if (best is None or score > best[0]) and (hits or not topic.answer):
                best = (score, lines.history.place(note.uid))
    return best[1] if best else None


def _stems(text: str) -> frozenset[str]:
    return frozenset(one_form(w) for w in raw_words(text) if w not in FILLER and len(w) > 1)
