"""The nouns of the fault files: what can be wrong, how it shows, what tells it apart, what mends it, what can hurt.

Every number is a judgement unless its table names a `source`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any


@dataclass(frozen=True, slots=True)
class Heard:
    """Which findings mean a thing: any of the parts with any of the states, or of the verdicts where none is listed."""

    parts: tuple[str, ...] = ()
    states: tuple[str, ...] = ()
    verdicts: tuple[str, ...] = ()
    causes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Job:
    """A look, a check or a repair as work: what to say, minutes, what must come off first, cautions."""

    say: str
    minutes: float
    access: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    parts_cost: float = 0.0
    "In minutes of work, so that money and time are one sum."


@dataclass(frozen=True, slots=True)
class Measure:
    """A number that shows a fault: off by more than the share `within` from what it should be."""

    quantity: str
    subjects: tuple[str, ...]
    within: float


@dataclass(frozen=True, slots=True)
class Access:
    """Something that must be opened or taken off before the work behind it."""

    id: str
    says: str
    minutes: float
    needs: tuple[str, ...] = ()
    parts: tuple[str, ...] = ()
    "Parts that are this: heard taken off and not refitted, the way is free."


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing that can be wrong."""

    id: str
    name: str
    system: str
    prior: float
    heard: Heard
    repair: Job
    look: Job | None = None
    measure: Measure | None = None
    mended_by: tuple[str, ...] = ()
    "Further work that mends it, each as 'action part'."
    applies: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    file: str = ""
    source: str = "judgement"
    told: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    "Wordings of the bare words that show it: bad, or good."


@dataclass(frozen=True, slots=True)
class Check:
    """One test with its outcomes, best first, and how likely each is with one fault alone."""

    id: str
    job: Job
    outcomes: tuple[str, ...]
    base: tuple[float, ...]
    likelihood: Mapping[str, tuple[float, ...]]
    combine: str
    "worst: the first outcome means that all is well; masks: it may sound good or bad. Several faults show the last."
    heard: Mapping[str, Heard]
    means: Mapping[str, str] = field(default_factory=dict)
    only_for: tuple[str, ...] = ()
    "The complaints that it makes sense for; empty: all."
    answers: str = ""
    "The complaint that its worse outcomes are: heard as that, it is done."
    quantity: str = ""
    subjects: tuple[str, ...] = ()
    bands: tuple[tuple[str, float, str], ...] = ()
    """(test, limit, outcome), the first that fits: below or above the limit in `unit`, or below that share of what it
    should be (of the best one, where nobody says what it should be)."""
    unit: str = ""
    applies: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    file: str = ""
    source: str = "judgement"
    told: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    "Wordings of the bare words for its outcomes."


@dataclass(frozen=True, slots=True)
class Symptom:
    """A complaint: how it is heard, what cures it, and which faults cause it (noisy-OR links)."""

    id: str
    says: str
    leak: float
    causes: Mapping[str, float]
    heard: Heard
    cured: Heard
    first: tuple[str, ...] = ()
    "Ids of the simple checks that come first."
    vague: bool = False
    "Says little: another complaint that is there is advised on first."
    running: bool = False
    "The machine runs while it does this; True ends every complaint that `ends_running`."
    ends_running: bool = False
    "Over as soon as the machine is heard to run."
    applies: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    file: str = ""
    source: str = "judgement"
    told: tuple[str, ...] = ()
    "Wordings of the bare words that it is told in."
    general: bool = False
    "Told of any machine: every complaint of its own trade is advised on before it."


@dataclass(frozen=True, slots=True)
class Caution:
    """One usual caution: its words, the words of a step that call for it, and those that show that it is not meant."""

    tag: str
    says: str
    source: str
    words: tuple[str, ...] = ()
    applies: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    unless: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class WordSets:
    """Sets of words that mean something together, such as a danger or what is never advised."""

    id: str
    sets: tuple[frozenset[str], ...]
    says: str
    cautions: tuple[str, ...] = ()
    applies: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    say: str = ""
    "The step that makes it safe; empty: as the item words it."
    cleared_by: tuple[str, ...] = ()
    "Parts: found good since, the danger is over."
    works: tuple[str, ...] = ()
    "Words that tell that the part does its work: a relief valve that lifts is no fault of its own."
    told: tuple[str, ...] = ()
    "Wordings of the bare words that tell of the danger."
    mended: tuple[str, ...] = ()
    "Wordings that tell that it was put right."
    make_safe: str = ""
    "The step for a danger that only the bare words tell; {spot}: where it was said to be."
    phrases: tuple[str, ...] = ()
    "The entries as they stand in the file."


@dataclass(frozen=True, slots=True)
class Has:
    """Something that a machine may have, and what tells that it has it."""

    id: str
    kind: tuple[str, ...] = ()
    "Words of the card's kind."
    said: tuple[str, ...] = ()
    "Names of parts that show it once the log speaks of them."
    not_kind: tuple[str, ...] = ()
    fuel: tuple[str, ...] = ()
    ignition: tuple[str, ...] = ()
    unless_told: bool = False
    "Taken as there where neither card nor log tells."
    never: tuple[str, ...] = ()
    "Words of a kind that rules it out whatever the card's fuel and the log say, unless its kind names it too."
    kind_alone: tuple[str, ...] = ()
    "Words of the card's kind that show it only where none of `never` stands beside them: the pump of a compressor."


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of part, and how any part of that kind is looked at."""

    id: str
    words: tuple[str, ...]
    "What the name of such a part ends with."
    check: Job
    bad: str
    "What follows when it is bad."
    good: str
    "What follows when it is good."
    not_ill: tuple[str, ...] = ()
    "Words of ill states that say nothing bad of it: a spring may lie loose in a case."
    measured: bool = False
    "Never renewed by its looks: it is measured first."


@dataclass(frozen=True, slots=True)
class Discovery:
    """Something found out that voids what was seen before it."""

    id: str
    heard: Heard
    voids: tuple[str, ...] = ()
    "Ids of complaints, checks and faults whose earlier signs count for little."
    quantities: tuple[str, ...] = ()
    "Quantities whose earlier readings do."
    file: str = ""


@dataclass(frozen=True, slots=True)
class FaultBook:
    """All fault files together."""

    faults: Mapping[str, Fault] = field(default_factory=dict)
    checks: Mapping[str, Check] = field(default_factory=dict)
    symptoms: Mapping[str, Symptom] = field(default_factory=dict)
    access: Mapping[str, Access] = field(default_factory=dict)
    cautions: Mapping[str, Caution] = field(default_factory=dict)
    dangers: tuple[WordSets, ...] = ()
    never: tuple[WordSets, ...] = ()
    discoveries: tuple[Discovery, ...] = ()
    has: Mapping[str, Has] = field(default_factory=dict)
    kinds: Mapping[str, Kind] = field(default_factory=dict)
    systems: Mapping[str, str] = field(default_factory=dict)
    "System: its plain name."
    words: Mapping[str, Any] = field(default_factory=dict)
    "Lists of words for the wording of steps (steps.toml)."
