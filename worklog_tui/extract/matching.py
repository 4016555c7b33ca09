"""Rules tried on tokens: every place where a rule's pattern stands, with what its slots hold."""

from __future__ import annotations

from collections.abc import Callable
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


def matches(
    tokens: list[Token], book: Rulebook, without: str = "", may: Callable[[Rule], bool] | None = None
) -> list[Match]:
    """All matches of all rules that `may` stand there, `without` those of one kind, in the order of the rules and then
    of the text.
    """
    lately = book.signs.lately
    signs = "".join([lately[token.classes] for token in tokens])
    found: list[Match] = []
    for pattern in book.patterns.triggered(signs, without):
        if may is not None and not may(pattern.rule):
            continue
        for m in (pattern.expression or pattern.compiled()).finditer(signs):
            spans = m.regs
            first, last = spans[0]
            if last > first:
                slots = {name: at for group, name in pattern.slots if (at := spans[group][0]) >= 0}
                found.append(Match(pattern.rule, first, last, slots))
    return found
