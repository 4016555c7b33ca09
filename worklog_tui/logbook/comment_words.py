"""The words by which comments are told apart, from `comments.toml`."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from pathlib import Path
from typing import Any

from worklog_tui.logbook.comment_small import Small, small_words
from worklog_tui.logbook.one_before import OneBefore
from worklog_tui.logbook.words import PHRASES, one_form
from worklog_tui.rulebook.word_files import word_files

FILE = "comments.toml"
LONGEST = 5_000
"Characters of a comment that are read."
_LISTS = ("plans", "latest", "earliest", "appeals", "diagnosing", "renewing", "compared", "intended")
_LATELY = 20_000
"Comments of which the plain form is kept."
_SPLIT = frozenset({"fly wheel", "crank case", "back plate", "hand brake"})


@dataclass(frozen=True, slots=True)
class Cue:
    """Words that speak for a kind of comment."""

    kind: str
    at: str
    "start (of a sentence), end, or anywhere."
    weight: int
    says: frozenset[str]


@dataclass(frozen=True, slots=True)
class Topic:
    """A thing that viewers ask about and that is no part."""

    about: str
    says: tuple[str, ...]
    answer: tuple[str, ...] = ()
    things: tuple[str, ...] = ()
    "Names of the parts that facts about it are about."
    pattern: re.Pattern[str] | None = None
    "What else in a line answers it: a year."
    tail: bool = False
    "Whether the words that follow say what is asked."
    must: bool = False
    "Whether nothing but the pattern answers it."
    of: tuple[str, ...] = ()
    "Parts that a line need not name to answer; any other that is asked of it must."


@dataclass(frozen=True, slots=True)
class Wanted:
    """What a line must hold that answers a question which begins so: a number, or one of some words."""

    says: tuple[str, ...]
    number: bool = False
    holds: frozenset[str] = frozenset()
    actions: frozenset[str] = frozenset()
    "Or tells of such work."
    quantities: frozenset[str] = frozenset()
    "Or gives such a reading of the thing."
    pattern: re.Pattern[str] | None = None
    "Or holds such words in a row."
    must: bool = False
    "Whether nothing else answers it."
    latest: bool = False
    "Whether it asks how things came out."
    near: frozenset[str] = frozenset()
    "Words that ask for it too, soon after what, which or how: what plug gap."
    asks: re.Pattern[str] | None = None
    "Or a whole question of this shape: did the new seal hold."


@dataclass(frozen=True, slots=True)
class CommentWords:
    """All that the file says."""

    cues: tuple[Cue, ...] = ()
    topics: tuple[Topic, ...] = ()
    akin: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    "A thing's name: the names of its group."
    plans: tuple[str, ...] = ()
    "Words that ask for what is planned."
    latest: tuple[str, ...] = ()
    "Words that ask how it stands now."
    earliest: tuple[str, ...] = ()
    "Words that ask how it was at first."
    appeals: tuple[str, ...] = ()
    "Words by which the speaker asks his viewers."
    diagnosing: tuple[str, ...] = ()
    "Words by which a viewer names a cause."
    renewing: tuple[str, ...] = ()
    "Words that ask for the proper part in the place of another."
    compared: tuple[str, ...] = ()
    "Words after which comes what a thing is only compared with."
    intended: tuple[str, ...] = ()
    "Words by which the speaker tells what is to come."
    wants: tuple[Wanted, ...] = ()
    small: Small = field(default_factory=Small)
    opposites: tuple[tuple[str, str], ...] = ()
    "Words of which a line that holds the one does not answer for the other."
    shorthand: Mapping[str, str] = field(default_factory=dict)
    _lately: dict[str, str] = field(default_factory=dict, init=False, compare=False, repr=False)
    "Comments that were made plain lately."

    _begins: dict[str, dict[str, frozenset[int]]] = field(default_factory=dict, init=False, compare=False, repr=False)
    "Of the cues, topics and wants: the first words of their phrases, with the numbers of those that have such."

    def may_say(self, what: str, text: str) -> frozenset[int]:
        """The numbers of the cues, topics or wants of which a phrase may stand in a text: few of them."""
        if (begins := self._begins.get(what)) is None:
            found: dict[str, set[int]] = {}
            for n, one in enumerate(getattr(self, what)):
                for first in by_first_word(one.says):
                    found.setdefault(first, set()).add(n)
            begins = self._begins[what] = {first: frozenset(numbers) for first, numbers in found.items()}
        return frozenset().union(*(begins[word] for word in text.split() if word in begins))

    def with_akin(self, table: Mapping[str, tuple[tuple[Any, ...], ...]]) -> Mapping[str, tuple[tuple[Any, ...], ...]]:
        """A vocabulary with the names that viewers use before it, as parts."""
        akin = {name: (("part", name, "part"),) for name in self.akin if " " in name}
        return OneBefore(akin, table)

    def plain(self, words: str) -> str:
        """A comment in lower case, without signs that say nothing, shortened words written out."""
        if words in self._lately:
            return self._lately[words]
        if len(self._lately) >= _LATELY:
            self._lately.clear()
        return self._lately.setdefault(words, self._made_plain(words))

    def _made_plain(self, words: str) -> str:
        words = re.sub(r"\b(\w)\+(?=\W|$)", r"\1 plus", words[:LONGEST])
        kept = re.sub(r"[^\w\s.,;:?!'%/&-]", " ", words[:LONGEST].lower().replace("\u2019", "'")).replace("'", "")
        for said, same in PHRASES:
            kept = kept.replace(said, same) if said in _SPLIT else kept
        spaced = re.sub(r"([.?!,;:]+)(?=\s|$)", r" \1 ", kept)
        return " ".join(self.shorthand.get(w, w) for w in spaced.split())


@lru_cache(maxsize=500)
def by_first_word(phrases: frozenset[str] | tuple[str, ...]) -> Mapping[str, tuple[str, ...]]:
    """The phrases by the word that each begins with."""
    found: dict[str, tuple[str, ...]] = {}
    for phrase in phrases:
        first = phrase.split(" ", 1)[0]
        found[first] = (*found.get(first, ()), phrase)
    return found


def holds_any(spaced: str, phrases: frozenset[str] | tuple[str, ...]) -> bool:
    """Whether a text with blanks round it holds one of the phrases as whole words."""
    index, said = by_first_word(phrases), spaced.split()
    if index.keys().isdisjoint(said):
        return False
    return any(f" {phrase} " in spaced for word in said if word in index for phrase in index[word])


def load_comment_words(folders: Sequence[Path]) -> CommentWords:
    """The shipped file and the person's own after it, if there are any; a GrammarMistake says what to mend."""
    files = word_files(folders, FILE)
    for file in files:
        for want in file.table.get("want", ()):
            if not want.get("says") and not want.get("near"):
                says = "a [[want]] has neither says nor near, so that it is never met"
                words = [f'"{word}"' for word in want.get("holds", ())]
                raise file.mistake(says, 'give it says = ["how long"]', *words, "[[want]]")
    return _words([file.table for file in files])


def _words(tables: Sequence[Mapping[str, Any]]) -> CommentWords:
    shorthand: dict[str, str] = {}
    akin: dict[str, tuple[str, ...]] = {}
    for table in tables:
        shorthand |= table.get("shorthand", {})
        for group in table.get("akin", ()):
            akin |= dict.fromkeys(group["things"], tuple(group["things"]))
    cues = tuple(_cue(c) for table in tables for c in table.get("cue", ()))
    topics = tuple(_topic(t) for table in tables for t in table.get("topic", ()))
    lists = {name: tuple(str(p) for table in tables for p in table.get(name, ())) for name in _LISTS}
    wants = tuple(_wanted(w) for table in tables for w in table.get("want", ()))
    pairs = tuple((str(one), str(other)) for table in tables for one, other in table.get("opposites", ()))
    return CommentWords(
        cues, topics, akin, shorthand=shorthand, wants=wants, small=small_words(tables), opposites=pairs, **lists
    )


def _cue(table: Mapping[str, Any]) -> Cue:
    return Cue(table["kind"], table["at"], int(table["weight"]), frozenset(table["says"]))


def _wanted(table: Mapping[str, Any]) -> Wanted:
    lists = {n: tuple(map(str, table.get(n, ()))) for n in ("says", "holds", "actions", "quantities", "near")}
    return Wanted(
        lists["says"],
        holds=frozenset(map(one_form, lists["holds"])),
        pattern=re.compile(table["pattern"]) if "pattern" in table else None,
        actions=frozenset(lists["actions"]),
        quantities=frozenset(lists["quantities"]),
        near=frozenset(lists["near"]),
        asks=re.compile(table["asks"]) if "asks" in table else None,
        number=bool(table.get("number")),
        must=bool(table.get("must")),
        latest=bool(table.get("latest")),
    )


def _topic(table: Mapping[str, Any]) -> Topic:
    pattern = re.compile(table["pattern"]) if "pattern" in table else None
    lists = [tuple(map(str, table.get(name, ()))) for name in ("answer", "things")]
    return Topic(
        table["about"],
        tuple(table["says"]),
        lists[0],
        lists[1],
        pattern,
        tail=bool(table.get("tail")),
        must=bool(table.get("must")),
        of=tuple(table.get("of", ())),
    )
