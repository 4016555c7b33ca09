"""Shorthand is written out by the name of the thing; what is no shorthand stays as it was said."""

from __future__ import annotations

import pytest

from worklog_tui.logbook.spelling import written_out


@pytest.mark.parametrize(
    ("said", "name", "shown"),
    [
        ("gearbx lvl", "gearbox level", "gearbox level"),
        ("left plg", "spark plug", "left plug"),
        ("batt", "battery", "battery"),
        ("hd gskt", "head gasket", "head gasket"),
        ("rag joint", "shaft coupling", "rag joint"),
        ("plugs", "spark plug", "plugs"),
        ("drive belt", "drive belt", "drive belt"),
        ("left raising cam", "camshaft", "left raising cam"),
        ("yarn tension spring", "yarn tensioner spring", "yarn tension spring"),
        ("No 3", "injector", "No 3"),
        ("belt", "", "belt"),
        ("is the spring in there", "intake spring", "is the spring in there"),
        ("a b c d e f g h i j k", "", "a b c d e f g h i"),
    ],
)
def test_shorthand(said: str, name: str, shown: str) -> None:
    assert written_out(said, name) == shown
