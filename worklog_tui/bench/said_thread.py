"""A thread as it is spoken, brought to its designation, so that a sum can be asked for it."""

from __future__ import annotations


def designated(said: str) -> str:
    """`five sixteenths eighteen` is 5/16-18, `eight by one and a quarter` M8x1.25; what names none comes back as it is.

    What the tables of the shop sums understand already is left to them.
    """
    from worklog_tui.trade.threads import thread

    try:
        thread(said)
    except ValueError:
        return _heard(said) or said
    return said


def _heard(said: str) -> str:
    from worklog_tui import places
    from worklog_tui.extract.heard.words import split
    from worklog_tui.extract.numbers.threads import thread_at
    from worklog_tui.rulebook.units import load_numerals

    numerals = load_numerals(places.grammars() / "numerals.toml")
    words = split(f"{said.replace('-', ' ')} thread")  # the last word tells what the pair of numbers is of
    found = (thread_at(words, at, numerals) for at in range(len(words) - 1))
    return next((one.designation for one in found if one is not None), "")
