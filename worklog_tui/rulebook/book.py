"""The rulebook: everything that the grammar files say, ready for the reader."""

from __future__ import annotations

import gc
import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from worklog_tui.rulebook.files import Files, grammar_files, keep, kept, parse_all, stamp_of
from worklog_tui.rulebook.lexicon import Builder, Sense, Table, beginnings
from worklog_tui.rulebook.misheard import Misheard, index
from worklog_tui.rulebook.mistakes import GrammarMistake, Mistake
from worklog_tui.rulebook.patterns import Patterns, Rule, named_classes
from worklog_tui.rulebook.quantities import Quantities, read_quantities, suggestions_of, topics_of
from worklog_tui.rulebook.says import SaysError
from worklog_tui.rulebook.signs import Signs
from worklog_tui.rulebook.units import Numerals, Units, numerals_from, units_from

_PHRASE = re.compile(r'"([^"]+)"')
WORD_LISTS = ("words.toml", "stance.toml")


@dataclass(frozen=True, slots=True)
class Rulebook:
    """What the reader knows."""

    stamp: str
    "SHA-256 over all grammar files and the reader's version."
    table: Table
    beginnings: frozenset[str]
    "The words that terms of several words begin with."
    signs: Signs
    patterns: Patterns
    rules: tuple[Rule, ...]
    named: frozenset[str]
    "The classes that rules name; only these are put on tokens besides their own."
    quantities: Quantities
    topics: dict[str, str]
    "Word that announces a test -> its quantity."
    suggests: dict[str, frozenset[str]]
    "Word or name of a thing -> the quantities that a number near it is likely to be."
    units: Units
    numerals: Numerals
    misheard: Misheard
    terms: dict[str, tuple[tuple[Sense, ...], frozenset[str]]] = field(default_factory=dict)
    "Senses and classes of the terms met so far: worked out once for each."


def load(folders: Sequence[Path], cache: Path | None = None) -> Rulebook:
    """The rulebook of the shipped folder and the person's own after it; a GrammarMistake lists what must be mended."""
    contents = [(name, path.read_bytes()) for name, path in grammar_files(folders)]
    stamp = stamp_of(contents)
    made = kept(cache, stamp)
    if made is None:
        made = _made(parse_all(contents))
        keep(cache, stamp, made)
    files, table, sets = made
    rules = tuple(_rules(files))
    named = frozenset(named_classes(rules))
    units = units_from(files["units.toml"])
    quantities = read_quantities(files)
    signs = Signs(sets)
    gc.freeze()  # the grammars stay: the collector need not walk through them again and again
    return Rulebook(
        stamp,
        table,
        beginnings(table),
        signs,
        Patterns(rules, signs),
        rules,
        named,
        quantities,
        topics_of(quantities),
        suggestions_of(quantities),
        units,
        numerals_from(files["numerals.toml"]),
        index(_entries(files, "misheard.toml", "misheard"), lambda word: _is_common(table, word)),
    )


def _made(files: Files) -> tuple[Files, Table, set[frozenset[str]]]:
    """What takes long to make of the files: the table of terms, and the sets of classes that a token can have."""
    rules = tuple(_rules(files))
    try:
        named = frozenset(named_classes(rules))
    except SaysError:
        raise GrammarMistake(list(_says_mistakes(rules))) from None
    table = _table(files)
    return files, table, set(foreseen(table, named, units_from(files["units.toml"]).quantity_tuples()))


def _table(files: Files) -> Table:
    builder = Builder()
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


VERB_FORMS = ("do", "does", "did", "doing")
COMMON = frozenset({"article", "filler", "pronoun", "copula", "not", "break", "about", "reads", "degree", "all"})


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


def _says_mistakes(rules: Iterable[Rule]) -> Iterable[Mistake]:
    for rule in rules:
        try:
            named_classes([rule])
        except SaysError as error:
            yield Mistake(rule.file, 0, f"the says of {rule.id}: {error}", "write it as DEVELOPERS.md shows")


def token_classes(senses: Iterable[tuple[Any, ...]], low: str, named: frozenset[str]) -> frozenset[str]:
    """The classes of a term: those of its senses, its name where a rule asks for it, the word itself where a rule
    holds it.
    """
    found: set[str] = set()
    for sense in senses:
        found.add(sense[0])
        if (asked := f"{sense[0]}={sense[1]}") in named:
            found.add(asked)
    if found & {"bad", "good", "noted"}:
        found.add("state")
    named_word = {f"={low}"} & named
    return frozenset((found or {"other"}) | named_word)  # a word that a rule names is no less another word for the rest


def thing_classes(name: str, kind: str, named: frozenset[str], low: str = "") -> frozenset[str]:
    """The classes of a thing: its kind, and its name and its very word where a rule asks for them."""
    return frozenset({"thing", kind} | {f"thing={name}", f"={low}"} & named)


def amount_classes(quantities: tuple[str, ...], named: frozenset[str]) -> frozenset[str]:
    """The classes of an amount: the quantities that it can be, where a rule asks for them."""
    return frozenset({"amount"} | {f"amount={q}" for q in quantities} & named)


def foreseen(table: Table, named: frozenset[str], amounts: Iterable[tuple[str, ...]]) -> Iterable[frozenset[str]]:
    """Every set of classes that a token can have."""
    for low, senses in table.items():
        yield token_classes(senses, low, named)
        for sense in senses:
            if sense[0] == "part":
                yield thing_classes(sense[1], sense[2], named)
                yield thing_classes(sense[1], sense[2], named, low)
        bare = [s for s in senses if s[0] != "part"]  # a term that is no part here
        for left in (bare, [s for s in bare if s[0] != "split"], [s for s in senses if s[0] != "split"]):
            yield token_classes(left, low, named)
        for particle in {s[2] for s in senses if s[0] == "split"}:  # a verb that found its particle
            done = [(s[3], s[1]) for s in senses if s[0] == "split" and s[2] == particle]
            yield token_classes([*(s for s in bare if s[0] not in ("split", *VERB_FORMS)), *done], low, named)
            yield token_classes([*(s for s in senses if s[0] not in ("split", *VERB_FORMS)), *done], low, named)
    for word in named:
        if word.startswith("="):
            yield frozenset({word})
            yield frozenset({word, "other"})
    for quantities in amounts:
        yield amount_classes(quantities, named)
    for extra in (
        {"number"},
        {"loose"},
        {"thread"},
        {"ratio"},
        {"which"},
        {"stop"},
        {"stop", "asks"},
        {"comma"},
        {"comma", "colon"},
        {"break"},
        {"other"},
        {"thing", "unknown"},
    ):
        yield frozenset(extra)
    for kind in ("part", "fluid", "joint", "fastener", "machine", "quality", "tool", "material", "control"):
        yield thing_classes("", kind, named)
