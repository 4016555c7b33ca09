"""Advice: the systems with their standing, the causes in grades, and the steps worth doing."""

from __future__ import annotations

from dataclasses import dataclass

from worklog_tui.model.items import Place


@dataclass(frozen=True, slots=True)
class Evidence:
    """One line of the log that speaks for or against something."""

    words: str
    "Such as: spark was good on all plugs."
    place: Place | None
    weight: float = 0.0
    "Log odds, positive when it speaks for."
    trust: float = 1.0


@dataclass(frozen=True, slots=True)
class SystemStanding:
    """Where one system of the machine stands."""

    system: str
    standing: str
    "proved good, in doubt, bad or not looked at."
    evidence: tuple[Evidence, ...] = ()


@dataclass(frozen=True, slots=True)
class Cause:
    """A possible cause of the trouble, with its grade."""

    id: str
    name: str
    system: str
    chance: float
    grade: str
    "likely, possible or unlikely."
    evidence: tuple[Evidence, ...] = ()


@dataclass(frozen=True, slots=True)
class Step:
    """One thing to do next, and why."""

    step: str
    why: str
    minutes: int | None = None
    cautions: tuple[str, ...] = ()
    outcomes: tuple[str, ...] = ()
    "What each outcome would mean, in words."
    access: tuple[str, ...] = ()
    "What must come off first."
    source: str = ""
    "own plan, open item, or the id of the check or repair."
    how: str = ""
    "How it is done, where that is not plain from the step."
    thing: str = ""
    "What it works on, where it is a step of the person's own."
    aim: str = ""
    "look: it finds out; mend: it puts right or renews; tend: it cleans, frees or oils; empty for any other."


@dataclass(frozen=True, slots=True)
class Advice:
    """What is known about the trouble, and what to do next, best first."""

    complaint: str
    "The trouble that is open, in words; empty when there is none."
    systems: tuple[SystemStanding, ...] = ()
    causes: tuple[Cause, ...] = ()
    steps: tuple[Step, ...] = ()
    remark: str = ""
    "Such as: the list does not explain this."
    instead: str = ""
    "The runner-up among the checks, and what would put it first."
    asks: tuple[str, ...] = ()
    "Facts that are missing and would change what comes first."
    standing: str = ""
    "The one sentence that defers to handbook, local codes and licensed practice; empty without a step."
    plan: tuple[str, ...] = ()
    "The person's own plan in its order, with what he would do if a step does not help."
