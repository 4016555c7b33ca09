"""Parts: needed, ordered, came, fitted, used again, destroyed, substituted, from a donor; and what fits what."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from dataclasses import dataclass

from worklog_tui.logbook.mending import things_of
from worklog_tui.logbook.same_thing import Thing, same, thing
from worklog_tui.logbook.trade_words import trade_words
from worklog_tui.logbook.words import raw_words
from worklog_tui.model import Fact, Finding, History, Number, OpenItem, Place, Reading, Work

_PUT_IN = ("replace", "fit", "make")
_BROKEN = frozenset("broke broken snapped sheared split torn tore stripped destroyed ruined cracked crumbled".split())
NEAR = 3
"Lines within which a part that comes off is told to have broken."


@dataclass(frozen=True, slots=True)
class PartState:
    """One thing that happened to a part."""

    part: str
    state: str
    "needed, ordered, came, came short, came wrong, sent back, fitted, made, substituted, used again, from a donor, \
or destroyed."
    place: Place | None
    told: str = ""
    used: str = ""
    "What was put in, where that was said."
    stands: bool = True
    "False for a need that was met."


def part_states(history: History, items: Sequence[OpenItem]) -> tuple[PartState, ...]:
    """All of it in the order of the log, what is needed first."""
    words = {note.uid: note.words for record in history.sessions for note in record.notes}
    facts = [(fact, history.place(fact.main.note)) for fact in history.facts()]
    rows = [*_events(facts, words), *_destroyed(facts, words, items), *_came(history, items)]
    rows.sort(key=lambda row: row.place.order if row.place else -1)
    return (*_wanted(items), *rows)


def shopping_list(items: Sequence[OpenItem]) -> tuple[OpenItem, ...]:
    """The parts that are still needed, those not ordered first."""
    found = [one for one in items if one.reason == "part needed" and one.state in ("open", "awaited")]
    return tuple(sorted(found, key=lambda one: one.state == "awaited"))


def _wanted(items: Sequence[OpenItem]) -> list[PartState]:
    return [
        PartState(one.about, "ordered" if one.state == "awaited" else "needed", one.raised, one.quote,
                  stands=one.state != "done")
        for one in items
        if one.reason == "part needed"
    ]  # fmt: skip


def _events(facts: Sequence[tuple[Fact, Place]], words: dict[str, str]) -> list[PartState]:
    found = []
    for fact, place in facts:
        if not isinstance(fact, Work):
            continue
        told = words[place.note]
        if fact.action == "order":
            found.append(PartState(fact.part, "ordered", place, told))
        elif fact.action in _PUT_IN:
            found.append(PartState(fact.part, _how(fact, told), place, told, fact.used))
    return found


def _how(work: Work, told: str) -> str:
    parts = trade_words().parts
    if parts["donor"].search(work.used) or (parts["donor"].search(told) and "new" not in raw_words(work.used)):
        return "from a donor"
    if parts["again"].search(told):
        return "used again"
    if work.action == "make":
        return "made"
    return "substituted" if work.used and parts["instead"].search(told) else "fitted"


def _destroyed(
    facts: Sequence[tuple[Fact, Place]], words: dict[str, str], items: Sequence[OpenItem]
) -> list[PartState]:  # fmt: skip
    """Parts that broke while they came off: such a part is needed, also when nobody said so."""
    found = []
    orders = [place.order for _, place in facts]
    for fact, place in facts:
        if not isinstance(fact, Work) or fact.action not in ("remove", "free"):
            continue
        part = things_of(fact)[0]
        near = facts[bisect_left(orders, place.order) : bisect_right(orders, place.order + NEAR)]
        broke = next((where for other, where in near if _broke(other, part)), None)
        if broke is not None:
            met = any(one.state == "done" and same(thing(one.about), part) for one in items)
            found.append(PartState(fact.part, "destroyed", broke, words[broke.note], stands=not met))
    return found


def _broke(fact: Fact, part: Thing) -> bool:
    bad = isinstance(fact, Finding) and fact.verdict == "bad" and same(things_of(fact)[0], part)
    return isinstance(fact, Finding) and bad and bool(_BROKEN.intersection(raw_words(fact.condition)))


def _came(history: History, items: Sequence[OpenItem]) -> list[PartState]:
    """Lines that tell of parts that came, short or wrong or sent back, with the part that they name."""
    wanted = [(one, thing(one.about)) for one in items if one.reason == "part needed"]
    found = []
    for record in history.sessions:
        for note in record.notes:
            state = _came_how(note.words)
            if not state:
                continue
            said = thing(note.words)
            named = [one.about for one, about in wanted if about.head and about.head in said.words] or _nameless(state)
            found += [PartState(about, state, history.place(note.uid), note.words) for about in named]
    return found


def _nameless(state: str) -> list[str]:
    """What a line is told of that names no part: that something came is no news, that it was wrong is."""
    return [] if state == "came" else ["a part"]


def _came_how(words: str) -> str:
    parts = trade_words().parts
    if parts["back"].search(words):
        return "sent back"
    if not parts["came"].search(words):
        return ""
    if parts["wrong"].search(words):
        return "came wrong"
    return "came short" if parts["short"].search(words) else "came"


@dataclass(frozen=True, slots=True)
class Fits:
    """A size or number by which a part can be found again: a thread, a belt, a bearing, a plug."""

    what: str
    "The designation or number."
    of: str
    place: Place
    told: str


def fits(history: History) -> tuple[Fits, ...]:
    """Every thread and number that was heard, with what it is of."""
    words = {note.uid: note.words for record in history.sessions for note in record.notes}
    found = []
    for fact in history.facts():
        place = history.place(fact.main.note)
        if isinstance(fact, Number):
            found.append(Fits(fact.number, fact.of, place, words[place.note]))
        elif isinstance(fact, Reading) and fact.quantity == "thread":
            found.append(Fits(str(fact.value), fact.subject, place, words[place.note]))
    return tuple(found)
