"""The longest term of the vocabulary at a word, and where a shorter one is meant: `plugs back in` plugs nothing in."""

from __future__ import annotations

from worklog_tui.extract.heard.words import Word
from worklog_tui.extract.met import meet
from worklog_tui.rulebook import Met, Rulebook, Sense

Term = tuple[Sense, ...]
"The senses of a term."
VERBS = frozenset({"do", "does", "did", "doing", "split"})
HOW = frozenset({"how", "phrase"})
BLAME = frozenset({"cause", "bad", "state", "phrase", "function"})
BEFORE_NOUN = frozenset(
    "a an the new this that my his old another proper decent spare second other her our your their".split()
)
DOERS = frozenset("he she it who which that one this".split())
GONE = frozenset("out off drained dropped".split())
"`Old oil out`, not `old oil in it`."
PARTICLES = frozenset("off on in out up down".split())
DONE = frozenset({"did", "split", "doing"})


def longest_term(words: list[Word], i: int, book: Rulebook) -> tuple[Met, int]:
    """The longest term at word i, and the word after it; a term does not run over punctuation."""
    known, said = book.met, words[i].low
    found = met = known.get(said) or meet(said, book)
    after = end = i + 1
    while met.goes_on and end < len(words) and words[end].low in met.goes_on and words[end].gap in ("", "-"):
        said = f"{said} {words[end].low}"
        met = known.get(said) or meet(said, book)
        senses = met.senses
        if senses and not (
            _names_part(words, i, senses, book)
            or _is_wiped_off(words, i, end, senses)
            or _goes_on(words, end, senses)
            or _names_more(words, end, senses, book)
        ):
            found, after = met, end + 1
        end += 1
    return found, after


def _is_part(word: str, book: Rulebook) -> bool:
    """Whether a word alone names a part."""
    return any(s[0] == "part" for s in book.table.get(word, ()))


def _names_part(words: list[Word], i: int, senses: Term, book: Rulebook) -> bool:
    """Whether the first word is a part and no verb: `a new plug in`, `plugs back in`, `drained the old fuel`."""
    before = words[i - 1].low if i and words[i].gap == "" else ""
    if all(s[0] in VERBS for s in senses):
        plural = all(s[0] == "does" for s in senses) and before not in DOERS and not _is_part(before, book)
        named = before in BEFORE_NOUN or plural or _without_object(words, i, senses)
        return named and _is_part(words[i].low, book)
    if words[i].low == "old" and i + 2 < len(words) and words[i + 2].low in GONE:
        return True
    if before not in BEFORE_NOUN or i < 2 or not all(s[0] in BLAME for s in senses):
        return False
    worked = any(s[0] in DONE for s in book.table.get(words[i - 2].low, ()))
    return worked and (_is_part(words[i].low, book) or words[i].low == "old")


def _is_wiped_off(words: list[Word], i: int, end: int, senses: Term) -> bool:
    """Whether the first word is what was taken off something, and no verb: wiped the `dust off` the coil."""
    if words[end].low not in ("off", "out") or end + 1 >= len(words) or not any(s[0] in VERBS for s in senses):
        return False
    return i > 0 and words[i - 1].low == "the" and words[end + 1].low in BEFORE_NOUN


def _without_object(words: list[Word], i: int, senses: Term) -> bool:
    """Whether a bare verb of a word and a particle has nothing behind it that it could be done to: `cap off. Plug in,
    lead on`; not `cap off the line`.
    """
    if not all(s[0] == "do" for s in senses) or i + 1 >= len(words) or words[i + 1].low not in PARTICLES:
        return False
    return i + 2 >= len(words) or bool(words[i + 2].gap.strip("-")) or words[i + 2].low == "and"


def _goes_on(words: list[Word], end: int, senses: Term) -> bool:
    """`Oil in the sump` says where the oil is, `18 with oil in` how a test was made."""
    return (
        all(s[0] in HOW for s in senses)
        and words[end].low == "in"
        and end + 1 < len(words)
        and words[end + 1].gap == ""
        and words[end + 1].low in BEFORE_NOUN
    )


def _names_more(words: list[Word], end: int, senses: Term, book: Rulebook) -> bool:
    """Whether the last word of a term that is no part begins the name of one: the old oil seal is no old oil."""
    if end + 1 >= len(words) or words[end + 1].gap not in ("", "-") or any(s[0] == "part" for s in senses):
        return False
    last, more = words[end].low, words[end + 1].low
    met = book.met.get(last) or meet(last, book)
    return more in met.goes_on and any(s[0] == "part" for s in book.table.get(f"{last} {more}", ()))
