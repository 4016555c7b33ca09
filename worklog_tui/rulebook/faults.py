"""Loads the fault files: one TOML file a system in `grammars/diagnosis/`, and `grammars/cautions.toml`.

There is no code in them. Every number is a judgement unless its table names a `source`.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

from worklog_tui.rulebook.fault_nouns import (
    Access,
    Caution,
    Check,
    Fault,
    FaultBook,
    Heard,
    Job,
    Measure,
    Symptom,
    WordSets,
)  # fmt: skip
from worklog_tui.rulebook.faults_lint import lint
from worklog_tui.rulebook.mistakes import GrammarMistake, Mistake, line_of

__all__ = [
    "Access", "Caution", "Check", "Fault", "FaultBook", "Heard", "Job", "Measure", "Symptom", "WordSets", "load_faults",
]  # fmt: skip


def load_faults(folders: Sequence[Path]) -> FaultBook:
    """The fault book of the shipped folder and the person's own after it; a GrammarMistake names every file to mend."""
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
        raise GrammarMistake([_placed(m, folders) for m in mistakes])
    return book


def _placed(mistake: Mistake, folders: Sequence[Path]) -> Mistake:
    """The mistake with the first line of its file that holds, in quotes, one of the names it speaks of."""
    path = folders[mistake.file.startswith("own/")] / mistake.file.removeprefix("own/")
    if mistake.line or not path.is_file():
        return mistake
    lines = (line_of(path, f'"{word}"') for word in re.findall(r"[\w./-]+", mistake.says))
    return replace(mistake, line=next((n for n in lines if n), 0))


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
                    line = re.search(r"line (\d+)", str(error))
                    at = int(line[1]) if line else 0
                    mistakes.append(Mistake(name, at, f"it is not TOML ({error})", "mend that line"))
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
    by = t.get("measure")
    measure = Measure(by["quantity"], _texts(by, "subjects"), float(by["within"])) if by else None
    return Fault(
        t["id"], t["name"], t.get("system", system), float(t["prior"]), _heard(t.get("heard", {})), _job(t["repair"]),
        look, measure, _texts(t, "mended_by"),
        {**applies, **_applies(t.get("applies_when", {}))}, file, t.get("source", "judgement"),
    )  # fmt: skip


def _check(t: Mapping[str, Any], applies: Mapping[str, tuple[str, ...]], file: str) -> Check:
    return Check(
        t["id"], _job(t), _texts(t, "outcomes"), _numbers(t["base"]), {k: _numbers(v) for k, v in t["p"].items()},
        t.get("combine", "worst"), {k: _heard(v) for k, v in t.get("heard", {}).items()},
        t.get("means", {}), _texts(t, "only_for"), t.get("answers", ""),
        t.get("quantity", ""), _texts(t, "subjects"), tuple((b[0], float(b[1]), b[2]) for b in t.get("bands", ())),
        t.get("unit", ""), {**applies, **_applies(t.get("applies_when", {}))}, file, t.get("source", "judgement"),
    )  # fmt: skip


def _symptom(t: Mapping[str, Any], applies: Mapping[str, tuple[str, ...]], file: str) -> Symptom:
    return Symptom(
        t["id"], t["says"], float(t["leak"]), {k: float(v) for k, v in t["causes"].items()}, _heard(t["heard"]),
        _heard(t.get("cured", {})), _texts(t, "first"), t.get("vague", False), t.get("running", False),
        t.get("ends_running", False), {**applies, **_applies(t.get("applies_when", {}))}, file,
        t.get("source", "judgement"),
    )  # fmt: skip


def _numbers(values: Iterable[Any]) -> tuple[float, ...]:
    return tuple(float(v) for v in values)


def _word_sets(t: Mapping[str, Any]) -> WordSets:
    return WordSets(t["id"], tuple(frozenset(words.split()) for words in t["any"]), t["says"], _texts(t, "cautions"))
