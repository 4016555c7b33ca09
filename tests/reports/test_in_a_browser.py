"""The pages in a real browser: nothing sticks out at the width of a phone. Skipped where there is no Chromium."""

from __future__ import annotations

import re
import shutil
import subprocess
from pathlib import Path

import pytest

from tests.logbook.told import Told, bad, did, later, read
from tests.reports.published import published
from worklog_tui.model import Machine
from worklog_tui.reports.page import hand_over_page, repair_log_page

BROWSER = next(filter(None, map(shutil.which, ("chromium", "chromium-browser", "google-chrome"))), None)
FLAGS = (
    "--headless --no-sandbox --disable-gpu --no-first-run --disable-background-networking --disable-component-update "
    "--disable-sync --allow-file-access-from-files --window-size=1400,1000 --virtual-time-budget=3000"
)
MEASURE = """<script>
const far = [...document.querySelectorAll('body *')].filter(e => e.getBoundingClientRect().right > innerWidth + 0.5);
document.title = `width ${document.documentElement.scrollWidth} of ${innerWidth}, sticking out ${far.length}`;
</script>"""

pytestmark = pytest.mark.skipif(BROWSER is None, reason="there is no Chromium on this machine")


def lathe() -> Told:
    """A lathe with long words, long lines, many readings and everything else that could push a page wide."""
    told = Told(Machine("Instrument maker's treadle lathe " * 3, kind="k" * 120))
    told.say("w" * 200, bad("tailstock quill", "x" * 90), later("p" * 150, "part needed"))
    for number in range(12):
        told.say("a reading " * 30, read("run out", 0.01 * number, "mm", f"spindle {number} of the headstock", "set"))
    return told.say("c", did("replace", "q" * 80, "r" * 80), later("tape", "temporary"))


@pytest.mark.parametrize("width", [360, 800, 1280])
@pytest.mark.parametrize("sheet", [False, True])
def test_nothing_sticks_out(width: int, sheet: bool, tmp_path: Path) -> None:
    found = published(lathe().history())
    page = hand_over_page(found.hand_over(), "Mind.") if sheet else repair_log_page(found.log(), "Mind.")
    page = re.sub(r'<meta http-equiv="Content-Security-Policy"[^>]*>', "", page)  # for the measuring script alone
    frame = tmp_path / "frame.html"
    (tmp_path / "page.html").write_text(page.replace("</body>", f"{MEASURE}</body>"), encoding="utf-8")
    frame.write_text(
        f"<iframe src=page.html style='border:0;width:{width}px;height:900px' onload='document.title="
        "this.contentDocument.title'></iframe>",
        encoding="utf-8",
    )
    call = [str(BROWSER), *FLAGS.split(), f"--user-data-dir={tmp_path / 'profile'}", "--dump-dom", frame.as_uri()]
    told = subprocess.run(call, capture_output=True, text=True, timeout=120, check=True).stdout
    title = re.search(r"<title>width (\d+) of (\d+), sticking out (\d+)</title>", told)
    assert title is not None, told[:500]
    assert int(title[1]) <= int(title[2])
    assert int(title[3]) == 0
    assert int(title[2]) == width


def test_a_hand_over_sheet_is_a_sheet(tmp_path: Path) -> None:
    """A machine with a score of settings, dry and wet, and as many parts and plans prints on three pages at most."""
    told = Told(Machine("Treadle lathe", kind="lathe"))
    for number in range(1, 21):
        for condition in ("dry", "wet"):
            told.say("a reading", read("pressure", number, "bar", f"oil feed {number}", "set", condition))
        told.say("a part", did("replace", f"bush {number}", "a bronze one"), later(f"gib {number}", "to do"))
    (tmp_path / "sheet.html").write_text(hand_over_page(published(told.history()).hand_over(), "Mind."), "utf-8")
    paper = tmp_path / "sheet.pdf"
    profile = f"--user-data-dir={tmp_path / 'profile'}"
    call = [str(BROWSER), *FLAGS.split(), profile, f"--print-to-pdf={paper}", (tmp_path / "sheet.html").as_uri()]
    subprocess.run(call, capture_output=True, timeout=120, check=True)
    pages = len(re.findall(rb"/Type\s*/Page\b", paper.read_bytes()))
    assert 1 <= pages <= 3
