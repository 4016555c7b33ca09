"""The try that is owed after work on what can cause a complaint: nothing was heard of it since."""

from __future__ import annotations

from worklog_tui.diagnosis.log import Log
from worklog_tui.diagnosis.safety import Safety
from worklog_tui.diagnosis.sayings import Sayings
from worklog_tui.diagnosis.sign import Sign
from worklog_tui.diagnosis.signs import Signs
from worklog_tui.model import Step
from worklog_tui.rulebook.faults import Symptom

SOON = 2
"Within so many notes after work stands what it did (judgement)."


def is_owed(symptom: Symptom, sign: Sign, signs: Signs, log: Log, talk: Sayings) -> bool:
    """Whether something that can cause a complaint was worked on since, and the work was not said to change nothing."""
    since = [when for fault, when in signs.mended.items() if fault in symptom.causes and when > sign.event.when]
    return bool(since) and not _changed_nothing(max(since), log, talk)


def _changed_nothing(when: float, log: Log, talk: Sayings) -> bool:
    no_better = talk.pattern("no_better")
    notes = [n for n in log.last_notes if int(when) <= log.history.place(n.uid).order <= int(when) + SOON]
    return any(no_better.search(note.words) for note in notes)


def prove(symptom: Symptom, sign: Sign, log: Log, safety: Safety) -> Step:
    """The step that proves the work done since a complaint was last heard of."""
    say = f"try it again and see whether it is cured ({symptom.says})"
    at = log.said(sign.event.place)
    why = f"Work was done on what can cause it since {at}, and nothing was heard of it after that."
    outcomes = ("cured: the complaint is closed", "still there: another of the causes is present too")
    return Step(say, why, 10, safety.cautions(say, ("co",)), outcomes, (), "prove")


def found_since(signs: Signs) -> bool:
    """Whether something bad was seen, or pointed at, after the last work: then he is still looking for it."""
    last = max(signs.mended.values(), default=-1.0)
    bad = [s for s in signs.look_signs.values() if s.shows == "bad"]
    return any(s.event.when > last for s in (*bad, *signs.hint_signs.values()))
