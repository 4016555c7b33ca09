"""Whether a line tells of the deed that a comment asks after: did you test it, did you decarbonise it.

That the log tells of the same part is no answer to whether a thing was done to it: the line must tell of that deed,
by its word or by work that does it, or say that it was not done.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from worklog_tui.logbook.comment_topics import Asked
from worklog_tui.logbook.comment_words import CommentWords
from worklog_tui.logbook.deeds import LOOK, RENEW
from worklog_tui.logbook.deeds import asked as deed_of
from worklog_tui.logbook.same_thing import thing
from worklog_tui.logbook.told_lines import ToldLines, stems
from worklog_tui.logbook.words import one_form
from worklog_tui.model import Fact, Finding, FollowUp, Reading, Work

_DID = re.compile(
    r"\b(?:did|didnt|have|havent|had|hadnt) you(?: (?:ever|even|also|not|actually|already|really|just))* (\w+)\b(.*)"
)

_COULD = re.compile(
    r"^(?:and |so |but )?(?:could|can|cant|couldnt) (?:the|that|this|those|these|your|it|they)(?: \w+){0,5}? "
    r"be (\w+ed|rewound|ground|cut|made)\b( (?:out|up|down|off|back))?"
)
"""Could the backlash be shimmed out: a line that tells only how much there is of it is no answer."""

_NOT_DONE = re.compile(
    r"\b(?:did|have|has|had|wo|sha)n'?t\b|\b(?:never|not (?:going|touch\w*|yet|done)|no need|left)\b"
)

_EITHER = re.compile(r"^(?:and |so |but )?(?:is|are|was|were|does|do) (.+) or (?:is |are |was )?(.+)$")


def done_asked(words: CommentWords, sentence: str) -> str:
    """The word of the deed of which a question asks whether it was done; empty where it asks for something else."""
    could = _COULD.match(sentence)
    if could is not None and (could[2] or deed_of(f"{could[1]} the").actions):
        return could[1]
    found = _DID.match(sentence) or _DID.search(_without_openers(words, sentence))
    if found is None or found[1] in words.small.no_deed or found.start():
        return ""
    return found[1]


def _without_openers(words: CommentWords, sentence: str) -> str:
    said = sentence.split()
    while len(said) > 1 and (said[0] in words.small.openers or said[0] == ","):
        said = said[1:]
    return " ".join(said)


_TOLD_TO = re.compile(
    r"^(?:you (?:should|could|can|might|must|need to|want to|have to|ought to)|id|i would|youll want to|"
    r"why not|why dont you|have you tried|did you try|try|please|better to|just)\s+"
)


def leading_deed(words: CommentWords, sentence: str) -> str:
    """What a suggestion begins with, when that is to be done and is more than a look: make it of brass, worn or not."""
    said = _TOLD_TO.sub("", _without_openers(words, sentence))
    first = said.split(" ", 1)[0]
    return first if deed_of(f"{first} the").actions - LOOK else ""


def tells_deed(lines: ToldLines, note: str, verb: str, facts: Sequence[Fact], named: bool) -> bool:
    """Whether a line tells that it was done, was not, or is to be; `facts` are those of the line about the thing."""
    actions = deed_of(f"{verb} the").actions
    if one_form(verb) in lines.words[note]:
        return True
    for fact in (*facts, *(lines.by_note.get(note, ()) if named else ())):
        match fact:
            case Work():
                if fact.action in actions and (fact in facts or not _of_a_fluid(fact, actions)):
                    return True
            case Finding() | Reading():
                if actions & LOOK and not actions & RENEW and fact in facts:
                    return True
            case FollowUp():
                if deed_of(fact.topic).actions & actions:
                    return True
    return named and bool(_NOT_DONE.search(lines.spaced[note]))


def _of_a_fluid(work: Work, actions: frozenset[str]) -> bool:
    """Whether what was told is only that something was let out or put in, where more was asked: renewed, repaired."""
    return work.action in ("drain", "fill") and len(actions) > 2


def only_names(lines: ToldLines, words: CommentWords, asked: Asked, note: str) -> bool:
    """Whether a line names the thing that is asked about and states nothing of it: no fact, no other word asked."""
    if done_asked(words, asked.sentence):
        return False
    about = lines.about(thing(name, name) for name in asked.names or (asked.about,))
    if any(fact.main.note == note and not isinstance(fact, FollowUp) for fact in about):
        return False
    named = stems(f"{asked.said} {' '.join(asked.names[:1])}")
    more = stems(asked.sentence) - named - words.small.quiet - words.small.polite - words.small.everywhere
    return bool(more) and more.isdisjoint(lines.words[note])


def sized_alike(lines: ToldLines, words: CommentWords, asked: Asked, note: str) -> bool:
    """Whether a line speaks of sizes or kinds, where another is suggested: the next size, a thicker."""
    said = words.small.another.intersection(asked.sentence.split())
    return not said or not words.small.another.isdisjoint(lines.spaced[note].split())


def of_either(lines: ToldLines, asked: Asked, note: str) -> bool:
    """Whether a line names one of the two that a question asks between: a gear pump or a piston pump."""
    found = _EITHER.match(asked.sentence)
    if found is None:
        return True
    shared = stems(found[1]) & stems(found[2])
    either = (stems(found[1]) | stems(found[2])) - shared - stems(asked.said)
    return not either or not either.isdisjoint(lines.words[note])
