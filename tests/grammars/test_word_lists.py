"""The lists of grammars/lists.toml and owed.toml: every one is asked for by name, none is asked for in vain."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path

import pytest

import worklog_tui
from worklog_tui import places
from worklog_tui.rulebook import Rulebook
from worklog_tui.rulebook.word_lists import read_lists

CODE = "\n".join(path.read_text(encoding="utf-8") for path in Path(worklog_tui.__file__).parent.rglob("*.py"))

JUDGED: list[str] = tomllib.loads((places.grammars() / "words.toml").read_text(encoding="utf-8"))["judged"]


def test_every_list_is_asked_for_and_no_other(book: Rulebook) -> None:
    assert set(re.findall(r'book\.lists\["(\w+)"\]', CODE)) == set(book.lists)


def test_every_list_of_how_readings_are_taken_is_asked_for(book: Rulebook) -> None:
    asked = set(re.findall(r'\["(\w+)"\]', "".join(line for line in CODE.splitlines() if "lists[" in line)))
    assert set(book.taken.lists) - asked == set()


@pytest.mark.parametrize("name", ["lists.toml", "owed.toml", "shown.toml"])
def test_words_stand_as_they_are_heard_and_once_each(name: str) -> None:
    for key, words in tomllib.loads((places.grammars() / name).read_text(encoding="utf-8")).items():
        assert [w for w in words if w != " ".join(w.lower().split())] == [], key
        assert name != "lists.toml" or len(words) == len(set(words)), key


def test_a_persons_own_file_adds_to_a_list() -> None:
    files = {"lists.toml": {"baths": ["dip"]}, "own/lists.toml": {"baths": ["Granny's pan"]}}
    assert read_lists(files) == {"baths": frozenset({"dip", "grannys pan"})}


def test_a_judgement_hides_no_state(book: Rulebook) -> None:
    """`A bit low` is one token: were it only a judgement, `the idle is a bit low` would tell nothing."""
    verdicts = {"bad", "good", "noted"}

    def says(words: str) -> set[str]:
        return {sense[0] for sense in book.table.get(words, ())}

    hidden = [
        words
        for words in (said.replace("'", "") for said in JUDGED)
        if not says(words) & verdicts
        and any(says(" ".join(words.split()[n:])) & verdicts for n in range(1, len(words.split())))
    ]
    assert hidden == []
