"""The one place that writes."""

from __future__ import annotations

import io
import sys

import pytest
from hypothesis import given
from hypothesis import strategies as st

from worklog_tui.cli.output import clean, say, say_json


@given(st.text())
def test_nothing_that_steers_a_terminal_is_left(text: str) -> None:
    left = clean(text)
    assert not any((ord(c) < 32 and c not in "\n\t") or 0x7F <= ord(c) < 0xA0 for c in left)
    assert clean(left) == left


def test_json_carries_control_characters_only_as_escapes(capsys: pytest.CaptureFixture[str]) -> None:
    say_json({"quote": "\x1b[2J\u202etext\x9b"})
    printed = capsys.readouterr().out
    assert "\\u001b[2J\\u202etext\\u009b" in printed
    assert not set(printed) & set("\x1b\u202e\x9b")


def test_a_terminal_without_such_letters_gets_plainer_ones(monkeypatch: pytest.MonkeyPatch) -> None:
    kept = io.BytesIO()
    monkeypatch.setattr(sys, "stdout", io.TextIOWrapper(kept, encoding="ascii"))
    say("0.035 in → 0.025 in ███ 漢")
    sys.stdout.flush()
    assert kept.getvalue() == b"0.035 in -> 0.025 in ### ?\n"
