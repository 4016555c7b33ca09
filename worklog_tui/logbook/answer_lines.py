"""The line of the log that answers a comment: by the facts about what is asked, and by its words.

Every line that tells of the thing, or shares much of the words, is weighed; the heaviest answers when it weighs enough.
A suggestion is answered only by a line in which it was done, planned, suspected or seen; a question for a measure (how
far, how long, what size) hardly by a line without a number. What the person asks his viewers answers nothing.
All weights are judgement, tuned on invented comments.
"""

from __future__ import annotations

from worklog_tui.logbook.answer_alike import appeals
from worklog_tui.logbook.answer_deeds import done_asked, of_either, sized_alike, tells_deed
from worklog_tui.logbook.answer_fits import fitting, otherwise, wanted_in
from worklog_tui.logbook.answer_kinds import of_such_a_kind
from worklog_tui.logbook.answer_meets import asks, diagnosing
from worklog_tui.logbook.answer_signs import MUCH, SOME, Line, came_out, carry_on, gathered, of_the_machine
from worklog_tui.logbook.answer_topics import by_topic
from worklog_tui.logbook.comment_topics import Asked
from worklog_tui.logbook.comment_words import CommentWords
from worklog_tui.logbook.deeds import asked as deed_of
from worklog_tui.logbook.same_thing import thing
from worklog_tui.logbook.told_lines import ToldLines, stems
from worklog_tui.logbook.words import one_form
from worklog_tui.model import Finding, Place, Suspect

ENOUGH = 4.0
"What a line must weigh to answer."
AS_GOOD = 1.5
"What a later line may weigh less where it is asked how things stand now."
AS_SOON = 0.8
"What an earlier line may weigh less where a cause is named: where it was first seen answers."
MOST = 0.65
"The share from which it does so even where one of them is strange to the log."


def answer(lines: ToldLines, words: CommentWords, kind: str, asked: Asked, comment: str) -> Place | None:
    """The line that best answers a comment, the earliest of equals; None when nothing does."""
    if asked.topic is not None:
        return by_topic(lines, asked, asked.topic, lines.likeness(stems(comment) - words.small.polite))
    found = gathered(lines, words, kind, asked, comment)
    wanted = wanted_in(words, asked.sentence) if kind == "question" else []
    late = asked.latest or asked.plan or any(one.latest for one in wanted)
    if wanted and not late:
        carry_on(lines, found)
    if any(one.quantities for one in wanted):
        of_the_machine(lines, found, asked, wanted)
    if late and wanted:
        came_out(lines, found, [one for one in wanted if one.latest])
    after = _last_own_question(lines, asked)
    unheard = kind == "question" and _unheard(lines, asked)
    strange = kind == "suggestion" and _strange(lines, words, asked)
    verb = done_asked(words, asked.sentence) if kind == "question" else ""
    weighed: list[tuple[float, Place]] = []
    for note, line in found.items():
        if not _of_such(lines, words, kind, asked, note, line, verb):
            continue
        fits = fitting(lines, note, wanted, line.facts, line.named or line.carried, line.named)
        worth = round(line.fact + line.words + (fits or 0.0), 6)
        if fits is None or worth < ENOUGH or otherwise(lines, words, note, comment, line.facts):
            continue
        place = lines.history.place(note)
        if appeals(lines, words, note):
            after = max(after, place.order)
        elif _may(line, kind, strange, unheard):
            weighed.append((worth, place))
    standing = [one for one in weighed if one[1].order > after]
    if not standing:
        return None
    if late:
        best = max(worth for worth, _ in standing)
        return max((place for worth, place in standing if worth >= best - AS_GOOD), key=lambda place: place.order)
    heaviest = max(standing, key=lambda one: (one[0], -one[1].order))
    if kind == "suggestion" and diagnosing(words, asked):
        seen = [one for one in standing if one[0] >= heaviest[0] - AS_SOON and _was_seen(found[one[1].note])]
        return min((place for _, place in (heaviest, *seen)), key=lambda place: place.order)
    return heaviest[1]


def _of_such(lines: ToldLines, words: CommentWords, kind: str, asked: Asked, note: str, line: Line, verb: str) -> bool:
    """Whether a line tells such a thing at all: the deed asked after, the part, one of two, another size."""
    if kind == "suggestion":
        return sized_alike(lines, words, asked, note)
    if verb and not tells_deed(lines, note, verb, line.facts, line.named or line.carried):
        return False
    if not of_such_a_kind(lines, words, asked, note):
        return False
    return not (asked.names and _elsewhere(line)) and of_either(lines, asked, note)


def _elsewhere(line: Line) -> bool:
    """Whether a line tells of other things: none of its facts or words is about what is asked, and few are shared."""
    return not (line.facts or line.named or line.carried or line.share >= MUCH)


def _was_seen(line: Line) -> bool:
    """Whether the thing was found so, or suspected, there."""
    return any(isinstance(fact, Finding | Suspect) for fact in line.facts)


def _may(line: Line, kind: str, strange: bool, unheard: bool) -> bool:
    """Whether a line can answer: of what the log never names only one that holds most of the words."""
    if kind == "question":
        return not unheard or line.share > MUCH
    alike = line.share >= MOST or (line.several and line.named and line.share >= SOME)
    return line.meets and (not strange or line.gap or alike)


def _unheard(lines: ToldLines, asked: Asked) -> bool:
    """Whether the thing that is asked about is told of nowhere: no fact is about it, no line holds a word of it."""
    named = stems(asked.said)
    return bool(named) and named.isdisjoint(lines.notes) and not lines.about((thing(asked.said, asked.names[0]),))


def _strange(lines: ToldLines, words: CommentWords, asked: Asked) -> bool:
    """Whether what is suggested, and is no cause, names something that the log never does: an inverter, vinegar."""
    told = lines.about(thing(name, name) for name in asked.names)
    known = {one_form(deed_of(asked.sentence).word)}.union(*(stems(fact.about) for fact in told))
    telling = stems(asked.about) - words.small.polite - words.small.everywhere - words.small.vague - known
    return not diagnosing(words, asked) and any(word not in lines.notes and word.isalpha() for word in telling)


def _last_own_question(lines: ToldLines, asked: Asked) -> int:
    """The order of the last line in which the person asked it himself; what he said before answers nothing."""
    fitting = lines.about(thing(name, name) for name in asked.names or (asked.about,))
    return max((lines.history.place(f.main.note).order for f in fitting if asks(f)), default=-1)
