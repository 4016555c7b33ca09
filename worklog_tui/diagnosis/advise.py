"""The advice: what troubles the machine, what may cause it, and what to do next."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from worklog_tui.diagnosis.candidate import Candidate, Tier, best
from worklog_tui.diagnosis.engine import Engine, standing_signs
from worklog_tui.diagnosis.explain import causes_of, standings, step_of
from worklog_tui.diagnosis.item_steps import ItemSteps
from worklog_tui.diagnosis.log import Log
from worklog_tui.diagnosis.network import Network
from worklog_tui.diagnosis.own_suspects import own_suspects, trouble
from worklog_tui.diagnosis.safety import Safety
from worklog_tui.diagnosis.signs import Sign, Signs
from worklog_tui.diagnosis.wording import Wording
from worklog_tui.model import Advice, Cause, History, OpenItem, SystemStanding
from worklog_tui.rulebook.faults import FaultBook

MOST = 5
"How many steps are shown at most."
UNEXPLAINED = 0.35
"Above this share of the other, unlisted faults the list is said not to explain the trouble."


@dataclass(frozen=True, slots=True)
class _Found:
    """What the fault files have to say."""

    complaint: str = ""
    causes: tuple[Cause, ...] = ()
    systems: tuple[SystemStanding, ...] = ()
    remark: str = ""
    candidates: tuple[Candidate, ...] = ()


def advise(history: History, items: Sequence[OpenItem], faults: FaultBook, now: datetime | None) -> Advice:
    """The advice for a machine from its whole history and its open items, best step first; nothing else is read.

    `now` is the moment of asking; the answer is the same at any moment as long as no step is due by a date.
    """
    log = Log(history)
    safety = Safety(faults)
    candidates = ItemSteps(log, Wording(faults.words, log), safety).candidates(items)
    found = _from_faults(log, faults, safety)
    ranked = best([*candidates, *found.candidates], MOST + 5)
    steps = tuple(c.step for c in ranked if c.tier is not Tier.DOUBTFUL)[:MOST]
    return Advice(found.complaint, found.systems, found.causes, steps, found.remark)


def _from_faults(log: Log, book: FaultBook, safety: Safety) -> _Found:
    signs = Signs(log, book)
    network = Network(signs)
    systems = standings(network, dict(book.systems), log) if signs.all() else ()
    open_signs = standing_signs(signs.all())
    own = own_suspects(log, book, safety)
    if not open_signs:
        heard = trouble(log, book)
        return _Found(heard.words if heard else "", systems=systems, candidates=tuple(own))
    sign = open_signs[0]
    symptom = signs.symptoms[sign.of]
    engine = Engine(book, signs, network, symptom, _without_effect(signs, sign))
    causes = causes_of(network, engine.ranked)
    remark = _remark(engine)
    steps = [step_of(o, engine, log, safety, sign) for o in engine.options()[:4]]
    mine = [Candidate(Tier.COMPLAINT, 1.0 + n, s, "", s.step) for n, s in enumerate(steps) if not safety.never(s.step)]
    return _Found(symptom.says, causes, systems, remark, (*own, *mine))


def _without_effect(signs: Signs, complaint: Sign) -> frozenset[str]:
    """The faults whose parts were worked on before the complaint was heard again: not to be done a second time."""
    return frozenset(
        f for f, when in signs.mended.items() if when < complaint.event.when and not _bad_since(signs, f, when)
    )


def _bad_since(signs: Signs, fault: str, when: float) -> bool:
    sign = signs.look_signs.get(fault)
    return sign is not None and sign.shows == "bad" and sign.event.when > when


def _remark(engine: Engine) -> str:
    if engine.unexplained() > UNEXPLAINED:
        return "The list of faults does not explain this: what is likely by the list has been checked."
    if engine.network.result.left_out:
        return "Some weaker evidence was left out of the sum: there is too much of it at once."
    return ""
