"""What a few words ask to be done, brought to the actions that work is recorded under."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from worklog_tui.logbook.trade_files import trade_file
from worklog_tui.logbook.words import raw_words, word_set

_DEEDS = trade_file("deeds")
LOOK, RENEW = (word_set(_DEEDS["groups"][name]) for name in ("look", "renew"))
MEND = RENEW | word_set(_DEEDS["groups"]["mend"])
_VERBS = {verb: word_set(one["done_by"]) for one in _DEEDS["asked"] for verb in one["verbs"].split()}
"Words that ask for a deed, and the actions that do it."
_NOUNS, _ADVERBS = (word_set(_DEEDS["words"][name]) for name in ("nouns", "adverbs"))
_COMPOUNDS = frozenset(tuple(one.split()) for one in _DEEDS["words"]["compounds"])
_BEFORE_A_THING = word_set("the a an my our his her its it them all both and out up off down again for with in on to")
_BACK = RENEW | {"connect"}


@dataclass(frozen=True, slots=True)
class Deed:
    """What is asked for: the actions that would do it, and the word that said so."""

    actions: frozenset[str] = frozenset()
    word: str = ""


@lru_cache(maxsize=20_000)
def asked(text: str) -> Deed:
    """The deed that the words ask for; without actions when only a thing is named.

    'clean the tank' asks to clean; 'head off' to remove; 'fuel hose' for nothing.
    """
    words = raw_words(text)
    back = "back" in words and words[-1] in ("on", "in", "together", "up", "back")
    for place, word in enumerate(words):
        actions = _asks(word, words[place + 1] if place + 1 < len(words) else "", place)
        if actions:
            return Deed(actions | _BACK if back else actions, word)
    if back:
        return Deed(_BACK)
    if len(words) > 1 and words[-1] in ("off", "out", "apart"):
        verb = words[-2] if len(words) > 2 and words[-2].endswith("ed") else ""
        return Deed(_VERBS["remove"] | RENEW if verb else _VERBS["remove"], verb)
    return Deed()


def _asks(word: str, after: str, place: int) -> frozenset[str]:
    """The actions that a word asks for where it stands."""
    verb = next((v for v in (word, word.removesuffix("ing"), word.removesuffix("ed")) if v in _VERBS), "")
    if not verb or (verb, after) in _COMPOUNDS:
        return frozenset()
    if place and not after and word in _ADVERBS:
        return frozenset()
    if verb in _NOUNS and verb == word and not (place == 0 and after in _BEFORE_A_THING):
        return frozenset()
    return _VERBS[verb]
