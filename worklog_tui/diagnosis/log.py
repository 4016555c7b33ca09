"""The log of a machine, read once: every fact with its place, found again by what it is about."""

from __future__ import annotations

import re
from bisect import bisect_left, bisect_right
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from worklog_tui.diagnosis.supposed import without_supposed
from worklog_tui.diagnosis.words import same_thing, spoken, tokens
from worklog_tui.model import Fact, FactKey, Finding, History, Note, Place, Reading, Suspect, Work

RECENT = 0.4
"The share of the last session in which a complaint must have been heard to come before the listed jobs (judgement)."
ALIKE = 5
"Words that begin with so many equal letters are forms of one (judgement)."
JUST_BEGUN = 3
"With so few notes a session has not yet told what is to be done: the plan of the one before stands (judgement)."
STILL = 6
"What was heard in so many last notes is never old (judgement)."


@dataclass(frozen=True, slots=True)
class Event:
    """A fact with its moment: the note's position over all sessions, and the place within the note."""

    when: float
    fact: Fact
    place: Place

    @property
    def name(self) -> str:
        """The vocabulary's name of what the fact is about; empty when it has none."""
        return str(getattr(self.fact, "name", ""))


class Log:
    """All that was said of one machine, in order, and by part."""

    def __init__(self, history: History) -> None:
        self.history = history
        self.events: list[Event] = []
        self.tails: dict[int, Sequence[Any]] = {}
        "The sentences of its end, as tail_talk cut them."
        for fact in without_supposed(history.facts()):
            try:
                place = history.place(fact.main.note)
            except KeyError:  # a fact whose note was erased speaks of nothing any more
                continue
            self.events.append(Event(place.order + min(fact.main.start, 99_999) / 100_000, fact, place))
        self.events.sort(key=lambda e: e.when)

    @cached_property
    def _index(self) -> dict[str, list[Event]]:
        index: dict[str, list[Event]] = defaultdict(list)
        for event in self.events:
            if event.name:
                index["=" + event.name].append(event)
            for word in set(tokens(event.fact.about)):
                index[word].append(event)
        return index

    def about(self, name: str, words: str) -> Iterator[Event]:
        """The events about one thing, in order."""
        said = tokens(words)
        found = {id(e): e for key in ("=" + name if name else "", *said[-1:]) for e in self._index.get(key, ())}
        for event in sorted(found.values(), key=lambda e: e.when):
            if same_thing(name, words, event.name, event.fact.about):
                yield event

    def when(self, key: FactKey) -> float:
        """The moment of a fact's key; before everything for one of another machine."""
        try:
            return self.history.place(key.note).order + min(key.start, 99_999) / 100_000
        except KeyError:
            return -1.0

    def before(self, when: float, notes: int) -> list[Event]:
        """The events of one session before a moment, at most so many notes away, in order."""
        end = bisect_left(self.events, when, key=lambda e: e.when)
        start = bisect_left(self.events, float(int(when) - notes), key=lambda e: e.when)
        last = self.events[end].place.session if end < len(self.events) else 0
        return [e for e in self.events[start:end] if e.place.session == last]

    def at(self, key: FactKey) -> Event | None:
        """The event of a key; None for one of another machine, or of a fact that was struck."""
        return self._by_key.get(key)

    def session_at(self, when: float) -> int:
        """The number of the session that a moment lies in; 0 for none."""
        end = bisect_right(self.events, when + 1e-9, key=lambda e: e.when)
        return self.events[end - 1].place.session if end else 0

    @cached_property
    def _by_key(self) -> dict[FactKey, Event]:
        return {e.fact.key: e for e in self.events}

    def work_on(self, name: str, words: str, after: float, actions: tuple[str, ...]) -> Event | None:
        """The last work of those kinds on a thing after a moment."""

        def done(event: Event) -> bool:
            return event.when > after and isinstance(event.fact, Work) and event.fact.action in actions

        return self._last(name, words, done)

    def verdict(self, name: str, words: str) -> Event | None:
        """The last good or bad finding of a thing, or the last suspicion of it that was settled."""
        return self._last(name, words, lambda event: settles(event.fact))

    def _last(self, name: str, words: str, holds: Callable[[Event], bool]) -> Event | None:
        """The last event about a thing for which something holds, looked for from the end: a long log is about few."""
        said, ends = tokens(words), list[Event]()
        for key in ("=" + name if name else "", *said[-1:]):
            events = reversed(self._index.get(key, ()))
            found = (e for e in events if holds(e) and same_thing(name, words, e.name, e.fact.about))
            ends += [last] if (last := next(found, None)) is not None else []
        if len({e.when for e in ends}) < len({id(e) for e in ends}):  # two at one place: the order of `about` tells
            return [e for e in self.about(name, words) if holds(e)][-1]
        return max(ends, key=lambda e: e.when, default=None)

    @cached_property
    def names(self) -> frozenset[str]:
        """The vocabulary's names of all that is spoken of; what is only asked for or thought of is left out."""
        kinds = (Finding, Work, Reading)
        return frozenset(e.name for e in self.events if e.name and isinstance(e.fact, kinds))

    @cached_property
    def suspects(self) -> list[Event]:
        """All suspicions, in order."""
        return [e for e in self.events if isinstance(e.fact, Suspect)]

    @cached_property
    def findings(self) -> list[Event]:
        """All findings, in order."""
        return [e for e in self.events if isinstance(e.fact, Finding)]

    @cached_property
    def works(self) -> list[Event]:
        """All work, in order."""
        return [e for e in self.events if isinstance(e.fact, Work)]

    @cached_property
    def readings(self) -> list[Event]:
        """All readings, in order."""
        return [e for e in self.events if isinstance(e.fact, Reading)]

    @cached_property
    def last_notes(self) -> tuple[Note, ...]:
        """The notes of the last session that has any."""
        return next((r.notes for r in reversed(self.history.sessions) if r.notes), ())

    @cached_property
    def ending_notes(self) -> tuple[Note, ...]:
        """The notes whose plans stand: those of the last session, and of the one before while it has just begun."""
        told = [r.notes for r in self.history.sessions if r.notes]
        begun = len(told) > 1 and len(told[-1]) <= JUST_BEGUN
        return (*told[-2], *told[-1]) if begun else self.last_notes

    def is_old(self, place: Place) -> bool:
        """Whether a place lies before the last part of the last session."""
        notes = self.last_notes
        start = self.history.place(notes[0].uid).order
        heard = place.order - start
        if len(notes) - heard <= STILL:
            return False
        if heard < len(notes) * (1 - RECENT):
            return True
        at, end = notes[heard].at, notes[-1].at
        return at is not None and end is not None and at < end * (1 - RECENT)

    @property
    def last_session(self) -> int:
        """The number of the last session that has notes; 0 when there is none."""
        return self.history.place(self.last_notes[0].uid).session if self.last_notes else 0

    @cached_property
    def _notes(self) -> dict[str, str]:
        return {n.uid: n.words for r in self.history.sessions for n in r.notes}

    def words_of(self, note: str) -> str:
        """The words of a note; empty for one that was erased."""
        return self._notes.get(note, "")

    def has_said(self, name: str) -> bool:
        """Whether a name was said in just these words, side by side in one note."""
        return f" {' '.join(tokens(name))} " in self._all_said

    def as_said(self, name: str, keys: Iterable[FactKey]) -> str:
        """A name of two words as the person put it there or just before, where the words are nearly the same."""
        first, _, last = name.partition(" ")
        if not last or " " in last or self.has_said(name):
            return name
        for key in keys:
            told = f"{self.words_before(key.note)} {self.words_of(key.note)}"
            for found in re.findall(rf"\b(\w+) {re.escape(last)}\b", told, re.IGNORECASE):
                if len(found) >= ALIKE and found[:ALIKE].lower() == first[:ALIKE].lower():
                    return f"{found} {last}"
        return name

    @cached_property
    def _all_said(self) -> str:
        return " | ".join(f" {' '.join(tokens(words))} " for words in self._notes.values())

    def words_before(self, note: str) -> str:
        """The words of the note before one, in the order of the log."""
        order = list(self._notes)
        at = self._place_of_note.get(note, 0)
        return self._notes[order[at - 1]] if at else ""

    @cached_property
    def _place_of_note(self) -> dict[str, int]:
        return {uid: n for n, uid in enumerate(self._notes)}

    def around(self, keys: Iterable[FactKey], reach: int = 70) -> str:
        """The words around some facts, as far as `reach` characters to either side."""
        texts = ((self._notes.get(k.note, ""), k) for k in keys)
        return " | ".join(words[max(0, k.start - reach) : k.end + reach] for words, k in texts)

    def said(self, place: Place) -> str:
        """Where something was said, for a person: the time, and the session where there are several."""
        if len(self.history.sessions) > 1:
            return f"{place.at}, session {place.session}" if place.at else f"session {place.session}"
        return place.at or "in the log"


def settles(fact: Fact) -> bool:
    """Whether a fact says that a thing is good or bad."""
    if isinstance(fact, Finding):
        return fact.verdict in ("good", "bad")
    return isinstance(fact, Suspect) and fact.standing in ("ruled out", "confirmed")


NO_EFFECT = ("no difference", "no effect", "no change", "no diff", "same as before", "no better", "didnt help")


def shows_no_effect(fact: Fact) -> bool:
    """Whether a fact says that work on a thing changed nothing."""
    return isinstance(fact, Finding) and any(w in spoken(fact.condition) for w in NO_EFFECT)


def proves_good(fact: Fact) -> bool:
    """Whether a fact says that a thing is good: found so, or ruled out as the cause."""
    return (isinstance(fact, Finding) and fact.verdict == "good") or (
        isinstance(fact, Suspect) and fact.standing == "ruled out"
    )
