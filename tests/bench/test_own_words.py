"""A word put right by hand is offered for the person's own vocabulary, and is heard right from the next start on."""

from __future__ import annotations

import tomllib
from dataclasses import replace
from pathlib import Path

import pytest

from worklog_tui import places
from worklog_tui.bench.acting import CannotAct
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.own_words import hear_as, put_right, to_offer
from worklog_tui.bench.record import keep_note
from worklog_tui.model import Finding, Machine


@pytest.mark.parametrize(
    ("before", "after", "found"),
    [
        ("the bearring is dry", "the bearing is dry", ("bearring", "bearing")),
        ("the Goods on pin is bent.", "the gudgeon pin is bent.", ("goods on", "gudgeon")),
        ("the pin is bent", "the pin is bent badly", None),
        ("gap 18 thou", "gap 15 thou", None),
        ("one pin and one nut", "two pins and one nut", None),
        ("all of it was quite wrong here", "none but the last is right", None),
    ],
)
def test_what_was_heard_and_what_was_meant(before: str, after: str, found: tuple[str, str] | None) -> None:
    assert put_right(before, after) == found


def test_a_word_that_may_be_meant_is_not_offered(desk: Desk, tmp_path: Path) -> None:
    here = replace(desk, grammars=(places.grammars(), tmp_path / "own"))
    assert to_offer(here, "the bearring is dry", "the bearing is dry") == ("bearring", "bearing")
    assert to_offer(here, "the cap is bent", "the cup is bent") is None
    assert to_offer(replace(desk, grammars=(places.grammars(),)), "the bearring", "the bearing") is None


def test_from_the_next_start_on_it_is_heard_right(desk: Desk, saw: Machine, tmp_path: Path) -> None:
    here = replace(desk, grammars=(places.grammars(), tmp_path / "own"), reads_with=None, _kept={})
    hear_as(here, "zbearring", "bearing")
    said = hear_as(here, "gudjun", "gudgeon")
    assert said == "From the next start on “gudjun” is heard as “gudgeon”; it stands in your own words, misheard.toml."
    entries = tomllib.loads((tmp_path / "own/misheard.toml").read_text("utf-8"))["misheard"]
    assert [one["means"] for one in entries] == ["bearing", "gudgeon"]
    (fact,) = keep_note(here, saw.name, "the zbearring is worn").facts
    assert isinstance(fact, Finding)
    assert "bearing" in (fact.part, fact.name)


def test_a_file_of_another_form_is_left_as_it_is(desk: Desk, tmp_path: Path) -> None:
    own = tmp_path / "own"
    own.mkdir()
    (own / "misheard.toml").write_text('misheard = [{heard = ["x y"], means = "z"}]\n')
    with pytest.raises(CannotAct, match="could not be written to your own words"):
        hear_as(replace(desk, grammars=(places.grammars(), own)), "a b", "c")
    assert (own / "misheard.toml").read_text() == 'misheard = [{heard = ["x y"], means = "z"}]\n'
