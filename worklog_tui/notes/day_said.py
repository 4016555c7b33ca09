"""A day as a person answers when asked for it: `yesterday`, `last Saturday`, `12 April`, `two weeks ago`."""

from __future__ import annotations

import re
from datetime import date, timedelta

_WEEKDAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_COUNTS = {
    word: number
    for number, word in enumerate(("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"), 1)
} | {"a": 1, "an": 1}
_NEAR = {
    "today": 0, "just now": 0, "this morning": 0, "yesterday": 1, "last night": 1, "the day before yesterday": 2,
    "last week": 7,
}  # fmt: skip
_LENGTH = {"day": 1, "week": 7}
_AGO = re.compile(r"(\w+) (day|week)s? ago")
_WEEKDAY = re.compile(r"(?:on |last |this )*([a-z]{3})[a-z]*")
_SPAN = re.compile(r"(?:from )?(\d{1,2})(?: ?(?:to|and|-|–) ?\d{1,2}) (?=[a-z])")
_DAY_MONTH = re.compile(r"(\d{1,2})(?:st|nd|rd|th)? (?:of )?([a-z]{3})[a-z]*(?: (\d{4}))?")
_MONTH_DAY = re.compile(r"([a-z]{3})[a-z]* (\d{1,2})(?:st|nd|rd|th)?(?: (\d{4}))?")


def day_said(said: str, today: date) -> date | None:
    """The day that is meant, of several the first; without a year the last such day. None when it is not understood.

    A day in the future is not understood: what is asked for is past.
    """
    text = " ".join(re.sub(r"[,.]", " ", said.casefold()).split())
    text = _SPAN.sub(r"\1 ", text)
    try:
        found = _near(text, today) or _named(text, today)
    except (ValueError, OverflowError):
        return None
    return found if found is not None and found <= today else None


def _near(text: str, today: date) -> date | None:
    if text in _NEAR:
        return today - timedelta(_NEAR[text])
    ago = _AGO.fullmatch(text)
    if ago is not None:
        count = int(ago[1]) if ago[1].isdecimal() else _COUNTS.get(ago[1])
        return today - timedelta(count * _LENGTH[ago[2]]) if count is not None else None
    named = _WEEKDAY.fullmatch(text)
    if named is not None and named[1] in _WEEKDAYS:
        return today - timedelta((today.weekday() - _WEEKDAYS.index(named[1]) - 1) % 7 + 1)
    return None


def _named(text: str, today: date) -> date | None:
    if (found := _DAY_MONTH.fullmatch(text)) is not None:
        number, month, year = found[1], found[2], found[3]
    elif (found := _MONTH_DAY.fullmatch(text)) is not None:
        month, number, year = found[1], found[2], found[3]
    else:
        return None
    if month not in _MONTHS:
        return None
    at = _MONTHS.index(month) + 1
    if year:
        return date(int(year), at, int(number))
    this = date(today.year, at, int(number))
    return this if this <= today else date(today.year - 1, at, int(number))
