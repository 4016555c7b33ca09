"""`85M` behind an insulation test: nothing but megohms is written so."""

from __future__ import annotations

import re

from worklog_tui.extract.context import Context
from worklog_tui.extract.numbers.amounts import Amount
from worklog_tui.extract.scene import announced
from worklog_tui.extract.tokens import Token
from worklog_tui.rulebook import Rulebook
from worklog_tui.rulebook.classes import amount_classes

_MEGOHMS = re.compile(r"(\d{1,4}(?:\.\d+)?|\.\d+)M")


def mark_megohms(text: str, tokens: list[Token], context: Context, book: Rulebook) -> None:
    """Makes amounts of such figures where the running test is one of resistance, in place."""
    if "M" not in text:
        return
    tested = context.topic is not None and context.topic.quantity == "resistance"
    for i, token in enumerate(tokens):
        tested = tested or announced(book, token) == "resistance"
        found = _MEGOHMS.fullmatch(text[token.start : token.end]) if tested else None
        if found is None or token.amount is not None:
            continue
        value = float(found[1])
        amount = Amount(value, value, "Mohm", "megohm", ("resistance",), i, i + 1)
        classes = amount_classes(amount.quantities, book.named)
        tokens[i] = Token("amount", token.low, token.start, token.end, classes, amount=amount)
