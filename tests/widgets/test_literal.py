"""What a person types is drawn letter by letter, whatever it looks like."""

from __future__ import annotations

import pytest
from textual.app import App, ComposeResult
from textual.widgets import Static

from worklog_tui.widgets.literal import literal

HOSTILE = [
    "[@click=app.quit]press[/]",
    "torque [/] 40",
    "[/",
    "[/red",
    '[type=x, v={"a[0"]}]',
    "[b]bold[/b]",
    "\\[b]",
    "[0.5mm]",
    ":wrench:",
    "$accent [$error]x",
    "<script>alert(1)</script>",
    "=1+1",
]


@pytest.mark.parametrize("text", HOSTILE)
def test_signs_stay_signs(text: str) -> None:
    content = literal(text)
    assert content.plain == text
    assert content.spans == []


def test_controls_are_gone_and_tabs_are_spaces() -> None:
    assert literal("a\x1b[2J\x9b\u202eb\n1\t2").plain == "ab\n1   2"


class Page(App[None]):
    """Every hostile text on one screen."""

    def compose(self) -> ComposeResult:
        """One line each."""
        for text in HOSTILE:
            yield Static(literal(text))


async def test_the_screen_shows_them_and_runs_nothing() -> None:
    app = Page()
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        shown = [line.text.rstrip() for static in app.query(Static) for line in static.render_lines(static.size.region)]
        assert shown == HOSTILE
        for static in app.query(Static):
            for line in static.render_lines(static.size.region):
                assert all(segment.style is None or "@click" not in segment.style.meta for segment in line)
