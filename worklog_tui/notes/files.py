"""A file with a session's words: from bytes to text, whatever program wrote it."""

from __future__ import annotations

import codecs
import re
from dataclasses import replace
from pathlib import Path

from worklog_tui.notes.cleaning import sanitise
from worklog_tui.notes.lines import ReadSession
from worklog_tui.notes.reading import read_text
from worklog_tui.notes.refusals import Unreadable

LARGEST = 64 * 1024 * 1024
"Bytes of the largest file that is read."

_MARKS = (
    (codecs.BOM_UTF8, "utf-8"),
    (codecs.BOM_UTF32_LE, "utf-32"),
    (codecs.BOM_UTF32_BE, "utf-32"),
    (codecs.BOM_UTF16_LE, "utf-16"),
    (codecs.BOM_UTF16_BE, "utf-16"),
)
_CONTROLS = re.compile(rb"[\x00-\x08\x0e-\x1a\x1c-\x1f]")
_SAMPLE = 64 * 1024


def read_session_file(path: Path) -> ReadSession:
    """The session in a file; raises Unreadable with one sentence that says what to do."""
    text, doubt = decoded(_bytes_of(path), _shown(path))
    if not sanitise(text).strip():
        raise Unreadable(f"{_shown(path)} is empty; choose a file with notes or captions in it.")
    read = read_text(text)
    return replace(read, complaints=(doubt, *read.complaints)) if doubt else read


def decoded(data: bytes, name: str) -> tuple[str, str]:
    """The text of the bytes, and a complaint when some fit no character; raises Unreadable when it is no text."""
    for mark, encoding in _MARKS:
        if data.startswith(mark):
            return _with_loss(data.removeprefix(mark) if encoding == "utf-8" else data, encoding, name)
    encoding = _unmarked_utf16(data)
    if encoding:
        return _with_loss(data, encoding, name)
    if _is_binary(data):
        raise Unreadable(f"{name} is not a text file; choose the captions or the notes, not the film or a picture.")
    try:
        return data.decode("utf-8"), ""
    except UnicodeDecodeError:
        text, doubt = _with_loss(data, "utf-8", name)
    lost = text.count("\ufffd")
    if sum(not char.isascii() for char in text) - lost > lost:
        return text, doubt
    return data.decode("cp1252", errors="replace"), ""


def _bytes_of(path: Path) -> bytes:
    name = _shown(path)
    try:
        if path.is_dir():
            raise Unreadable(f"{name} is a folder; choose one file in it.")
        if not path.exists():
            raise Unreadable(f"There is no file {name}; check its name and folder.")
        if path.is_file() and path.stat().st_size > LARGEST:
            raise Unreadable(f"{name} is larger than 64 MB; choose its captions or cut it into parts.")
        with path.open("rb") as file:
            data = file.read(LARGEST + 1)
    except PermissionError as refusal:
        raise Unreadable(f"{name} may not be read by you; change its permissions or copy it.") from refusal
    except (OSError, ValueError) as refusal:
        raise Unreadable(f"{name} could not be read; check the disk and the name, then try again.") from refusal
    if len(data) > LARGEST:
        raise Unreadable(f"{name} is larger than 64 MB; choose its captions or cut it into parts.")
    return data


def _shown(path: Path) -> str:
    return sanitise(str(path)).replace("\n", " ")


def _with_loss(data: bytes, encoding: str, name: str) -> tuple[str, str]:
    text = data.decode(encoding, errors="replace")
    lost = text.count("\ufffd")
    return text, f"{name}: {lost} characters could not be read and show as \ufffd" if lost else ""


def _unmarked_utf16(data: bytes) -> str:
    """The byte order of UTF-16 without a mark, known by the noughts beside Latin letters; empty for anything else."""
    sample = data[:_SAMPLE]
    pairs = len(sample) // 2
    if pairs < 2:
        return ""
    high, low = sample[0::2].count(0), sample[1::2].count(0)
    if low > 0.4 * pairs and high < 0.05 * pairs:
        return "utf-16-le"
    return "utf-16-be" if high > 0.4 * pairs and low < 0.05 * pairs else ""


def _is_binary(data: bytes) -> bool:
    """Whether the bytes hold more control characters than any text; a stray nought is forgiven."""
    sample = data[:_SAMPLE]
    return len(_CONTROLS.findall(sample)) > 1 + len(sample) // 50
