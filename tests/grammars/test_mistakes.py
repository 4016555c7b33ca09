"""Every message about a grammar file has a broken file here, and names that file, the line and what mends it.

The broken files are in `broken_files.py`. A place in the code that makes a message and that none of them meets
fails the last test.
"""

from __future__ import annotations

import ast
import shutil
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

import pytest

import worklog_tui
from tests.grammars.broken_files import BROKEN, Broken
from worklog_tui import places
from worklog_tui.bench.grammar_files import mistakes
from worklog_tui.rulebook.mistakes import Mistake
from worklog_tui.rulebook.says import SaysError
from worklog_tui.rulebook.units import BadUnits

SOURCE = Path(worklog_tui.__file__).parent
MAKERS = frozenset({"Mistake", "SaysError", "BadUnits", "mistake", "no_toml", "_unknown"})
"What makes a message, by the name that it is called by."
FEW = ("units.toml", "numerals.toml", "owed.toml", "comments.toml", "publishing.toml", "replies.toml",
       "sayings/follow_ups.toml")  # fmt: skip
"The files of ours that a folder of a person's own is looked through with; the rest would only take time."


@pytest.fixture(scope="module")
def ours(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("ours")
    for name in FEW:
        (folder / name).parent.mkdir(exist_ok=True)
        shutil.copy(places.grammars() / name, folder / name)
    return folder


def written(broken: Broken, own: Path) -> Path:
    (own / broken.file).parent.mkdir(parents=True, exist_ok=True)
    (own / broken.file).write_bytes(broken.text.encode("utf-8", "surrogateescape"))
    return own


def noting(made: type, met: set[tuple[str, int]], patch: pytest.MonkeyPatch) -> None:
    """From now on whoever makes one of these leaves his place."""
    before = made.__init__  # type: ignore[misc]  # of the class itself

    def init(self: object, *given: object, **named: object) -> None:
        frame = sys._getframe(1)
        while frame.f_back and Path(frame.f_code.co_filename).is_relative_to(SOURCE):
            met.add((frame.f_code.co_filename, frame.f_lineno))
            frame = frame.f_back
        before(self, *given, **named)

    patch.setattr(made, "__init__", init)


class Tried(NamedTuple):
    """What the program says of the broken files, and the places in the code that it comes from."""

    told: dict[Broken, list[str]]
    met: set[tuple[str, int]]


@pytest.fixture(scope="module")
def tried(ours: Path, tmp_path_factory: pytest.TempPathFactory) -> Tried:
    met: set[tuple[str, int]] = set()
    with pytest.MonkeyPatch.context() as patch:
        for made in (Mistake, SaysError, BadUnits):
            noting(made, met, patch)
        return Tried({b: mistakes([ours, written(b, tmp_path_factory.mktemp("own"))]) for b in BROKEN}, met)


@pytest.mark.parametrize("broken", BROKEN, ids=lambda b: f"{b.file}: {b.says}")
def test_a_mistake_names_its_file_its_line_and_its_cure(broken: Broken, tried: Tried) -> None:
    mine = [one for one in tried.told[broken] if broken.says in one]
    assert mine, tried.told[broken]
    place, _, cure = mine[0].partition(broken.says)
    line = next((n for n, text in enumerate(broken.text.splitlines(), 1) if text.endswith("# here")), 0)
    assert place.startswith(f"own/{broken.file}, line {line}: " if line else f"own/{broken.file}"), mine[0]
    assert broken.cure in cure, mine[0]


def calls() -> Iterator[tuple[str, int, int]]:
    """File, first and last line of each call in the code that makes a message about a grammar file."""
    for path in sorted(SOURCE.rglob("*.py")):
        text = path.read_text(encoding="utf-8")
        if not any(room in text for room in ("rulebook.mistakes", "rulebook.says", "rulebook.word_files")) and (
            path.name not in ("says.py", "units.py")
        ):
            continue
        for node in ast.walk(ast.parse(text)):
            if isinstance(node, ast.Call):
                called = node.func
                name = called.attr if isinstance(called, ast.Attribute) else getattr(called, "id", "")
                if name in MAKERS:
                    yield str(path), node.lineno, node.end_lineno or node.lineno


def test_every_message_has_a_broken_file(tried: Tried) -> None:
    places_of_messages = list(calls())
    assert len(places_of_messages) >= 50
    without = [
        f"{Path(file).relative_to(SOURCE)}, line {first}"
        for file, first, last in places_of_messages
        if not any(at == file and first <= line <= last for at, line in tried.met)
    ]
    assert not without
