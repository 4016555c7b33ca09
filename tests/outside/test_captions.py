"""Captions that nobody here wrote.

Sources: W3C WebVTT; cases for it from vtt.js (Apache-2.0) and web-platform-tests (3-clause BSD), in webvtt-conformance;
captions of the US Department of Defense media service (work of the US Government), folder transcripts-pd.
"""

from __future__ import annotations

import json
import os
import re
from pathlib import Path
from typing import Any

import pytest

from worklog_tui.notes.files import read_session_file
from worklog_tui.notes.keeping import make_notes
from worklog_tui.notes.lines import ReadSession
from worklog_tui.notes.reading import read_text

ROOT = Path(__file__).resolve().parents[2]
OPEN_DATA = Path(os.environ.get("WORKLOG_OPEN_DATA", ROOT / "../shared/reference/open-data"))
CONFORMANCE = OPEN_DATA / "webvtt-conformance"
LEAST_SHARE = 0.9

Cue = tuple[int, str]


def folder(name: str) -> Path:
    """A folder of the open data, or a skipped test."""
    if not (OPEN_DATA / name).is_dir():
        pytest.skip(f"no {name} below WORKLOG_OPEN_DATA")
    return OPEN_DATA / name


def plain(text: str) -> str:
    """Expected cue text as a reader sees it: without tags, with entities as signs (WebVTT section 3.3)."""
    text = re.sub(r"<[^>]*>?", "", text)
    for entity, sign in {"&lt;": "<", "&gt;": ">", "&nbsp;": " ", "&amp;": "&", "&lrm;": "", "&rlm;": ""}.items():
        text = text.replace(entity, sign)
    return " ".join(text.split())


def timed(read: ReadSession) -> list[Cue]:
    """Start in whole seconds and words of each caption that was read with a time."""
    return [(of(line.said_at), line.words) for line in read.lines if line.at is not None]


def of(said_at: str) -> int:
    """Seconds of M:SS or H:MM:SS."""
    total = 0
    for part in said_at.split(":"):
        total = total * 60 + int(part)
    return total


def expected_cues(file: Path) -> list[Cue] | None:
    """What the JSON beside a file, or for its whole folder, expects; None when there is none."""
    answer: Any = None
    beside = file.with_suffix(".json")
    if beside.exists():
        answer = json.loads(beside.read_text(encoding="utf-8"))
    if not isinstance(answer, dict) or "cues" not in answer:
        return None
    cues = ((int(cue["startTime"]), plain(cue["text"])) for cue in answer["cues"])
    return [cue for cue in cues if cue[1]]


def test_no_conformance_file_raises() -> None:
    files = sorted(folder("webvtt-conformance").rglob("*.vtt"))
    assert len(files) > 50
    for file in files:
        text = file.read_bytes().decode("utf-8", errors="replace")
        make_notes(read_text(text), "m")


def test_cues_are_those_that_webvtt_expects() -> None:
    """Where we differ we keep words that the standard drops: behind a time with two decimals, in a tag without end."""
    compared, same, odd = 0, 0, []
    for file in sorted(folder("webvtt-conformance").rglob("*.vtt")):
        expected = expected_cues(file)
        if expected is None:
            continue
        found = timed(read_text(file.read_bytes().decode("utf-8", errors="replace")))
        compared += 1
        same += found == expected
        assert len(found) >= len(expected), file.name
        if found != expected:
            odd.append(f"{file.name}: {len(found)} cues, expected {len(expected)}")
    print(f"\nWebVTT: {same} of {compared} files as expected; {odd}")
    assert compared >= 30
    assert same / compared >= LEAST_SHARE, odd


def test_cues_of_the_web_platform_tests() -> None:
    cases = json.loads((folder("webvtt-conformance") / "wpt/wpt_file_parsing_subset.json").read_text(encoding="utf-8"))
    same, odd = 0, []
    for case in cases:
        lines = [line.words for line in read_text(case["source"]).lines if line.at is not None]
        right = lines == case["texts"] if case["texts"] is not None else len(lines) == case["cues"]
        same += right
        if not right:
            odd.append(f"{case['name']}: {lines}")
    print(f"\nweb-platform-tests: {same} of {len(cases)}; {odd}")
    assert same >= 6, odd


def test_real_captions_with_a_cue_that_ends_before_it_starts() -> None:
    read = read_session_file(folder("transcripts-pd") / "dvids-motor-transport-excerpt.vtt")
    assert (read.track, read.complaints, len(read.lines)) == ("captions", (), 19)
    assert [line.said_at for line in read.lines[:3]] == ["0:07", "0:09", "0:11"]
    assert read.lines[13].words == "change the engines , the transmissions ,"
