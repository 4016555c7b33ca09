"""Suspicions in the bare words, on a machine without an engine: `I think the little ball valve isn't seating`.

Read only where no suspicion was read as a fact; the part must be of a known kind. The words of guessing stand in
grammars/diagnosis/talk.toml.
"""

from __future__ import annotations

import re

from worklog_tui.diagnosis.candidate import Candidate, Tier
from worklog_tui.diagnosis.log import Log
from worklog_tui.diagnosis.safety import Safety
from worklog_tui.diagnosis.seen_bad import full_part, is_dealt_with, own_words
from worklog_tui.diagnosis.signs import Signs
from worklog_tui.model import Step, Suspect

REACH = 9
"So many words behind `I think` the part may stand."


def thought_of(log: Log, signs: Signs, safety: Safety) -> list[Candidate]:
    """A check for each such part of the last session that nothing dealt with since, the latest first."""
    if "engine" in signs.makeup.has:
        return []
    read = {e.fact.main.note for e in log.suspects if isinstance(e.fact, Suspect)}
    guesses, unguessed = signs.talk.pattern("guesses"), signs.talk.pattern("unguessed")
    found: dict[str, Candidate] = {}
    for line in reversed(signs.lines):
        if line.asks or line.event.place.session != log.last_session or line.event.fact.main.note in read:
            continue
        said = guesses.search(own_words(log, line.event))
        if said is None or unguessed.search(said.string[: said.end()]):
            continue
        words = re.findall(r"[\w'’-]+", said.string[said.end() :])[:REACH]
        at = next((n for n, w in enumerate(words) if signs.kinds.of(w)), None)
        if at is None:
            continue
        thing = full_part(words, at)
        if thing in found or is_dealt_with(log, thing, "", line.event.when):
            continue
        step = f"check the {thing}"
        why = f"You suspected it yourself at {log.said(line.event.place)}, and nothing has settled it since."
        made = Step(step, why, 10, safety.cautions(step), (), (), "own plan", "", thing, "look")
        tier = Tier.COMPLAINT if not log.is_old(line.event.place) else Tier.OWN_CAUSE
        found[thing] = Candidate(tier, len(found) / 10, made, "", thing, frozenset({line.event.fact.main.note}))
    return list(found.values())
