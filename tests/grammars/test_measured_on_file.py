"""What is measured on a part by the last word of its name: grammars/measured_on.toml."""

from __future__ import annotations

import tomllib
from collections import Counter
from pathlib import Path

from worklog_tui.rulebook import Rulebook
from worklog_tui.rulebook.lexicon import Builder

GRAMMARS = Path(__file__).parents[2] / "grammars"
HEADS = tomllib.loads((GRAMMARS / "measured_on.toml").read_text(encoding="utf-8"))["head"]


def test_every_quantity_is_one_that_is_read(book: Rulebook) -> None:
    assert {q for head in HEADS for q in head["quantities"]} - set(book.quantities) == set()


def test_no_word_stands_twice() -> None:
    words = Counter(word for head in HEADS for word in head["of"])
    assert [word for word, n in words.items() if n > 1] == []


def test_a_part_of_which_nothing_is_told_is_measured_as_others_of_its_name() -> None:
    builder = Builder()
    builder.measured_on({"head": [{"of": ["roller"], "quantities": ["length", "speed"]}]})
    builder.parts({"part": [{"name": "dandy roller"}, {"name": "roller seal", "kind": "joint"}]})
    assert builder.table()["dandy roller"][0][5] == ("length", "speed")
    assert builder.table()["roller seal"][0][5] == ()


def test_what_its_own_line_tells_comes_first() -> None:
    builder = Builder()
    builder.measured_on({"head": [{"of": ["roller"], "quantities": ["length"]}]})
    builder.parts({"part": [{"name": "pinch roller", "quantities": ["mass"]}]})
    assert builder.table()["pinch roller"][0][5] == ("mass",)


def test_a_tool_or_a_fluid_is_measured_as_no_part_is() -> None:
    builder = Builder()
    builder.measured_on({"head": [{"of": ["gun", "oil"], "quantities": ["pressure"]}]})
    builder.parts({"part": [{"name": "grease gun", "kind": "tool"}, {"name": "chain oil", "kind": "fluid"}]})
    assert builder.table()["grease gun"][0][5] == builder.table()["chain oil"][0][5] == ()
