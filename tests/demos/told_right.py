"""Lays what the program read of a demo session beside what a person read."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from math import isclose
from typing import Any

from worklog_tui.logbook.amounts import bounds_in
from worklog_tui.logbook.words import one_form, raw_words

_NAMED = {"reading": "subject", "finding": "part", "work": "part", "suspect": "cause", "follow_up": "about"}
_EXACT = {"reading": ("quantity", "role"), "finding": ("verdict",), "work": ("action",), "suspect": ("standing",),
          "follow_up": ("reason",)}  # fmt: skip

Fact = Mapping[str, Any]


def says(text: object, wordings: Iterable[str]) -> bool:
    """Whether the text holds all words of one of the wordings."""
    mine = {one_form(w) for w in raw_words(str(text or ""))}
    return any({one_form(w) for w in raw_words(said)} <= mine for said in wordings)


def same_fact(read: Fact, right: Fact) -> bool:
    """Whether a fact that was read is the one that a person read: where, what, how much, in which state."""
    kind = right["kind"]
    if (read["kind"], read["session"], read["at"]) != (kind, right["session"], right["at"]):
        return False
    if any(read[field] not in _wordings(right[field]) for field in _EXACT[kind]):
        return False
    if not says(read[_NAMED[kind]], right[_NAMED[kind]]):
        return False
    if kind == "reading":
        return same_amount(read, right)
    return kind != "finding" or says(read["condition"], right["condition"])


def same_amount(read: Fact, right: Fact) -> bool:
    """Whether two values are the same amount, in whatever unit each is given; a thread by any of its designations."""
    if isinstance(read["value"], str) or right["quantity"] == "thread":
        return read["value"] in _wordings(right["value"])
    mine = bounds_in(_value(read["value"]), read["unit"], right["unit"])
    theirs = bounds_in(_value(right["value"]), right["unit"], right["unit"])
    if mine is None or theirs is None:
        return bool(read["value"] == right["value"] and read["unit"] == right["unit"])
    return all(isclose(a, b, rel_tol=0.01) for a, b in zip(mine, theirs, strict=True))


def _wordings(said: Any) -> list[Any]:
    """Any of these is right."""
    return said if isinstance(said, list) else [said]


def _value(value: Any) -> float | tuple[float, float]:
    return (value[0], value[1]) if isinstance(value, list) else value


def label(fact: Fact) -> str:
    """A fact in one line, for the list of known failures."""
    named = fact[_NAMED[fact["kind"]]]
    first = named[0] if isinstance(named, list) else named
    what = [str(_wordings(fact[field])[0]) for field in _EXACT[fact["kind"]]]
    value = f" {fact['value']} {fact['unit']}" if fact["kind"] == "reading" else ""
    return f"{fact['session']} {fact['at']} {fact['kind']} {first}{value}: {', '.join(what)}"


def failures(read: Sequence[Fact], right: Sequence[Fact]) -> set[str]:
    """What was missed, and what was read that is not so; what a careful reader might leave out counts neither way."""
    kinds = [fact for fact in read if fact["kind"] in _NAMED]
    missed = {
        f"missed {label(fact)}"
        for fact in right
        if not fact.get("optional") and not any(same_fact(one, fact) for one in kinds)
    }
    wrong = {f"wrong {label(one)}" for one in kinds if not any(same_fact(one, fact) for fact in right)}
    return missed | wrong
