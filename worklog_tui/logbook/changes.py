"""What happened to a machine, as one row of changes: facts in the order they were said, and what a person decided."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from worklog_tui.logbook.limits import Judge
from worklog_tui.logbook.outcomes import Limits
from worklog_tui.logbook.standing import standing
from worklog_tui.model import Act, CommentReading, Fact, History, Place, Reading

ITEM_VERBS = frozenset({"close item", "reopen item", "set item", "merge items"})


@dataclass(frozen=True, slots=True)
class Said:
    """A fact, and where it stands."""

    fact: Fact
    place: Place
    line: int
    "Position of the note within its session, from 0."
    compares: str = ""
    "Of a reading: low, high or good against what it should be; empty when nothing tells."
    limits: Limits | None = None
    "Of a reading: what it should be."
    note: str = ""
    "All words of the note."


@dataclass(frozen=True, slots=True)
class Asked:
    """A viewers' question or suggestion that nothing answers."""

    reading: CommentReading
    people: int


@dataclass(frozen=True, slots=True)
class Decided:
    """What a person did to an item."""

    act: Act


Change = Said | Asked | Decided


def changes(history: History, comments: Sequence[CommentReading] = ()) -> list[Change]:
    """All changes in order: facts by their place, then viewers' questions; acts after the notes the person had seen.

    An act's order is (counter, device); its value may name the last note that was seen, under "after".
    """
    lines = {note.uid: (n, note.words) for record in history.sessions for n, note in enumerate(record.notes)}
    judge = Judge(history)
    rows: list[tuple[tuple[int, int, int, str], Change]] = []
    for record in history.sessions:
        for fact in record.facts:
            place = history.place(fact.main.note)
            compares = judge.compares(fact) if isinstance(fact, Reading) else ""
            limits = judge.limits(fact) if compares and isinstance(fact, Reading) else None
            said = Said(fact, place, lines[fact.main.note][0], compares, limits, lines[fact.main.note][1])
            rows.append(((place.order, 0, fact.main.start, f"{fact.kind} {fact.main.end:09} {fact.nth:09}"), said))
    end = len(lines)
    for n, asked in enumerate(_asked(comments)):
        rows.append(((end, 1, n, ""), asked))
    for act in standing(history.acts):
        if act.verb in ITEM_VERBS:
            rows.append(((_after(act, history, end), 2, *act.order), Decided(act)))
    return [change for _, change in sorted(rows, key=lambda row: row[0])]


def _after(act: Act, history: History, end: int) -> int:
    """The place of an act among the notes: after the one it names, else after all of its time or earlier.

    It never stands before the note that it is about, whatever the clocks said, nor before the viewers' questions when
    it is about one of them.
    """
    if "/comment/" in act.target:
        return end
    named = act.value.get("after", "") if isinstance(act.value, dict) else ""
    about = _order(history, act.target.split("/", 1)[0])
    seen = _order(history, named)
    if seen is None:
        seen = next((order for order, utc in _times(history) if utc > act.instant.utc), end + 1) - 1
    return seen if about is None else max(seen, about)


def _order(history: History, note: str) -> int | None:
    try:
        return history.place(note).order
    except KeyError:
        return None


def _times(history: History) -> Iterator[tuple[int, str]]:
    """When each note was said, as far as it is known."""
    for record in history.sessions:
        begun = record.session.start.utc if record.session.start else ""
        for note in record.notes:
            yield history.place(note.uid).order, note.instant.utc if note.instant else begun


def _asked(comments: Sequence[CommentReading]) -> list[Asked]:
    """One for each thing asked that nothing answers, with how many viewers asked it."""
    first: dict[str, CommentReading] = {}
    people: dict[str, int] = {}
    for reading in comments:
        if reading.kind == "chatter" or not reading.about:
            continue
        if reading.answered is not None and not reading.perhaps:
            continue
        first.setdefault(reading.about, reading)
        people[reading.about] = people.get(reading.about, 0) + 1
    return [Asked(reading, people[about]) for about, reading in first.items()]
