"""Every spelling by which a thread is asked for, written and spoken, and what a measured one can be.

Sizes: ASME B1.1 (unified), ISO 261 and ISO 262 (metric, fine), BS 84 (Whitworth, fine), BS 93 (BA), ISO 228 (pipe),
ASME B1.20.1 (NPT); cycle threads: common practice.
"""

from __future__ import annotations

import pytest

from worklog_tui.bench.said_thread import designated
from worklog_tui.trade.shop_sums import work_out
from worklog_tui.trade.threads import thread

WRITTEN = {
    "1/4-20 UNC": ['1/4"-20', "1/4 x 20", "1/4-20UNC-2A", "1/4-20 unc", "UNC 1/4", "1/4 in. UNC", "1/4 x 20 tpi"],
    "10-32 UNF": ["#10-32", "No. 10-32", "number 10-32", "10-32 UNF", "10 x 32"],
    "1 1/8-7 UNC": ["1-1/8-7", "1 1/8-7"],
    "1/4 BSW": ["1/4 Whit", '1/4" Whitworth', "1/4 W", "1/4 x 20 BSW", "BSW 1/4"],
    "3/8 BSF": ['3/8"BSF', "3/8 British Standard Fine", "BSF 3/8", "3/8 x 20 BSF", "3/8 b s f"],
    "2BA": ["2 BA", "2ba", "No 2 BA", "#2 BA", "BA 2"],
    "0BA": ["0 BA", "0BA"],
    "M8x1.25": ["M8", "m 8", "M8 x 1.25", "M8×1.25", "M8*1.25", "M8-1.25", "M8x1,25", "8x1.25", "M8 x 1.25 mm",
                "M8x1.25-6H", "M8 coarse"],
    "M10x1.25": ["M10 fine", "M10 fine (1.25)"],
    "1/2 BSP": ["G1/2", "G 1/2", "R1/2", "Rp 1/2", "1/2 BSPT", "1/2 BSPP", '1/2" B S P', "1/2 British Standard Pipe"],
    "1/8 NPT": ["1/8 NPT", "1/8 NPTF", "NPT 1/8"],
    "1/4 CEI": ["1/4 CEI", "1/4 BSC", "1/4 cycle thread"],
}  # fmt: skip
SPOKEN = {
    "quarter twenty": "1/4-20 UNC", "quarter-twenty": "1/4-20 UNC", "five sixteenths eighteen": "5/16-18 UNC",
    "three eighths by sixteen": "3/8-16 UNC", "half inch thirteen": "1/2-13 UNC", "ten thirty-two": "10-32 UNF",
    "three eighths, twenty four threads to the inch": "3/8-24 UNF", "inch and an eighth seven": "1 1/8-7 UNC",
    "eight by one and a quarter": "M8x1.25", "em ten by one point five": "M10x1.5", "metric twelve": "M12x1.75",
    "three-eighths British Standard Fine": "3/8 BSF", "half inch Whit": "1/2 BSW", "five sixteenths whitworth":
    "5/16 BSW", "quarter inch BSP": "1/4 BSP", "two BA": "2BA", "nought BA": "0BA", "eighth NPT": "1/8 NPT",
}  # fmt: skip


@pytest.mark.parametrize(("written", "known"), [(one, known) for known, all_ in WRITTEN.items() for one in all_])
def test_a_written_one_is_known(written: str, known: str) -> None:
    assert thread(written).designation == known


@pytest.mark.parametrize(("said", "known"), SPOKEN.items())
def test_a_spoken_one_is_asked_for_by_its_designation(said: str, known: str) -> None:
    assert thread(designated(said)).designation == known


@pytest.mark.parametrize("said", ["bananas", "6.3mm", "", "M13", "3/8 BA", "1/4-21", "two by four", "BSW", "W"])
def test_what_is_none_is_left_as_it_is(said: str) -> None:
    assert designated(said) == said
    with pytest.raises(ValueError, match="no thread"):
        thread(said)


def says(**given: str) -> list[str]:
    return [one.says for one in work_out("thread", {"pitch": "", **given}).amounts]


def test_a_measured_one_is_told_with_how_far_the_measures_are_off_the_nearest_first() -> None:
    """A stud of 3/8 inch, 20 threads an inch, worn by eight hundredths."""
    told = ["can be 3/8 BSF (measured 0.08 mm under, pitch 0.0% off), major diameter"]
    assert says(given="9.445mm", pitch="20tpi") == told
    wide = [one.split(" (", 1)[0] for one in says(given="9.445mm")]
    assert wide[0].startswith("can be 3/8")
    assert {"can be 3/8 BSF", "can be 3/8-16 UNC", "can be 3/8 CEI"} <= set(wide)


def test_a_pitch_that_is_a_little_off_says_by_how_much() -> None:
    found = says(given="7.95mm", pitch="1.22mm")
    assert found[0] == "can be M8x1.25 (measured 0.05 mm under, pitch 2.4% off), major diameter"


def test_the_tap_drill_and_the_look_alikes_of_one() -> None:
    """ASME B94.11M: 5/16-18 is drilled with letter F, 6.53 mm, for three quarters of a thread."""
    drilled = {one.says: one.value for one in work_out("tap-drill", {"given": "5/16-18"}).amounts}
    assert drilled["nearest drill F"] == pytest.approx(6.53, abs=0.01)
    assert "beware of 5/16 BSW" in says(given="5/16-18")
