"""The words of maintenance records are taken for what maintainers say they are: objects, states, processes, activities,
properties, to the exact words.

Source: the gold release of MaintIE (nlp-tlp/maintie, MIT licence), of which open-data holds 549 texts; its scheme is
SCHEME.md beside it. Published: 0.874 micro by a model that was trained on such texts (MaintIE, LREC-COLING 2024; from
memory). What stands for what is fixed by the scheme:

- PhysicalObject: a part, and the head of its name where that names a part by itself (`air filters`: filters too); what
  is named with the thing that holds it is two (contains: `engine oil`), and so is a leak with what leaks (`oil leak`);
- Process: a state of the leaks; State: any other state; Property: a flaw that is no leak; Activity: a verb of work.
"""

from __future__ import annotations

import json
import tomllib
from collections import Counter
from collections.abc import Iterator, Sequence
from pathlib import Path

from worklog_tui import places
from worklog_tui.extract.tokens import Token
from worklog_tui.extract.trail import tokens_of
from worklog_tui.model import Machine
from worklog_tui.rulebook import Rulebook

CLASSES = ("PhysicalObject", "State", "Process", "Activity", "Property")
FLOOR = 0.80
"The aim; where the reader stands is printed."
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


def _objects(book: Rulebook, term: Token, holds: bool) -> Iterator[tuple[int, int, str]]:
    """The part, and the head of its name; what holds a fluid is one and the fluid another."""
    head, first = term.low.split()[-1], " ".join(term.low.split()[:-1])
    if holds and first and _is_part(book, first):
        yield term.start, term.start + len(first), "PhysicalObject"
    else:
        yield term.start, term.end, "PhysicalObject"
    if _is_part(book, head):
        yield term.end - len(head), term.end, "PhysicalObject"


def _apart(book: Rulebook, token: Token, cls: str) -> Iterator[tuple[int, int, str]]:
    """What was said, or the leak and what leaks: oil leak, leaking oil."""
    words = token.low.split()
    if cls == "Process" and len(words) == 2 and any(_is_part(book, word) for word in words):
        middle = token.start + len(words[0])
        places = (token.start, middle), (middle + 1, token.end)
        for word, (start, end) in zip(words, places, strict=True):
            yield start, end, "PhysicalObject" if _is_part(book, word) else cls
    else:
        yield token.start, token.end, cls


def _mentions(book: Rulebook, words: Sequence[str], leaks: set[str]) -> Iterator[Mention]:
    text, starts, ends, at = " ".join(words), {}, {}, 0
    for k, word in enumerate(words):
        starts[at], ends[at + len(word)] = k, k + 1
        at += len(word) + 1
    found: list[tuple[int, int, str]] = []
    for terms, folded in tokens_of(book, Machine("machine"), text, "typed"):
        for term in terms:
            if (part := term.sense("part")) is not None and part.kind != "quality":
                found += _objects(book, term, holds=part.kind == "fluid")
        found += [place for t in folded if (cls := _class_of(t, leaks)) for place in _apart(book, t, cls)]
    for start, end, cls in found:
        if start in starts and end in ends:
            yield starts[start], ends[end], cls


def test_words_of_maintenance_records_are_taken_for_what_they_are(book: Rulebook, open_data: Path) -> None:
    texts = json.loads((open_data / "maintie" / "gold_release.json").read_text(encoding="utf-8"))
    leaks, right, wanted, said = _leaks(), Counter[str](), Counter[str](), Counter[str]()
    for row in texts:
        gold = {(e["start"], e["end"], e["type"].split("/")[0]) for e in row["entities"]}
        ours = set(_mentions(book, row["tokens"], leaks))
        right.update(m[2] for m in gold & ours)
        wanted.update(m[2] for m in gold)
        said.update(m[2] for m in ours)
    print()
    for cls in CLASSES:
        f1 = 2 * right[cls] / (wanted[cls] + said[cls])
        print(f"{cls:15} wanted {wanted[cls]:4d} said {said[cls]:4d}  F1 {f1:.3f}")
    micro = 2 * right.total() / (wanted.total() + said.total())
    print(f"{len(texts)} texts, micro F1 {micro:.3f} (published 0.874 by a model trained on them)")
    assert len(texts) >= 500
    assert micro >= FLOOR
