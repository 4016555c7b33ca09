"""Hostile words through every export, read back by other people's parsers: shown as they are, and nothing happens."""

from __future__ import annotations

import csv
import io
import json
import re
from typing import Any

import html5lib
import pytest
from markdown_it import MarkdownIt

from tests.logbook.told import Told, bad, did, later, read, suspects
from tests.reports.hostile import HOSTILE, shown
from tests.reports.published import published
from worklog_tui.bench.publishing import Published
from worklog_tui.model import Machine, SpecifiedValue, Step
from worklog_tui.reports.csv_tables import TABLES, csv_table
from worklog_tui.reports.json_repair_log import json_repair_log
from worklog_tui.reports.markdown_log import markdown_log
from worklog_tui.reports.markdown_sheet import hand_over_markdown
from worklog_tui.reports.page import hand_over_page, repair_log_page

_HTML = "{http://www.w3.org/1999/xhtml}"
_TAGS = set(
    "html head meta title link style body main header section nav footer p h1 h2 h3 ol ul li a dl dt dd div span "
    "strong q table thead tbody tr th td figure figcaption br svg rect polyline".split()
)
_STYLE = re.compile(r"(?:left|width):[\d.]+%(?:;width:[\d.]+%)?")
_HREF = re.compile(r"#[\w-]+|data:,")
_CONTROL = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u200b-\u200f\u202a-\u202e\u2066-\u2069]")


def pump(words: str) -> Published:
    """A pump of which everything that people can say is hostile."""
    value = SpecifiedValue("gap", words, words, nominal=0.02, unit="in")
    told = Told(Machine(words, kind=words, specified=(value,)))
    told.say(words, bad(words, words), read("gap", 0.03, words, words), suspects(words), did("replace", words, words))
    told.say(
        f"to start it {words}",
        later(words, "part needed"),
        later(f"{words} x", "temporary"),
        read("gap", 0.02, "in", words, "set"),
    )
    return published(told.history(), steps=[Step(words, words, cautions=(words,))])


def elements(page: str) -> list[Any]:
    return list(html5lib.parse(page).iter())


@pytest.mark.parametrize("words", HOSTILE)
@pytest.mark.parametrize("sheet", [False, True])
def test_pages_show_the_words_and_nothing_else(words: str, sheet: bool) -> None:
    found = pump(words)
    page = hand_over_page(found.hand_over(), "") if sheet else repair_log_page(found.log(), "")
    assert not _CONTROL.search(page)
    for one in elements(page):
        if not isinstance(one.tag, str):
            continue
        assert one.tag.split("}")[-1] in _TAGS
        for name, value in one.attrib.items():
            assert not name.lower().startswith("on")
            assert name != "src"
            assert name != "href" or _HREF.fullmatch(value)
            assert name != "style" or _STYLE.fullmatch(value)
    heading = next(one for one in elements(page) if one.tag == f"{_HTML}h1")
    assert " ".join((heading.text or "").split()) == shown(words)


@pytest.mark.parametrize("words", HOSTILE)
@pytest.mark.parametrize("sheet", [False, True])
def test_markdown_shows_the_words_and_nothing_else(words: str, sheet: bool) -> None:
    found = pump(words)
    text = hand_over_markdown(found.hand_over(), "") if sheet else markdown_log(found.log(), "")
    assert not _CONTROL.search(text)
    reader = MarkdownIt("commonmark", {"html": True, "linkify": True}).enable(["table", "strikethrough", "linkify"])
    inline = [child for token in reader.parse(text) for child in token.children or ()]
    assert {t.type for t in reader.parse(text)} <= {
        "heading_open",
        "heading_close",
        "inline",
        "paragraph_open",
        "paragraph_close",
        "bullet_list_open",
        "bullet_list_close",
        "list_item_open",
        "list_item_close",
        "table_open",
        "table_close",
        "thead_open",
        "thead_close",
        "tbody_open",
        "tbody_close",
        "tr_open",
        "tr_close",
        "th_open",
        "th_close",
        "td_open",
        "td_close",
        "hr",
    }
    assert {t.type for t in inline} <= {
        "text",
        "text_special",
        "strong_open",
        "strong_close",
        "link_open",
        "link_close",
        "html_inline",
    }
    assert all(re.fullmatch(r'<a id="note-[\w-]+">|</a>', t.content) for t in inline if t.type == "html_inline")
    assert all(str(t.attrs["href"]).startswith("#note-") for t in inline if t.type == "link_open")
    first = next(token for token in reader.parse(text) if token.type == "inline")
    assert "".join(t.content for t in first.children or ()).split(":", 1)[1].strip() == shown(words)


@pytest.mark.parametrize("words", HOSTILE)
@pytest.mark.parametrize("table", TABLES)
def test_no_cell_of_a_table_is_a_formula(words: str, table: str) -> None:
    text = csv_table(pump(words).log(), table)
    assert not _CONTROL.search(text.replace("\r\n", "\n"))
    head, *rows = csv.reader(io.StringIO(text, newline=""))
    assert rows
    assert all(len(row) == len(head) for row in rows)
    for cell in (cell for row in rows for cell in row):
        assert not cell.startswith(("=", "+", "-", "@", "\t", "\r")) or re.fullmatch(r"-[\d.]+", cell)
    assert any(shown(words) in cell.replace("\\|", "|") for row in rows for cell in row)


@pytest.mark.parametrize("words", HOSTILE)
def test_json_holds_the_words(words: str) -> None:
    text = json.dumps(json_repair_log(pump(words).log()), ensure_ascii=False)
    assert not _CONTROL.search(text)
    assert " ".join(json.loads(text)["machine"].split()) == shown(words)
