"""What keeps a matter open though something was done about it: it was put off, made do for now, or only bearable."""

from __future__ import annotations

import re
from functools import lru_cache

from worklog_tui.logbook.changes import Said
from worklog_tui.logbook.deeds import RENEW
from worklog_tui.logbook.headed import same_spot
from worklog_tui.logbook.matters import Matter
from worklog_tui.logbook.trade_files import trade_file
from worklog_tui.model import Finding, Reading, Work


def stays_open(matter: Matter, said: Said) -> bool:
    """Whether the fact, whatever it is of, does not deal with the matter."""
    if is_of_another(matter, said):
        return True
    match said.fact:
        case Reading():
            return False
        case Finding() as finding if same_spot(matter, said) and _says("tolerated", finding.condition):
            return True
        case Work() as work if _for_now(matter, work, said):
            return True
    return matter.firm and matter.told == said.place.session and _says("put_off", matter.quote)


def is_of_another(matter: Matter, said: Said) -> bool:
    """Whether what is told is of the other one: of a rough bearing it tells nothing that the other one is fine."""
    if not isinstance(said.fact, (Finding, Work)) or _OTHER.search(f"{matter.about} {matter.quote}".lower()):
        return False
    begins = min((span.start for span in said.fact.evidence), default=0)
    named = f"{said.note[max(0, begins - BEFORE) : begins].rstrip()} {said.fact.quote}".lower()
    return _OTHER.search(named) is not None and matter.told == said.place.session


BEFORE = 12
"Characters before a fact in which it is told that it is of the other one."
_OTHER = re.compile(r"\b(?:the|its|on the|that) other\b(?! (?:day|week|night|month))|\bother (?:one|end|side)s?\b")


def _for_now(matter: Matter, work: Work, said: Said) -> bool:
    """Whether a fault, or a part that is wanted, was only made do with: a spider of belting, for the time being."""
    wanted = matter.reason in ("fault", "part needed") and work.action in RENEW | {"repair"}
    return wanted and _says("for_now", said.note)


def _says(name: str, text: str) -> bool:
    return bool(_phrases(name).search(text.lower().replace("\u2019", "'")))


@lru_cache(maxsize=8)
def _phrases(name: str) -> re.Pattern[str]:
    each = sorted(trade_file("cured")["phrases"][name], key=len, reverse=True)
    return re.compile(rf"(?<!\w)(?:{'|'.join(map(re.escape, each))})(?!\w)")
