"""The log's lines by their words, and its facts by what they are about: found at once, however long the log is."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from itertools import pairwise
from typing import Any

from worklog_tui.logbook.same_thing import Thing, same, thing
from worklog_tui.logbook.words import FILLER, one_form, raw_words, word_set
from worklog_tui.model import Fact, FollowUp, History, Reading

QUANTITIES = word_set("gap compression pressure voltage current torque speed temperature resistance")
"Quantities that people speak of as of a thing."
_MEASURES = frozenset(map(one_form, QUANTITIES))
MANY = 500
"Notes from which on a word finds none by itself."
UNKNOWN = 0.4
"What a word that no line holds counts of the rarest word of the log (judgement)."


@dataclass(frozen=True, slots=True)
class ToldLines:
    """A history indexed for questions about it."""

    history: History
    notes: Mapping[str, tuple[str, ...]]
    "A word in one form: the notes that hold it."
    weight: Mapping[str, float]
    "How rare a word is."
    by_thing: Mapping[str, tuple[Thing, ...]]
    "A name, or the beginning of a head word: the things that facts tell of, each once."
    told_of: Mapping[Thing, tuple[Fact, ...]]
    by_note: Mapping[str, tuple[Fact, ...]]
    read: Mapping[str, tuple[Reading, ...]]
    "What was read off in each note."
    questions: tuple[tuple[FollowUp, frozenset[str]], ...]
    "What the person asked himself, with its words; the first of those that say the same."
    text: Mapping[str, str]
    "Each note's words as they were said, in order."
    spaced: Mapping[str, str]
    "The same in lower case with a blank round each word."
    words: Mapping[str, frozenset[str]]
    "The telling words of each note in one form."
    after: Mapping[str, str]
    "The note that follows, within a session."

    before: Mapping[str, str]
    "The note before it, within a session."
    by_topic: dict[Any, dict[str, tuple[int, bool]]] = field(default_factory=dict)
    "What was worked out of a topic that is asked about: for each note the words that answer it, and whether they must."
    worths: dict[tuple[str, str], float] = field(default_factory=dict)
    "What the facts of a note weigh for a kind of comment, whatever they are about, as far as it was worked out."

    @classmethod
    def of(cls, history: History) -> ToldLines:
        """The index of a history."""
        notes: dict[str, list[str]] = defaultdict(list)
        said = [note for record in history.sessions for note in record.notes]
        words = {note.uid: stems(note.words) for note in said}
        for uid, held in words.items():
            for word in held:
                notes[word].append(uid)
        count = len(said)
        told_of: dict[Thing, list[Fact]] = defaultdict(list)
        by_note: dict[str, list[Fact]] = defaultdict(list)
        facts = history.facts()
        for fact in facts:
            by_note[fact.main.note].append(fact)
            for one in tellings(fact):
                told_of[one].append(fact)
        by_thing: dict[str, list[Thing]] = defaultdict(list)
        for one in told_of:
            for key in _keys((one,)):
                by_thing[key].append(one)
        return cls(
            history,
            {word: tuple(row) for word, row in notes.items()},
            {word: math.log(1 + count / len(row)) for word, row in notes.items()},
            {key: tuple(row) for key, row in by_thing.items()},
            {one: tuple(row) for one, row in told_of.items()},
            {note: tuple(row) for note, row in by_note.items()},
            {note: tuple(fact for fact in row if isinstance(fact, Reading)) for note, row in by_note.items()},
            _own_questions(facts),
            {note.uid: note.words for note in said},
            {note.uid: f" {' '.join(raw_words(note.words))} " for note in said},
            words,
            {a.uid: b.uid for record in history.sessions for a, b in pairwise(record.notes)},
            {b.uid: a.uid for record in history.sessions for a, b in pairwise(record.notes)},
        )

    def likeness(self, said: frozenset[str]) -> dict[str, float]:
        """For each note that shares words: how much of the words it holds, from 0 to 1, rare ones counting more.

        Words that very many notes hold find none by themselves where a rarer one is known: a long log stays quick.
        """
        found = sorted((word for word in said if word in self.notes), key=lambda word: (len(self.notes[word]), word))
        few = [word for word in found if len(self.notes[word]) <= MANY] or found[:1]
        whole = sum(self.weight_of(word) for word in said)
        shares: dict[str, float] = defaultdict(float)
        for word in few:
            for note in self.notes[word]:
                shares[note] += self.weight[word] / whole
        for word in found[len(few) :]:
            for note in shares:
                shares[note] += self.weight[word] / whole if word in self.words[note] else 0.0
        return dict(shares)

    def weight_of(self, word: str) -> float:
        """How rare a word is; one that no line holds counts less than the rarest."""
        return self.weight[word] if word in self.weight else UNKNOWN * math.log(1 + len(self.text))

    def with_next(self, note: str) -> tuple[str, ...]:
        """A note's words and those of the note that follows."""
        after = self.after.get(note)
        return (self.text[note], self.text[after]) if after else (self.text[note],)

    def readings(self, note: str) -> tuple[Reading, ...]:
        """What was read off in a note."""
        return self.read.get(note, ())

    def about(self, wanted: Iterable[Thing]) -> list[Fact]:
        """The facts that are about one of the things."""
        wanted = tuple(wanted)
        near = dict.fromkeys(one for key in sorted(_keys(wanted)) for one in self.by_thing.get(key, ()))
        fitting = [one for one in near if any(same(one, w) and not _another(one, w) for w in wanted)]
        return list({id(fact): fact for one in fitting for fact in self.told_of[one]}.values())


def _another(told: Thing, wanted: Thing) -> bool:
    """Whether only a quantity is told, and that of a thing is wanted: a pressure is no pressure of the crankcase."""
    return told.words <= _MEASURES and bool(wanted.words - _MEASURES)


def _own_questions(facts: Iterable[Fact]) -> tuple[tuple[FollowUp, frozenset[str]], ...]:
    """The questions that the person asked, with their words; the first of those that say the same."""
    asked: dict[frozenset[str], FollowUp] = {}
    for fact in facts:
        if isinstance(fact, FollowUp) and fact.reason == "question":
            asked.setdefault(stems(fact.topic), fact)
    return tuple((fact, held) for held, fact in asked.items())


def tellings(fact: Fact) -> tuple[Thing, ...]:
    """What a fact is about; a reading also by its quantity: the compression of cylinder 1 is the compression."""
    about = thing(fact.about, getattr(fact, "name", ""))
    if isinstance(fact, Reading) and fact.quantity in QUANTITIES:
        return about, thing(f"{fact.subject} {fact.quantity}"), thing(fact.quantity)
    return (about,)


@lru_cache(maxsize=20_000)
def stems(text: str) -> frozenset[str]:
    """The telling words of a text in one form."""
    return frozenset(one_form(w) for w in raw_words(text) if w not in FILLER and len(w) > 1)


def _keys(things: Iterable[Thing]) -> set[str]:
    keys = {f"={t.name}" for t in things if t.name}
    return keys | {f"^{t.head[:2]}" for t in things if t.head}
