"""The advice: what troubles the machine, what may cause it, and what to do next."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from functools import partial

from worklog_tui.diagnosis.announced import announced
from worklog_tui.diagnosis.asking import asks
from worklog_tui.diagnosis.awaited import awaited, without_awaited
from worklog_tui.diagnosis.candidate import Candidate, Tier, best
from worklog_tui.diagnosis.declared import declared
from worklog_tui.diagnosis.engine import Engine
from worklog_tui.diagnosis.explain import causes_of, standings, step_of
from worklog_tui.diagnosis.explained import explained, is_explained
from worklog_tui.diagnosis.forbidden import forbidden
from worklog_tui.diagnosis.how import in_full, not_twice, once
from worklog_tui.diagnosis.instead import instead
from worklog_tui.diagnosis.item_steps import ItemSteps
from worklog_tui.diagnosis.laid_to_rest import is_lived_with, is_over, laid_to_rest
from worklog_tui.diagnosis.left_off import left_off, remembered
from worklog_tui.diagnosis.log import Event, Log
from worklog_tui.diagnosis.measure_again import measure_again
from worklog_tui.diagnosis.network import OTHER, Network
from worklog_tui.diagnosis.off_figure import is_job, off_figures
from worklog_tui.diagnosis.opened import opened
from worklog_tui.diagnosis.option import Option
from worklog_tui.diagnosis.own_causes import with_own
from worklog_tui.diagnosis.own_plan import plan_of, with_its_plan
from worklog_tui.diagnosis.own_suspects import own_suspects, trouble
from worklog_tui.diagnosis.part_index import part_words
from worklog_tui.diagnosis.proving import found_since, is_owed, prove
from worklog_tui.diagnosis.put_back import gone_over
from worklog_tui.diagnosis.safety import Safety
from worklog_tui.diagnosis.seen_bad import with_seen
from worklog_tui.diagnosis.sign import Sign
from worklog_tui.diagnosis.signs import Signs
from worklog_tui.diagnosis.sound import before_general, sifted, weighed
from worklog_tui.diagnosis.standing import standing_signs
from worklog_tui.diagnosis.summing_up import listed
from worklog_tui.diagnosis.thought_of import thought_of
from worklog_tui.diagnosis.told_gone import is_told_gone
from worklog_tui.diagnosis.unproved import unproved
from worklog_tui.diagnosis.wording import Wording
from worklog_tui.model import Advice, Cause, History, OpenItem, Step, SystemStanding
from worklog_tui.rulebook.faults import FaultBook, Symptom

MOST = 5
"How many steps are shown at most."
AT_ONCE = 0.5
"Two faults of this chance or more are planned for together."
UNEXPLAINED = 0.35
"Above this share of the other, unlisted faults the list is said not to explain the trouble."


FIRST = -1e9
"Before all others of its tier."
LONG = 60.0
"A repair of more minutes is never put before a person's own jobs (judgement)."


@dataclass(frozen=True, slots=True)
class _Found:
    """What the fault files have to say."""

    complaint: str = ""
    causes: tuple[Cause, ...] = ()
    systems: tuple[SystemStanding, ...] = ()
    remark: str = ""
    instead: str = ""
    candidates: tuple[Candidate, ...] = ()
    "All that could be done: the jobs of the log, the person's suspicions, the checks of the fault files."


def advise(history: History, items: Sequence[OpenItem], faults: FaultBook, now: datetime | None) -> Advice:
    """The advice for a machine from its whole history and its open items, best step first; nothing else is read.

    `now` is the moment of asking; the answer is the same at any moment as long as no step is due by a date.
    """
    signs, found, steps = _worked_out(history, items, faults)

    def first(other: History) -> str:
        there = _worked_out(other, items, faults)[2]
        return there[0].step if there else ""

    runner_up = found.instead if _is_engines(steps) else ""
    told = asks(history, signs, first, steps[0].step if steps else "") if found.complaint else ()
    general = faults.cautions.get("general")
    return Advice(
        complaint=found.complaint, systems=found.systems, causes=found.causes, steps=steps, remark=found.remark,
        instead=runner_up, asks=told, standing=general.says if general and steps else "",
        plan=plan_of(found.candidates),
    )  # fmt: skip


def _is_engines(steps: Sequence[Step]) -> bool:
    """Whether the first step is one of the checks or repairs that the runner-up stands second to."""
    return bool(steps) and steps[0].source not in ("open item", "own plan", "prove")


def _worked_out(
    history: History, items: Sequence[OpenItem], faults: FaultBook
) -> tuple[Signs, _Found, tuple[Step, ...]]:
    log = Log(history)
    signs = Signs(log, faults)
    safety = Safety(faults, signs.makeup)
    wording = Wording(faults.words, log, safety.names)
    told = [*ItemSteps(log, wording, safety).candidates(items), *listed(log, wording, safety)]
    told += off_figures(log, items, safety)
    known = part_words(faults)
    coming = awaited(log, wording, safety, known)
    told = [*without_awaited(told, coming), *announced(log, wording, safety, known), *coming]
    candidates = weighed(sifted(told), log)
    candidates = before_general(laid_to_rest(candidates, log, faults.words), log)
    candidates = with_its_plan(declared(candidates, log, wording))
    candidates = with_seen(candidates, log, signs, safety, faults.words)
    candidates = forbidden(candidates, log, wording, safety)
    candidates += [*left_off(log, safety, signs.lines), *unproved(log, signs, wording, safety)]
    found = _from_faults(log, faults, safety, wording, signs, candidates)
    ranked = best([*found.candidates], MOST + 5)
    kept = [c.step for c in ranked if c.tier is not Tier.DOUBTFUL][:MOST]
    steps = once(in_full(s, signs, safety) for s in kept)
    dangers = remembered(log, safety, signs.lines)
    if steps and dangers:
        steps = (replace(steps[0], cautions=(*dangers, *steps[0].cautions)), *steps[1:])
    return signs, found, steps


def _from_faults(
    log: Log, book: FaultBook, safety: Safety, wording: Wording, signs: Signs, jobs: list[Candidate]
) -> _Found:
    network = Network(signs)
    systems = standings(network, dict(book.systems), log) if signs.all() else ()
    open_signs = standing_signs(signs)
    symptom = signs.symptoms[open_signs[0].of] if open_signs else None
    own = own_suspects(log, book, safety, partial(_belongs, open_signs, signs))
    own += thought_of(log, signs, safety)
    jobs = [*jobs, *measure_again(log, signs, symptom, safety)]
    if not open_signs or symptom is None:
        heard = trouble(log, book)
        heard = None if heard and is_told_gone(heard.words, heard.event, signs.lines, book.words) else heard
        told = with_own((), log, signs, network, None)
        return _Found(heard.words if heard else "", told, systems, candidates=(*jobs, *own))
    sign = open_signs[0]
    troubles = {s.event.name for s in open_signs}
    merely = (Tier.NOTICED, Tier.OWN_CAUSE)
    jobs = [j for j in jobs if j.tier not in merely or j.name not in troubles or is_job(j)]  # a trouble is no job
    engine = Engine(book, signs, network, symptom, _without_effect(signs, sign), opened(log, book))
    causes = with_own(causes_of(network, engine.ranked, sign), log, signs, network, sign)
    remark = _remark(engine)
    jobs = explained(jobs, symptom, signs)
    old = log.is_old(sign.event.place) or is_explained(jobs) or is_lived_with(log, sign.event.fact.main, book.words)
    old = old or is_over(log, sign.event.fact.main.note, book.words)
    options = _apart(engine.options())
    named = any(j.tier is Tier.LISTED for j in jobs)
    stands_out = bool(options) and (options[0].sort == "repair" or (options[0].sort, options[0].id) == engine.standout)
    late = _late(symptom, old, jobs)
    mine = [
        Candidate(*where, step_of(o, engine, log, safety, sign), "", o.job.say)
        for o, where in ((o, _place(o, late, n, n == 0 and stands_out, named)) for n, o in enumerate(options[:4]))
    ]
    if is_owed(symptom, sign, signs, log, wording.talk):
        step = prove(symptom, sign, log, safety)
        order = 1.5 if stands_out or found_since(signs) else 0.5
        mine.append(Candidate(late or Tier.COMPLAINT, order, step, "", step.step))
    mine += gone_over(log, signs, sign, safety, own)
    kept = [c for c in not_twice(mine, own, signs) if not safety.never(c.step.step)]
    return _Found(symptom.says, causes, systems, remark, instead(options, engine), (*jobs, *own, *kept))


def _belongs(open_signs: Sequence[Sign], signs: Signs, event: Event) -> bool:
    """Whether a suspicion may explain the complaint that the fault files know."""
    if not open_signs or event.when < open_signs[0].event.when:
        return False
    symptom = signs.symptoms[open_signs[0].of]
    return symptom.general or any(f in symptom.causes and h.event is event for f, h in signs.hunch_signs.items())


def _apart(options: Sequence[Option]) -> list[Option]:
    """The options in order, each thing to do once."""
    kept: dict[str, Option] = {}
    for option in options:
        kept.setdefault(option.job.say, option)
    return list(kept.values())


def _late(symptom: Symptom, old: bool, jobs: Sequence[Candidate]) -> Tier | None:
    """Where the steps of a complaint stand that is no pressing one; None for one that is."""
    if symptom.general:
        return Tier.GENERAL
    if not old:
        return None
    return Tier.OLD_COMPLAINT if any(j.tier <= Tier.PART for j in jobs) else Tier.GENERAL


def _place(option: Option, late: Tier | None, n: int, stands_out: bool, named: bool) -> tuple[Tier, float]:
    """A check that may explain the trouble comes before the listed jobs; a repair after them, a long one last.

    The repair that all points to goes before the checks, unless the person named (`named`) what is left to do.
    """
    if late:
        return late, 1.0 + n
    if option.job.minutes > (2 * LONG if stands_out else LONG):
        return Tier.OLD_COMPLAINT, 1.0 + n
    if option.sort != "repair":
        return Tier.COMPLAINT, 1.0 + n
    if stands_out:
        return Tier.HOLDS_UP if named else Tier.COMPLAINT, FIRST
    return Tier.HOLDS_UP, 1.0 + n


def _without_effect(signs: Signs, complaint: Sign) -> frozenset[str]:
    """The faults whose parts were worked on before the complaint was heard again: not to be done a second time."""
    done = ((fault, when) for fault, when in signs.mended.items() if when < complaint.event.when)
    return frozenset(f for f, when in done if f not in signs.disturbed and not _doubted(signs, f, when))


def _doubted(signs: Signs, fault: str, when: float) -> bool:
    """Whether a fault was found or suspected again after the work on it."""
    sign = signs.look_signs.get(fault)
    return fault in signs.hunch_signs or (sign is not None and sign.shows == "bad" and sign.event.when > when)


def _is_unexplained(engine: Engine) -> bool:
    """Whether another cause than the listed ones is likely, or likelier than any of them once all were found good."""
    other = engine.network.chance(OTHER + engine.symptom.id)
    looks = (engine.signs.look_signs.get(f) for f in engine.suspects)
    return other > UNEXPLAINED or (other > engine.top and all(s is not None and s.shows == "good" for s in looks))


def _remark(engine: Engine) -> str:
    if _is_unexplained(engine):
        return "The list of faults does not explain this well: look wider than what is named here."
    if engine.network.result.left_out:
        return "Some weaker evidence was left out of the sum: there is too much of it at once."
    likely = [engine.signs.faults[f].name for f in engine.suspects if engine.network.chance(f) >= AT_ONCE]
    if len(likely) > 1:
        return (
            f"More than one thing is likely wrong at once ({'; '.join(likely)}): plan for all of it while it is open."
        )
    return ""
