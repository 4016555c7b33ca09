"""Whether a comment is a question, a suggestion or chatter."""

from __future__ import annotations

import re
from dataclasses import dataclass

from worklog_tui.logbook.comment_words import CommentWords, by_first_word, holds_any

_SENTENCES = re.compile(r"[^.!?\n]+[.!?]*")


@dataclass(frozen=True, slots=True)
class Weighed:
    """One sentence of a comment with what speaks for each kind."""

    words: str
    question: int = 0
    suggestion: int = 0
    chatter: int = 0


@dataclass(frozen=True, slots=True)
class Kind:
    """What a comment is, and the sentence that made it so."""

    kind: str
    sentence: str


def sentences(words: CommentWords, comment: str) -> list[str]:
    """The sentences of a comment in plain form."""
    return [s.strip() for s in _SENTENCES.findall(words.plain(comment)) if re.search(r"\w", s)]


def kind_of(words: CommentWords, comment: str, technical: bool) -> Kind:
    """The kind of a comment; `technical` says whether it names a part, a trouble or a topic at all."""
    weighed = [weigh(words, s) for s in sentences(words, comment)]
    if not weighed:
        return Kind("chatter", "")
    asking = max(weighed, key=lambda w: w.question)
    telling = max(weighed, key=lambda w: w.suggestion)
    nice = sum(w.chatter for w in weighed)
    if asking.question >= 3 and asking.question >= telling.suggestion and (technical or not nice):
        return Kind("question", asking.words)
    if not technical:
        return Kind("chatter", "")
    if asking.question and asking.question >= telling.suggestion:
        return Kind("question", asking.words)
    told = sum(w.suggestion for w in weighed)
    if told > nice or telling.suggestion >= 3 or not nice:
        return Kind("suggestion", telling.words)
    return Kind("chatter", "")


def weigh(words: CommentWords, sentence: str) -> Weighed:
    """What speaks for each kind in one sentence."""
    said = sentence.split()
    while len(said) > 1 and (said[0] in words.small.openers or said[0] == ","):
        said = said[1:]
    begins, whole = " ".join(said), f" {sentence} "
    sums = {"question": 0, "suggestion": 0, "chatter": 0}
    may = words.may_say("cues", sentence)
    for n, cue in enumerate(words.cues):
        if cue.at == "end":
            found = any(sentence.endswith(s) for s in cue.says)
        elif cue.at == "start":
            beginning = by_first_word(cue.says).get(said[0] if said else "", ())
            found = any(begins == s or begins.startswith(s + " ") for s in beginning)
        else:
            found = n in may and holds_any(whole, cue.says)
        sums[cue.kind] += cue.weight if found else 0
    return Weighed(sentence, **sums)
