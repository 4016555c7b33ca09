"""Things that do not add up: figures that contradict each other, findings that do, and parts this machine has not."""

from __future__ import annotations

import itertools
import re
from bisect import bisect_right
from collections import defaultdict
from collections.abc import Mapping, Sequence

from worklog_tui.logbook.amounts import bounds_in
from worklog_tui.logbook.cures import cures
from worklog_tui.logbook.foreign_parts import kinds_of
from worklog_tui.logbook.limits import Judge
from worklog_tui.logbook.odd_words import odd_words
from worklog_tui.logbook.outcomes import Limits, Odd
from worklog_tui.logbook.readings import readings
from worklog_tui.logbook.same_thing import Thing, same, thing
from worklog_tui.logbook.wrong_way import wrong_way
from worklog_tui.model import Fact, Finding, History, Place, Reading, Trait, Work

APART = 0.25
"By how much of the smaller one two figures differ that contradict each other (judgement)."
_LOOKS = frozenset({"check", "test", "measure", "start"})
BEYOND = 2.0
"How many times outside the range that can be believed (judgement): what is nearer is doubtful, and asked about."
_OF_A_COMPRESSOR = {"cylinder head", "head gasket", "exhaust valve", "inlet valve", "silencer"}
_ONE_OF = re.compile(r"\bcylinders?\s+(\d{1,2})\b", re.IGNORECASE)


Believable = Mapping[str, Mapping[str, tuple[float, float]]]
"By quantity and unit: the range in which a value can be believed."


def odd(
    history: History, foreign: Mapping[str, Sequence[str]] | None = None, believable: Believable | None = None
) -> tuple[Odd, ...]:
    """All that does not add up, in the order of the log; to be asked about.

    `foreign` are parts by kind of machine that has none of them, of the fault files: diesel, no_engine.
    """
    words = {note.uid: note.words for record in history.sessions for note in record.notes}
    found = [
        *_figures(history), *_findings(history), *_book(history), *_traits(history), *_cylinders(history),
        *_parts(history, foreign or {}), *_beyond(history, believable or {}), *wrong_way(history),
        *odd_words(history),
    ]  # fmt: skip
    rows = [Odd(kind, says, at, tuple(words[place.note] for place in at)) for kind, says, at in _once(found)]
    return tuple(sorted(rows, key=lambda one: one.places[-1].order))


Row = tuple[str, str, tuple[Place, ...]]


def _once(rows: Sequence[Row]) -> list[Row]:
    """The rows, of each kind one a line."""
    kept: dict[tuple[str, Place], Row] = {}
    for row in rows:
        sort = "part" if row[0] == "gauge" else row[0]
        kept.setdefault((sort, row[2][-1]) if len(row[2]) == 1 else (row[1], row[2][-1]), row)
    return list(kept.values())


def _work_places(history: History) -> list[int]:
    return [
        history.place(fact.main.note).order
        for fact in history.facts()
        if isinstance(fact, Work) and fact.action not in _LOOKS
    ]


def _figures(history: History) -> list[Row]:
    """Two measurements of one thing, alike taken in one session, far apart though nothing was done in between."""
    worked = _work_places(history)
    found: list[Row] = []
    for series in readings(history):
        points = [one for one in series.points if one.reading.role == "measured" and not one.reading.doubtful]
        for before, after in itertools.pairwise(points):
            if before.place.session != after.place.session or before.reading.condition != after.reading.condition:
                continue
            if before.place.order == after.place.order or "subject" in before.reading.filled + after.reading.filled:
                continue
            if any(before.place.order <= order <= after.place.order for order in worked):
                continue
            if _apart(before.reading, after.reading):
                from_to = f"{_value(before.reading)} and {_value(after.reading)}"
                says = f"{series.subject or series.quantity}: {from_to}, and nothing was heard done in between"
                found.append(("figures", says, (before.place, after.place)))
    return found


def _apart(one: Reading, other: Reading) -> bool:
    first = bounds_in(one.value, one.unit, other.unit)
    second = bounds_in(other.value, other.unit, other.unit)
    if first is None or second is None or min(*first, *second) <= 0:
        return False
    low, high = sorted((first, second))
    return low[1] < high[0] and (high[0] - low[1]) / low[1] > APART


def _value(reading: Reading) -> str:
    number = reading.value
    text = " to ".join(f"{one:g}" for one in number) if isinstance(number, tuple) else str(number)
    return f"{text} {reading.unit}".strip() if not isinstance(number, float) else f"{number:g} {reading.unit}".strip()


def _findings(history: History) -> list[Row]:
    """Found good, then bad in the same session, in the same respect, with no work on it in between."""
    worked = sorted(_work_places(history))
    good: dict[tuple[object, ...], list[tuple[Finding, Place, Thing]]] = defaultdict(list)
    found: list[Row] = []
    for fact in history.facts():
        if not isinstance(fact, Finding) or not fact.name or fact.verdict == "noted":
            continue
        place, part = history.place(fact.main.note), thing(fact.part, fact.name)
        alike = good[place.session, part.name, part.marks]
        if fact.verdict == "good":
            alike.append((fact, place, part))
            continue
        last = bisect_right(worked, place.order)
        since = worked[last - 1] if last else -1
        for before, where, known in alike:
            untouched = since < where.order < place.order
            if untouched and same(known, part) and cures(fact.condition, before.condition):
                says = f"{fact.part}: found {before.condition}, then {fact.condition}, with no work in between"
                found.append(("findings", says, (where, place)))
                break
    return found


def _book(history: History) -> list[Row]:
    """A figure said to be the book's that is not the card's."""
    judge = Judge(history)
    found: list[Row] = []
    if not history.machine.specified:
        return []
    for fact in history.facts():
        if isinstance(fact, Reading) and fact.role == "specified" and not fact.condition:
            limits = judge.limits(fact)
            given = bounds_in(fact.value, fact.unit, limits.unit) if limits else None
            if limits is None or given is None or limits.text not in {v.text for v in history.machine.specified}:
                continue
            low, high = limits.low, limits.high
            if _named_in(fact, limits.text):
                continue  # the card says that too, as a limit of another kind
            if (low is not None and given[1] < low) or (high is not None and given[0] > high):
                said = f"{fact.subject or fact.quantity}: said to be {_value(fact)}"
                says = f"{said}, the card says {limits.text}{_whose(limits)}"
                found.append(("book", says, (history.place(fact.main.note),)))
    return found


def _whose(limits: Limits) -> str:
    """Whose figure the card's is, where it is borrowed."""
    return f" ({limits.borrowed})" if limits.borrowed else ""


def _named_in(reading: Reading, text: str) -> bool:
    """Whether the figure stands in the text of the card."""
    ends = reading.value if isinstance(reading.value, tuple) else (reading.value,)
    return all(f"{end:g}" in re.findall(r"[\d.]*\d", text) for end in ends if not isinstance(end, str))


def _traits(history: History) -> list[Row]:
    """One thing about the machine told in two ways: the way a control works, the firing order."""
    known: dict[str, tuple[Trait, Place]] = {}
    found: list[Row] = []
    for fact in history.facts():
        if not isinstance(fact, Trait):
            continue
        place = history.place(fact.main.note)
        name = fact.trait.casefold()
        if name in known and known[name][0].value.casefold() != fact.value.casefold():
            before, where = known[name]
            says = f"{fact.trait}: said to be {before.value}, then {fact.value}; the later counts"
            found.append(("traits", says, (where, place)))
        known[name] = (fact, place)
    return found


def _cylinders(history: History) -> list[Row]:
    most = history.machine.cylinders
    if not most:
        return []
    found: list[Row] = []
    for fact in history.facts():
        number = _ONE_OF.search(fact.about)
        if number and int(number[1]) > most:
            says = f"{fact.about} of a machine with {most} cylinder{'' if most == 1 else 's'}"
            found.append(("cylinder", says, (history.place(fact.main.note),)))
    return found


def _parts(history: History, foreign: Mapping[str, Sequence[str]]) -> list[Row]:
    """Parts that a machine of this kind has not: each once."""
    theirs = _OF_A_COMPRESSOR if "compressor" in history.machine.kind.casefold() else set()
    strange = {part.casefold(): (key, what) for key, what in kinds_of(history.machine) for part in foreign.get(key, ())}
    seen: set[str] = set(theirs)
    found: list[Row] = []
    for fact in history.facts():
        name = str(getattr(fact, "name", "")).casefold()
        if name in strange and name not in seen and _belongs(fact) and _named_whole(name, fact):
            seen.add(name)
            key, what = strange[name]
            ask = "mis-heard?" if key in ("diesel", "no_engine") else "the wrong kind, or mis-heard?"
            found.append(("part", f"{fact.about} on {what}: {ask}", (history.place(fact.main.note),)))
    return found


def _named_whole(name: str, fact: Fact) -> bool:
    """Whether more than the last word of a longer name was said: points and plugs are parts of many things."""
    said = set(re.findall(r"[a-z]+", f"{fact.about} {fact.quote}".casefold()))
    words = name.split()
    return len(words) == 1 or words[-2] in said


def _beyond(history: History, believable: Believable) -> list[Row]:
    """A figure that can hardly be: mis-heard, mis-read, or in another unit. What a person corrected is believed."""
    found: list[Row] = []
    for record in history.sessions:
        for fact in (*record.facts, *record.questions):
            if not isinstance(fact, Reading) or fact.role not in ("measured", "set", "specified") or fact.by_hand:
                continue
            span = believable.get(fact.quantity, {}).get(fact.unit)
            value = bounds_in(fact.value, fact.unit, fact.unit) if span else None
            if span and value and (value[0] < span[0] / BEYOND or value[1] > span[1] * BEYOND):
                named = fact.quantity.replace("_", " ")
                about = named if named in fact.subject or not fact.subject else f"{named} of the {fact.subject}"
                says = f"{about}: {_value(fact)} can hardly be; mis-heard, or another unit?"
                found.append(("beyond", says, (history.place(fact.main.note),)))
    return found


def _belongs(fact: Fact) -> bool:
    """Whether the fact says that the machine has the part."""
    return isinstance(fact, Finding | Work | Reading)
