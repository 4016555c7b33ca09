"""How a fault is put right, by what is wrong: dirt is cleaned off, slack is taken up, what is worn is renewed."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from worklog_tui.diagnosis.kin import FLUIDS, OF_A_THING
from worklog_tui.diagnosis.phrases import one_of
from worklog_tui.diagnosis.told import stem
from worklog_tui.diagnosis.words import spoken, tokens

_SHORT = frozenset({"empty", "low", "short", "little"})
LONGEST = 25
"A condition of more characters is not shown beside the step."


def cure_of(condition: str, cures: Mapping[str, Sequence[str]]) -> str:
    """The job for a condition, with {} for the thing; empty where no state of the lists is in it."""
    said = f" {' '.join(stem(w) for w in spoken(condition).split())} "
    for job, states in cures.items():
        if any(f" {' '.join(stem(w) for w in spoken(state).split())} " in said for state in states):
            return job
    return ""


def put_right(thing: str, condition: str, wears_out: bool, cures: Mapping[str, Sequence[str]]) -> str:
    """The step that puts a thing right; `wears_out`: it is of the sort that is replaced."""
    if condition and tokens(thing)[-1:] and tokens(thing)[-1] in OF_A_THING - FLUIDS:
        return f"find why the {thing} is {condition}"  # a level or a pressure is never renewed
    if "missing" in tokens(condition):
        return f"replace the missing {thing}"
    job = cure_of(condition, cures)
    if job.startswith("clean") and tokens(thing)[-1:] and tokens(thing)[-1] in FLUIDS:
        return f"change the {thing}"
    if job and not (wears_out and job.startswith("find")):
        return job.replace("{}", thing)
    if tokens(thing)[-1:] and tokens(thing)[-1] in FLUIDS and set(tokens(condition)) & _SHORT:
        return f"top up the {thing}, and see where it went"
    if tokens(thing)[-1:] and tokens(thing)[-1] in FLUIDS and wears_out:
        return f"change the {thing}"
    if wears_out:
        return f"replace the {thing} with {'new ones' if one_of(thing) == '' else 'a new one'}"
    if condition and len(condition) < LONGEST:
        return f"put the {thing} right ({condition})"
    return f"put the {thing} right"
