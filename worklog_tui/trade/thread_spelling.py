"""How a thread is written, brought to the one spelling that the tables are asked by: 5/16" Whit, M8-1.25, No. 10-32."""

from __future__ import annotations

import re
from functools import lru_cache

from worklog_tui.rulebook.threads import standard_threads

_CLASS = re.compile(r"(?<=[\da-z])\s*-\s*(?:[123][ab]|[4-8][gh](?:[4-8][gh])?)$")
"A class of fit at the end: -2A, -6H (ASME B1.1, ISO 965)."
_NUMBERED = re.compile(r"^(?:number|no\.?|nr\.?|#)\s*(?=\d)")
_METRIC = re.compile(r"^m?\s*(\d+(?:\.\d+)?)\s*[x-]\s*(\d*\.\d+|\d)$")
_FINE = re.compile(r"^m\s*(\d+(?:\.\d+)?)\s+fine(?:\s*\(?(\d+(?:\.\d+)?)\)?)?$")
_COARSE = re.compile(r"^(m\s*\d+(?:\.\d+)?)\s+coarse$")
_WHOLE = re.compile(r"^(\d)-(\d/\d+)")
_PITCHED = re.compile(r"^(#?[\d/ ]+?)\s*x\s*(\d+(?:\.\d+)?)\b(?:\s*tpi)?")
_INCHES = re.compile(r"(?:\"|\binch\b|(?<=\d)\s*\bin\b\.?)")


def one_spelling(text: str) -> str:
    """The designation as the tables know it; a text that is no thread comes back as good as it was."""
    said = _INCHES.sub(" ", text.lower().replace("”", '"').replace("''", '"').replace(",", "."))
    said = " ".join(re.sub(r"[×*]", "x", said).removesuffix("mm").split())
    said = _NUMBERED.sub("#", _CLASS.sub("", _WHOLE.sub(r"\1 \2", said)))
    size, series = _split(said)
    if series:
        size = size.lstrip("#") if series == "BA" else _PITCHED.sub(r"\1-\2", size)
        return f"{size} {series}"
    if found := _FINE.match(said):
        return f"M{found[1]}x{found[2] or _fine(float(found[1]))}"
    if found := _COARSE.match(said):
        return found[1].upper()
    if (found := _METRIC.match(said)) and (said[0] == "m" or "." in found[2]):
        return f"M{found[1]}x{found[2]}"
    return _PITCHED.sub(r"\1-\2", said)


def _split(said: str) -> tuple[str, str]:
    """The size and the series, which may stand before or behind it: 3/8 british standard fine, BSF 3/8."""
    for name, series in _sayings():
        if said.endswith(name) and said[: -len(name)].strip()[-1:].isdigit():
            return said[: -len(name)].strip(), series
        if said.startswith(name) and said[len(name) :].strip()[:1].isdigit() and said[len(name) : len(name) + 1] == " ":
            return said[len(name) :].strip(), series
    return said, ""


@lru_cache(maxsize=1)
def _sayings() -> tuple[tuple[str, str], ...]:
    """How each series is said, the longest first; behind a written size a bare W is Whitworth's."""
    rows = [(" ".join(words), name) for forms in standard_threads().series.values() for words, name in forms]
    return tuple(sorted([*rows, ("w", "BSW")], key=lambda row: -len(row[0])))


def _fine(size: float) -> str:
    """The fine pitch of a metric size: the one next to the coarse (ISO 262 names it first)."""
    pitches = standard_threads().metric.get(size, ())
    return f"{pitches[1]:g}" if len(pitches) > 1 else "0"
