"""What a few words ask to be done, brought to the actions that work is recorded under."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from worklog_tui.logbook.words import raw_words, word_set

LOOK = word_set("check test")
RENEW = word_set("replace fit make repair")
MEND = RENEW | word_set("adjust clean free tighten connect bleed flush drain fill lubricate charge")

_ASKED = (
    ("check measure look inspect test retest recheck try find see gauge read investigate trace examine", LOOK),
    ("diagnose prove weigh compare", LOOK),
    ("remove pull dismount", word_set("remove strip")),
    ("strip dismantle split overhaul rebuild", word_set("strip remove repair")),
    ("clean blow wash scrub descale degrease unblock scrape derust", word_set("clean flush free")),
    ("flush", word_set("flush clean drain")),
    ("drain dump empty", word_set("drain flush replace fill")),
    ("fill refill top", word_set("fill replace")),
    ("change renew replace swap exchange", RENEW | word_set("drain fill adjust test")),
    ("fit refit reinstall install mount reassemble assemble rejoin", RENEW),
    ("make turn machine cut fabricate weld braze solder patch repair mend fix bush sleeve", RENEW | {"free"}),
    ("bore hone lap skim grind undercut reface ream rewind straighten seal bond glue", RENEW | {"free"}),
    (
        "adjust set reset align square time balance sync synchronise shim wind readjust gap bend tune",
        RENEW | {"adjust"},
    ),
    ("tighten torque retorque retighten nip retension tension", word_set("tighten adjust")),
    ("connect reconnect hook wire rewire", word_set("connect fit repair replace")),
    ("grease oil lubricate", word_set("lubricate fill replace")),
    ("bleed", word_set("bleed")),
    ("charge", word_set("charge")),
    ("soak", word_set("soak")),
    ("free unstick unseize", word_set("free repair replace remove")),
    ("run start drive ride", word_set("start test")),
    ("order buy", RENEW),
)
"""Words that ask for a deed, and the actions that do it."""

_VERBS = {verb: actions for verbs, actions in _ASKED for verb in verbs.split()}
_NOUNS = word_set(
    "top oil charge wire cut time gap bush seal machine turn square tension torque wind patch start run drain bleed "
    "grease fill balance bore lap test gauge ride drive"
)
"""Words that name a thing too: drain cock, test bar; they ask for a deed only before an article."""
_BEFORE_A_THING = word_set("the a an my our his her its it them all both and out up off down again for with in on to")
_ADVERBS = word_set("flush square clean free level")
"""Words that say how a thing should be when they come last: float flush."""
_COMPOUNDS = frozenset(
    {("check", "valve"), ("set", "screw"), ("pull", "start"), ("pull", "rope"), ("pull", "cord"), ("dip", "stick")}
)
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
