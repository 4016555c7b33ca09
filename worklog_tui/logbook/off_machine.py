"""What came off or apart and was not heard refitted: to be asked about, never claimed. What an engine cannot run
without is back when it was heard to run.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from dataclasses import dataclass

from worklog_tui.logbook.cured_words import is_akin_to
from worklog_tui.logbook.cures import is_whole
from worklog_tui.logbook.mending import things_of
from worklog_tui.logbook.outcomes import OffPart
from worklog_tui.logbook.same_thing import Thing, same, speaks_of
from worklog_tui.logbook.starts import ran_at, start_attempts
from worklog_tui.logbook.trade_words import trade_words
from worklog_tui.model import Fact, Finding, History, Place, Reading, Work

OFF = {"remove": "off", "strip": "apart", "disconnect": "disconnected", "loosen": "loosened", "drain": "drained"}
BACK = {
    "remove": frozenset({"fit", "replace", "connect", "make", "tighten"}),
    "strip": frozenset({"fit", "replace", "repair", "connect", "tighten"}),
    "disconnect": frozenset({"connect", "fit", "replace"}),
    "loosen": frozenset({"tighten", "fit", "replace", "adjust", "remove"}),
    "drain": frozenset({"fill", "replace"}),
}
ADJUSTED = frozenset({"gap", "length", "turns", "angle", "pressure", "torque", "speed", "voltage"})
"What is altered by adjusting."
_BACK_WORDS = frozenset({"back", "refitted", "fitted", "together", "in", "on"})


def off_machine(history: History) -> tuple[OffPart, ...]:
    """What is off, in the order in which it came off; the last telling of a thing counts."""
    words = {note.uid: note.words for record in history.sessions for note in record.notes}
    facts = [(fact, history.place(fact.main.note)) for fact in history.facts()]
    still: list[tuple[Work, Place, Thing]] = []
    for fact, place in facts:
        if isinstance(fact, Work):
            still = [one for one in still if not _puts_back(fact, one[0], one[2])]
            part = things_of(fact)[0]
            if fact.action in OFF and _counts(fact, part):
                still = [one for one in still if one[0].action != fact.action or not same(one[2], part)]
                still.append((fact, place, part))
        elif isinstance(fact, Finding) and _is_back(fact):
            still = [one for one in still if not same(one[2], things_of(fact)[0])]
    ran, needed = ran_at(history), trade_words().needed
    tried = [one.place.order for one in start_attempts(history)] + ran
    last_run = max(ran, default=-1)
    return tuple(
        OffPart(
            work, place, OFF[work.action], words[place.note], _sizes(facts, place),
            any(order > place.order for order in tried),
        )
        for work, place, _ in still
        if work.name not in needed or last_run <= place.order
    )  # fmt: skip


def _counts(work: Work, part: Thing) -> bool:
    """Whether the thing is one that goes back: known by name, no dirt, not taken away for good."""
    if not work.name or is_whole(part) or not part.words:
        return False
    gone = is_akin_to(part.words, "foreign") or is_akin_to(part.words, "gone_for_good")
    return not gone and "again" not in part.words


def _puts_back(work: Work, off: Work, part: Thing) -> bool:
    if work.action not in BACK[off.action]:
        return False
    return any(same(one, part) or speaks_of(one, part) or speaks_of(part, one) for one in things_of(work))


def _is_back(finding: Finding) -> bool:
    said = finding.condition.casefold().split()
    return "back" in said and bool(_BACK_WORDS.intersection(said)) and finding.verdict != "bad"


def _order(row: tuple[Fact, Place]) -> int:
    return row[1].order


def _sizes(facts: Sequence[tuple[Fact, Place]], place: Place) -> tuple[Reading, ...]:
    start = bisect_left(facts, place.order, key=_order)
    near = (fact for fact, _ in facts[start : bisect_right(facts, place.order + 1, key=_order)])
    return tuple(one for one in near if isinstance(one, Reading) and one.quantity in ("thread", "length"))


@dataclass(frozen=True, slots=True)
class AsFound:
    """A figure as it was before somebody adjusted it."""

    reading: Reading
    place: Place
    adjusted: Place


def as_found(history: History) -> tuple[AsFound, ...]:
    """For each adjustment the last figure that was measured there before; where it was set to another."""
    measured: list[tuple[Reading, Place, Thing]] = []
    found: dict[tuple[str, str], AsFound] = {}
    for fact in history.facts():
        place = history.place(fact.main.note)
        about = things_of(fact)[0]
        changes = (isinstance(fact, Work) and fact.action == "adjust") or (
            isinstance(fact, Reading) and fact.role == "set"
        )
        if changes:
            wanted = fact.quantity if isinstance(fact, Reading) else ""
            alike = [one for one in measured if same(one[2], about)]
            before = [one for one in alike if (one[0].quantity == wanted if wanted else one[0].quantity in ADJUSTED)]
            for reading, where, _ in before[-1:]:
                found.setdefault((where.note, reading.quantity + reading.subject), AsFound(reading, where, place))
        elif isinstance(fact, Reading) and fact.role == "measured":
            measured.append((fact, place, about))
    return tuple(found.values())
