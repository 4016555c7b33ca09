"""The words of maintenance records are taken for what maintainers say they are: objects, states, processes, activities,
properties, to the exact words.

Source: the gold release of MaintIE (nlp-tlp/maintie, MIT licence), of which open-data holds 549 texts; its scheme is
SCHEME.md beside it. Published: 0.874 micro by a model that was trained on such texts (MaintIE, LREC-COLING 2024; from
memory). What stands for what:

- PhysicalObject: a part, and the head of its name where that names a part by itself (scheme 3.3, isA: `air filters`,
  filters too);
- Process: a state of the leaks; State: any other state; Property: a flaw that is no leak; Activity: a verb of work.

The words of diggers, cranes and mines were learnt from every other text (the first, the third, ...) and from another
collection; for them the figure of the texts between is that of texts not looked at. Both are printed. Printed too,
asked of nobody: the figure when what is named with what holds it is taken for two (scheme 3.1 and its relations:
"(engine)[...]-[contains]->(oil)[...]"), as the annotators did, and so a leak and what leaks (`oil leak`).
"""

from __future__ import annotations

import json
import tomllib
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from worklog_tui import places
from worklog_tui.extract.tokens import Token
from worklog_tui.extract.trail import tokens_of
from worklog_tui.model import Machine
from worklog_tui.rulebook import Rulebook

CLASSES = ("PhysicalObject", "State", "Process", "Activity", "Property")
FLOOR = 0.80
"The aim; where the reader stands is printed."
BETWEEN = 0.79
"Of the texts between."
Mention = tuple[int, int, str]
"First token, the one after the last, class."


def _leaks() -> set[str]:
    conditions = tomllib.loads((places.grammars() / "conditions" / "leaks.toml").read_text(encoding="utf-8"))
    return {c["name"] for c in conditions["condition"]}


def _class_of(token: Token, leaks: set[str]) -> str:
    if token.thing is not None:
        return "" if token.thing.known else "PhysicalObject"
    if (state := token.sense("bad", "good", "noted")) is not None:
        if state.name in leaks:
            return "Process"
        return "Property" if "flaw" in token.classes else "State"
    return "Activity" if token.sense("did", "do", "doing", "does") else ""


def _is_part(book: Rulebook, word: str) -> bool:
    return any(sense[0] == "part" for sense in book.table.get(word, ()))


def _objects(book: Rulebook, term: Token, apart: bool) -> Iterator[tuple[int, int, str]]:
    """The part, and the head of its name; set `apart`, what holds a fluid is one and the fluid another."""
    head, first = term.low.split()[-1], " ".join(term.low.split()[:-1])
    if apart and first and _is_part(book, first):
        yield term.start, term.start + len(first), "PhysicalObject"
    else:
        yield term.start, term.end, "PhysicalObject"
    if _is_part(book, head):
        yield term.end - len(head), term.end, "PhysicalObject"


def _said(book: Rulebook, token: Token, cls: str, apart: bool) -> Iterator[tuple[int, int, str]]:
    """What was said; set `apart`, the leak and what leaks: oil leak, leaking oil."""
    words = token.low.split()
    if apart and cls == "Process" and len(words) == 2 and any(_is_part(book, word) for word in words):
        middle = token.start + len(words[0])
        places = (token.start, middle), (middle + 1, token.end)
        for word, (start, end) in zip(words, places, strict=True):
            yield start, end, "PhysicalObject" if _is_part(book, word) else cls
    else:
        yield token.start, token.end, cls


def _mentions(book: Rulebook, words: Sequence[str], leaks: set[str], apart: bool = False) -> Iterator[Mention]:
    text, starts, ends, at = " ".join(words), {}, {}, 0
    for k, word in enumerate(words):
        starts[at], ends[at + len(word)] = k, k + 1
        at += len(word) + 1
    found: list[tuple[int, int, str]] = []
    for terms, folded in tokens_of(book, Machine("machine"), text, "typed"):
        for term in terms:
            if (part := term.sense("part")) is not None and part.kind != "quality":
                found += _objects(book, term, apart and part.kind == "fluid")
        found += [place for t in folded if (cls := _class_of(t, leaks)) for place in _said(book, t, cls, apart)]
    for start, end, cls in found:
        if start in starts and end in ends:
            yield starts[start], ends[end], cls


@dataclass
class Tally:
    """How many mentions there are by class: right, wanted, said."""

    right: Counter[str] = field(default_factory=Counter)
    wanted: Counter[str] = field(default_factory=Counter)
    said: Counter[str] = field(default_factory=Counter)

    def add(self, gold: set[Mention], ours: set[Mention]) -> None:
        """Count one text."""
        self.right.update(m[2] for m in gold & ours)
        self.wanted.update(m[2] for m in gold)
        self.said.update(m[2] for m in ours)

    def f1(self, *classes: str) -> float:
        """F1 of these classes together."""
        right, wanted, said = (sum(c[cls] for cls in classes) for c in (self.right, self.wanted, self.said))
        return 2 * right / (wanted + said)


def test_words_of_maintenance_records_are_taken_for_what_they_are(book: Rulebook, open_data: Path) -> None:
    texts = json.loads((open_data / "maintie" / "gold_release.json").read_text(encoding="utf-8"))
    leaks, every, learnt, between, split = _leaks(), Tally(), Tally(), Tally(), Tally()
    for k, row in enumerate(texts):
        gold = {(e["start"], e["end"], e["type"].split("/")[0]) for e in row["entities"]}
        ours = set(_mentions(book, row["tokens"], leaks))
        every.add(gold, ours)
        (between if k % 2 else learnt).add(gold, ours)
        split.add(gold, set(_mentions(book, row["tokens"], leaks, apart=True)))
    print()
    for cls in CLASSES:
        print(f"{cls:15} wanted {every.wanted[cls]:4d} said {every.said[cls]:4d}  F1 {every.f1(cls):.3f}")
    print(f"{len(texts)} texts, micro F1 {every.f1(*CLASSES):.3f} (published 0.874 by a model trained on them)")
    print(f"the texts learnt from {learnt.f1(*CLASSES):.3f}, the texts between {between.f1(*CLASSES):.3f}")
    print(f"what is named with what holds it taken for two: {split.f1(*CLASSES):.3f}")
    assert len(texts) >= 500
    assert every.f1(*CLASSES) >= FLOOR
    assert between.f1(*CLASSES) >= BETWEEN
