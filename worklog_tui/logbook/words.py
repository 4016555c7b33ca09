"""Words of the trade brought to one form, so that two tellings of one thing can be compared: the tables are in
grammars/trade/alike.toml.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Any

from worklog_tui.logbook.trade_files import trade_file


def word_set(text: str) -> frozenset[str]:
    """The words of a text as a set."""
    return frozenset(text.split())


def _turned(table: dict[str, Any]) -> dict[str, str]:
    """Said -> the one form."""
    return {one: form for form, said in table.items() for one in (said.split() if isinstance(said, str) else said)}


_ALIKE = trade_file("alike")
SAME, SIDES = _turned(_ALIKE["same"]), _turned(_ALIKE["sides"])
PHRASES = tuple(_turned(_ALIKE["phrases"]).items())
COUNTED, DENIALS, FILLER, BUILT_WITH = (
    word_set(_ALIKE["lists"][name]) for name in ("counted", "denials", "filler", "built_with")
)
_TO_TWELVE = "zero one two three four five six seven eight nine ten eleven twelve"
_TO_EIGHTH = "zeroth first second third fourth fifth sixth seventh eighth"
NUMBERS = {word: str(n) for n, word in enumerate(_TO_TWELVE.split())}
ORDINALS = {word: str(n) for n, word in enumerate(_TO_EIGHTH.split())}
_ENDS = ("ings", "ing", "ed", "es", "s")


@lru_cache(maxsize=20_000)
def stem(word: str) -> str:
    """A word without its ending: gaskets and gasket, leaking and leaks give one form."""
    for end in _ENDS:
        if word.endswith(end) and not word.endswith("ss") and len(word) - len(end) >= (3 if end == "s" else 4):
            word = word[: -len(end)]
            break
    if len(word) > 4 and word.endswith("y"):
        return word[:-1] + "i"
    return word[:-1] if len(word) > 4 and word.endswith("e") else word


_SAME_STEMS = {stem(said): stem(SAME[said]) for said in SAME}
_DRAWN_OUT = re.compile(r"([a-z])\1{2,}")
_WORD = re.compile(r"[^\W_][\w./'-]*")
_JOINED = re.compile(r"(?<=[a-z])-(?=[a-z])")


@lru_cache(maxsize=20_000)
def raw_words(text: str) -> tuple[str, ...]:
    """The words in lower case, phrases of two oceans brought to one."""
    plain = _DRAWN_OUT.sub(r"\1\1", text.lower()).replace("\u2019", "'").replace("#", " number ").replace("&", " and ")
    plain = _JOINED.sub(" ", plain)
    for said, same in PHRASES:
        if said in plain:
            plain = re.sub(rf"\b{said}", same, plain)
    return tuple(w.strip(".-/'").removesuffix("'s") for w in _WORD.findall(plain))


@lru_cache(maxsize=20_000)
def one_form(word: str) -> str:
    """The form in which a word is compared."""
    return _SAME_STEMS.get(stem(word), stem(SAME.get(word, word)))
