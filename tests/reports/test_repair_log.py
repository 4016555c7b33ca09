"""The repair log that is published: where a weaving mill's line shaft stands, what was proved, and what was not."""

from __future__ import annotations

import csv
import io
import json
import re
from pathlib import Path

import html5lib
import jsonschema
import pytest

from tests.logbook.told import Told, bad, did, good, later, read, suspects
from tests.reports.published import published
from worklog_tui.model import History, Machine, SpecifiedValue, Step
from worklog_tui.reports import json_repair_log as json_module
from worklog_tui.reports.charts import charts
from worklog_tui.reports.csv_tables import csv_table
from worklog_tui.reports.json_repair_log import json_repair_log
from worklog_tui.reports.markdown_log import markdown_log
from worklog_tui.reports.page import repair_log_page
from worklog_tui.reports.repair_log import RepairLog

CARD = Machine(
    "Line shaft",
    kind="line shaft with a petrol engine",
    specified=(SpecifiedValue("clearance", "hanger bearing", "0.004 to 0.008 in", 0.004, 0.008, unit="in"),),
)
SCHEMA = json.loads(Path(json_module.__file__).with_name("repair_log.schema.json").read_text(encoding="utf-8"))


def shaft() -> History:
    """Two sessions: a worn hanger, a belt that slips, a repair that nothing proves, one that a look proves."""
    told = Told(CARD).say("the hanger bearing is worn, fifteen thou", bad("hanger bearing", "worn"),
                          read("clearance", 0.015, "in", "hanger bearing"))  # fmt: skip
    told.say(
        "the belt is frayed, laced it with twine for now", bad("belt", "frayed"), later("belt lacing", "temporary")
    )
    told.say("it may be the key", suspects("key"), suspects("coupling")).quiet()
    told.say("the coupling is not it", suspects("coupling", "ruled out")).say(
        "oiler is blocked", bad("oiler", "blocked")
    )
    told.quiet().say("need a set of brasses", later("brasses", "part needed")).session()
    told.say("new brasses in", did("replace", "brasses", "new brasses")).say("oiler cleaned", did("clean", "oiler"))
    told.say("six thou now", read("clearance", 0.006, "in", "hanger bearing"), good("hanger bearing", "runs cool"))
    return told.say("leather to order", later("belt leather", "part needed")).history()


@pytest.fixture(scope="module")
def log() -> RepairLog:
    return published(shaft(), steps=[Step("order the belt leather", "You named it yourself", 10)]).log()


def test_where_it_stands_is_told_first_and_in_few_words(log: RepairLog) -> None:
    told = log.where_it_stands
    rows = {name: text for name, text, _ in told.rows}
    assert told.headline == "No fault of the machine as a whole is known; 2 things are still on the list."
    assert rows["Next"] == "order the belt leather"
    assert rows["For now only"] == "belt lacing"
    assert rows["Parts still needed"] == "belt leather"
    assert sum(len(text.split()) for text in (told.headline, *rows.values())) < 120


def test_what_nothing_has_shown_to_hold_is_not_proved(log: RepairLog) -> None:
    told = {row.text: row.detail for row in log.not_proved}
    assert told["oiler blocked: oiler cleaned"] == "nothing that was said later shows that it holds"
    assert told["suspected cause: key"] == "neither confirmed nor ruled out"
    assert not any("hanger" in text for text in told)


def test_a_cause_that_was_ruled_out_is_told_with_the_words(log: RepairLog) -> None:
    (row,) = log.settled
    assert (row.text, row.quote) == ("it was not: coupling", "the coupling is not it")


def test_what_it_was_comes_before_what_it_was_not() -> None:
    told = Told(CARD).say("not the key", suspects("key", "ruled out")).say("the oiler", suspects("oiler", "confirmed"))
    log = published(told.history()).log()
    assert [row.text for row in log.settled] == ["it was: oiler", "it was not: key"]


def test_the_cautions_are_those_of_such_a_machine() -> None:
    """A belt blade is no guillotine's, petrol in a rag no gas, leather no asbestos."""
    shaft = Told(CARD).say("blade tightened", did("tighten", "fan blade"))
    shaft.say("gauze washed", did("clean", "gauze", "petrol"))
    shaft.say("leather gasket", did("replace", "lid gasket", "new leather gasket"))
    said = " ".join(row.text for row in published(shaft.history()).log().cautions)
    assert "Never petrol as a cleaner" in said
    assert not any(words in said for words in ("stroke", "Gas:", "asbestos"))


def test_parts_tell_what_was_put_in_and_since_when_it_was_needed(log: RepairLog) -> None:
    needed, fitted = log.parts
    assert (needed.part, needed.state) == ("belt leather", "needed")
    assert (fitted.part, fitted.state, fitted.used) == ("brasses", "replaced", "new brasses")
    assert fitted.later.startswith("needed since session 1")


def test_a_chart_marks_readings_against_the_specified_values(log: RepairLog) -> None:
    (chart,) = log.charts
    (scale,) = chart.scales
    first, last = scale.marks
    assert scale.band is not None
    start, wide = scale.band
    assert (chart.title, scale.verdict) == ("Clearance (in)", "as it should be")
    assert (first.verdict, last.verdict) == ("high", "good")
    assert start <= last.at <= start + wide < first.at <= 100
    assert "0.015 in, then 0.006 in (should be 0.004 to 0.008 in, as it should be)" in chart.told


def test_a_chart_of_odd_numbers_does_no_harm() -> None:
    from worklog_tui.logbook.readings import readings

    told = Told().say(
        "", *(read("gap", v, "in", "plug") for v in (0.0, 0.0, -5.0, 1e300)), read("gap", "M8", "", "plug")
    )
    for chart in charts(readings(told.history())):
        assert all(0 <= mark.at <= 100 for scale in chart.scales for mark in scale.marks)


def test_one_session_is_told_as_it_stood_then() -> None:
    told = published(shaft(), first=2).log()
    assert [s.number for s in told.sessions] == [2]
    assert {row.session for row in told.readings} == {2}
    assert told.span == "session 2, 2 April 2031"


def test_our_own_reasons_speak_to_a_stranger(log: RepairLog) -> None:
    assert log.next_steps[0].detail == "Named at the bench About 10 minutes."


def test_the_json_keeps_to_its_schema(log: RepairLog) -> None:
    jsonschema.Draft202012Validator.check_schema(SCHEMA)
    for told in (log, published(Told(CARD).history()).log()):
        jsonschema.validate(json.loads(json.dumps(json_repair_log(told))), SCHEMA)


def test_the_schema_can_refuse(log: RepairLog) -> None:
    wrong = json_repair_log(log) | {"readings": [{"value": 1}]}
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(wrong, SCHEMA)


def test_the_tables_can_be_read_back(log: RepairLog) -> None:
    rows = list(csv.DictReader(io.StringIO(csv_table(log, "readings"), newline="")))
    assert [(r["low"], r["unit"], r["result"]) for r in rows] == [
        ("0.015", "in", "too high"),
        ("0.006", "in", "as it should be"),
    ]


def test_every_link_of_the_page_leads_somewhere_on_it(log: RepairLog) -> None:
    page = repair_log_page(log, "Mind the belt.")
    tree = [one for one in html5lib.parse(page).iter() if isinstance(one.tag, str)]
    ids = [one.attrib["id"] for one in tree if "id" in one.attrib]
    links = [one.attrib["href"] for one in tree if one.tag.endswith("}a")]
    assert len(ids) == len(set(ids))
    assert {link.removeprefix("#") for link in links} <= set(ids)
    assert sum(one.startswith("note-") for one in ids) == sum(len(r.notes) for r in shaft().sessions)


def test_the_page_asks_nothing_of_anybody(log: RepairLog) -> None:
    page = repair_log_page(log, "Mind the belt.")
    assert not re.search(r"https?:|//|@import|url\(|<script|<iframe|<object", page)
    assert "default-src 'none'" in page


def test_markdown_and_page_tell_the_same(log: RepairLog) -> None:
    written, page = markdown_log(log, ""), repair_log_page(log, "")
    for words in ("belt lacing", "it was not: coupling", "new brasses", "neither confirmed nor ruled out"):
        assert words in written.lower()
        assert words in page.lower()


def test_a_long_log_shows_the_latest_of_each_list_and_says_so() -> None:
    told = Told(CARD)
    for number in range(60):
        told = told.session() if number % 3 == 0 else told
        part = "abcdefghij"[number % 10] * 4 + "klmnop"[number // 10] * 4
        told.say(f"pin {number} is bent", bad(part, "bent"), read("clearance", 0.01, "in", "pin"))
        told.quiet().say("again", read("clearance", 0.02, "in", "pin"), read("clearance", 0.03, "in", "key"))
    log = published(told.history()).log()
    page, written = repair_log_page(log, ""), markdown_log(log, "")
    for text in (page, written):
        assert re.search(r"The latest 40\. \d\d earlier ones are in the timeline\.", text)
    assert "The latest 120. 60 earlier ones are in the timeline." in page
    assert '<a href="#session-21">21</a>' in page
    assert len(json_repair_log(log)["readings"]) == 180
    assert page.count("pin 3 is bent") == 1  # in the timeline alone


def test_an_empty_log_says_so() -> None:
    told = published(Told(CARD).history()).log()
    assert told.where_it_stands.headline == "Nothing is in the log yet."
    assert "Nothing is in the log yet." in repair_log_page(told, "")
