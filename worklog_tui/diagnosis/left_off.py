"""What was taken off, drained or made unsafe at the end of a log, and not heard put back, filled or mended."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from worklog_tui.diagnosis.candidate import Candidate, Tier
from worklog_tui.diagnosis.log import Event, Log
from worklog_tui.diagnosis.safety import Safety
from worklog_tui.diagnosis.told import Sentence, heard_in
from worklog_tui.diagnosis.words import tokens
from worklog_tui.model import Step, Work
from worklog_tui.rulebook.faults import WordSets

OFF = ("remove", "disconnect", "strip")
BACK = ("fit", "replace", "connect", "repair", "make", "tighten", "order")
GUARDS = (("guard",), ("shield",))
TOGETHER = 1
"What is told off within so many notes of a guard came off with it (judgement)."
FLUIDS = ("oil", "coolant", "hydraulic oil", "gearbox oil", "engine oil")
FILLED = ("fill|poured|top|fresh|new oil|coolant|sump|gearbox|tank", "oil|coolant in|full|up level|mark|brim|it")
REFITTED = ("guard|shield back|refit|bolted", "put|fitted|screwed guard|shield", "all back|together")
WHERE = 0.5
"Puts the step that says where before another on the same danger."
SPOTS = ("tap", "hose", "pipe", "line", "tank", "union", "filter", "pump", "carburettor", "carb", "bowl", "cap")


def left_off(log: Log, safety: Safety, lines: Sequence[Sentence]) -> list[Candidate]:
    """A step for each: guards and told dangers before everything, what was drained before the next start."""
    return [*_guards(log, safety, lines), *_drained(log, safety, lines), *_dangers(log, safety, lines)]


def remembered(log: Log, safety: Safety, lines: Sequence[Sentence]) -> tuple[str, ...]:
    """A sentence for each danger told long ago, in this session or before, that nothing in the log made safe since.

    It follows from the log alone: a danger is told with the first step for as long as it stands.
    """
    guards = [
        f"The {part} was taken off at {log.said(event.place)} and not heard put back: it comes before the next start."
        for part, event in _off(log, lines).items()
        if event.place.session != log.last_session or _in_pieces(log, event)
    ]
    told = [
        f"{danger.says} It was said at {log.said(event.place)}, and nothing was heard of it since."
        for danger, event in _standing(log, safety, lines)
        if _is_old(log, event)
    ]
    return (*guards, *told)


def _guards(log: Log, safety: Safety, lines: Sequence[Sentence]) -> Iterator[Candidate]:
    for part, event in _off(log, lines).items():
        if event.place.session == log.last_session and not _in_pieces(log, event):
            say = f"refit the {part}"
            why = f"It was taken off at {log.said(event.place)} and not heard put back: it comes before the next start."
            yield _candidate(Tier.DANGER, event, say, why, 10, safety.cautions(say, ("rotating",)), part)


def _in_pieces(log: Log, guard: Event) -> bool:
    """Whether what came off with a guard is off still: nobody can start it, and the guard goes back with the rest."""
    near = (e for e in log.works if abs(int(e.when) - int(guard.when)) <= TOGETHER)
    return any(
        isinstance(e.fact, Work) and e.fact.action in OFF and tokens(e.fact.part)[-1:] not in GUARDS
        and log.work_on(e.fact.name, e.fact.part, e.when, BACK) is None
        for e in near
    )  # fmt: skip


def _off(log: Log, lines: Sequence[Sentence]) -> dict[str, Event]:
    """The guards that were taken off and not heard put back, each with when."""
    off: dict[str, Event] = {}
    for event in log.works:
        work = event.fact
        if isinstance(work, Work) and tokens(work.part)[-1:] in GUARDS:
            if work.action in OFF:
                off[work.part] = event
            elif work.action in BACK:
                off.pop(work.part, None)
    return {part: event for part, event in off.items() if not _told_after(REFITTED, lines, event.when)}


def _drained(log: Log, safety: Safety, lines: Sequence[Sentence]) -> Iterator[Candidate]:
    last: Event | None = None
    for event in log.works:
        work = event.fact
        if isinstance(work, Work) and (work.name in FLUIDS or tokens(work.part)[-1:] in (("oil",), ("coolant",))):
            if work.action == "drain" and event.place.session == log.last_session:
                last = event
            elif work.action in ("fill", "replace"):
                last = None
        elif isinstance(work, Work) and work.action == "start":
            last = None
    if last and isinstance(last.fact, Work) and not _told_after(FILLED, lines, last.when):
        say = f"fill it with fresh {last.fact.part} to the mark before it is started"
        why = f"It was drained at {log.said(last.place)} and not heard filled since."
        yield _candidate(Tier.HOLDS_UP, last, say, why, 15, safety.cautions(say), last.fact.part)


def _dangers(log: Log, safety: Safety, lines: Sequence[Sentence]) -> Iterator[Candidate]:
    for danger, event in _standing(log, safety, lines):
        if _is_old(log, event):
            continue
        said = tokens(log.words_of(event.fact.main.note))
        spot = next((s for s in SPOTS if s in said), "")
        say = danger.make_safe.replace("{spot}", f" at the {spot}" if spot else "")
        why = f"{danger.says} It was said at {log.said(event.place)}, and nothing was heard of it since."
        made = _candidate(Tier.DANGER, event, say, why, 20, safety.cautions(say, danger.cautions), danger.id)
        yield replace(made, order=made.order - WHERE) if spot and "{spot}" in danger.make_safe else made


def _is_old(log: Log, event: Event) -> bool:
    return event.place.session != log.last_session or log.is_old(event.place)


def _standing(log: Log, safety: Safety, lines: Sequence[Sentence]) -> Iterator[tuple[WordSets, Event]]:
    """The dangers that the bare words tell and nothing mended since, each with when it was last told."""
    for danger in safety.dangers:
        heard = [event for event, so in heard_in(danger.told, lines) if so] if danger.told else []
        if not heard or _told_after(danger.mended, lines, heard[-1].when):
            continue
        if not _mended(log, safety.words_of(danger), heard[-1]):
            yield danger, heard[-1]


def _mended(log: Log, words: Sequence[frozenset[str]], told: Event) -> bool:
    """Whether work followed on one of the things that the danger is about."""
    for event in log.works:
        work = event.fact
        if isinstance(work, Work) and event.place.order > told.place.order and work.action in BACK:
            said = set(tokens(f"{work.part} {work.name}"))
            if any(said & group for group in words):
                return True
    return False


def _told_after(wordings: Sequence[str], lines: Sequence[Sentence], when: float) -> bool:
    # that a drip has stopped, or is gone, is no denial here: it is what is looked for
    later = [replace(line, ended=False, past=False) for line in lines if line.event.when > when]
    return any(so for _, so in heard_in(wordings, later))


def _candidate(
    tier: Tier, event: Event, say: str, why: str, minutes: int, cautions: tuple[str, ...], thing: str
) -> Candidate:
    return Candidate(tier, -event.when, Step(say, why, minutes, cautions, (), (), "open item"), "", thing)
