"""The advice in a mechanic's words, built from the same numbers as the ranking."""

from __future__ import annotations

from collections.abc import Iterator

from worklog_tui.diagnosis.engine import Engine
from worklog_tui.diagnosis.log import Log
from worklog_tui.diagnosis.network import Network
from worklog_tui.diagnosis.option import Option
from worklog_tui.diagnosis.safety import Safety
from worklog_tui.diagnosis.sign import Sign
from worklog_tui.diagnosis.signs import Signs
from worklog_tui.model import Cause, Evidence, Step, SystemStanding

LIKELY, POSSIBLE = 0.35, 0.08
"Grades of a cause by its chance (judgement)."
LONGEST = 110
"Longer words than this (characters) are not quoted as what points to a fault."
QUICK = 5
"A look of at most so many minutes is called a quick one."
TELLING = 0.15
"Log odds below which a sign is not worth naming."


def grade(chance: float) -> str:
    """The plain grade of a chance."""
    return "likely" if chance >= LIKELY else "possible" if chance >= POSSIBLE else "unlikely"


def causes_of(network: Network, ranked: list[str], sign: Sign, most: int = 6) -> tuple[Cause, ...]:
    """The likeliest causes of a complaint as it was last heard, with what speaks for and against each.

    What was put right since explains it still, until it is proved cured or heard again, and is told to be put right.
    """
    chances = {f: network.chance_at(f, sign.event.when) for f in ranked}
    top = sorted(ranked, key=lambda f: (-chances[f], f))[:most]
    then = {f: network.ids[network.variable(f, sign.event.when)] for f in top[:3]}
    weights = network.weights(list(then.values()))
    found = []
    for name in top:
        fault, chance = network.signs.faults[name], chances[name]
        told = [
            Evidence(sign.words, sign.event.place, round(w[then[name]], 3), round(sign.trust, 3))
            for sign, w in weights
            if name in then and abs(w[then[name]]) >= TELLING
        ]
        told.sort(key=lambda e: -abs(e.weight))
        told = [*_put_right(network.signs, name, sign.event.when), *told[:5]]
        found.append(Cause(name, fault.name, fault.system, chance, grade(chance), tuple(told)))
    return tuple(found)


def _put_right(signs: Signs, fault: str, heard: float) -> Iterator[Evidence]:
    """That a cause was put right after the complaint was heard, and when."""
    when = signs.mended.get(fault, -1.0)
    if when > heard:
        work = next(e for e in signs.log.works if e.when == when)
        yield Evidence(f"put right since, and not proved yet: {work.fact.quote}", work.place, 0.0, 1.0)


def step_of(option: Option, engine: Engine, log: Log, safety: Safety, sign: Sign) -> Step:
    """An option as a step, with why it, its minutes, what must come off, and what each outcome would mean."""
    job = option.job
    shut = [engine.book.access[a] for a in job.access if a not in engine.opened]
    access = tuple(a.says for a in shut)
    cautions = safety.cautions(job.say, job.cautions)
    minutes = round(job.minutes + sum(a.minutes for a in shut))
    return Step(
        job.say,
        _why(option, engine, log, sign, access),
        minutes,
        cautions,
        _outcomes(option, engine),
        access,
        option.id,
    )


def _why(option: Option, engine: Engine, log: Log, sign: Sign, access: tuple[str, ...]) -> str:
    faults = engine.signs.faults
    names = [faults[f].name for f in engine.suspects[:3] if engine.network.chance(f) >= POSSIBLE]
    names = names or [faults[f].name for f in engine.suspects[:1]]
    complaint = engine.symptom.says[0].upper() + engine.symptom.says[1:]
    first = f"{complaint} ({log.said(sign.event.place)}). Most likely: {'; '.join(names)}."
    first += _disturbed(engine, log) + _pointed(engine, log)
    if option.sort == "repair":
        return f"{first} Do this, then prove it by the same test."
    minutes = job_minutes(option.job.minutes) + (f" once {access[0]} is off" if access else "")
    if option.saves >= 2:
        return f"{first} It takes {minutes} and saves about {round(option.saves)} minutes of work on average."
    if option.job.minutes > QUICK:
        return f"{first} It takes {minutes}: no other way in costs less work in the end."
    nothing = "" if access else " and nothing has to come off"
    return f"{first} It takes {minutes}{nothing}, so do it before anything longer."


def _disturbed(engine: Engine, log: Log) -> str:
    """What was worked on since all was well, where that is among the likeliest."""
    for name in engine.suspects[:3]:
        if work := engine.signs.disturbed.get(name):
            done = f"the work on the {work.fact.about} ({log.said(work.place)})"
            return f" It was well before {done}: what was disturbed is suspected first."
    return ""


def _pointed(engine: Engine, log: Log) -> str:
    """The words that point at the likeliest fault, where there are any."""
    for name in engine.suspects[:1]:
        sign = engine.signs.hint_signs.get(name)
        if sign and len(sign.words) <= LONGEST:
            return f' What points to it: "{sign.words}" ({log.said(sign.event.place)}).'
    return ""


def job_minutes(minutes: float) -> str:
    """Minutes as they are said."""
    return "a minute" if minutes < 1.5 else f"{round(minutes)} minutes"


def _outcomes(option: Option, engine: Engine) -> tuple[str, ...]:
    check = engine.signs.checks.get(option.id)
    fault = engine.signs.faults.get(option.id)
    found = []
    for outcome, chance, top in option.after:
        if chance < 0.005:
            continue
        if check:
            meaning = check.means.get(outcome) or f"then most likely {engine.signs.faults[top].name}"
            found.append(f"{outcome}: {meaning}")
        elif fault and outcome == "bad":
            found.append(f"bad: {fault.repair.say}, then try it again")
        elif top != option.id:
            found.append(f"good: then most likely {engine.signs.faults[top].name}")
    return tuple(found)


def standings(network: Network, systems: dict[str, str], log: Log) -> tuple[SystemStanding, ...]:
    """Where each system stands: proved good, in doubt, bad or not looked at, with its evidence."""
    found = []
    for system, name in systems.items():
        faults = [f.id for f in network.signs.faults.values() if f.system == system]
        if not faults:
            continue
        about = [s for s in network.signs.all() if s.trust > 0 and _touches(s, faults, network)]
        told = {(s.words, s.event.place): Evidence(s.words, s.event.place, 0.0, s.trust) for s in about}
        evidence = tuple(told.values())[-4:]
        found.append(SystemStanding(name, _standing(network, faults, about), evidence))
    return tuple(found)


def _touches(sign: Sign, faults: list[str], network: Network) -> bool:
    if sign.sort in ("look", "hunch", "hint"):
        return sign.of in faults
    if sign.sort == "check":
        linked = set(network.signs.checks[sign.of].likelihood)
    else:
        linked = set(network.signs.symptoms[sign.of].causes)
    return len(linked & set(faults)) > len(linked) / 2


def _standing(network: Network, faults: list[str], about: list[Sign]) -> str:
    if not about:
        return "not looked at"
    worst = max(network.chance(f) for f in faults)
    if worst >= 0.6:
        return "bad"
    good = any(s.shows in ("good", "ok", "absent") or s.shows == network_best(network, s) for s in about)
    return "in doubt" if worst >= 0.12 or not good else "proved good"


def network_best(network: Network, sign: Sign) -> str:
    """The best outcome of the check that a sign is of; empty for a complaint or a look."""
    check = network.signs.checks.get(sign.of)
    return check.outcomes[0] if check and sign.sort == "check" else ""
