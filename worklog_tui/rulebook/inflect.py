"""The regular forms of English verbs and nouns, for vocabulary files that give only the base."""

from __future__ import annotations

from collections.abc import Iterator

VOWELS = "aeiou"
PARTICLES = frozenset(
    [
        "off",
        "out",
        "up",
        "down",
        "back",
        "on",
        "in",
        "over",
        "through",
        "away",
        "apart",
        "round",
        "around",
        "together",
        "to",
        "into",
        "onto",
        "along",
        "under",
        "free",
        "at",
        "for",
        "with",
        "of",
        "from",
    ]
)
FORMS = ("do", "does", "did", "doing")
IRREGULAR = {
    "bend": "bent", "bind": "bound", "blow": "blew", "break": "broke", "build": "built", "cut": "cut", "dig": "dug",
    "draw": "drew", "drive": "drove", "feed": "fed", "find": "found", "fit": "fitted", "get": "got", "give": "gave",
    "go": "went", "grind": "ground", "hang": "hung", "have": "had", "hold": "held", "knit": "knitted", "lay": "laid",
    "let": "let", "make": "made", "put": "put", "regrind": "reground", "rewind": "rewound", "rig": "rigged",
    "run": "ran", "set": "set", "sew": "sewed", "shake": "shook", "shut": "shut", "slide": "slid", "slit": "slit",
    "spin": "spun", "split": "split", "spread": "spread", "stick": "stuck", "sweep": "swept", "swing": "swung",
    "take": "took", "tear": "tore", "undo": "undid", "unstick": "unstuck", "unwind": "unwound", "wind": "wound",
    "bring": "brought", "catch": "caught", "cast": "cast", "sink": "sank", "steal": "stole", "strike": "struck",
}  # fmt: skip
"Pasts of common verbs that no rule makes (any grammar of English)."


def plural(noun: str) -> str:
    """spark plug -> spark plugs, bush -> bushes, assembly -> assemblies; a plural stays."""
    if noun.endswith(("ss", "sh", "ch", "x", "z", "us")):
        return noun + "es"
    if noun.endswith("s"):
        return noun
    if noun.endswith("y") and len(noun) > 2 and noun[-2] not in VOWELS:
        return noun[:-1] + "ies"
    return noun + "s"


def _stressed_short(word: str) -> bool:
    """Whether the last letter doubles before -ed: stop, clip, fit; not loosen, gap yes, repair no."""
    if len(word) < 3 or word[-1] in VOWELS + "wxy" or word[-2] not in VOWELS or word[-3] in VOWELS:
        return word[-3:] in ("qui",)
    return sum(c in VOWELS for c in word) == 1 or word in ("refit", "regap", "retap", "unplug", "reset", "unclip")


def past(verb: str) -> str:
    """The past of one word: clean -> cleaned, scrape -> scraped, dry -> dried, strip -> stripped, grind -> ground."""
    if verb in IRREGULAR:
        return IRREGULAR[verb]
    if verb.endswith("e"):
        return verb + "d"
    if verb.endswith("y") and verb[-2:-1] not in VOWELS:
        return verb[:-1] + "ied"
    return verb + (verb[-1] if _stressed_short(verb) else "") + "ed"


def gerund(verb: str) -> str:
    """clean -> cleaning, scrape -> scraping, strip -> stripping."""
    if verb.endswith("ie"):
        return verb[:-2] + "ying"
    if verb.endswith("e") and not verb.endswith(("ee", "ye", "oe")):
        return verb[:-1] + "ing"
    return verb + (verb[-1] if _stressed_short(verb) else "") + "ing"


def third(verb: str) -> str:
    """clean -> cleans, flush -> flushes, dry -> dries."""
    if verb.endswith(("s", "sh", "ch", "x", "z", "o")):
        return verb + "es"
    if verb.endswith("y") and verb[-2:-1] not in VOWELS:
        return verb[:-1] + "ies"
    return verb + "s"


def verb_forms(verb: str, irregular: tuple[str, ...] = ()) -> Iterator[tuple[str, str]]:
    """Pairs (form, words) of a verb that may have several words; irregular pasts replace the regular one."""
    words = verb.split()
    at = 0 if len(words) == 1 or words[-1] in PARTICLES or {"the", "it", "a"} & set(words) else len(words) - 1
    before, head, after = words[:at], words[at], words[at + 1 :]

    def whole(word: str) -> str:
        return " ".join([*before, word, *after])

    yield "do", verb
    yield "does", whole(third(head))
    yield "doing", whole(gerund(head))
    for words_ in irregular or (whole(past(head)),):
        yield "did", words_
