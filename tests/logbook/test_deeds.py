"""A few words may ask for a deed; then only work of that kind does it."""

from __future__ import annotations

import pytest

from worklog_tui.logbook.deeds import asked


@pytest.mark.parametrize(
    ("words", "action"),
    [
        ("clean the tank", "clean"),
        ("head off", "remove"),
        ("put the cover back on", "fit"),
        ("retorque the head", "tighten"),
        ("set float flush", "adjust"),
        ("get the casting tested for cracks", "test"),
        ("hook the wire back up", "connect"),
        ("drain the sump", "drain"),
        ("grease the bearings", "lubricate"),
    ],
)
def test_words_that_ask(words: str, action: str) -> None:
    assert action in asked(words).actions


@pytest.mark.parametrize(
    "words", ["fuel hose", "check valve", "drain cock", "start capacitor", "test bar", "oil pump", "charge coil"]
)
def test_words_that_only_name(words: str) -> None:
    assert not asked(words).actions
