"""Viewers' comments on an invented organ blower: what each is, what it is about, and what answers it."""

from __future__ import annotations

import tomllib

import pytest

from tests.logbook.told import Told, bad, did, later, read
from worklog_tui import places
from worklog_tui.logbook.answers import read_all
from worklog_tui.logbook.comment_kinds import kind_of
from worklog_tui.logbook.comment_topics import technical
from worklog_tui.logbook.comment_words import FILE, CommentWords, load_comment_words
from worklog_tui.logbook.open_items import open_items
from worklog_tui.model import Comment, CommentReading, History
from worklog_tui.rulebook import Rulebook

EXAMPLES = tomllib.loads((places.grammars() / FILE).read_text(encoding="utf-8"))["example"]
KINDS = [(table["is"], comment) for table in EXAMPLES for comment in table["comments"]]


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


def test_a_pressure_is_no_pressure_of_another_thing(words: CommentWords, book: Rulebook) -> None:
    told = Told().say("the pump makes twelve bar", read("pressure", 12, "bar", "pump")).quiet().history()
    asked = ("did you pressure test the crankcase?", "What pressure does the pump make?")
    one, other = read_all(told, words, book.table, [Comment(n, c) for n, c in enumerate(asked)])
    assert one.answered is None
    assert other.answered is not None


def test_what_the_person_asks_his_viewers_answers_nothing(words: CommentWords, book: Rulebook) -> None:
    told = Told().say("the drive belt squeals, somebody tell me why", bad("drive belt", "squeals")).quiet().history()
    (one,) = read_all(told, words, book.table, [Comment(0, "That drive belt squeals because it is slack.")])
    assert (one.kind, one.answered) == ("suggestion", None)


def test_asked_hot_is_not_answered_cold(words: CommentWords, book: Rulebook) -> None:
    told = Told().say("oil pressure is forty cold", read("pressure", 40, "psi", "oil")).quiet()
    history = told.say("and hot the oil pressure is twenty", read("pressure", 20, "psi", "oil")).history()
    (one,) = read_all(history, words, book.table, [Comment(0, "what is the oil pressure when it is hot?")])
    assert one.answered is not None
    assert history.place(history.sessions[0].notes[-1].uid).order == one.answered.order


def test_a_figure_is_answered_only_by_such_a_figure(words: CommentWords, book: Rulebook) -> None:
    key, gap = ask(words, book, "How thick is the flywheel key?", "whats the gap on the points?")
    assert key.answered is None
    assert gap.answered is not None


def test_a_suggestion_of_something_the_log_never_names_is_not_answered(words: CommentWords, book: Rulebook) -> None:
    """What was done to the jet is no answer to him who would put vinegar in it."""
    (vinegar,) = ask(words, book, "Soak the carburettor jet in vinegar overnight.")
    (done,) = ask(words, book, "Clean the carburettor jet.")
    assert vinegar.answered is None
    assert done.answered is not None


def test_a_line_that_is_only_most_like_a_question_leaves_it_open(words: CommentWords, book: Rulebook) -> None:
    found = ask(words, book, "which chapel did it come out of?", "Did you look at the flywheel key?")
    assert [(r.answered.at if r.answered else None, r.perhaps) for r in found] == [("0:00", True), ("6:00", False)]
    asked = {item.about for item in open_items(blower(), found) if item.comment is not None}
    assert asked == {"chapel"}
