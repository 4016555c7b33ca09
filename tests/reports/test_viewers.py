"""Viewers' comments beside the log of an invented lighthouse fog engine."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest

from tests.logbook.told import bad, did, later, suspects
from tests.reports.hostile import HOSTILE, shown
from tests.reports.published import faults, gate
from tests.reports.test_film import crane
from worklog_tui import places
from worklog_tui.logbook.answers import read_all
from worklog_tui.logbook.comment_words import load_comment_words
from worklog_tui.logbook.open_items import open_items
from worklog_tui.model import Advice, Cause, Comment, History, Step
from worklog_tui.notes.comments import read_comments
from worklog_tui.reports.material import Material
from worklog_tui.reports.plain_viewers import viewers_text
from worklog_tui.reports.replies import FILE, load_replies
from worklog_tui.reports.viewers import Viewers, viewers, viewers_json
from worklog_tui.rulebook import Rulebook
from worklog_tui.rulebook.mistakes import GrammarMistake

PASTE = """Fay Lund
3 days ago
Did you replace the head gasket?

@oldsalt has the head gasket been replaced??

I bet the condenser is dead, mine was. see www.spares.example

Check the fuel pump

Lovely to see it again
"""
ADVICE = Advice("it does not start", causes=(Cause("c", "weak condenser", "ignition", 0.4, "likely"),),
                steps=(Step("check the fuel pump", "nothing was seen of it"),))  # fmt: skip


def engine() -> History:
    known = crane([(65, did("replace", "head gasket", "copper gasket")), (125, bad("exhaust flange", "cracked"))])
    (record,) = known.sessions
    said = ("replaced the head gasket with a copper one", "the exhaust flange is cracked")
    notes = tuple(replace(note, words=words) for note, words in zip(record.notes, said, strict=True))
    return replace(known, sessions=(replace(record, notes=notes),), _places={})


def seen(book: Rulebook, paste: str, history: History | None = None, advice: Advice = ADVICE) -> Viewers:
    said = read_comments(paste)
    known, _ = gate().history(replace(history or engine(), comments=said, _places={}))
    read = read_all(known, load_comment_words([places.grammars()]), book.table, known.comments)
    of = Material(known, open_items(known, read), advice, faults(), comments=read)
    return viewers(of, load_replies([places.grammars()]))


def test_the_same_question_from_several_is_one_group_with_a_count(book: Rulebook) -> None:
    first = seen(book, PASTE).groups[0]
    assert (first.kind, first.count) == ("question", 2)
    assert first.wordings == ("Did you replace the head gasket?", "has the head gasket been replaced??")


def test_a_question_that_the_log_answers_points_into_the_film(book: Rulebook) -> None:
    first = seen(book, PASTE).groups[0]
    assert first.where == "in the film of session 1 at 1:05"
    assert first.answered is not None
    assert (first.answered.session, first.answered.at) == (1, "1:05")
    assert "You'll find it in the film of session 1 at 1:05" in first.reply


def test_a_question_that_nothing_answers_is_on_the_list(book: Rulebook) -> None:
    (group,) = seen(book, "How big is the flywheel?").groups
    assert (group.answered, group.open_item) == (None, "on the list")
    assert "on the list" in group.reply


@pytest.mark.parametrize(
    ("said", "speaks_for"),
    [
        ("I bet the condenser is dead", "weak condenser, likely"),
        ("Check the fuel pump", "next step: check the fuel pump"),
        ("You should grease the sheaves", ""),
    ],
)
def test_a_suggestion_names_the_cause_or_step_that_it_speaks_for(said: str, speaks_for: str, book: Rulebook) -> None:
    (group,) = seen(book, said).groups
    assert (group.kind, group.speaks_for) == ("suggestion", speaks_for)


def test_a_suggestion_may_speak_for_what_was_suspected_at_the_bench(book: Rulebook) -> None:
    (group,) = seen(
        book, "I reckon the ignition coil is dead", crane([(5, suspects("ignition coil"))]), Advice("")
    ).groups
    assert group.speaks_for == "suspected: ignition coil"


def test_nobody_is_named(book: Rulebook) -> None:
    text = viewers_text(seen(book, PASTE), 80)
    assert not any(name in text for name in ("Fay", "Lund", "oldsalt", "spares.example"))
    assert "One comment" not in text
    assert "1 comment says nothing that needs an answer." in text


def test_names_stay_when_that_is_asked_for() -> None:
    assert "www.spares.example" in " ".join(c.words for c in read_comments(PASTE, keep_names=True))


@pytest.mark.parametrize("words", HOSTILE)
def test_hostile_comments_are_shown_as_they_are(words: str, book: Rulebook) -> None:
    said = (Comment(0, f"Is the head gasket {shown(words)} ?"),)
    known, _ = gate().history(replace(engine(), comments=said, _places={}))
    read = read_all(known, load_comment_words([places.grammars()]), book.table, known.comments)
    found = viewers(
        Material(known, open_items(known, read), ADVICE, faults(), comments=read), load_replies([places.grammars()])
    )
    assert json.loads(json.dumps(viewers_json(found)))["comments"] == 1
    text = viewers_text(found, 90)
    assert not any(ord(c) < 32 and c != "\n" for c in text)
    assert not found.groups or shown(words) in " ".join(text.split())


@pytest.mark.parametrize(
    "text", ['[question]\nopen = "see $film"', '[praise]\nopen = "x"', '[question]\nopen = "five $"', "[question"]
)
def test_a_mistake_in_the_templates_is_told_in_words(tmp_path_factory: pytest.TempPathFactory, text: str) -> None:
    folder = tmp_path_factory.mktemp("grammars")
    (folder / FILE).write_text(text)
    with pytest.raises(GrammarMistake, match=FILE):
        load_replies([folder])


def test_a_person_may_write_his_own(tmp_path_factory: pytest.TempPathFactory) -> None:
    folder = tmp_path_factory.mktemp("grammars")
    (folder / FILE).write_text('[question]\nopen = "No idea about the $about, for $$5 I will look."')
    replies = load_replies([places.grammars(), folder])
    assert replies.to("question", "open", about="flywheel") == "No idea about the flywheel, for $5 I will look."
    assert "on the list" in replies.to("suggestion", "open", about="x")


def test_a_group_that_was_left_so_says_so(book: Rulebook) -> None:
    history = crane([(5, later("governor", "to do"))])
    (group,) = seen(book, "You should free the governor", history).groups
    assert group.answered is not None


def test_a_line_that_only_perhaps_answers_is_shown_and_the_question_stays_open(book: Rulebook) -> None:
    found = seen(book, "is the copper annealed?\n")
    (group,) = found.groups
    assert (group.perhaps, group.settled) == (True, False)
    text = viewers_text(found, 80)
    assert "Questions that are open (1)" in text
    assert "Perhaps this: the log says" in text
    assert group.reply.startswith("Perhaps this is what you mean")
