"""The line of keys: whole keys only, and the one that tells all keys always in sight."""

from __future__ import annotations

from worklog_tui.widgets.key_line import Key, KeyLine


def keys(*does: str) -> tuple[Key, ...]:
    return (*(Key(word[0], word[0], word, "", False) for word in does), Key("?", "?", "keys", "", True))


def test_what_has_no_room_is_left_out_whole_and_all_keys_stay() -> None:
    line = KeyLine()
    line.keys = keys("edit", "strike out", "several lines")
    assert [one.key.does for one in line.stood(80)] == ["edit", "strike out", "several lines", "keys"]
    assert [one.key.does for one in line.stood(30)] == ["edit", "strike out", "keys"]
    for width in range(8, 80):
        assert all(one.start + one.key.width <= width for one in line.stood(width))


def test_a_line_that_wraps_leaves_nothing_out() -> None:
    line = KeyLine(wraps=True)
    line.keys = keys("edit", "strike out", "several lines")
    assert [(one.line, one.key.does) for one in line.stood(20)] == [
        (0, "edit"), (1, "strike out"), (2, "several lines"), (3, "keys"),
    ]  # fmt: skip
