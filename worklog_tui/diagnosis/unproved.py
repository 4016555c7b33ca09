"""Work that was done and not tried since: the machine is to be tried before anything else is undone."""

from __future__ import annotations

from worklog_tui.diagnosis.candidate import Candidate, Tier
from worklog_tui.diagnosis.log import Log
from worklog_tui.diagnosis.phrases import inflected
from worklog_tui.diagnosis.safety import Safety
from worklog_tui.diagnosis.signs import Signs
from worklog_tui.diagnosis.wording import Wording
from worklog_tui.model import Finding, Note, Reading, Step, Work

UNTRIED = -1.0
"What was said not to be tried yet is tried before any more is taken apart."
_THING = r"\b(?:\s+(?:out\s+)?(?:the\s+)?([a-z]+))?"
_NO_THING = frozenset({
    "it", "them", "this", "that", "yet", "since", "again", "today", "with", "under", "on", "out",
    "her", "him", "any", "anything", "because", "so", "in", "and", "but", "a", "for", "up", "at", "all", "as", "to",
})  # fmt: skip


def unproved(log: Log, signs: Signs, wording: Wording, safety: Safety) -> list[Candidate]:
    """The try that is owed: asked for in so many words, else after the last repair that nothing followed."""
    return [*_in_words(log, wording, safety), *_after_work(log, signs, safety)][:1]


def _in_words(log: Log, wording: Wording, safety: Safety) -> list[Candidate]:
    tries = inflected(safety.book.words.get("trials", ()))
    not_tried = wording.talk.pattern("not_yet", rf"(?:re-?)?{tries}{_THING}")
    for note in reversed(log.last_notes[-6:]):
        if found := not_tried.search(note.words):
            thing = (found[1] or "").lower()
            say = f"try the {thing}" if thing and thing not in _NO_THING else f"try it{_for_trouble(log, note)}"
            say = _ways(safety).get(thing, say)
            place = log.history.place(note.uid)
            why = f"You said at {log.said(place)} that it was not tried yet."
            return [_candidate(Tier.COMPLAINT, UNTRIED, say, why, safety, thing)]
    return []


def _ways(safety: Safety) -> dict[str, str]:
    """How a system is tried; any other is run."""
    return dict(safety.book.words.get("tried_how", {}))


def _for_trouble(log: Log, note: Note) -> str:
    """What to look out for when it is tried: the first trouble of the machine in that session."""
    order = log.history.place(note.uid).order
    for event in log.findings:
        fact = event.fact
        if not isinstance(fact, Finding) or event.place.session != log.last_session or event.place.order >= order:
            continue
        if fact.verdict == "bad" and fact.state and len(fact.condition.split()) <= 4:
            return f", and see whether it is still so: {fact.part} {fact.condition}".rstrip()
    return ""


def _after_work(log: Log, signs: Signs, safety: Safety) -> list[Candidate]:
    if not signs.mended:
        return []
    fault, when = max(signs.mended.items(), key=lambda m: m[1])
    event = next((e for e in reversed(log.works) if e.when == when), None)
    if event is None or event.place.session != log.last_session or log.is_old(event.place):
        return []
    if _tried(log, when) or not _had_cause(log, when):
        return []
    system = signs.faults[fault].system
    part = event.fact.part if isinstance(event.fact, Work) else ""
    measured = _measured(log, when)
    again = f"measure the {measured} again" if measured else "run it and see whether the work has cured it"
    why = f"The {part} was worked on at {log.said(event.place)}, and it was not heard tried since."
    return [_candidate(Tier.NOTICED, -1e9, _ways(safety).get(system, again), why, safety, part)]


def _had_cause(log: Log, when: float) -> bool:
    """Whether anything bad was heard before the work: else there is nothing to prove."""
    bad = (e for e in log.findings if isinstance(e.fact, Finding) and e.fact.verdict == "bad")
    return any(e.when < when for e in bad) or bool(_measured(log, when))


def _measured(log: Log, when: float) -> str:
    """What was measured before the work and is worth measuring again."""
    facts = [e.fact for e in log.readings if e.when < when]
    taken = [f for f in facts if isinstance(f, Reading) and f.role == "measured"]
    wanted = ("compression", "pressure", "voltage", "temperature", "current")
    return next((r.quantity for r in reversed(taken) if r.quantity in wanted), "")


def _tried(log: Log, when: float) -> bool:
    """Whether anything was run, tried or found to be well after the work."""
    for event in log.events:
        fact = event.fact
        if event.when <= when:
            continue
        if isinstance(fact, Work) and fact.action in ("start", "test"):
            return True
        if isinstance(fact, Finding) and fact.verdict in ("good", "bad"):
            return True
    return False


def _candidate(tier: Tier, order: float, say: str, why: str, safety: Safety, thing: str) -> Candidate:
    step = Step(say, why, 10, safety.cautions(f"{say} {thing}", ("co",)), (), (), "prove")
    return Candidate(tier, order, step, "", thing or say)
