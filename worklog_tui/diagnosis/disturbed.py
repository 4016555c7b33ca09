"""What was worked on between a proof that all was well and the trouble that came after it: it heads the suspects."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from worklog_tui.diagnosis.log import Event, Log
from worklog_tui.diagnosis.part_index import PartIndex
from worklog_tui.model import Finding, Work

if TYPE_CHECKING:
    from worklog_tui.diagnosis.sayings import Saying
    from worklog_tui.diagnosis.sign import Sign
    from worklog_tui.rulebook.faults import Access, Fault, Symptom

DISTURBS = (
    "remove", "strip", "disconnect", "connect", "fit", "replace", "adjust", "clean", "repair", "free", "tighten",
    "make",
)  # fmt: skip

SOON = 6
"What a trouble came with was told at most so many notes before it (judgement)."


def within_reach(faults: Mapping[str, Fault], ways: Mapping[str, Access]) -> PartIndex[str]:
    """The faults by their own parts, and by the covers of the same assembly that come off to look at them.

    Whoever has the float bowl off may have disturbed jets and needle; a plug that is out disturbs no piston ring.
    """
    index: PartIndex[str] = PartIndex()
    for fault in faults.values():
        index.add(fault.heard.causes, fault.id, begins=True)
        index.add(fault.heard.parts, fault.id)
        for way in fault.look.access if fault.look else ():
            if _assembly(way) == _assembly(fault.id):
                index.add(ways[way].parts, fault.id)
    return index


def _assembly(name: str) -> str:
    """What an entry of the fault files belongs to: the part of its name before the dot."""
    return name.partition(".")[0]


def works_between(
    log: Log, troubles: Mapping[str, Sign], proofs: Mapping[str, list[Event]], since_then: Saying
) -> dict[str, tuple[Event, ...]]:
    """For each complaint the works since it was last proved absent, in order.

    `proofs` holds, for every complaint, the findings that proved it absent. A trouble never proved absent gives none,
    unless the person says that it came with the work (`since_then`).
    """
    found: dict[str, tuple[Event, ...]] = {}
    for of, sign in troubles.items():
        if sign.shows != "present":
            continue
        start = max((e.when for e in proofs.get(of, ()) if e.when < sign.event.when), default=None)
        if start is None and since_then.search(log.words_of(sign.event.fact.main.note)):
            start = sign.event.when - SOON
        if start is not None and not _already_bad(log, sign, start):
            found[of] = tuple(e for e in log.works if start < e.when < sign.event.when and disturbs(e))
    return found


def disturbs(event: Event) -> bool:
    """Whether an event is work that may leave something otherwise than it was."""
    return isinstance(event.fact, Work) and event.fact.action in DISTURBS


def disturbed(
    between: Mapping[str, Sequence[Event]], symptoms: Mapping[str, Symptom], causes: PartIndex[str]
) -> dict[str, Event]:
    """The faults whose parts were worked on since the trouble was last proved absent, each with that work."""
    found: dict[str, Event] = {}
    for of, works in between.items():
        for event in works:
            touched = causes.find(event.name, event.fact.about, fall_back=True)
            found |= {f: event for f in touched if f in symptoms[of].causes}
    return found


def _already_bad(log: Log, sign: Sign, start: float) -> bool:
    """Whether the same was heard bad before any work followed the proof: then the work did not bring it."""
    first_work = min((e.when for e in log.works if e.when > start), default=float("inf"))
    return any(
        start < e.when < first_work
        and isinstance(e.fact, Finding)
        and e.fact.verdict == "bad"
        and e.name == sign.event.name
        for e in log.findings
    )
