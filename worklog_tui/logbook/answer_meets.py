"""Whether a fact is what a viewer suggests: the deed he tells of was done or is planned, his cause was looked into.

A suggestion that only tells something (what fits, where it is sold) is met by no fact, only by much the same words.
"""

from __future__ import annotations

from worklog_tui.logbook.answer_deeds import leading_deed
from worklog_tui.logbook.comment_topics import Asked
from worklog_tui.logbook.comment_words import CommentWords, holds_any
from worklog_tui.logbook.deeds import LOOK, RENEW
from worklog_tui.logbook.deeds import asked as deed_of
from worklog_tui.logbook.same_thing import thing
from worklog_tui.logbook.told_lines import ToldLines, stems
from worklog_tui.model import Fact, Finding, FollowUp, Reading, Suspect, Work

STOP_GAP = frozenset({"temporary", "part needed"})


def diagnosing(words: CommentWords, asked: Asked) -> bool:
    """Whether the viewer names a cause: bet it is the condenser; chipped reeds do that."""
    named_bad = asked.bad and not leading_deed(words, asked.whole)
    return named_bad or holds_any(f" {asked.sentence} ", words.diagnosing)


def meets(lines: ToldLines, words: CommentWords, fact: Fact, asked: Asked, said: frozenset[str]) -> bool:
    """Whether a fact about the thing is what was suggested; `said` are the telling words of the comment."""
    deed, cause = deed_of(asked.sentence).actions, diagnosing(words, asked)
    if "lubricate" in deed:
        deed = deed - RENEW
    look = cause or bool(deed & LOOK)
    match fact:
        case FollowUp():
            return not asks(fact) and _planned(lines, words, fact, asked, said)
        case Suspect():
            return look
        case Work():
            return fact.action in deed or (cause and fact.action in LOOK)
        case Finding():
            mend = bool(deed) and not deed & LOOK and not cause
            return (not mend and bool(stems(fact.condition) & said)) or (look and fact.verdict != "noted")
        case Reading():
            return (fact.role == "set" and "adjust" in deed) or (look and fact.role == "measured")
    return False


def asks(fact: Fact) -> bool:
    """Whether a fact is a question of the person himself."""
    return isinstance(fact, FollowUp) and fact.reason == "question"


def _planned(lines: ToldLines, words: CommentWords, fact: FollowUp, asked: Asked, said: frozenset[str]) -> bool:
    """Whether it is on the list already: the same deed, a proper part for a stop-gap, or much the same words."""
    deed = deed_of(asked.sentence).actions
    renewing = holds_any(f" {asked.whole} ", words.renewing) or bool(deed & RENEW and not deed & LOOK)
    if fact.reason in STOP_GAP and renewing:
        return True
    if thing(fact.topic).deed.actions & deed or (deed and fact.reason == "to do" and stems(fact.topic) <= said):
        return True
    return diagnosing(words, asked) or len(said & lines.words[fact.main.note]) >= 3
