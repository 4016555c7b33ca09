"""Classes: what a token can be. A rule asks for a class, for a class with a name, or for the very word."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from worklog_tui.rulebook.senses import Table

VERB_FORMS = ("do", "does", "did", "doing")


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
