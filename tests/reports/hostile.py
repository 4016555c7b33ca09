"""Forty texts that would do harm if anything of theirs took effect."""

from __future__ import annotations

HOSTILE = [
    "<script>alert(1)</script>",
    "<img src=x onerror=alert(1)>",
    "</style><script>alert(1)</script>",
    "</title><svg onload=alert(1)>",
    '"><iframe src=//a.example></iframe>',
    "' onmouseover='alert(1)",
    '<a href="javascript:alert(1)">press</a>',
    "<!-- --><b>bold</b>",
    "&lt;script&gt; &amp; &#60;b&#62;",
    "{{7*7}} {% for x in y %} {# gone #}",
    "${HOME} `id` $(id)",
    "%3Cscript%3E",
    "[press](javascript:alert(1))",
    "![x](http://a.example/x.png)",
    "[ref]: http://a.example",
    "<http://a.example>",
    "http://a.example/x www.a.example",
    "mail me: someone@a.example",
    "# heading",
    "- [ ] list",
    "1. numbered",
    "> quoted",
    "```\ncode\n```",
    "| cell | cell |\n| --- | --- |",
    "**bold** _soft_ ~~gone~~ \\*",
    "***\n---",
    "=1+1",
    "+1+1",
    "-1+1",
    "@SUM(A1)",
    '=HYPERLINK("http://a.example";"x")',
    "\t=1+1",
    "\r=cmd|' /C calc'!A0",
    "a\r\nBEGIN:VALARM\r\nACTION:PROCEDURE",
    'a;b,c\\n"d"',
    "\x1b[2J\x1b]0;owned\x07",
    "nul\x00 bell\x07 \x9b31m",
    "gap \u202egnp.exe\u202c \u200bzero",
    "\u2028line\u2029paragraph",
    "\ufeff[@click=app.quit]press[/]",
]
assert len(HOSTILE) == 40


def shown(text: str) -> str:
    """The text as it may be shown: without control characters, with single blanks."""
    from worklog_tui.notes.cleaning import sanitise

    return " ".join(sanitise(text).split())
