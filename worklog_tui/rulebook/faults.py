"""The fault files: what can be wrong, how it shows, what tells it apart, what mends it, and what can hurt.

One TOML file a system in `grammars/diagnosis/`; no code in them. Every number is a judgement unless the table names a `source`.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from worklog_tui.rulebook.mistakes import GrammarMistake, Mistake


@dataclass(frozen=True, slots=True)
class Heard:
    """Which findings mean a thing: any of the parts, with any of the states or, where none is listed, any of the verdicts."""

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
class Access:
    """Something that must be opened or taken off before the work behind it."""

    id: str
    says: str
    minutes: float
    needs: tuple[str, ...] = ()


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
    applies: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    file: str = ""
    source: str = "judgement"


@dataclass(frozen=True, slots=True)
class Check:
    """One test with its outcomes, best first, and how likely each is with one fault alone."""

    id: str
    job: Job
    outcomes: tuple[str, ...]
    base: tuple[float, ...]
    likelihood: Mapping[str, tuple[float, ...]]
    combine: str
    "worst: the worst of what each fault makes of it; each: every fault moves the odds by itself."
    heard: Mapping[str, Heard]
    means: Mapping[str, str] = field(default_factory=dict)
    quantity: str = ""
    subjects: tuple[str, ...] = ()
    bands: tuple[tuple[str, float, str], ...] = ()
    "(test, limit, outcome): below or above, of the limit in the unit, of best, or of specified."
    unit: str = ""
    applies: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    file: str = ""
    source: str = "judgement"


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
    applies: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    file: str = ""
    source: str = "judgement"


@dataclass(frozen=True, slots=True)
class Caution:
    """One usual caution: its words, and the words of a step that call for it."""

    tag: str
    says: str
    source: str
    words: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class WordSets:
    """Sets of words that mean something together, such as a danger or what is never advised."""

    id: str
    sets: tuple[frozenset[str], ...]
    says: str
    cautions: tuple[str, ...] = ()


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
    systems: Mapping[str, str] = field(default_factory=dict)
    "System: its plain name."
    words: Mapping[str, Any] = field(default_factory=dict)
    "Lists of words for the wording of steps (steps.toml)."


def load_faults(folders: Sequence[Path]) -> FaultBook:
    """The fault book of the shipped folder and the person's own after it; a GrammarMistake names every file to mend."""
    from worklog_tui.rulebook.faults_lint import lint

    files, mistakes = _read(folders)
    faults: dict[str, Fault] = {}
    checks: dict[str, Check] = {}
    symptoms: dict[str, Symptom] = {}
    access: dict[str, Access] = {}
    cautions: dict[str, Caution] = {}
    dangers: list[WordSets] = []
    never: list[WordSets] = []
    systems: dict[str, str] = {}
    words: dict[str, Any] = {}
    for name, data in files.items():
        try:
            system, applies = data.get("system", ""), _applies(data.get("applies_when", {}))
            if system:
                systems[system] = data.get("says", system)
            access |= {
                a["id"]: Access(a["id"], a["says"], a["minutes"], _texts(a, "needs")) for a in data.get("access", ())
            }
            faults |= {f["id"]: _fault(f, system, applies, name) for f in data.get("fault", ())}
            checks |= {c["id"]: _check(c, applies, name) for c in data.get("check", ())}
            symptoms |= {s["id"]: _symptom(s, applies, name) for s in data.get("symptom", ())}
            cautions |= {
                c["tag"]: Caution(c["tag"], c["says"], c["source"], _texts(c, "words")) for c in data.get("caution", ())
            }
            dangers += [_word_sets(d) for d in data.get("danger", ())]
            never += [_word_sets(d) for d in data.get("never", ())]
            words |= data.get("words", {})
        except KeyError as error:
            mistakes.append(Mistake(name, 0, f"a table has no {error}", f"give it {error}"))
        except (TypeError, ValueError) as error:
            mistakes.append(
                Mistake(name, 0, f"a table has a value of the wrong kind ({error})", "compare it with its neighbours")
            )
    book = FaultBook(faults, checks, symptoms, access, cautions, tuple(dangers), tuple(never), systems, words)
    mistakes += lint(book)
    if mistakes:
        raise GrammarMistake(mistakes)
    return book


def _read(folders: Sequence[Path]) -> tuple[dict[str, dict[str, Any]], list[Mistake]]:
    files: dict[str, dict[str, Any]] = {}
    mistakes: list[Mistake] = []
    for number, folder in enumerate(folders):
        for path in [*sorted((folder / "diagnosis").glob("*.toml")), folder / "cautions.toml"]:
            if path.is_file():
                name = ("" if number == 0 else "own/") + path.relative_to(folder).as_posix()
                try:
                    files[name] = tomllib.loads(path.read_text(encoding="utf-8"))
                except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
                    mistakes.append(Mistake(name, 0, f"it is not TOML ({error})", "mend that line"))
    return files, mistakes


def _texts(table: Mapping[str, Any], key: str) -> tuple[str, ...]:
    value = table.get(key, ())
    return (value,) if isinstance(value, str) else tuple(map(str, value))


def _applies(table: Mapping[str, Any]) -> dict[str, tuple[str, ...]]:
    return {key: _texts(table, key) for key in table}


def _heard(table: Mapping[str, Any]) -> Heard:
    return Heard(*(_texts(table, key) for key in ("parts", "states", "verdicts", "causes")))


def _job(table: Mapping[str, Any]) -> Job:
    return Job(
        table["say"],
        float(table["minutes"]),
        _texts(table, "access"),
        _texts(table, "cautions"),
        float(table.get("parts", 0)),
    )


def _fault(t: Mapping[str, Any], system: str, applies: Mapping[str, tuple[str, ...]], file: str) -> Fault:
    look = _job(t["look"]) if "look" in t else None
    return Fault(
        t["id"], t["name"], t.get("system", system), float(t["prior"]), _heard(t.get("heard", {})), _job(t["repair"]), look,
        {**applies, **_applies(t.get("applies_when", {}))}, file, t.get("source", "judgement"),
    )  # fmt: skip


def _check(t: Mapping[str, Any], applies: Mapping[str, tuple[str, ...]], file: str) -> Check:
    return Check(
        t["id"], _job(t), _texts(t, "outcomes"), _numbers(t["base"]), {k: _numbers(v) for k, v in t["p"].items()},
        t.get("combine", "worst"), {k: _heard(v) for k, v in t.get("heard", {}).items()}, t.get("means", {}),
        t.get("quantity", ""), _texts(t, "subjects"), tuple((b[0], float(b[1]), b[2]) for b in t.get("bands", ())),
        t.get("unit", ""), {**applies, **_applies(t.get("applies_when", {}))}, file, t.get("source", "judgement"),
    )  # fmt: skip


def _symptom(t: Mapping[str, Any], applies: Mapping[str, tuple[str, ...]], file: str) -> Symptom:
    return Symptom(
        t["id"], t["says"], float(t["leak"]), {k: float(v) for k, v in t["causes"].items()}, _heard(t["heard"]),
        _heard(t.get("cured", {})), _texts(t, "first"), {**applies, **_applies(t.get("applies_when", {}))}, file,
        t.get("source", "judgement"),
    )  # fmt: skip


def _numbers(values: Iterable[Any]) -> tuple[float, ...]:
    return tuple(float(v) for v in values)


def _word_sets(t: Mapping[str, Any]) -> WordSets:
    return WordSets(t["id"], tuple(frozenset(words.split()) for words in t["any"]), t["says"], _texts(t, "cautions"))
