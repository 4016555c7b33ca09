"""The reader: takes note after note, keeps its context, and says what each note changes.

A sentence that a note leaves unfinished is read again together with the next one; the facts of its first reading are
replaced by those of the second.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import chain, pairwise

from worklog_tui.extract.context import Context, Tail
from worklog_tui.extract.finish import finish
from worklog_tui.extract.measured.listed import mark_listed
from worklog_tui.extract.measured.megohms import mark_megohms
from worklog_tui.extract.measured.spoken_decimals import join_decimals
from worklog_tui.extract.particles import join_particles
from worklog_tui.extract.passage import LONG_NOTE, MOST_CHARACTERS, Passage, passage_of
from worklog_tui.extract.pipeline import drafts_of
from worklog_tui.extract.remember import remember
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.stance import mark_stances, number_clauses
from worklog_tui.extract.taken.late import told_late
from worklog_tui.extract.talk.corrected import put_right
from worklog_tui.extract.talk.named_late import joined, named_alone, renamed
from worklog_tui.extract.talk.taken_back import disowns, doubt, may_disown
from worklog_tui.extract.talk.told_again import without_told_again
from worklog_tui.extract.things.belonging import join_things
from worklog_tui.extract.things.ones import name_ones
from worklog_tui.extract.things.things import fold_things
from worklog_tui.extract.things.told_behind import join_told_behind
from worklog_tui.extract.things.unknown import guess_things
from worklog_tui.extract.tokens import STOP, Token, chunk
from worklog_tui.model import Fact, FactKey, Machine, Note
from worklog_tui.rulebook import Rulebook
from worklog_tui.rulebook.uncollected import uncollected

CONFIDENCE_LINE = 0.5
"Facts below it are questions, asked in closing up."
TAIL_LIMIT = 600
LONG_SENTENCE, LONGEST_SENTENCE = 90, 130
"Tokens after which a sentence ends at the next comma, and at any rate: what a sentence costs is bounded."
NOTES_BACK = 12
FACTS_BACK = 14
"So many facts, with their words, keep the context under 8 kB."


@dataclass(frozen=True, slots=True)
class Changes:
    """What a note changes: facts that it adds, and earlier ones that it takes back."""

    added: tuple[Fact, ...] = ()
    withdrawn: tuple[FactKey, ...] = ()


def feed(
    book: Rulebook, machine: Machine, context: Context, note: Note, ahead: Note | None = None
) -> tuple[Context, Changes]:
    """Reads one more note; of a text without end only the first `MOST_CHARACTERS` are read.

    With `ahead`, the note read next, a sentence that goes on there is left to it: the facts are the same, read once.
    """
    long = context.long + 1 if len(note.words) >= LONG_NOTE else 0
    context = context if long == context.long else context._replace(long=long)
    if long * LONG_NOTE > MOST_CHARACTERS:
        return context._replace(tail=None), Changes()
    passage = passage_of(context, note, book)
    context = context.aged()
    facts: list[Fact] = []
    older: tuple[Fact, ...] = ()
    gone: list[FactKey] = []
    tail: Tail | None = None
    sentences = _sentences(passage, book, machine, note.track)
    for n, tokens in enumerate(sentences):
        if n == len(sentences) - 1 and ahead is not None and _left_to(ahead, note, passage, tokens):
            tail = Tail.of(note, passage.text[tokens[0].start :], tokens[0].start - passage.boundary)
            continue
        known = context._replace(recent=(*context.recent, *facts)[-FACTS_BACK:]) if facts else context
        scene, drafts = read_sentence(passage.text, tokens, book, machine, known, note.track, passage.boundary)
        older = _of_before(scene, drafts, facts, context) or older
        ended = note.track != "captions" or tokens[-1].kind == "stop"
        taken = put_right(scene, drafts, (*context.recent, *facts)) if ended else ()
        facts = [fact for fact in facts if fact not in taken]
        gone += [fact.key for fact in taken if fact in context.recent]
        facts += finish(drafts, scene, passage.pieces)
        if n == len(sentences) - 1 and not ended:
            first = max(tokens[0].start, passage.boundary)
            upto = bisect_left(scene.tokens, first, key=lambda token: token.start)
            context = remember(scene, drafts, context, upto) if upto else context
            if len(passage.text) - first <= TAIL_LIMIT:
                tail = Tail.of(note, passage.text[first:], first - passage.boundary)
            else:
                context = remember(scene, drafts, context, len(scene.tokens))
        else:
            context = remember(scene, drafts, context, len(scene.tokens))
    facts = without_told_again(facts, note)
    context, changes = _settled(context, note, tail, facts, passage)
    return _with_older(context, changes, older, gone)


def _left_to(ahead: Note, note: Note, passage: Passage, tokens: list[Token]) -> bool:
    """Whether the last sentence of a note, unfinished and begun in it, can wait for the note after it."""
    return (
        note.track == ahead.track == "captions"
        and tokens[-1].kind != "stop"
        and tokens[0].start >= passage.boundary
        and len(passage.text) - tokens[0].start <= TAIL_LIMIT
        and len(ahead.words) < LONG_NOTE
        and not may_disown(tokens)
    )


def _of_before(scene: Scene, drafts: list[Draft], facts: list[Fact], context: Context) -> tuple[Fact, ...]:
    """What a sentence changes of the facts before it, in place or given: what it disowns, or whose thing it names."""
    if disowns(scene, drafts):
        return doubt(facts, context)
    told_late(scene, drafts, facts)
    thing = named_alone(scene, drafts) if not facts and context.notes else None
    return () if thing is None else renamed(thing, [f for f in context.recent if f.main.note == context.notes[-1]])


def _with_older(
    context: Context, changes: Changes, older: tuple[Fact, ...], gone: Sequence[FactKey]
) -> tuple[Context, Changes]:
    """With facts of earlier notes that are told otherwise now, and without those that were put right."""
    if not older and not gone:
        return context, changes
    new = {fact.key: fact for fact in older}
    recent = tuple(new.get(fact.key, fact) for fact in context.recent if fact.key not in gone)
    withdrawn = (*changes.withdrawn, *new, *gone)
    return context._replace(recent=recent), Changes((*changes.added, *older), withdrawn)


HEDGES = frozenset("maybe perhaps possibly probably".split())
"Alone behind a stop at the end of a note, they are of what was said before: `It fills slowly. Maybe`."


def _sentences(passage: Passage, book: Rulebook, machine: Machine, track: str) -> list[list[Token]]:
    """The tokens of the passage, sentence by sentence; each keeps its stop at the end."""
    found: list[list[Token]] = []
    tokens: list[Token] = []
    for token in chunk(passage.text, book, machine.cylinders or 0, _words_of(machine.kind)):
        tokens.append(token)
        if token.kind == "stop" or (
            len(tokens) >= LONG_SENTENCE and (token.kind == "comma" or len(tokens) >= LONGEST_SENTENCE)
        ):
            found.append(tokens)
            tokens = []
    if found and len(tokens) == 1 and tokens[0].low in HEDGES:
        tokens.append(Token("stop", "", tokens[-1].end, tokens[-1].end, STOP))
    return joined([*found, tokens] if tokens else found, book)


@lru_cache(maxsize=8)
def _words_of(kind: str) -> frozenset[str]:
    return frozenset(kind.lower().replace("-", " ").replace(",", " ").split())


def read_sentence(
    text: str, tokens: list[Token], book: Rulebook, machine: Machine, context: Context, track: str, boundary: int = 0
) -> tuple[Scene, list[Draft]]:
    """The scene of a sentence and the drafts of its facts; at the boundary a note begins in the middle of the text."""
    typed = track != "captions"
    join_decimals(tokens, context, book)
    mark_megohms(text, tokens, context, book)
    mark_listed(tokens, context, machine.cylinders or 0)
    join_particles(tokens, book)
    tokens = join_told_behind(join_things(text, fold_things(text, tokens, book, typed, boundary)), book)
    tokens = guess_things(text, tokens, typed, book)
    tokens = name_ones(tokens, context, book, typed)
    number_clauses(tokens, boundary)
    mark_stances(tokens)
    scene = Scene(text, tokens, book, machine, context, typed, boundary)
    return scene, drafts_of(scene)


def _settled(
    context: Context, note: Note, tail: Tail | None, facts: list[Fact], passage: Passage
) -> tuple[Context, Changes]:
    """The context after the note, and what it changes against the earlier reading of the unfinished words."""
    before = {f.key: f for f in context.pending} if passage.boundary else {}
    settled = context.recent if passage.boundary else (*context.recent, *context.pending)
    after = {fact.key: fact for fact in facts}
    withdrawn = tuple([key for key, fact in before.items() if after.get(key) != fact])
    added = tuple([fact for key, fact in after.items() if before.get(key) != fact])
    notes = (*context.notes, note.uid)[-NOTES_BACK:]
    kept = [f for f in settled if f.main.note in notes]
    if tail is not None:
        kept += [f for f in after.values() if f.main.note != tail.note or f.main.start < tail.offset]
        pending = tuple(f for f in after.values() if f.main.note == tail.note and f.main.start >= tail.offset)
    else:
        kept, pending = kept + list(after.values()), ()
    context = context._replace(tail=tail, recent=tuple(kept[-FACTS_BACK:]), pending=pending, notes=notes)
    return context, Changes(added, withdrawn)


def read_session(book: Rulebook, machine: Machine, notes: Sequence[Note]) -> tuple[Fact, ...]:
    """All facts of a session, in the order of the notes and of their words."""
    order = {note.uid: n for n, note in enumerate(notes)}
    facts: dict[FactKey, Fact] = {}
    with uncollected():  # nothing that is made here points to itself
        for changes in read_all(book, machine, notes):
            for key in changes.withdrawn:
                facts.pop(key, None)
            facts.update([(fact.key, fact) for fact in changes.added])
    return tuple(sorted(facts.values(), key=lambda f: (order[f.main.note], f.main.start, f.kind, f.nth)))


def read_all(book: Rulebook, machine: Machine, notes: Iterable[Note]) -> Iterable[Changes]:
    """What each note changes, from the beginning of a session."""
    context = Context.start()
    for note, ahead in pairwise(chain(notes, (None,))):
        if note is not None:
            context, changes = feed(book, machine, context, note, ahead)
            yield changes
