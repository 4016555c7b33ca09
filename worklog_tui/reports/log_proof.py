"""What the log proves and what it does not: causes ruled out and how, repairs that nothing has shown to hold yet."""

from __future__ import annotations

from bisect import bisect_right
from collections import defaultdict

from worklog_tui.logbook.cures import is_whole
from worklog_tui.logbook.limits import Judge
from worklog_tui.logbook.same_thing import Thing, same, thing
from worklog_tui.model import Fact, Finding, OpenItem, Place, Reading, Suspect, SystemStanding, Work
from worklog_tui.reports.log_rows import quantity
from worklog_tui.reports.material import Material, maybe_spot, spot
from worklog_tui.reports.repair_log import SystemRow, Told
from worklog_tui.reports.sentence import amount, briefly
from worklog_tui.reports.what_measured import what_measured

_SHOWN = 4
"So many lines of evidence are shown for a system."


def settled(of: Material) -> tuple[Told, ...]:
    """Causes that were settled, and the words that settled them: first what it was, then what it was not."""
    rows = [
        Told(f"{_SETTLED[fact.standing]}: {fact.cause}", "", spot(place), of.words(place.note))
        for standing in _SETTLED
        for place, fact in of.told()
        if isinstance(fact, Suspect) and fact.standing == standing
    ]
    return tuple(dict.fromkeys(rows))


_SETTLED = {"confirmed": "it was", "ruled out": "it was not"}


def systems(of: Material) -> tuple[SystemRow, ...]:
    """The systems in plain lines, with what speaks for that."""
    return tuple(_system(one) for one in of.advice.systems)


def _system(one: SystemStanding) -> SystemRow:
    why = dict.fromkeys(Told(e.words, "", maybe_spot(e.place)) for e in one.evidence)
    return SystemRow(one.system, one.standing, tuple(why)[:_SHOWN])


def not_proved(of: Material) -> tuple[Told, ...]:
    """Suspicions that nothing settled, repairs without a look or a run after them, readings that are in doubt."""
    return (*_suspicions(of), *_untested(of), *_doubtful(of))


def _suspicions(of: Material) -> list[Told]:
    last: dict[str, tuple[Place, Suspect]] = {}
    for place, fact in of.everything():
        if isinstance(fact, Suspect):
            last.pop(_key(fact), None)
            last[_key(fact)] = (place, fact)
    settled = _Looks(of)
    rows = []
    for place, fact in last.values():
        if fact.standing == "suspected" and place.session >= of.first and not settled.after(place.order, _of(fact)):
            told = f"suspected cause: {fact.cause}"
            rows.append(Told(told, "neither confirmed nor ruled out", spot(place), of.words(place.note)))
    return rows


def _key(fact: Suspect) -> str:
    return fact.name.lower() or fact.cause.lower()


def _untested(of: Material) -> list[Told]:
    """Faults that were put right by work, and nothing was heard of the thing or the machine after it."""
    looks, known = _Looks(of), {fact.key: fact for _, fact in of.everything()}
    rows = []
    for item in of.items:
        by = known.get(item.closed_by) if item.closed_by else None
        if item.reason != "fault" or item.closed is None or item.closed.session < of.first or not isinstance(by, Work):
            continue
        if not looks.after(item.closed.order, thing(item.about, item.name), _of(by), whole=True):
            rows.append(_not_shown(item, by))
    return rows


def _not_shown(item: OpenItem, by: Work) -> Told:
    why = "nothing that was said later shows that it holds"
    return Told(f"{item.about}: {briefly(by)}", why, maybe_spot(item.closed))


def _doubtful(of: Material) -> list[Told]:
    rows = []
    for place, fact in of.told():
        if isinstance(fact, Reading) and fact.doubtful and fact.role in ("measured", "set"):
            told = f"{what_measured(fact.subject, quantity(fact.quantity), fact.unit)}: {amount(fact.value, fact.unit)}"
            rows.append(Told(told, "said to be in doubt", spot(place), of.words(place.note)))
    return rows


def _of(fact: Fact) -> Thing:
    return thing(fact.about, getattr(fact, "name", ""))


class _Looks:
    """Every look that could prove a repair: something found good, or a reading that is as it should be."""

    def __init__(self, of: Material) -> None:
        judge = Judge(of.history)
        self._by_head: dict[str, list[tuple[int, Thing]]] = defaultdict(list)
        self._whole: list[int] = []
        for place, fact in of.everything():
            good = isinstance(fact, Finding) and fact.verdict == "good"
            good = good or (isinstance(fact, Reading) and judge.compares(fact) == "good")
            if good or (isinstance(fact, Suspect) and fact.standing != "suspected"):
                one = _of(fact)
                self._by_head[one.head].append((place.order, one))
                if isinstance(fact, Finding) and is_whole(one):
                    self._whole.append(place.order)

    def after(self, order: int, *things: Thing, whole: bool = False) -> bool:
        """Whether such a look at one of the things (or, if asked, at the whole machine) came after a place."""
        if whole and bisect_right(self._whole, order) < len(self._whole):
            return True
        return any(when > order and same(seen, one) for one in things for when, seen in self._by_head.get(one.head, ()))
