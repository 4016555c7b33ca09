"""What was worked on between a proof that all was well and the trouble is gone over first: it costs minutes."""

from __future__ import annotations

from collections.abc import Iterable

from worklog_tui.diagnosis.candidate import Candidate, Tier
from worklog_tui.diagnosis.disturbed import SOON
from worklog_tui.diagnosis.log import Event, Log, proves_good
from worklog_tui.diagnosis.safety import Safety
from worklog_tui.diagnosis.sign import Sign
from worklog_tui.diagnosis.signs import Signs
from worklog_tui.model import Step, Work

MINUTES = 3
BEFORE_ALL = -2e9
"Before the repair that all points to: a lead that was not pushed home needs no new one."


def gone_over(log: Log, signs: Signs, sign: Sign, safety: Safety, own: Iterable[Candidate]) -> list[Candidate]:
    """A step for the last work that may have brought a complaint, unless it was looked at again since.

    What the person suspects himself (`own`) goes before it, and so does all else once the trouble is an old one.
    """
    works = signs.between.get(sign.of, ())
    if log.is_old(sign.event.place) or any(c.tier <= Tier.COMPLAINT for c in own):
        return []
    if not works or sign.event.when - works[-1].when > SOON or _seen_since(log, works[-1], sign):
        return []
    last = works[-1]
    step = words_of(last)
    others = list(dict.fromkeys(e.fact.about for e in reversed(works[:-1]) if e.fact.about != last.fact.about))[:2]
    done = f"the work on the {last.fact.about} ({log.said(last.place)})"
    why = f"It was well before {done}: what was disturbed is suspected first."
    why += f" After that the {' and the '.join(others)}, worked on before it." if others else ""
    outcomes = ("not as it was: put it right, then try it again", "as it was: leave it and go on")
    made = Step(step, why, MINUTES, safety.cautions(step), outcomes, (), "what was disturbed")
    return [Candidate(Tier.COMPLAINT, BEFORE_ALL, made, "", step)]


def words_of(work: Event) -> str:
    """The step in words."""
    return f"go over the work on the {work.fact.about} once more: all of it back, seated, connected and tight"


def _seen_since(log: Log, work: Event, sign: Sign) -> bool:
    """Whether the thing was worked on again, or found good, since the trouble came."""
    later = (e for e in log.about(work.name, work.fact.about) if e.when > sign.event.when)
    return any(isinstance(e.fact, Work) or proves_good(e.fact) for e in later)
