"""What extract prints holds to its schema, whatever facts there are."""

from __future__ import annotations

import json
from importlib.resources import files

import jsonschema
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.logbook.told import Told, bad, did, later, read, suspects
from worklog_tui.logbook.open_items import open_items
from worklog_tui.model import Advice, Comment, CommentReading, Fact, Number, Span, Step, Trait
from worklog_tui.reports.json_out import extraction, value

SCHEMA = json.loads(files("worklog_tui.reports").joinpath("extract.schema.json").read_text(encoding="utf-8"))
CHECK = jsonschema.Draft202012Validator(SCHEMA)
NOWHERE = Span("", 0, 0)

WORDS = st.text(max_size=12)
FACTS: st.SearchStrategy[Fact] = st.one_of(
    st.builds(read, st.just("gap"), st.floats(0, 1e6), st.just("mm"), WORDS),
    st.builds(read, st.just("thread"), st.just("1/4-20"), st.just(""), WORDS),
    st.builds(bad, WORDS, WORDS),
    st.builds(did, st.sampled_from(["fit", "clean", "order"]), WORDS, WORDS),
    st.builds(later, WORDS, st.sampled_from(["temporary", "to do", "question"])),
    st.builds(suspects, WORDS),
    st.builds(lambda w: Trait(main=NOWHERE, trait="earth side", value=w), WORDS),
    st.builds(lambda w: Number(main=NOWHERE, number="77", of=w), WORDS),
)


def test_the_schema_is_one() -> None:
    jsonschema.Draft202012Validator.check_schema(SCHEMA)


@given(st.lists(st.lists(FACTS, max_size=3), max_size=6))
@settings(max_examples=50, deadline=None)
def test_any_log_holds_to_the_schema(lines: list[list[Fact]]) -> None:
    told = Told()
    for facts in lines:
        told.say("words", *facts)
    known = told.history()
    step = Step("check the belt", "it slipped", 5, ("keep your hands clear",))
    asked = (CommentReading(Comment(0, "why?"), "question", "why"), CommentReading(Comment(1, "nice"), "chatter"))
    printed = extraction(known, open_items(known, asked), Advice("", steps=(step,)), asked)
    CHECK.validate(json.loads(json.dumps(printed)))


def test_the_schema_refuses_what_is_not_so() -> None:
    printed = extraction(Told().history(), (), Advice(""), ())
    printed["facts"] = [{"session": 1, "at": "0:00", "kind": "reading", "quote": ""}]
    with pytest.raises(jsonschema.ValidationError):
        CHECK.validate(printed)


def test_a_fact_says_where_it_was_said_and_what() -> None:
    known = Told().say("gap is ten thou", read("gap", 0.01, "in", "points", condition="cold")).history()
    (fact,) = extraction(known, (), Advice(""), ())["facts"]
    assert fact == {
        "session": 1, "at": "0:00", "kind": "reading", "quantity": "gap", "value": 0.01, "unit": "in",
        "subject": "points", "role": "measured", "condition": "cold", "confidence": 1.0, "quote": "gap is ten thou",
        "pattern": "",
    }  # fmt: skip


def test_awaited_and_left_so_are_open_and_noticed_is_not_printed() -> None:
    told = Told().say("need a belt", later("drive belt", "part needed")).say("ordered", did("order", "drive belt"))
    known = told.say("cover is cracked", bad("belt cover", "cracked")).history()
    items = extraction(known, open_items(known), Advice(""), ())["open_items"]
    (item,) = items
    assert (item["about"], item["state"]) == ("drive belt", "open")
    assert (item["raised"], item["closed"]) == ([1, "0:00"], None)


def test_a_closed_item_says_what_dealt_with_it() -> None:
    known = Told().say("need a belt", later("drive belt", "part needed")).say("on", did("fit", "drive belt")).history()
    (item,) = extraction(known, open_items(known), Advice(""), ())["open_items"]
    assert (item["state"], item["closed"], item["closed_by"]) == ("done", [1, "1:00"], "drive belt fitted")


@pytest.mark.parametrize(
    ("given_", "printed"), [(40.0, 40), (0.1 + 0.2, 0.3), ((1.0, 2.5), [1, 2.5]), ("M8x1.25", "M8x1.25")]
)
def test_values_are_printed_as_people_write_them(given_: float, printed: object) -> None:
    assert value(given_) == printed
