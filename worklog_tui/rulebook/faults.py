"""Loads the fault files: one TOML file a system in `grammars/diagnosis/`, and `grammars/cautions.toml`.

There is no code in them. Every number is a judgement unless its table names a `source`.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import fields
from pathlib import Path
from typing import Any

from worklog_tui.rulebook.fault_nouns import (
    Access,
    Caution,
    Check,
    Discovery,
    Fault,
    FaultBook,
    Has,
    Heard,
    Job,
    Kind,
    Measure,
    Symptom,
    WordSets,
)  # fmt: skip
from worklog_tui.rulebook.faults_keys import NEEDS, mistakes_in
from worklog_tui.rulebook.faults_lint import lint
from worklog_tui.rulebook.mistakes import GrammarMistake, Mistake, no_toml, placed

__all__ = [
    "Access", "Caution", "Check", "Fault", "FaultBook", "Heard", "Job", "Measure", "Symptom", "WordSets", "load_faults",
]  # fmt: skip


WRONG = (KeyError, TypeError, ValueError, AttributeError, IndexError)
"What a table of the wrong form comes to when it is read."
_known: dict[tuple[object, ...], FaultBook] = {}
"The last books read, by the files they were read from; a changed file is read again."


def load_faults(folders: Sequence[Path]) -> FaultBook:
    """The fault book of the shipped folder and the person's own after it; a GrammarMistake names every file to mend."""
    paths = _paths(folders)
    key = tuple((str(path), (stat := path.stat()).st_mtime_ns, stat.st_size) for _, path in paths)
    if key not in _known:
        if len(_known) >= 4:
            _known.clear()
        _known[key] = _load(folders, paths)
    return _known[key]


def _load(folders: Sequence[Path], paths: Sequence[tuple[str, Path]]) -> FaultBook:
    files, mistakes = _read(paths)
    book = _empty()
    for name, data in files.items():
        try:
            _merge(book, name, data)
        except WRONG as error:
            mistakes.append(_wrong(name, data, error))
    made = FaultBook(**book)
    mistakes += [] if mistakes else lint(made)  # a file that was left out would be missed everywhere
    if mistakes:
        raise GrammarMistake([placed(m, dict(paths)) for m in mistakes])
    return made


def _wrong(name: str, data: Mapping[str, Any], error: Exception) -> Mistake:
    """What does not fit, with the table that it stands in."""
    of = "a table"
    for kind in NEEDS:
        for table in data.get(kind, ()):
            try:
                _merge(_empty(), name, {kind: [table]})
            except WRONG as here:
                of, error = f"{kind} {table.get('id', table.get('tag', ''))}", here
                break
    if isinstance(error, KeyError):
        return Mistake(name, 0, f"{of} has a table without {error}", f"give it {error}")
    cure = "compare it with its neighbours: a number stands bare, words in quotes, several of either in [ ]"
    return Mistake(name, 0, f"{of} has a value of the wrong kind ({error})", cure)


def _empty() -> dict[str, Any]:
    return {f.name: () if f.name in ("dangers", "never", "discoveries") else {} for f in fields(FaultBook)}


def _merge(book: dict[str, Any], name: str, data: Mapping[str, Any]) -> None:
    """Adds one file to the book."""
    system, applies = data.get("system", ""), _applies(data.get("applies_when", {}))
    book["systems"] |= {system: data.get("says", system)} if system else {}
    book["systems"] |= data.get("systems", {})
    for a in data.get("access", ()):
        way = Access(a["id"], a["says"], float(a["minutes"]), _texts(a, "needs"), _texts(a, "parts"))
        book["access"][a["id"]] = way
    book["faults"] |= {f["id"]: _fault(f, system, applies, name) for f in data.get("fault", ())}
    book["checks"] |= {c["id"]: _check(c, applies, name) for c in data.get("check", ())}
    book["symptoms"] |= {s["id"]: _symptom(s, applies, name) for s in data.get("symptom", ())}
    for c in data.get("caution", ()):
        when = _applies(c.get("applies_when", {}))
        book["cautions"][c["tag"]] = Caution(
            c["tag"], c["says"], c["source"], _texts(c, "words"), when, _texts(c, "unless")
        )
    book["dangers"] += tuple(_word_sets(d) for d in data.get("danger", ()))
    book["discoveries"] += tuple(
        Discovery(d["id"], _heard(d["heard"]), _texts(d, "voids"), _texts(d, "quantities"), name)
        for d in data.get("discovery", ())
    )
    book["never"] += tuple(_word_sets(d) for d in data.get("never", ()))
    for h in data.get("has", ()):
        kind, said, not_kind, fuel, ignition, never, alone = (
            _texts(h, key) for key in ("kind", "said", "not_kind", "fuel", "ignition", "never", "kind_alone")
        )
        told = bool(h.get("unless_told", False))
        book["has"][h["id"]] = Has(h["id"], kind, said, not_kind, fuel, ignition, told, never, alone)
    for k in data.get("kind", ()):
        check = Job(k["check"], float(k["minutes"]), (), _texts(k, "cautions"))
        words, fine, measured = _texts(k, "words"), _texts(k, "not_ill"), bool(k.get("measured"))
        book["kinds"][k["id"]] = Kind(k["id"], words, check, k["bad"], k["good"], fine, measured)
    book["words"] |= data.get("words", {})


def _paths(folders: Sequence[Path]) -> list[tuple[str, Path]]:
    """(name within its folder, path) of every fault file, and of the cautions."""
    found = []
    for number, folder in enumerate(folders):
        for path in [*sorted((folder / "diagnosis").glob("*.toml")), folder / "cautions.toml"]:
            if path.is_file():
                found.append((("own/" if number else "") + path.relative_to(folder).as_posix(), path))
    return found


def _read(paths: Sequence[tuple[str, Path]]) -> tuple[dict[str, dict[str, Any]], list[Mistake]]:
    files: dict[str, dict[str, Any]] = {}
    mistakes: list[Mistake] = []
    for name, path in paths:
        try:
            text = path.read_text(encoding="utf-8-sig")
            data = tomllib.loads(text)
            wrong = mistakes_in(name, text, data)
            mistakes += wrong
            if not wrong:
                files[name] = data
        except UnicodeDecodeError:
            mistakes.append(Mistake(name, 0, "it is not UTF-8 text", "save it as UTF-8"))
        except tomllib.TOMLDecodeError as error:
            mistakes.append(no_toml(name, error))
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
        _applies(t.get("told", {})),
    )  # fmt: skip


def _check(t: Mapping[str, Any], applies: Mapping[str, tuple[str, ...]], file: str) -> Check:
    return Check(
        t["id"], _job(t), _texts(t, "outcomes"), _numbers(t["base"]), {k: _numbers(v) for k, v in t["p"].items()},
        t.get("combine", "worst"), {k: _heard(v) for k, v in t.get("heard", {}).items()},
        t.get("means", {}), _texts(t, "only_for"), t.get("answers", ""),
        t.get("quantity", ""), _texts(t, "subjects"), tuple((b[0], float(b[1]), b[2]) for b in t.get("bands", ())),
        t.get("unit", ""), {**applies, **_applies(t.get("applies_when", {}))}, file, t.get("source", "judgement"),
        _applies(t.get("told", {})),
    )  # fmt: skip


def _symptom(t: Mapping[str, Any], applies: Mapping[str, tuple[str, ...]], file: str) -> Symptom:
    return Symptom(
        t["id"], t["says"], float(t["leak"]), {k: float(v) for k, v in t["causes"].items()}, _heard(t["heard"]),
        _heard(t.get("cured", {})), _texts(t, "first"), t.get("vague", False), t.get("running", False),
        t.get("ends_running", False), {**applies, **_applies(t.get("applies_when", {}))}, file,
        t.get("source", "judgement"), _texts(t, "told"), t.get("general", False),
    )  # fmt: skip


def _numbers(values: Iterable[Any]) -> tuple[float, ...]:
    return tuple(float(v) for v in values)


def _word_sets(t: Mapping[str, Any]) -> WordSets:
    sets = tuple(frozenset(words.split()) for words in t["any"])
    applies = _applies(t.get("applies_when", {}))
    return WordSets(
        t["id"], sets, t["says"], _texts(t, "cautions"), applies, t.get("say", ""), _texts(t, "cleared_by"),
        _texts(t, "works"), _texts(t, "told"), _texts(t, "mended"), t.get("make_safe", ""), _texts(t, "any"),
    )  # fmt: skip
