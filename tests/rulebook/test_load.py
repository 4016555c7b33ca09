"""Loading grammars: a mistake names its file and what mends it; the stamp follows every byte."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from worklog_tui import places
from worklog_tui.rulebook import GrammarMistake, load


@pytest.fixture
def grammars(tmp_path: Path) -> Path:
    return Path(shutil.copytree(places.grammars(), tmp_path / "grammars"))


def test_the_stamp_changes_with_any_file(grammars: Path) -> None:
    before = load([grammars]).stamp
    words = grammars / "words.toml"
    words.write_text(words.read_text() + "\n# one more line\n")
    assert load([grammars]).stamp != before


def test_a_file_that_is_no_toml_is_named_with_its_line(grammars: Path) -> None:
    (grammars / "parts" / "broken.toml").write_text('system = "x"\nthis is no toml\n')
    with pytest.raises(GrammarMistake, match=r"parts/broken\.toml, line 2"):
        load([grammars])


def test_a_says_that_cannot_be_understood_is_named_with_its_rule(grammars: Path) -> None:
    (grammars / "sayings" / "own.toml").write_text(
        '[[rule]]\nid = "own.odd"\nsays = "<thing> * <bad>"\ngives = { kind = "finding" }\n'
    )
    with pytest.raises(GrammarMistake, match=r"own\.odd"):
        load([grammars])


def test_a_folder_of_ones_own_adds_words_and_switches_rules_off(grammars: Path, tmp_path: Path) -> None:
    own = tmp_path / "own"
    (own / "parts").mkdir(parents=True)
    (own / "sayings").mkdir()
    (own / "parts" / "mine.toml").write_text(
        'system = "mine"\npart = [ { name = "wobble shaft", said = ["wobbler"] } ]\n'
    )
    (own / "sayings" / "mine.toml").write_text('off = ["finding.bad-thing"]\n')
    book = load([grammars, own])
    assert book.table["wobbler"][0][1] == "wobble shaft"
    assert "finding.bad-thing" not in {rule.id for rule in book.rules}


def test_what_was_loaded_once_is_kept_and_gives_the_same(grammars: Path, tmp_path: Path) -> None:
    cache = tmp_path / "cache"
    first = load([grammars], cache)
    second = load([grammars], cache)
    assert list(cache.iterdir())
    assert (first.stamp, first.table) == (second.stamp, second.table)


def test_a_cache_that_was_torn_is_no_harm(grammars: Path, tmp_path: Path) -> None:
    cache = tmp_path / "cache"
    stamp = load([grammars], cache).stamp
    for file in cache.iterdir():
        file.write_bytes(b"torn")
    assert load([grammars], cache).stamp == stamp


def test_every_token_has_a_sign_that_rules_can_match() -> None:
    from worklog_tui.extract.particles import join_particles
    from worklog_tui.extract.things.things import fold_things
    from worklog_tui.extract.tokens import chunk
    from worklog_tui.rulebook.signs import UNFORESEEN

    book = load([places.grammars()])
    text = " ".join(sorted(book.table))
    for piece in range(0, len(text), 4000):
        words = text[piece : piece + 4000]
        tokens = chunk(words, book)
        join_particles(tokens, book)
        for token in fold_things(words, tokens, book, typed=True):
            assert book.signs.of(token.classes) != UNFORESEEN, (token.low, token.classes)
