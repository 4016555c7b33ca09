"""What is made of the grammar files once and kept for the next start: plain values, so that they are read back fast."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Any

from worklog_tui.rulebook import shorthand, skeletons, texts
from worklog_tui.rulebook.classes import foreseen
from worklog_tui.rulebook.compiling import compile_rule, named_classes
from worklog_tui.rulebook.files import Files
from worklog_tui.rulebook.form import Made
from worklog_tui.rulebook.lexicon import Builder
from worklog_tui.rulebook.misheard import index
from worklog_tui.rulebook.own_tables import with_own
from worklog_tui.rulebook.patterns import Rule
from worklog_tui.rulebook.senses import Sense, Table
from worklog_tui.rulebook.signs import Signs
from worklog_tui.rulebook.step_making import joined
from worklog_tui.rulebook.units import units_from
from worklog_tui.rulebook.vocabulary import packed

_PHRASE = re.compile(r'"([^"]+)"')
WORD_LISTS = ("words.toml", "stance.toml")
KEPT = (
    "units.toml", "own/units.toml", "numerals.toml", "own/numerals.toml",
    "bearers.toml", "own/bearers.toml", "owed.toml", "own/owed.toml", "shown.toml",
    "own/shown.toml", "lists.toml", "own/lists.toml", "taken.toml", "own/taken.toml", "quantities/", "own/quantities/",
)  # fmt: skip
"Files that are read as they are at each start; they are short."
COMMON = frozenset({"article", "filler", "pronoun", "copula", "not", "break", "about", "reads", "degree", "all"})


def made(files: Files) -> Made:
    """What the files say; how they are written was looked through before."""
    rules = tuple(_rules(files))
    named = frozenset(named_classes(rules))
    table = _table(files)
    signs = Signs.of_sets(foreseen(table, named, units_from(with_own(files, "units.toml")).quantity_tuples()))
    patterns = [compile_rule(rule, signs) for rule in rules]
    return Made(
        {name: data for name, data in files.items() if name.startswith(KEPT)},
        tuple((r.id, "", r.gives, (), (), r.confidence, r.file) for r in rules),
        texts.packed([r.says for r in rules]),
        texts.packed([pattern.text for pattern in patterns]),
        tuple(pattern.slots for pattern in patterns),
        joined([pattern.steps for pattern in patterns], signs),
        named,
        packed(table),
        signs.kept,
        index(
            (*_entries(files, "misheard.toml", "misheard"), *shorthand.entries(files, table)),
            lambda word: _is_common(table, word),
        ),
        shorthand.typed(files),
        skeletons.packed(table),
    )


def _table(files: Files) -> Table:
    builder = Builder()
    for name in ("measured_on.toml", "own/measured_on.toml"):
        builder.measured_on(files.get(name, {}))
    for name, data in files.items():
        base = name.removeprefix("own/")
        if base.startswith("parts/"):
            builder.parts(data)
        elif base.startswith("conditions/"):
            builder.conditions(data)
        elif base == "actions.toml":
            builder.actions(data)
        elif base == "causes.toml":
            builder.causes(data)
        elif base in WORD_LISTS:
            builder.words(data)
        elif base.startswith("sayings/"):
            for rule in data.get("rule", []):
                for phrase in _PHRASE.findall(rule.get("says", "")):
                    builder.add(phrase, Sense("phrase", phrase))
    builder.drop_redundant_states()
    builder.drop_redundant_causes()
    builder.drop_verbs()
    return builder.table()


def _is_common(table: Table, word: str) -> bool:
    """Whether a word is of plain talk, so that it is no mis-heard trade word."""
    return any(sense[0] in COMMON for sense in table.get(word, ()))


def _entries(files: Files, name: str, key: str) -> Iterable[dict[str, Any]]:
    for file in (name, f"own/{name}"):
        yield from files.get(file, {}).get(key, [])


def _rules(files: Files) -> Iterable[Rule]:
    off: set[str] = set()
    found: list[Rule] = []
    for name, data in files.items():
        if not name.removeprefix("own/").startswith("sayings/"):
            continue
        off.update(data.get("off", ()))
        for r in data.get("rule", []):
            found.append(
                Rule(
                    r["id"],
                    r["says"],
                    r["gives"],
                    tuple(r.get("examples", ())),
                    tuple(r.get("never", ())),
                    float(r.get("confidence", 0.8)),
                    name,
                )
            )
    return [rule for rule in found if rule.id not in off]
