"""The job in words that announce one: verb, object, and where it ends."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import Any

from worklog_tui.diagnosis.words import tokens

LONGEST = 15
"More words than this are cut off a job (judgement)."
_WORD = re.compile(r"[\w/]+(?:['’.-][\w/]+)*|[,+&]")
_LEAD = frozenset({
    "just", "then", "also", "probably", "first", "have", "to", "need", "go", "come", "back", "now", "maybe", "get",
    "actually", "only", "definitely", "really", "again", "well", "still", "finally", "and", "out", "down",
    "round", "over", "in", "be", "able",
})  # fmt: skip
_STOPS = frozenset({
    "but", "because", "cos", "cause", "if", "unless", "so", "when", "while", "until", "till", "before", "which",
    "who", "as", "after", "anyway", "though", "otherwise", "or", "since", "whereas", "that's", "it's",
})  # fmt: skip
_PRONOUNS = frozenset(
    {"it", "them", "that", "this", "these", "those", "him", "her", "one", "ones", "some", "they", "both", "all"}
)
_SUBJECTS = frozenset({
    "i", "we", "you", "he", "she", "they", "i'll", "we'll", "it'll", "that'll", "it's", "that's", "he'll", "she'll",
    "i'm", "i've", "you'll", "there's", "it",
})  # fmt: skip
_CONTRACTED = frozenset({"i'll", "we'll", "it'll", "that'll", "he'll", "she'll", "i'm", "i've", "i'd", "i"})
_TIMES = re.compile(
    r"\s*\b(?:tomorrow|tonight|then|now|today|next (?:time|week|weekend|session|month)|first thing|first|too|as well"
    r"|(?:in|by) the morning|(?:this|in the|tomorrow) (?:afternoon|evening)|arvo|instead|anyway|for (?:now|sure)|soon"
    r"|(?:on |by |this |next )?(?:mon|tues|wednes|thurs|fri|satur|sun)day(?: morning)?)\s*$",
    re.IGNORECASE,
)
_SPLITS = re.compile(r"\s+(?:and|then)\s+(?:that|the|a|my|this)?(?:\s+[\w-]+){1,4}$", re.IGNORECASE)
"The beginning of the next thought that a subject cuts off: 'and that chain case' of 'and that chain case I'll ...'."
_DANGLING = frozenset({
    "and", "to", "the", "a", "an", "with", "of", "on", "in", "for", "see", "at", "from", "my", "that", "this", "by",
})  # fmt: skip
_NO_VERBS = frozenset({
    "with", "for", "on", "in", "at", "of", "from", "by", "the", "a", "an", "my", "our", "that", "this", "it", "them",
    "is", "are", "was", "all", "both", "some", "any", "no", "not", "what", "how", "where", "there", "here",
})  # fmt: skip
"Words that begin no job."
_SEES = frozenset({"see", "check", "watch", "find", "look", "listen", "feel", "wait", "count", "time", "measure"})


class JobWords:
    """Cuts jobs out of talk, with the word lists of grammars/diagnosis/steps.toml."""

    def __init__(self, lists: Mapping[str, Any]) -> None:
        self.verbs = frozenset(lists.get("verbs", ()))
        self.talk = frozenset(lists.get("talk_verbs", ()))

    def jobs(self, text: str, any_verb: bool) -> Iterator[str]:
        """The jobs at the beginning of a text, first to last; `any_verb`: what comes first must be a verb there."""
        words = [w.replace("’", "'") for w in _WORD.findall(text)]
        while words and words[0].lower() in _LEAD and not self._leads(words):
            words = words[1:]
        while words and self._begins(words, any_verb):
            taken, words = self._one(words)
            while taken and taken[-1].lower() in _DANGLING:
                taken = taken[:-1]
            job = " ".join(taken)
            while (shorter := _TIMES.sub("", job)) != job:
                job = shorter
            if len(job.split()) > 1:
                yield job[:1].lower() + job[1:]
            any_verb = False
            while words and words[0].lower() in (",", "and", "then", "&", "+", "also"):
                words = words[1:]

    def _leads(self, words: list[str]) -> bool:
        """Whether the first word is a job's verb after all: back the bolt off, but not back to the bolt."""
        after = words[1].lower() if len(words) > 1 else ""
        return self._begins(words, any_verb=False) or (
            words[0].lower() == "back" and after in ("the", "that", "it", "off")
        )

    def _begins(self, words: list[str], any_verb: bool) -> bool:
        first, after = words[0].lower(), words[1].lower() if len(words) > 1 else ""
        if first == "do" and after in ("the", "those"):
            return True
        if first in self.talk or (not first.isalpha() and "-" not in first):
            return False
        if first in self.verbs:
            return True
        return any_verb and first not in _SUBJECTS | _NO_VERBS and not first.endswith("ly")

    def _one(self, words: list[str]) -> tuple[list[str], list[str]]:
        taken = [words[0]]
        for n, word in enumerate(words[1:], 1):
            low = word.lower()
            if (low in _STOPS and not (low == "if" and taken[-1].lower() in _SEES)) or len(taken) >= LONGEST:
                return taken, []
            if low in _CONTRACTED:
                return _SPLITS.sub("", " ".join(taken)).split(), []
            if low in (",", "+", "&"):
                return taken, words[n:]
            if low in ("and", "then"):
                later = words[n + 1].lower() if n + 1 < len(words) else ""
                if later in _SEES and n + 2 < len(words) and words[n + 2].lower() in ("if", "whether", "what", "how"):
                    taken.append(word)
                    continue
                if later in self.verbs or later in _SUBJECTS or later in self.talk or low == "then":
                    return taken, words[n:]
            taken.append(word)
        return taken, []


def object_of(job: str) -> tuple[str, ...]:
    """The telling words of what a job works on; empty when it is only pointed at (it, them, that)."""
    rest = job.split()[1:]
    told = [w for w in tokens(" ".join(rest)) if w not in _PRONOUNS]
    return tuple(told)


def with_thing(job: str, thing: str) -> str:
    """A job on it, them or that with the thing named: clean it, of a regulator: clean the regulator."""
    words = job.split()
    at = next((n for n, w in enumerate(words) if n and w.lower().strip(",") in _PRONOUNS), None)
    if at is None:
        return f"{job} ({thing})"
    return " ".join([*words[:at], "the", thing, *words[at + 1 :]])
