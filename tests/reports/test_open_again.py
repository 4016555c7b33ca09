"""Why an item is open again is told wherever open items are shown: the tap of an ice-cream van's generator."""

from __future__ import annotations

import html
import json
import re

import pytest

from tests.logbook.told import Told, did, later
from tests.reports.published import published
from worklog_tui.logbook.open_items import open_items
from worklog_tui.logbook.recap import recap
from worklog_tui.model import Advice, History, OpenItem
from worklog_tui.reports.again import open_again
from worklog_tui.reports.json_out import open_items as as_json
from worklog_tui.reports.json_repair_log import json_repair_log
from worklog_tui.reports.markdown_log import markdown_log
from worklog_tui.reports.page import repair_log_page
from worklog_tui.reports.plain_items import items_text
from worklog_tui.reports.plain_recap import recap_text
from worklog_tui.screens.as_text import rows_text
from worklog_tui.widgets.items import OpenItems

WHY = "open again: off again in session 2 at 0:00, after it was dealt with in session 1 at 5:00"


def generator() -> History:
    told = Told().say("the tap leaks, that wants seeing to", later("fuel tap", "fault")).quiet()
    told.say("new cork in the tap", did("replace", "fuel tap", "new cork")).session()
    return told.say("the tap had to come off", did("remove", "fuel tap")).history()


def shown(place: str) -> str:
    """What a place shows of the generator, on one line."""
    known = generator()
    items = open_items(known)
    return " ".join(html.unescape(re.sub("<[^>]+>", " ", _shown(place, known, items))).split())


def _shown(place: str, known: History, items: tuple[OpenItem, ...]) -> str:
    log = published(known).log()
    match place:
        case "list":
            return items_text(items, 60, known)
        case "recap":
            return recap_text(recap(known, items), Advice(""), 60)
        case "recorder":
            rows = OpenItems()
            rows.show_items(items)
            return rows_text(rows.rows, "", 200)
        case "page":
            return repair_log_page(log, "")
        case "markdown":
            return markdown_log(log, "")
        case "data of the report":
            return json.dumps(json_repair_log(log))
    raise AssertionError(place)


@pytest.mark.parametrize("place", ["list", "recap", "recorder", "page", "markdown", "data of the report"])
def test_it_is_told(place: str) -> None:
    assert WHY in shown(place)


def test_as_data_it_has_keys_of_its_own() -> None:
    known = generator()
    (item,) = as_json(open_items(known), known)
    assert (item["state"], item["closed"]) == ("open", None)
    assert item["again"] == {"how": "off again", "at": [2, "0:00"], "dealt_with": [1, "5:00"]}


def test_an_item_that_was_never_dealt_with_says_nothing_of_it() -> None:
    (item,) = open_items(Told().say("the tap leaks", later("fuel tap", "fault")).history())
    assert open_again(item) == ""
