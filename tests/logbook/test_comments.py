"""Viewers' comments on an invented organ blower: what each is, what it is about, and what answers it."""

from __future__ import annotations

import pytest

from tests.logbook.told import Told, bad, did, later, read
from worklog_tui import places
from worklog_tui.logbook.answers import read_all
from worklog_tui.logbook.comment_kinds import kind_of
from worklog_tui.logbook.comment_topics import technical
from worklog_tui.logbook.comment_words import CommentWords, load_comment_words
from worklog_tui.model import Comment, CommentReading, History
from worklog_tui.rulebook import Rulebook

KINDS = [
    ("question", "How did you get the flywheel off without the proper puller?"),
    ("question", "what size is the jet in that carb"),
    ("question", "Is that gearbox supposed to have oil in it or grease?"),
    ("question", "wondering if you checked the ring gap while you had it apart"),
    ("question", "any idea what the thread on the drain plug is"),
    ("question", "anyone know if a later distributor will fit these"),
    ("question", "What did the compression come up to after the rings?"),
    ("question", "Does it still smoke when hot?"),
    ("question", "wot did u pay 4 it"),
    ("question", "Please show the bellows working next time"),
    ("suggestion", "You want to check the earth strap between engine and chassis, mine was green inside."),
    ("suggestion", "Bet it's the condenser. They go when they get hot and come good when they cool."),
    ("suggestion", "Sounds like a sticking exhaust valve to me."),
    ("suggestion", "Swap the injectors round and see if the knock follows."),
    ("suggestion", "Old trick: put a bit of grease on the needle seat to see if it's leaking."),
    ("suggestion", "Had exactly this on my compressor. Turned out to be the check valve."),
    ("suggestion", "if you warm the housing in the oven the bearing will drop in"),
    ("suggestion", "Next time use a torque wrench on those head nuts."),
    ("chatter", "Brilliant as always, can't wait for part 3!"),
    ("chatter", "first"),
    ("chatter", "Greetings from Portugal, love the channel"),
    ("chatter", "That cat runs the place doesn't it :)"),
    ("chatter", "Only you could make scraping a gasket interesting."),
    ("chatter", "\U0001f44f\U0001f44f\U0001f44f"),
    ("chatter", "who else is watching this instead of working"),
]


@pytest.fixture(scope="module")
def words() -> CommentWords:
    return load_comment_words([places.grammars()])


@pytest.mark.parametrize(("kind", "comment"), KINDS)
def test_what_a_comment_is(kind: str, comment: str, words: CommentWords, book: Rulebook) -> None:
    assert kind_of(words, comment, technical(words, book.table, comment)).kind == kind


def blower() -> History:
    told = Told().say("it came out of a chapel, I gave sixty quid for it")
    told.say("points gap is ten thou, should be fifteen", read("gap", 0.010, "in", "points"),
             read("gap", 0.015, "in", "points", "specified"))  # fmt: skip
    told.quiet().say("the flywheel key is fine", bad("flywheel key", "a bit loose")).quiet()
    told.say("that condenser I will swap next", later("condenser", "to do")).quiet()
    return told.say("cleaned the carburettor jet", did("clean", "carburettor jet")).history()


def ask(words: CommentWords, book: Rulebook, *comments: str) -> tuple[CommentReading, ...]:
    return read_all(blower(), words, book.table, [Comment(n, c) for n, c in enumerate(comments)])


def test_the_same_question_from_several_has_one_wording(words: CommentWords, book: Rulebook) -> None:
    one, two, three = ask(
        words,
        book,
        "Did you look at the flywheel key?",
        "has the key in the flywheel been checked",
        "What gap on the points?",
    )
    assert one.about == two.about != three.about


def test_a_question_is_answered_by_the_line_that_tells_it(words: CommentWords, book: Rulebook) -> None:
    key, gap, price = ask(
        words, book, "Did you look at the flywheel key?", "What gap on the points?", "how much did you pay for it?"
    )
    assert [r.answered.at if r.answered else None for r in (key, gap, price)] == ["6:00", "1:00", "0:00"]
    assert price.about == "price"


def test_what_nothing_answers_stays_unanswered(words: CommentWords, book: Rulebook) -> None:
    (one,) = ask(words, book, "Is the drive belt the original one?")
    assert (one.kind, one.answered) == ("question", None)


def test_a_suggestion_is_answered_by_the_plan_to_do_it(words: CommentWords, book: Rulebook) -> None:
    (one,) = ask(words, book, "I bet it's the condenser.")
    assert one.answered is not None
    assert one.answered.at == "11:00"


def test_comments_without_a_log_do_no_harm(words: CommentWords, book: Rulebook) -> None:
    empty = History(blower().machine)
    readings = read_all(
        empty, words, book.table, [Comment(0, "?"), Comment(1, ""), Comment(2, "what gap on the points?" * 500)]
    )
    assert [r.answered for r in readings] == [None, None, None]
