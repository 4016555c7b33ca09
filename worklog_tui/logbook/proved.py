"""A cause that is named when the deed is done: 'so it was the jet'. Its suspicion was raised and dealt with in one."""

from __future__ import annotations

from dataclasses import dataclass, field

from worklog_tui.logbook.changes import Said
from worklog_tui.logbook.cured_words import is_of
from worklog_tui.logbook.cures import is_whole
from worklog_tui.logbook.deeds import MEND
from worklog_tui.logbook.same_thing import Thing, same, thing
from worklog_tui.logbook.words import raw_words
from worklog_tui.model import Finding, Reading, Suspect, Work

SOON = 2
"Lines after a good outcome within which the cause that is named is the one that was cured."
WAS = frozenset({"was", "were", "wz"})
"What is said of a cause that is gone."


@dataclass(slots=True)
class PutRight:
    """What was put right so far, and where things were last told to be well."""

    mended: dict[str, frozenset[Thing]] = field(default_factory=dict)
    "By the last word of their name."
    well: tuple[int, int] = (0, 0)
    "Session and line of the last good outcome."
    all_well: tuple[int, int] = (0, 0)
    "And of the last one that was of the machine, or of whatever had been wrong."

    def copy(self) -> PutRight:
        """The same, to be changed without changing this."""
        return PutRight(dict(self.mended), self.well, self.all_well)

    def take_in(self, said: Said) -> None:
        """Remembers what was put right, and a good outcome."""
        match said.fact:
            case Work(action=action, part=part, name=name) if action in MEND:
                self._remember(thing(part, name))
            case Reading(role="set", subject=subject, name=name):
                self._remember(thing(subject, name))
            case Finding(verdict="good") as finding:
                at = (said.place.session, said.line)
                self.well = at
                self.all_well = at if _of_all(finding) else self.all_well

    def _remember(self, one: Thing) -> None:
        if one.head:
            self.mended[one.head] = self.mended.get(one.head, frozenset()) | {one}

    def proves(self, said: Said, just_named: bool = False) -> bool:
        """Whether the fact names a cause as the one after it was put right, or right after all was well: `it was the
        jet`. Of one that is `just_named`, behind a good part, `there's your leak` only says where the trouble is.
        """
        fact = said.fact
        if not isinstance(fact, Suspect) or fact.standing != "confirmed":
            return False
        session, line = self.well if not just_named or WAS & set(raw_words(fact.quote)) else self.all_well
        if session == said.place.session and said.line - line <= SOON:
            return True
        cause = thing(fact.cause, fact.name)
        return any(same(one, cause) for one in self.mended.get(cause.head, ()))


def _of_all(finding: Finding) -> bool:
    """Whether a good finding is of the machine, or says that what was wrong is settled."""
    return is_whole(thing(finding.part, finding.name)) or is_of(raw_words(finding.condition), "settled")
