"""The rulebook: everything that the grammar files say, ready for the reader."""

from __future__ import annotations

import gc
from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, TypeVar

from worklog_tui.rulebook.answers import Answers
from worklog_tui.rulebook.bearers import Bearers, read_bearers
from worklog_tui.rulebook.files import grammar_files, has_kept, keep, kept, parse_all, stamp_of
from worklog_tui.rulebook.form import Made
from worklog_tui.rulebook.misheard import Misheard
from worklog_tui.rulebook.own_tables import with_own
from worklog_tui.rulebook.patterns import Pattern, Patterns, Rule
from worklog_tui.rulebook.quantities import Quantities, read_quantities, suggestions_of, topics_of
from worklog_tui.rulebook.senses import Sense
from worklog_tui.rulebook.shorthand import Shorthand
from worklog_tui.rulebook.signs import Signs
from worklog_tui.rulebook.skeletons import Skeletons
from worklog_tui.rulebook.steps import Joined
from worklog_tui.rulebook.taken import Taken, read_taken
from worklog_tui.rulebook.texts import Texts
from worklog_tui.rulebook.uncollected import uncollected
from worklog_tui.rulebook.units import Numerals, Units, numerals_from, units_from
from worklog_tui.rulebook.vocabulary import Vocabulary
from worklog_tui.rulebook.word_lists import Beginnings, Lists, beginnings, read_lists, read_owed

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Met:
    """All that is known of a word or a term, found in one place."""

    kind: str
    "term or word."
    low: str
    senses: tuple[Sense, ...]
    classes: frozenset[str]
    goes_on: Collection[str]
    "The words that may come next in a longer term."
    counts: bool
    "Whether a number, an amount, a thread or a marker of which one may begin with it."


@dataclass(frozen=True, slots=True)
class Rulebook:
    """What the reader knows."""

    stamp: str
    "SHA-256 over all grammar files and the reader's version."
    table: Vocabulary
    signs: Signs
    patterns: Patterns
    rules: tuple[Rule, ...]
    says: Sequence[str]
    "What each of them says."
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
    shorthand: Shorthand
    skeletons: Skeletons
    bearers: Bearers
    "Name of a state -> what it is mostly said of."
    owed: Lists
    "Name of a list of grammars/owed.toml or grammars/shown.toml -> its words."
    beginnings: Beginnings
    "The words with which a reading begins that those lists serve."
    lists: Lists
    "Name of a list of grammars/lists.toml -> its words."
    taken: Taken
    "How readings are taken."
    met: dict[str, Met] = field(default_factory=dict)
    "What is known of the words and terms met so far: few of them, so that they are found sooner than among all."
    answered: dict[Any, Answers[Any]] = field(default_factory=dict)
    "What steps of the reading asked of single words, by what works it out."

    def answers(self, work: Callable[[Rulebook, str], T]) -> Answers[T]:
        """What a function tells of each word; it is asked once of each, and must look at nothing else."""
        if (found := self.answered.get(work)) is None:
            found = self.answered[work] = Answers(self, work)
        return found


def load(folders: Sequence[Path], cache: Path | None = None) -> Rulebook:
    """The rulebook of the shipped folder and the person's own after it; a GrammarMistake lists what must be mended."""
    files = grammar_files(folders)
    stamp = stamp_of((name, path.read_bytes()) for name, path in files)
    with uncollected():
        plain = kept(cache, stamp)
        if plain is None:
            from worklog_tui.rulebook.making import made  # seldom needed, and large
            from worklog_tui.rulebook.sharing import shared

            plain = shared(tuple(made(parse_all([(name, path.read_bytes()) for name, path in files]))))
            keep(cache, stamp, plain)
        book = _book(stamp, Made(*plain))
        gc.freeze()  # the grammars stay: the collector need not walk through them again and again
    return book


def is_kept(folders: Sequence[Path], cache: Path) -> bool:
    """Whether what is made of the grammars is kept from an earlier start, so that loading them takes no time."""
    files = grammar_files(folders)
    return has_kept(cache, stamp_of((name, path.read_bytes()) for name, path in files))


def _book(stamp: str, of: Made) -> Rulebook:
    rules, written = tuple(Rule(*row) for row in of.rules), Texts(of.patterns)
    patterns = [Pattern(rule, slots, written, n) for n, (rule, slots) in enumerate(zip(rules, of.slots, strict=True))]
    quantities = read_quantities(of.files)
    signs = Signs(of.signs)
    owed = read_owed(of.files)
    return Rulebook(
        stamp,
        Vocabulary(of.table),
        signs,
        Patterns(patterns, signs, Joined(*of.steps)),
        rules,
        Texts(of.says),
        of.named,
        quantities,
        topics_of(quantities),
        suggestions_of(quantities),
        units_from(with_own(of.files, "units.toml")),
        numerals_from(with_own(of.files, "numerals.toml")),
        Misheard(of.misheard),
        Shorthand(of.shorthand),
        Skeletons(of.skeletons),
        read_bearers(of.files),
        owed,
        beginnings(owed),
        read_lists(of.files),
        read_taken(of.files),
    )


def unknown_names(book: Rulebook) -> list[tuple[str, str, str]]:
    """File and id of each rule that names a class which no token can have, with that class."""
    from worklog_tui.rulebook.says import classes, parse

    return [
        (rule.file, rule.id, name)
        for rule, says in zip(book.rules, book.says, strict=True)
        for name in sorted(classes(parse(says)))
        if not book.signs.having(name)
    ]
