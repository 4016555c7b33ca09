"""Work that was announced in a session and not heard done: kept as a question, neither done nor open (C39)."""

from __future__ import annotations

import re
from collections.abc import Iterator

from worklog_tui.logbook.outcomes import Unheard
from worklog_tui.logbook.same_thing import Thing, same, speaks_of, thing
from worklog_tui.logbook.trade_files import any_of, trade_file
from worklog_tui.logbook.words import word_set
from worklog_tui.model import Finding, FollowUp, History, Reading, Work

LONGEST = 5
"Words of the thing that a promise is about."
_SAID = trade_file("promises")["announced"]
_PROMISES = re.compile(
    rf"\b(?:{any_of(_SAID['opens'])}) (?:(?:{any_of([*_SAID['before'].split(), *_SAID['before_phrases']])}) )*"
    rf"([a-z]+) (?:up |out |off )?(?:{any_of(_SAID['article'].split())})(?: the| of the)? ([^,.;:!?]+)",
    re.IGNORECASE,
)
_PUT_OFF = re.compile(rf"\b(?:{any_of([*_SAID['put_off'], *_SAID['another_time']])})\b", re.IGNORECASE)
_ANOTHER_TIME = re.compile(rf"\b(?:{any_of(_SAID['another_time'])})\b", re.IGNORECASE)
_ENDS, _ACTIONS = word_set(_SAID["ends"]), _SAID["likeliest"].split()


def unheard(history: History, number: int) -> tuple[Unheard, ...]:
    """The jobs announced in a session (1-based), of which nothing was heard since, in the order they were said."""
    record = history.sessions[number - 1]
    owed = {fact.main.note for fact in record.facts if isinstance(fact, FollowUp)}
    found: dict[tuple[str, str], Unheard] = {}
    for at, note in enumerate(record.notes):
        for verb, part in _promised(note.words) if note.uid not in owed else ():
            told = thing(f"{verb} the {part}")
            fitting = [a for a in _ACTIONS if a in told.deed.actions and told.deed.word == verb.lower()]
            action = verb.lower() if verb.lower() in fitting else next(iter(fitting), "")
            if action and not _heard(history, at, number, told):
                found.setdefault((action, part.lower()), Unheard(note, verb.lower(), part, action))
    return tuple(found.values())


def for_another_time(words: str) -> bool:
    """Whether a line puts what it tells to another time: `next time: fit the belt`."""
    return _ANOTHER_TIME.search(words) is not None


def _promised(words: str) -> Iterator[tuple[str, str]]:
    """Verb and thing of each promise in a line of talk."""
    for match in _PROMISES.finditer(words):
        sentence = words[words.rfind(".", 0, match.start()) + 1 : match.end()]
        if _PUT_OFF.search(sentence):
            continue
        part: list[str] = []
        for word in match[2].split():
            if word.lower() in _ENDS or len(part) == LONGEST:
                break
            part.append(word)
        if part and not {"them", "those", "lot"} & set(part):
            yield match[1], " ".join(part)


def _heard(history: History, at: int, number: int, told: Thing) -> bool:
    """Whether anything was told of that thing from there on: it was worked on, found so, set, or is an open item."""
    record = history.sessions[number - 1]
    later = {note.uid for note in record.notes[at:]}
    for fact in record.facts:
        if fact.main.note not in later or not isinstance(fact, Work | Finding | Reading | FollowUp):
            continue
        other = thing(fact.about, getattr(fact, "name", ""))
        if same(other, told) or speaks_of(other, told) or speaks_of(told, other):
            return True
    return False
