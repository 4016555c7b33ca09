"""Numbers written in figures: what one word such as "1,200", ".018", "5/16", "1½" or "3.5k" is worth."""

from __future__ import annotations

from functools import lru_cache

VULGAR = {"½": 1 / 2, "¼": 1 / 4, "¾": 3 / 4, "⅛": 1 / 8, "⅜": 3 / 8, "⅝": 5 / 8, "⅞": 7 / 8, "⅓": 1 / 3, "⅔": 2 / 3}
DENOMINATORS = frozenset({2, 3, 4, 5, 6, 8, 10, 16, 32, 64, 1000})
'The fractions of the workshop; "15/80" is not one.'
_ORDINAL_ENDS = ("st", "nd", "rd", "th")

Figure = tuple[float, str, tuple[float, ...]]
"Value, form (digits, decimal, fraction, ordinal) and other readings."


@lru_cache(maxsize=4096)
def figure(low: str) -> Figure | None:
    """The worth of a word in figures; None for codes ("060"), clock times, ratios and sizes such as "3x8"."""
    if low.isascii() and low.isdigit():
        coded = len(low) > 12 or (len(low) > 2 and low[0] == "0")
        return None if coded else (float(low), "digits", ())
    sign = -1.0 if low[0] == "-" else 1.0
    body = low.lstrip("+-")
    if not body or len(body) > 16:
        return None
    found = _unsigned(body)
    if found is None or not (sign < 0):
        return found
    return -found[0], found[1], ()


def _unsigned(body: str) -> Figure | None:
    if body[-1] in VULGAR:
        whole = body[:-1]
        return (float(whole or 0) + VULGAR[body[-1]], "fraction", ()) if not whole or _plain(whole) else None
    if body[-1] == "k" and _decimal(body[:-1]) is not None:
        return float(body[:-1]) * 1000, "digits", ()
    if body[-2:] in _ORDINAL_ENDS and _plain(body[:-2]):
        return float(body[:-2]), "ordinal", ()
    if "/" in body:
        return _fraction(body)
    if "," in body:
        return _comma(body)
    value = _decimal(body)
    return None if value is None else (value, "decimal" if "." in body else "digits", ())


def _plain(text: str) -> bool:
    return text.isascii() and text.isdigit()


def _decimal(text: str) -> float | None:
    whole, dot, rest = text.partition(".")
    if (_plain(whole) or (dot and not whole)) and (not dot or _plain(rest)):
        return float(text)
    return None


def _fraction(body: str) -> Figure | None:
    top, _, bottom = body.partition("/")
    if not (_plain(top) and _plain(bottom)) or int(bottom) not in DENOMINATORS or not 0 < int(top) < int(bottom):
        return None
    return int(top) / int(bottom), "fraction", ()


def pieces_of(said: str) -> list[str]:
    """The numbers that figures joined by commas or a stroke are: one with thousands or a decimal comma, a fraction,
    else several: `1,2,3`, `reset 18/36`, `400/230v`; `15/80` is one word, and no number.
    """
    if "," not in said:
        top, _, bottom = said.partition("/")
        pair = _plain(top) and _plain(bottom) and len(top) == len(bottom) in (2, 3)
        pair = pair and int(top) >= LEAST_OF_PAIR <= int(bottom) and int(bottom) not in DENOMINATORS
        pair = pair and max(int(top), int(bottom)) <= ALIKE * min(int(top), int(bottom))
        return [top, bottom] if pair else [said]
    pieces = said.split(",")
    first = pieces[0].lstrip("+-")
    thousands = len(first) <= 3 and all(len(p.split(".")[0]) == 3 for p in pieces[1:])
    decimal = len(pieces) == 2 and first.isdigit() and pieces[1].isdigit() and len(pieces[1]) <= 2
    return [said] if thousands or decimal else pieces


LEAST_OF_PAIR, ALIKE = 13, 3
"Smaller ones are days and months; the one of two is at most so many times the other (judgement)."


def _comma(body: str) -> Figure | None:
    """Thousands ("1,200") or a decimal comma ("4,5"), which may also be a list of two."""
    pieces = body.split(",")
    if all(len(p.partition(".")[0]) == 3 for p in pieces[1:]):
        value = _decimal("".join(pieces))
        return None if value is None else (value, "digits", ())
    if len(pieces) == 2 and _plain(pieces[0]) and _plain(pieces[1]):
        return float(f"{pieces[0]}.{pieces[1]}"), "decimal", (float(pieces[0]), float(pieces[1]))
    return None
