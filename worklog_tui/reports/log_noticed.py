"""Faults that were seen and that nobody said to come back to, as far as they still stand."""

from __future__ import annotations

from worklog_tui.logbook.cures import is_whole
from worklog_tui.logbook.same_thing import same, thing
from worklog_tui.model import Finding, OpenItem, Place, Suspect, Work
from worklog_tui.reports.again import open_again
from worklog_tui.reports.material import Material, maybe_spot
from worklog_tui.reports.repair_log import Told
from worklog_tui.reports.sentence import briefly

NEAR = 2
"Within so many notes after a fault is told what it came from."
_LISTED = ("open", "awaited", "left so")


def noticed(of: Material) -> tuple[Told, ...]:
    """What was seen to be bad and is on no list.

    Not what the same line puts on the list, not what the machine was found rid of later, not what was put down to a
    cause that was dealt with.
    """
    found = {fact.key: fact for _, fact in of.everything() if isinstance(fact, Finding)}
    listed = {item.raised.note for item in of.items if item.state in _LISTED and item.raised}
    rows = []
    for item in of.items:
        last = item.again.place if item.again and item.again.place else item.raised
        if item.state != "noticed" or (last is not None and last.session < of.first):
            continue
        seen = next((found[key] for key in item.anchors if key in found), None)
        if item.raised and (item.raised.note in listed or (seen and _over(of, item.raised, seen))):
            continue
        told = f"{seen.part}: {seen.condition}" if seen and seen.part else item.about
        words = of.words(item.raised.note) if item.raised else item.quote
        detail = "; ".join(filter(None, (_people(item), open_again(item))))
        rows.append(Told(told, detail, maybe_spot(item.raised), words))
    return tuple(rows)


def _people(item: OpenItem) -> str:
    return f"asked by {item.people} viewers" if item.comment is not None and item.people > 1 else ""


def _over(of: Material, place: Place, seen: Finding) -> bool:
    return bool(put_down_to(of, place)) or (of_the_machine(of, seen) and _found_rid_of_it(of, place))


def of_the_machine(of: Material, seen: Finding) -> bool:
    """Whether a finding is of the machine as a whole, by a word for such or by its own name."""
    about = thing(seen.part, seen.name)
    return is_whole(about) or (len(about.words) == 1 and about.head == thing(of.history.machine.name).head)


def _found_rid_of_it(of: Material, place: Place) -> bool:
    """Whether the machine was found good after a place."""
    return any(
        isinstance(fact, Finding) and fact.verdict == "good" and when.order > place.order and of_the_machine(of, fact)
        for when, fact in of.everything()
    )


def put_down_to(of: Material, place: Place) -> str:
    """What was done about the cause that a fault was put down to in the same breath; empty when nothing was."""
    causes = [
        thing(fact.cause, fact.name)
        for when, fact in of.everything()
        if isinstance(fact, Suspect) and fact.standing == "confirmed" and 0 <= when.order - place.order <= NEAR
    ]
    for when, fact in of.everything():
        if not isinstance(fact, Work) or when.order < place.order or when.session != place.session:
            continue
        if any(same(thing(fact.about, fact.name), cause) for cause in causes):
            return briefly(fact)
    return ""
