"""What stays out of everything that is published, on an invented tower clock."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.logbook.told import Told, bad, did, later, read
from tests.reports.published import gate, published
from worklog_tui.model import Comment, History, Machine
from worklog_tui.reports.csv_tables import TABLES, csv_table
from worklog_tui.reports.json_repair_log import json_repair_log
from worklog_tui.reports.markdown_log import markdown_log
from worklog_tui.reports.markdown_sheet import hand_over_markdown
from worklog_tui.reports.page import hand_over_page, repair_log_page
from worklog_tui.reports.publishing_words import FILE, load_publishing_words
from worklog_tui.rulebook.mistakes import GrammarMistake

NEVER = ("Marta Quill", "Gallowgate")


def clock() -> History:
    """A clock with something private of every sort in it."""
    told = Told(Machine("Tower clock of Gallowgate", kind="turret clock, kept by marta-quill"))
    told.say("private: the verger drinks, suspension spring bent", bad("suspension spring", "bent by the verger"))
    told.say("note to self, off the record, third pinion is cracked", bad("third pinion", "cracked"))
    told.say("Marta Quill's pendulum rod is rusty", bad("Marta Quill's pendulum rod", "rusty"))
    told.say("gave 740 quid for the lot, a ninety pound part more", read("mass", 90, "lb", "part"))
    told.say("need a new rope from MARTA  QUILL", later("rope from Marta Quill", "part needed"))
    return told.say("fitted a cord", did("fit", "cord", "cord from Gallowgate")).history(
        comments=[Comment(0, "is Marta Quill well?")]
    )


SECRETS = ("verger", "third pinion", "quill", "gallowgate", "740", "ninety pound", "90 lb")
EXPORTS: dict[str, Callable[[History], str]] = {
    "page": lambda h: repair_log_page(published(h, NEVER).log(), ""),
    "Markdown": lambda h: markdown_log(published(h, NEVER).log(), ""),
    "JSON": lambda h: str(json_repair_log(published(h, NEVER).log())),
    "hand-over page": lambda h: hand_over_page(published(h, NEVER).hand_over(), ""),
    "hand-over Markdown": lambda h: hand_over_markdown(published(h, NEVER).hand_over(), ""),
    **{f"CSV {t}": lambda h, t=t: csv_table(published(h, NEVER).log(), t) for t in TABLES},  # type: ignore[misc]
}


@pytest.mark.parametrize("name", EXPORTS)
def test_nothing_private_is_in_any_export(name: str) -> None:
    written = EXPORTS[name](clock()).lower()
    assert [secret for secret in SECRETS if secret in written] == []
    assert "cord" in written or "readings" in name


def test_what_is_not_on_the_list_of_words_goes_out() -> None:
    """So that the test above can fail: without the list both names are on the page."""
    written = repair_log_page(published(clock()).log(), "").lower()
    assert [secret for secret in SECRETS if secret in written] == ["quill", "gallowgate"]


def test_it_is_told_how_much_stayed_behind() -> None:
    left = published(clock(), NEVER).left_out
    assert (left.notes, left.sums, left.words) == (2, 2, 2)
    page = repair_log_page(published(clock(), NEVER).log(), "")
    assert "2 private notes, 2 sums of money, 2 words that are never published" in page


@pytest.mark.parametrize(
    "said",
    [
        "gave sixty quid for it",
        "£1,250.50 at the sale",
        "paid forty for it",
        "it was 30 euros",
        "cost me eighty, plus the post",
        "worth about two hundred pounds if it runs",
        "a tenner",
        "three pound part",
        "asking five hundred",
        "bill was 84.20",
        "sold for 3 or 4 hundred dollars",
        "they want $12 each",
        "twenty-five bucks",
    ],
)
def test_sums_of_money_are_left_out(said: str) -> None:
    cleaned = gate().clean(said)
    assert "…" in cleaned
    assert not any(c.isdigit() for c in cleaned)


@pytest.mark.parametrize(
    "said",
    [
        "forty pounds of air in the tyre",
        "torque it to forty foot pounds",
        "cost me two hours",
        "gave it three turns",
        "set to 12 thou for it",
        "ninety percent of them",
        "spent three days on it",
        "asked at the counter for 3 bolts",
        "need 2 for it",
        "compression is one twenty each",
        "gave it 20 psi",
        "a pound of grease",
        "six volts each side",
        "paid out the rope",
        "worth a look",
        "the mark is at ten degrees",
    ],
)
def test_other_numbers_stay(said: str) -> None:
    assert gate().clean(said) == said


@pytest.mark.parametrize(
    "said",
    [
        "Private: his garage is open",
        "keep this private, the key is under the mat",
        "this is off the record",
        "don't film this",
    ],
)
def test_private_notes_are_left_out_whole(said: str) -> None:
    known, left = gate().history(Told().say(said, bad("lock", "broken")).say("pump is dry").history())
    assert [n.words for record in known.sessions for n in record.notes] == ["pump is dry"]
    assert (known.facts(), left.notes) == ([], 1)


@pytest.mark.parametrize(
    "said", ["he's a private hire driver", "private plates on the van", "a private's tunic in the tool box"]
)
def test_the_word_alone_makes_no_note_private(said: str) -> None:
    assert gate().history(Told().say(said).history())[1].notes == 0


@pytest.mark.parametrize(
    ("never", "said"),
    [
        ("O'Neill", "ask O’NEILL about it"),
        ("Mill Lane", "down mill-lane, past the mill_lane bridge"),
        ("★★", "the ★★ yard"),
        ("Zoë", "zoe\u0308 said so"),
    ],
)
def test_a_word_is_left_out_however_it_is_written(never: str, said: str) -> None:
    cleaned = gate([never]).clean(said)
    assert "…" in cleaned
    assert not any(rest in cleaned.lower() for rest in ("neill", "lane", "★", "zo"))


def test_a_word_within_another_stays() -> None:
    assert gate(["Ann"]).clean("the banner and the annulus") == "the banner and the annulus"


def test_own_words_are_read_after_ours(tmp_path: Path) -> None:
    (tmp_path / FILE).write_text('never = ["Old Nell"]\nprivate = ["hush now"]\n')
    found = load_publishing_words([tmp_path])
    assert (found.never, found.private) == (("Old Nell",), ("hush now",))


@pytest.mark.parametrize("text", ["never = 3", "nevr = []", "never = [", 'private = [1, "a"]'])
def test_a_mistake_in_the_file_is_told_in_words(tmp_path: Path, text: str) -> None:
    (tmp_path / FILE).write_text(text)
    with pytest.raises(GrammarMistake, match=FILE):
        load_publishing_words([tmp_path])
