"""Viewers' comments read against the log: what each is, what it is about, and the line that already answers it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from worklog_tui.logbook.answer_alike import most_alike
from worklog_tui.logbook.answer_deeds import only_names
from worklog_tui.logbook.answer_fits import wanted_in
from worklog_tui.logbook.answer_lines import answer
from worklog_tui.logbook.comment_groups import grouped
from worklog_tui.logbook.comment_kinds import kind_of
from worklog_tui.logbook.comment_topics import Asked, Table, asked_about, technical
from worklog_tui.logbook.comment_words import CommentWords
from worklog_tui.logbook.told_lines import ToldLines, stems
from worklog_tui.model import Comment, CommentReading, History

TAKEN_UP = 0.7
"The share of the words of an own question that a comment must hold to be about it."
TAKEN_UP_IN_PART = 0.45
"The same when it holds three of them or more."


def read_all(
    history: History, words: CommentWords, table: Table, comments: Sequence[Comment]
) -> tuple[CommentReading, ...]:
    """Each comment read; the ones that ask the same share the wording of the first."""
    lines = ToldLines.of(history)
    table = words.with_akin(table)
    kinds = [kind_of(words, one.words, technical(words, table, one.words)) for one in comments]
    telling = [n for n, kind in enumerate(kinds) if kind.kind != "chatter"]
    plain = [words.plain(comments[n].words) for n in telling]
    asked = [
        _own_question(lines, text) or asked_about(words, table, comments[n].words, kinds[n])
        for n, text in zip(telling, plain, strict=True)
    ]
    found = [CommentReading(one, kind.kind) for one, kind in zip(comments, kinds, strict=True)]
    shared: dict[int, CommentReading] = {}
    wants = [_facts_asked(words, one) for one in asked]
    groups = grouped([kinds[n].kind for n in telling], asked, plain, words.small.everywhere, wants)
    wordings = _wordings(groups, asked)
    for place, group in enumerate(groups):
        n = telling[place]
        if group not in shared:
            known = answer(lines, words, kinds[n].kind, asked[place], plain[place])
            if known is None and _may_be_of_a_thing(asked[place]):
                bare = asked_about(words, table, comments[n].words, kinds[n], topics=False)
                known = answer(lines, words, kinds[n].kind, bare, plain[place])
            perhaps = False
            if kinds[n].kind == "question":
                wanted = wanted_in(words, asked[place].sentence)
                perhaps = known is None or (
                    not wanted and asked[place].bad and only_names(lines, words, asked[place], known.note)
                )
                known = known or most_alike(lines, words, asked[place], plain[place], wanted)
            shared[group] = replace(
                found[n], about=wordings[group], answered=known, perhaps=perhaps and known is not None
            )
        found[n] = replace(shared[group], comment=comments[n])
    return tuple(found)


def _may_be_of_a_thing(asked: Asked) -> bool:
    """Whether a question that its topic leaves unanswered may be answered as one about a thing: oil, in the pan."""
    topic = asked.topic
    return topic is not None and bool(topic.answer) and not topic.must


def _facts_asked(words: CommentWords, asked: Asked) -> frozenset[int]:
    """Which facts a question asks for and no other: each a number; a figure of one kind, how it came out."""
    found = wanted_in(words, asked.sentence) if asked.sentence else []
    return frozenset(words.wants.index(one) for one in found if one.must or one.latest or one.asks)


def _wordings(groups: Sequence[int], asked: Sequence[Asked]) -> dict[int, str]:
    """How each group is called: by its first comment, or by the first whose words no group before it goes by."""
    said: dict[int, list[str]] = {}
    for group, one in zip(groups, asked, strict=True):
        said.setdefault(group, []).append(one.about)
    called: dict[int, str] = {}
    taken: set[str] = set()
    for group, abouts in said.items():
        called[group] = next((about for about in abouts if about not in taken), abouts[0])
        taken.add(called[group])
    return called


def _own_question(lines: ToldLines, comment: str) -> Asked | None:
    """What the person himself asked, when a viewer takes it up: most of its words are in the comment."""
    said = stems(comment)
    for fact, words in lines.questions:
        shared = 0 if words.isdisjoint(said) else len(words & said)
        if shared >= 2 and shared >= (TAKEN_UP if shared == 2 else TAKEN_UP_IN_PART) * len(words):
            return Asked(fact.topic, frozenset({f"own {fact.topic}"}), (fact.topic,))
    return None
