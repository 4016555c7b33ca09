"""Small turns of phrase: how the words of a person become the words of a step."""

from __future__ import annotations

import re
from collections.abc import Container, Iterable

from worklog_tui.diagnosis.words import tokens

_ARTICLE = re.compile(r"^(?:the|a|an|my|our|that|this|some)\s+", re.IGNORECASE)
_HELPS = re.compile(
    r"(?:['’]?s)?\s+(?:gonna|going|needs?|needing|wants?|wanting|has|have|had|will|ll|must|should|ought|gotta|got"
    r"|to be)\b.*$",
    re.IGNORECASE,
)
_PAST = {
    "redone": "do", "done": "do", "bled": "bleed", "ground": "grind", "cut": "cut", "wound": "wind", "bound": "bind",
    "made": "make", "found": "find", "put": "put", "set": "set", "reset": "reset", "swapped": "swap", "fitted": "fit",
    "refitted": "refit", "fit": "fit", "stripped": "strip", "rebuilt": "rebuild", "taken": "take", "hung": "hang",
    "sorted": "sort", "freed": "free", "rewound": "rewind", "bought": "order",
    "sewn": "sew", "drawn": "draw", "bent": "bend", "driven": "drive", "sent": "send",
}  # fmt: skip
_TALK = frozenset({
    "i", "i'm", "i'll", "we", "we'll", "you", "it", "it's", "that's", "they", "he", "she", "gonna", "shall", "but",
    "why",
})  # fmt: skip
_NO_JOB = frozenset({"and", "or", "but", "if", "so", "that's", "to", "got", "been"})
_STOPS = frozenset({"or", "but", "because", "if", "so", "anybody", "anyone", "does", "then", "which", "cause", "when"})
_PLAIN = frozenset({"oil", "coolant", "antifreeze", "foam", "paint", "fuel", "grease", "wire", "tubing"})


def bare(text: str) -> str:
    """A name without its article, and without the short `is` behind it: the bearing's of `the bearing's on its way`."""
    return re.sub(r"['’]s$", "", _ARTICLE.sub("", text.strip()))


def one_of(thing: str) -> str:
    """The article that a thing takes, with a space after it: none for several and for what is poured."""
    head = re.split(r"\s(?:on|in|for|of|round|at)\s", thing)[0].split()
    last = head[-1].lower() if head else ""
    several = last.endswith("s") and not last.endswith(("ss", "us"))
    return "" if several or last in _PLAIN else "a "


def fuller(thing: str, name: str, around: str) -> str:
    """The vocabulary's name where one word or a short form of it was said: 'gskt' or 'gasket' for the inlet gasket.

    The rest of the name must have been said nearby (`around`): a kit is no tyre repair kit for want of a better name.
    """
    said, known = tokens(thing), tokens(name)
    if len(said) != 1 or not known:
        return thing
    if len(known) > 1 and not set(known[:-1]) <= set(tokens(around)):
        return thing
    if said[0] == known[-1] and len(known) > 1:
        return name
    return name if _shortens(thing.lower().strip(), known[-1]) else thing


def _shortens(short: str, word: str) -> bool:
    """Whether letters of a word, in order and from its first on, were typed for it."""
    if len(short) < 3 or len(short) >= len(word) or short[0] != word[0]:
        return False
    rest = iter(word)
    return all(letter in rest for letter in short)


def place_of(thing: str, around: str) -> str:
    """Where a thing sits, as it was said beside it: 'gasket' in 'a real gasket on the intake' gives 'on the intake'."""
    last = thing.split()[-1] if thing.split() else ""
    if not last or len(thing.split()) > 1:
        return ""
    found = re.search(
        rf"\b{re.escape(last)}s?\s+((?:on|for|behind|under|round|in)\s+the\s+[a-z][a-z-]+)", around, re.IGNORECASE
    )
    return found[1] if found and tokens(found[1]) else ""


def taken_off(job: str) -> str:
    """A job in short as it is said in full: 'lid off' is 'take the lid off'."""
    words = job.split()
    short = 1 < len(words) <= 4 and words[-1].lower() in ("off", "out", "apart") and "and" not in words
    return f"take the {bare(' '.join(words[:-1]))} {words[-1].lower()}" if short else job


def is_clause(text: str) -> bool:
    """Whether a text is a piece of talk and no name of a thing or job: it has a pronoun in it, or runs on."""
    said = re.findall(r"[a-z']+", text.lower().replace("’", "'"))
    return len(said) > 7 or bool(_TALK.intersection(said))


def job_in(text: str, verbs: Container[str]) -> str:
    """The job in a piece of talk, from its verb on: 'we'll have to swap the coils' gives 'swap the coils'."""
    words = re.sub(r"[^\w\s'’/-]", " ", text.replace("&", " and ")).split()
    for n, word in enumerate(words[:-1]):
        low = word.lower()
        base = low if low in verbs else _base(low, verbs) if low.endswith("ing") else ""
        if base and words[n + 1].lower() not in _NO_JOB:
            rest = []
            for later in words[n + 1 : n + 9]:
                if later.lower() in _STOPS:
                    break
                rest.append(later)
            return " ".join([base, *rest]) if rest else ""
    return ""


def asked_for(text: str, verbs: Container[str]) -> str:
    """The job in words that end with how a thing should be: 'coolant flushed', 'belt needs changing'.

    Where the verb is not known, `have the seat rebushed`.
    """
    words = text.split()
    if len(words) < 2:
        return ""
    *words, last = words
    way = f" {last}" if last in _WAYS and len(words) > 1 else ""
    if way:
        *words, last = words
    verb = _base(last.lower().strip(".,"), verbs)
    thing = bare(_HELPS.sub("", " ".join(words)))
    if verb and tokens(thing):
        return f"{verb}{way} the {thing}"
    return f"have the {bare(text)}" if _HOW_IT_SHOULD_BE.search(text) else ""


_WAYS = frozenset("out off up down back in on round over apart together".split())
_HOW_IT_SHOULD_BE = re.compile(rf"\w(?:ed|wn|ound)(?: (?:{'|'.join(sorted(_WAYS))}))?$", re.IGNORECASE)


def _base(word: str, verbs: Container[str]) -> str:
    """The base form of a participle of a known verb; empty for any other word."""
    if word in _PAST:
        return _PAST[word]
    for end in ("ing", "ed"):
        if word.endswith(end):
            stem = word[: -len(end)]
            for base in (stem, stem + "e", stem[:-1] if stem[-1:] == stem[-2:-1] else stem):
                if base in verbs:
                    return base
    return ""


def inflected(verbs: Iterable[str]) -> str:
    """A pattern for any of some verbs in any regular form: run, runs, running; ride, riding."""
    return f"(?:{'|'.join(_forms(v) for v in verbs)})"


def _forms(verb: str) -> str:
    first, _, rest = verb.partition(" ")
    root = first.removesuffix("e")
    ends = "e|es|ed|ing|en" if root != first else f"s|es|ed|ing|{first[-1]}ing|{first[-1]}ed"
    return rf"{root}(?:{ends}){'?' if root == first else ''}{' ' + rest if rest else ''}"
