"""Where one note of talk ends and the next begins anew: captions have no stops, and most lines end with a thought.

A line goes on when its last word waits for more (`the`, `is`, `for`), when the next begins with what only goes on
(`of`, `than`, `is`, a figure, a correction), or when the words on both sides are one name. Else a stop is heard.
"""

from __future__ import annotations

from worklog_tui.extract.met import meet
from worklog_tui.rulebook import Met, Rulebook
from worklog_tui.rulebook.contractions import SPELT_OUT

NAME = 6
"So many words without a verb are only the name of what is told of next."
PARTICLES = frozenset("on in up down out off over under through round before".split())
"Last words that wait for a name with its article."
SPEAKER = frozenset("i im ive ill id".split())
SUPPOSES = frozenset("if unless once when whenever until till before".split())
OPENERS = frozenset("there here ok okay right alright so now next look let".split())
"Words that only open talk: with any other the clause begins that tells what then."
NAMES = frozenset("the a an my this these those your our his her".split())
"First words of a name, which may be what the line before waits for."
CORRECTS = frozenset("wait its thats sorry not no make hang i im actually".split())
"What follows a `no` that puts right what was said; so does a figure."

HEADS = ("part", "side", "did", "do", "doing", "bad", "good", "noted")
"Classes of other words that head a line: what is told of, what was done, how it was found."
TELLS = ("copula", "bad", "good", "noted", "did", "do", "doing", "does", "must", "plan", "amount")
"Classes of words that tell something."


def begins_anew(before: str, after: str, book: Rulebook) -> bool:
    """Whether the words of a note begin a thought of their own behind the unfinished words before it."""
    said, said_next = before.split(), after.split()
    if not said or not said_next or not said[-1][-1].isalnum() or not said_next[0][0].isalnum():
        return False
    if said[0][0].isupper() and _plain(said[0]) not in SPEAKER:
        return False  # who writes capitals writes stops
    last, first = _plain(said[-1]), _plain(said_next[0])
    if last in book.lists["waits_for_more"] or first in book.lists["goes_on_with"]:
        return False
    if first == "no" and _corrects(said_next, book):
        return False
    if (len(said) <= NAME and not any(_tells(_plain(word), book) for word in said)) or _supposes(said, book):
        return False
    if first in book.lists["talk_begins"]:
        return True
    if last in PARTICLES:
        return first not in NAMES or _has_verb(said_next, book)
    ends, begins = _met(last, book), _met(first, book)
    if first in NAMES and _is(ends, "do") and _has_verb(said_next, book):
        return True  # `and then clear`, `the governor's surging`
    if begins.counts and first not in NAMES and first != "number":
        return not ends.counts and _is(ends, "bad", "good", "noted", "pronoun", "did", "doing")
    if first in NAMES or any(_is(_met(_plain(word), book), "book") for word in said_next[:3]):
        return False  # `book says twelve` is of what was told last
    return _is(begins, *HEADS) and not book.table.get(f"{last} {first}")


def _supposes(said: list[str], book: Rulebook) -> bool:
    """Whether only what is supposed was said, not yet what then: `so if it weeps again`."""
    first = next((k for k, word in enumerate(said[:3]) if _plain(word) in SUPPOSES), None)
    if first is None:
        return False
    words = [_plain(word) for word in said[first:]]
    return words[1:2] != ["not"] and sum(_is_who(w, book) for w in words) < 2


def _has_verb(words: list[str], book: Rulebook) -> bool:
    """Whether a line begins with a part and its verb: `the cam was dry`, `the left shoe's worn`."""
    for k, word in enumerate(words[1:LONGEST], 1):
        low = _plain(word)
        if low in VERBS:
            return k > 1 and _names_a_part(_plain(words[k - 1]), book)
        if word.lower().replace("\u2019", "'").endswith("'s"):
            return _names_a_part(low.removesuffix("s"), book)
    return False


def _names_a_part(low: str, book: Rulebook) -> bool:
    """Whether a word names a part; `the gap's eighteen` goes on with what was named in the line before."""
    return any(sense.cls == "part" and sense.kind != "quality" for sense in _met(low, book).senses)


LONGEST = 5
VERBS = frozenset("is was are were has had isnt arent wasnt doesnt wont looks".split())


def _is_who(low: str, book: Rulebook) -> bool:
    return low in ("the", "that") or (low in book.lists["talk_begins"] and low not in OPENERS)


def _tells(low: str, book: Rulebook) -> bool:
    return _is(met := _met(low, book), *TELLS) and not _is(met, "part")


def _corrects(words: list[str], book: Rulebook) -> bool:
    """Whether a line that begins with `no` puts right what was said: `no wait`, `no it's`, `no thirty`."""
    return len(words) < 2 or (low := _plain(words[1])) in CORRECTS or _met(low, book).counts


def _met(low: str, book: Rulebook) -> Met:
    return book.met.get(low) or meet(low, book)


def _is(met: Met, *classes: str) -> bool:
    return not met.classes.isdisjoint(classes)


def _plain(word: str) -> str:
    """A word as the reader compares it: in lower case, without its apostrophe and what stands behind it."""
    low = word.lower().strip('.,;:!?"()').replace("’", "'")
    return (SPELT_OUT.get(low) or low).replace("'", "")
