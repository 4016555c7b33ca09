"""Rules tried on tokens: every place where a rule's pattern stands, with what its slots hold."""

from __future__ import annotations

from typing import NamedTuple

from worklog_tui.extract.tokens import Token
from worklog_tui.rulebook import Rulebook
from worklog_tui.rulebook.patterns import Rule


class Match(NamedTuple):
    """One rule at one place; slots and span are indexes of tokens."""

    rule: Rule
    first: int
    last: int
    "Index of the token after the match."
    slots: dict[str, int]


_new = tuple.__new__  # makes a Match at half the cost of calling it


def matches(tokens: list[Token], book: Rulebook, without: int = 0) -> list[Match]:
    """All matches of all rules, `without` some of them, in the order of the rules and then of the text."""
    lately = book.signs.lately
    signs = "".join([lately[token.classes] for token in tokens])
    found: list[Match] = []
    for pattern in book.patterns.triggered(signs, without):
        for m in (pattern.expression or pattern.compiled()).finditer(signs):
            spans = m.regs
            first, last = spans[0]
            if last > first:
                slots = {}
                for group, name in pattern.slots:
                    if (at := spans[group][0]) >= 0:
                        slots[name] = at
                found.append(_new(Match, (pattern.rule, first, last, slots)))
    return found
