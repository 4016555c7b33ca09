"""The pages in a real browser, with hostile words in every place of the log and without the page's own shield.

Nothing is fetched, no script of theirs runs, every link leads somewhere on the page, and the headings step down one by
one. The content policy of the page is taken out first, so that what is seen is the work of the templates alone.
"""

from __future__ import annotations

import html
import json
import re
import shutil
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from itertools import pairwise
from pathlib import Path
from threading import Thread
from typing import Any

import pytest

from tests.logbook.told import Told, bad, did, good, later, read, suspects
from tests.reports.hostile import HOSTILE
from tests.reports.published import published
from worklog_tui.model import Machine
from worklog_tui.reports.page import hand_over_page, repair_log_page

BROWSER = next(filter(None, map(shutil.which, ("chromium", "chromium-browser", "google-chrome"))), None)
FLAGS = (
    "--headless --no-sandbox --disable-gpu --no-first-run --disable-background-networking --disable-component-update "
    "--disable-sync --window-size=360,900 --virtual-time-budget=5000 --dump-dom"
)
LOOK = """<script id=look>addEventListener('load', () => setTimeout(() => {
  const mine = document.getElementById('look');
  const links = [...document.querySelectorAll('a[href]')].map(a => a.getAttribute('href'));
  const own = 'link:not([href="data:,"])';
  const active = own + ',img,iframe,object,embed,base,form,input,video,audio,[onload],[onerror],[onclick]';
  const told = {
    fetched: performance.getEntriesByType('resource').map(e => e.name),
    scripts: [...document.scripts].filter(s => s !== mine).length,
    active: document.querySelectorAll(active).length,
    dead: links.filter(l => !l.startsWith('#') || !document.getElementById(decodeURIComponent(l.slice(1)))),
    links: links.length,
    levels: [...document.querySelectorAll('h1,h2,h3,h4,h5,h6')].map(h => +h.tagName[1]),
    alerted: window.alerted === true,
  };
  const out = document.createElement('pre');
  out.id = 'found';
  out.textContent = JSON.stringify(told);
  document.body.replaceChildren(out);
}, 500));</script>"""
TRAP = "<script>window.alerted = false; alert = confirm = prompt = () => { window.alerted = true; };</script>"

pytestmark = pytest.mark.skipif(BROWSER is None, reason="there is no Chromium on this machine")


def hostile_log() -> Told:
    """A pump of which every word that a person can say is hostile."""
    told = Told(Machine(HOSTILE[0], kind=HOSTILE[1]))
    for number, words in enumerate(HOSTILE):
        told.say(words, bad(words, words), did("replace", words, words), later(words, "part needed"))
        told.say(words, read("pressure", float(number), "bar", words), suspects(words, "ruled out"), good(words, words))
    return told


def looked_at(page: str, folder: Path) -> dict[str, Any]:
    """What a browser finds on a page."""
    page = re.sub(r'<meta http-equiv="Content-Security-Policy"[^>]*>', "", page)
    page = page.replace("<head>", f"<head>{TRAP}", 1).replace("</body>", f"{LOOK}</body>")
    page = page.replace(TRAP, TRAP.replace("<script", "<script class=trap"), 1)
    (folder / "page.html").write_text(page, encoding="utf-8")
    asked: list[str] = []
    with served(folder, asked) as address:
        call = [str(BROWSER), *FLAGS.split(), f"--user-data-dir={folder / 'profile'}", f"{address}/page.html"]
        dumped = subprocess.run(call, capture_output=True, text=True, timeout=120, check=True).stdout
    told = re.search(r'<pre id="found">(.*?)</pre>', dumped, re.S)
    assert told is not None, dumped[-500:]
    found: dict[str, Any] = json.loads(html.unescape(told[1]))
    return found | {"asked": asked}


@contextmanager
def served(folder: Path, asked: list[str]) -> Iterator[str]:
    """A server of a folder, for this computer alone, that writes down what is asked of it."""

    class Served(SimpleHTTPRequestHandler):
        def __init__(self, *args: Any) -> None:
            super().__init__(*args, directory=str(folder))

        def log_request(self, *_: Any) -> None:
            asked.append(self.path)

    server = ThreadingHTTPServer(("127.0.0.1", 0), Served)
    Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_address[1]}"
    server.shutdown()
    server.server_close()


@pytest.mark.parametrize("sheet", [False, True], ids=["repair log", "hand-over"])
def test_the_page_fetches_nothing_and_runs_nothing(sheet: bool, tmp_path: Path) -> None:
    out = published(hostile_log().history())
    page = hand_over_page(out.hand_over(), HOSTILE[2]) if sheet else repair_log_page(out.log(), HOSTILE[2])
    found = looked_at(page, tmp_path)
    assert found["fetched"] == []
    assert set(found["asked"]) == {"/page.html"}
    assert found["scripts"] == 1  # the trap of this test
    assert found["active"] == 0
    assert not found["alerted"]
    assert found["dead"] == []
    assert sheet or found["links"] > 50
    levels = found["levels"]
    assert [place for place, level in enumerate(levels) if level == 1] == [0]
    assert all(after <= before + 1 for before, after in pairwise(levels))


def test_the_look_sees_what_is_wrong(tmp_path: Path) -> None:
    (tmp_path / "a.css").write_text("p {}", encoding="utf-8")
    page = "<html><head><link rel=stylesheet href=a.css></head><body><h1>a</h1><h3>b</h3><a href='#none'>c</a>"
    found = looked_at(page + "<img src=x onerror='alert(1)'><script>alert(2)</script></body></html>", tmp_path)
    assert {"/a.css", "/x"} <= set(found["asked"])
    assert found["fetched"] != []
    assert (found["scripts"], found["alerted"], found["dead"]) == (2, True, ["#none"])
    assert found["active"] >= 2
    assert found["levels"] == [1, 3]
