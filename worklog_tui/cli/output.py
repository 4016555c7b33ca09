"""The one place where the command line writes: nothing that could steer a terminal gets through."""

from __future__ import annotations

import json
import re
import sys
from typing import Any

_CONTROL = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\ud800-\udfff]")


_PLAINER = str.maketrans({"█": "#", "→": "->", "…": "...", "°": " deg ", "µ": "u", "“": '"', "”": '"'})
"""What takes the place of a letter that the terminal cannot show."""


def clean(text: str) -> str:
    """The text without control characters; line ends and tabs stay."""
    return _CONTROL.sub("", text)


def say(text: str) -> None:
    """Writes text to standard output."""
    _write(sys.stdout, clean(text))


def complain(text: str) -> None:
    """Writes a sentence to standard error."""
    _write(sys.stderr, clean(text))


def say_json(data: Any) -> None:
    """Writes JSON to standard output; its strings carry control characters only as escapes."""
    text = json.dumps(data, ensure_ascii=False, indent=1)
    _write(sys.stdout, _CONTROL.sub(lambda found: f"\\u{ord(found[0]):04x}", text))


def write_out(text: str, file: str | None) -> None:
    """Writes into a file, whole or not at all, or to standard output when none is named."""
    if file is None:
        _write(sys.stdout, clean(text.removesuffix("\n")))
        return
    import os
    from pathlib import Path

    path = Path(file)
    unfinished = path.with_name(f".{path.name}.unfinished")
    try:
        unfinished.write_text(text, encoding="utf-8", newline="")
        os.replace(unfinished, path)
    finally:
        unfinished.unlink(missing_ok=True)
    complain(f"Written: {file}")


def width() -> int:
    """Columns to write in: the terminal's, between 40 and 100; 80 when there is none."""
    import shutil

    return max(40, min(100, shutil.get_terminal_size((80, 24)).columns))


def _write(stream: Any, text: str) -> None:
    try:
        print(text, file=stream)
    except UnicodeEncodeError:
        encoding = stream.encoding or "ascii"
        print(text.translate(_PLAINER).encode(encoding, "replace").decode(encoding), file=stream)
