"""A figure that was measured outside what it should be and still stands so: set, top up, replace, or find why.

What was set, adjusted or measured well since is no item any more (logbook/closing.py). Nothing is said of a figure that
is not comparable: taken in another way, of another measure of the part, of another machine, or held against a borrowed
figure.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from worklog_tui.diagnosis.candidate import Candidate, Tier
from worklog_tui.diagnosis.figure_words import FigureWords, OffFigure
from worklog_tui.diagnosis.log import Log, proves_good
from worklog_tui.diagnosis.safety import Safety
from worklog_tui.logbook.limits import Judge, verdict
from worklog_tui.model import OpenItem, Reading, Step, Work

DEALT = ("replace", "repair", "adjust", "clean", "free", "fit", "tighten", "make", "fill", "charge", "drain")
"Work on the thing since, after which the figure says nothing."
OPENS = ("remove", "strip", "replace", "repair")
SOON = 8
"Within so many notes such work is taken as the search for what is wrong with the figure (judgement)."
NEAR = 40
"So many letters to either side may tell what was measured (judgement)."
SET_BY_HAND = "set by hand"
"Why a step stands: a low compression is the trouble itself, but a gap to set is a job also where it is the trouble."
BY_HAND, SOUGHT = -1.0, 1e7
"Within its tier what a hand sets comes first; what has to be sought comes behind the person's own causes (judgement)."


def off_figures(log: Log, items: Sequence[OpenItem], safety: Safety) -> list[Candidate]:
    """A step for each figure that stands outside its limits, several of one kind and one figure in one."""
    noticed = [i for i in items if i.state == "noticed" and any(a.kind == Reading.kind for a in i.anchors)]
    if not noticed:
        return []
    words = FigureWords(safety.book.words)
    together: dict[tuple[str, ...], list[OffFigure]] = {}
    for off in _standing(log, noticed, words):
        together.setdefault(off.alike, []).append(off)
    return [made for several in together.values() if (made := _candidate(several, log, words, safety))]


def is_job(candidate: Candidate) -> bool:
    """Whether a step is worth a place also where its thing is the trouble that is complained of."""
    return not candidate.name or candidate.reason == SET_BY_HAND


def _standing(log: Log, items: Sequence[OpenItem], words: FigureWords) -> Iterator[OffFigure]:
    judge = Judge(log.history)
    behind = {a.uid: b.words for record in log.history.sessions for a, b in pairwise(record.notes)}
    told = {f.quote: f for e in log.readings if isinstance(f := e.fact, Reading) and f.role == "specified"}
    for item in items:
        event = log.at(item.anchors[-1])
        reading = event.fact if event else None
        if event is None or not isinstance(reading, Reading) or reading.doubtful:
            continue
        limits = judge.limits(reading)
        too = verdict(reading, limits)
        if limits is None or limits.borrowed or too not in ("low", "high"):
            continue
        off = OffFigure(event, reading, limits, too, told.get(limits.text), item, log.around([reading.key], NEAR))
        uid, start = reading.main.note, reading.main.start
        before, after = log.words_of(uid)[:start], f"{log.words_of(uid)[start:]} | {behind.get(uid, '')}"
        if _is_dealt_with(log, item, words.part(off), event.when) or not words.asks(off) or not words.compares(off):
            continue
        if not words.is_anothers(before) and not words.is_distrusted(after):
            yield off


def _is_dealt_with(log: Log, item: OpenItem, part: str, when: float) -> bool:
    """Whether the thing, or the part that it was measured on, was worked on or found good since."""
    for name, words in ((item.name, item.about.split(" too ")[0]), ("", part)):
        last = log.verdict(name, words)
        if log.work_on(name, words, when, DEALT) or (last and last.when > when and proves_good(last.fact)):
            return True
    return False


def _is_looked_into(log: Log, when: float) -> bool:
    """Whether something was taken off, apart or renewed soon after a figure: then its cause is being looked for."""
    return any(
        when < e.when <= when + SOON and isinstance(e.fact, Work) and e.fact.action in OPENS
        for e in reversed(log.works)
    )


def _candidate(several: Sequence[OffFigure], log: Log, words: FigureWords, safety: Safety) -> Candidate | None:
    last = several[-1]
    rule = words.rule(last)
    if rule is None or (rule.seeks and _is_looked_into(log, last.event.when)):
        return None
    say = words.say(rule, several)
    wanted = words.wanted(last)
    found = " and ".join(f"{words.found(off)} at {log.said(off.event.place)}" for off in several)
    why = f"It was found at {found}, and {wanted} is wanted."
    danger = safety.danger(last.item, last.reading.quote)
    cautions = safety.cautions(say, danger.cautions if danger else ())
    step = Step(say, why, rule.minutes, cautions, (f"Put right when it measures {wanted}.",), (), "open item")
    notes = frozenset(off.reading.main.note for off in several)
    now = last.event.place.session == log.last_session
    order = (SOUGHT if rule.seeks else BY_HAND) - last.event.when / 1e6
    tier, name = Tier.OWN_CAUSE if now else Tier.NOTICED, last.item.name
    return Candidate(tier, order, step, name, words.thing(last), notes, reason="" if rule.seeks else SET_BY_HAND)
