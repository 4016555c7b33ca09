"""Signs from the bare words of the notes, laid among those that were read as facts: the later one counts."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from worklog_tui.diagnosis.log import Event
from worklog_tui.diagnosis.sign import Sign
from worklog_tui.diagnosis.told import TRUST, Sentence, heard_in
from worklog_tui.rulebook.faults import Check, Fault, Symptom

Key = tuple[str, str]


def told_signs(
    lines: Sequence[Sentence], faults: Mapping[str, Fault], checks: Mapping[str, Check], symptoms: Mapping[str, Symptom]
) -> list[Sign]:
    """Every sign that the words give, in the order of the log."""
    found = []
    for symptom in symptoms.values():
        for event, so in heard_in(symptom.told, lines, across=True) if symptom.told else ():
            found.append(Sign("symptom", symptom.id, "present" if so else "absent", event, TRUST))
    for sort, tables in (("look", faults), ("check", checks)):
        for one in tables.values():
            for shows, wordings in one.told.items():
                found += [Sign(sort, one.id, shows, event, TRUST) for event, so in heard_in(wordings, lines) if so]
    return sorted(found, key=lambda s: s.event.when)


def merged(found: dict[Key, Sign], told: list[Sign], proofs: dict[str, list[Event]]) -> dict[Key, Sign]:
    """The last sign of each thing; a fact of the same note goes before its bare words, which can only add to it."""
    for sign in told:
        key = (sign.sort, sign.of)
        if sign.sort == "symptom" and sign.shows == "absent":
            if key not in found:
                continue  # what was never heard of needs no denial
            proofs.setdefault(sign.of, []).append(sign.event)
        known = found.get(key)
        if known is None or sign.event.place.order > known.event.place.order:
            found[key] = sign
        elif sign.event.place.order < known.event.place.order:
            continue
        elif sign.shows != known.shows and (sign.sort == "look" or sign.shows == "present"):
            found[key] = sign  # 'half choke and it runs smooth' cures nothing, a new plug without spark clears the plug
        elif known.shows == sign.shows and known.trust < sign.trust:
            found[key] = replace(known, trust=sign.trust)
    return found


NO_EFFECT = (
    "no_better|no_different|no_difference|no_change|no_effect|not_better", "! help|helped|better|different|difference",
    "still same|does|just_the_same", "just_the_same",
)  # fmt: skip


def renewed(signs: dict[str, Sign], lines: Sequence[Sentence]) -> None:
    """Moves the complaint that was heard last to where it is said that the work has not helped."""
    there = [s for s in signs.values() if s.shows == "present"]
    if not there:
        return
    last = max(there, key=lambda s: s.event.when)
    later = [line for line in lines if line.event.when > last.event.when]
    for event, _ in heard_in(NO_EFFECT, later):
        signs[last.of] = replace(last, event=replace(event, fact=last.event.fact))


def hints_in(told: list[Sign]) -> tuple[list[Sign], dict[str, Sign]]:
    """The signs without those that only point at a fault, and the last of these for each fault."""
    pointing = {s.of: s for s in told if s.sort == "look" and s.shows == "bad"}
    rest = [s for s in told if s.sort != "look" or s.shows != "bad"]
    return rest, {of: replace(s, sort="hint", shows="points to it") for of, s in pointing.items()}
