"""Complaints told of one part that was found good since: the coolant pump that hummed runs now."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import replace

from worklog_tui.diagnosis.log import Event, Log
from worklog_tui.diagnosis.sign import Sign
from worklog_tui.diagnosis.words import tokens
from worklog_tui.model import Fact, Finding

AT_WORK = frozenset({"run", "running", "work", "working", "turn", "spin", "go", "cured", "fixed", "sorted", "pump"})
"What a part does that is well again."


def without_found_good(
    signs: Mapping[str, Sign], log: Log, proofs: dict[str, list[Event]], wholes: Collection[str]
) -> dict[str, Sign]:
    """The complaints, with those over that were told in bare words of parts which were all found good since.

    `wholes`: names of the machine itself, which says too little of a single part; proofs are added to `proofs`.
    """
    read = {id(e.fact) for e in log.findings}
    told = dict(signs)
    for of, sign in signs.items():
        if sign.shows != "present" or id(sign.event.fact) in read:
            continue
        cured = _cured(log, sign.event, wholes)
        if cured is not None:
            proofs.setdefault(of, []).append(cured)
            told[of] = replace(sign, shows="absent", event=cured)
    return told


def _works(fact: Fact) -> bool:
    """Whether a part was found to do its work: a battery that tested good may still be drained overnight."""
    return isinstance(fact, Finding) and fact.verdict == "good" and not AT_WORK.isdisjoint(tokens(fact.condition))


def _cured(log: Log, told: Event, wholes: Collection[str]) -> Event | None:
    """The last moment at which every part that was bad in a note was found good again; None while one is not."""
    bad = [
        e for e in log.findings
        if int(e.when) == int(told.when) and isinstance(e.fact, Finding) and e.fact.verdict == "bad" and e.name
    ]  # fmt: skip
    last = [log.verdict(e.name, e.fact.about) for e in bad]
    good = [v for v in last if v is not None and _works(v.fact) and v.when > told.when]
    if not bad or len(good) < len(bad) or any(e.name in wholes for e in bad):
        return None
    return max(good, key=lambda e: e.when)
