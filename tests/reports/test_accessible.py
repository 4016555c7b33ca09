"""The demo pages before axe-core, the checker of the W3C's accessibility rules (WCAG 2.1): nothing serious is found.

axe-core comes with the test extra (axe-core-python), from npm (`node_modules`), or from a file named by WORKLOG_AXE.
Skipped, with a plain message, where there is no Chromium or no axe-core.
"""

from __future__ import annotations

import html
import importlib.util
import json
import os
import re
import shutil
import subprocess
from pathlib import Path
from typing import Any

import pytest

from tests.reports.published import published
from worklog_tui import places
from worklog_tui.bench.extract_files import extract
from worklog_tui.bench.machines import read_card
from worklog_tui.reports.page import hand_over_page, repair_log_page
from worklog_tui.rulebook import load
from worklog_tui.rulebook.faults import load_faults

BROWSER = next(filter(None, map(shutil.which, ("chromium", "chromium-browser", "google-chrome"))), None)
FLAGS = (
    "--headless --no-sandbox --disable-gpu --no-first-run --disable-background-networking --disable-component-update "
    "--disable-sync --window-size=1280,1000 --virtual-time-budget=20000 --dump-dom"
)
SCHEMES = {"light": "--blink-settings=preferredColorScheme=1", "dark": "--blink-settings=preferredColorScheme=0"}
DEMOS = sorted(path.parent for path in places.demo_sessions().glob("*/machine.toml"))
RUN = """<script>axe.run(document).then(found => {
  const rows = found.violations.map(v => [v.impact, v.id, v.nodes.map(n => n.target.join(' '))]);
  const told = {rows, passed: found.passes.length, dark: matchMedia('(prefers-color-scheme: dark)').matches};
  document.body.innerHTML = '<pre id=found></pre>';
  document.getElementById('found').textContent = JSON.stringify(told);
});</script>"""
MOST_SERIOUS = {"serious", "critical"}


def axe() -> Path | None:
    """The script of axe-core, where there is one."""
    spec = importlib.util.find_spec("axe_core_python")
    packed = [Path(folder) / "axe.min.js" for folder in (spec.submodule_search_locations or ())] if spec else []
    npm = Path(__file__).parents[2] / "node_modules" / "axe-core" / "axe.min.js"
    named = [Path(os.environ["WORKLOG_AXE"])] if "WORKLOG_AXE" in os.environ else []
    return next((path for path in (*named, npm, *packed) if path.is_file()), None)


AXE = axe()
pytestmark = [
    pytest.mark.skipif(BROWSER is None, reason="there is no Chromium on this machine"),
    pytest.mark.skipif(AXE is None, reason="there is no axe-core: pip install axe-core-python"),
]


def checked(page: str, folder: Path, scheme: str) -> dict[str, Any]:
    """What axe-core says about a page."""
    assert AXE is not None
    script = AXE.read_text(encoding="utf-8").replace("</script", "<\\/script")
    page = re.sub(r'<meta http-equiv="Content-Security-Policy"[^>]*>', "", page)  # for the checking script alone
    file = folder / "page.html"
    file.write_text(page.replace("</body>", f"<script>{script}</script>{RUN}</body>"), encoding="utf-8")
    call = [str(BROWSER), *FLAGS.split(), SCHEMES[scheme], f"--user-data-dir={folder / 'profile'}", file.as_uri()]
    dumped = subprocess.run(call, capture_output=True, text=True, timeout=120, check=True).stdout
    told = re.search(r'<pre id="found">(.*?)</pre>', dumped, re.S)
    assert told is not None, dumped[-500:]
    found: dict[str, Any] = json.loads(html.unescape(told[1]))
    assert found["passed"] > 10  # it did look
    assert found["dark"] == (scheme == "dark")
    return found


def pages(demo: Path) -> dict[str, str]:
    """The pages of a demo machine."""
    grammars = [places.grammars()]
    card, _ = read_card(demo / "machine.toml")
    found = extract(load(grammars, places.cache()), load_faults(grammars), card, sorted(demo.glob("session-*.*")), None)
    out = published(found.history)
    return {"repair log": repair_log_page(out.log(), "Mind."), "hand-over": hand_over_page(out.hand_over(), "Mind.")}


@pytest.mark.parametrize("scheme", SCHEMES)
@pytest.mark.parametrize("demo", DEMOS, ids=lambda folder: folder.name)
def test_nothing_serious_on_the_pages_of_a_demo(demo: Path, scheme: str, tmp_path: Path) -> None:
    for name, page in pages(demo).items():
        found = checked(page, tmp_path, scheme)
        print(f"{demo.name}, {name}, {scheme}: {found['passed']} rules passed, not {found['rows']}")
        assert [row for row in found["rows"] if row[0] in MOST_SERIOUS] == []


def test_the_check_sees_what_is_wrong(tmp_path: Path) -> None:
    page = "<!doctype html><html><head><title>t</title></head><body><h1>a</h1>" + "<p>x</p>" * 3
    page += "<img src='data:,'><p style='color:#ccc;background:#fff'>pale</p><ul><p>no item</p></ul><p><a href='#a'>"
    found = checked(page + "</a></p><table><tr><th>a<td>b</table></body></html>", tmp_path, "light")
    assert {row[1] for row in found["rows"]} >= {"image-alt", "color-contrast", "html-has-lang"}
