"""Reads grammar folders: every TOML file as data, with a stamp over all their bytes."""

from __future__ import annotations

import hashlib
import marshal
import tomllib
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Any

from worklog_tui.rulebook.mistakes import GrammarMistake, Mistake, no_toml

READER_VERSION = "224"
"Raised whenever the code of the reader would read old notes differently."

FORM = "10"
"Raised whenever what is made of the grammars and kept has another form."

Files = dict[str, dict[str, Any]]


def grammar_files(folders: Sequence[Path]) -> list[tuple[str, Path]]:
    """(name within its folder, path) of every grammar file; folders in order, files by name. Fault files are left
    out.
    """
    found: list[tuple[str, Path]] = []
    for number, folder in enumerate(folders):
        for path in sorted(folder.rglob("*.toml")):
            name = path.relative_to(folder).as_posix()
            if not name.startswith(("diagnosis/", "trade/")) and name not in ("cautions.toml", "comments.toml"):
                found.append((name if number == 0 else f"own/{name}", path))
    return found


def stamp_of(contents: Iterable[tuple[str, bytes]]) -> str:
    """SHA-256 over all files and the reader's version."""
    digest = hashlib.sha256(READER_VERSION.encode())
    for name, data in contents:
        digest.update(f"\0{name}\0{len(data)}\0".encode() + data)
    return digest.hexdigest()


def parse_all(contents: list[tuple[str, bytes]]) -> Files:
    """Every file as data; a GrammarMistake that lists all that must be mended in how they are written."""
    from worklog_tui.rulebook.reading_keys import mistakes_in  # seldom needed: what was read once is kept

    files: Files = {}
    mistakes: list[Mistake] = []
    texts: dict[str, str] = {}
    for name, data in contents:
        try:
            texts[name] = data.decode("utf-8-sig")
            files[name] = tomllib.loads(texts[name])
        except UnicodeDecodeError:
            mistakes.append(Mistake(name, 0, "it is not UTF-8 text", "save it as UTF-8"))
        except tomllib.TOMLDecodeError as error:
            mistakes.append(no_toml(name, error))
    mistakes += mistakes_in(files, texts) if not mistakes else []  # what a lost file holds would be missed everywhere
    if mistakes:
        raise GrammarMistake(mistakes)
    return files


def _name(stamp: str) -> str:
    return f"grammar-{FORM}-{stamp[:32]}"


def kept(cache: Path | None, stamp: str) -> Any:
    """What was made from files of this stamp before, or None."""
    if cache is None:
        return None
    try:
        return marshal.loads((cache / _name(stamp)).read_bytes())
    except (OSError, EOFError, ValueError, TypeError):
        return None


def has_kept(cache: Path, stamp: str) -> bool:
    """Whether something made from files of this stamp is there."""
    return (cache / _name(stamp)).is_file()


def keep(cache: Path | None, stamp: str, made: Any) -> None:
    """Keeps what was made, for the next start; a place that cannot be written is no harm."""
    if cache is None:
        return
    try:
        cache.mkdir(parents=True, exist_ok=True)
        for old in cache.glob("grammar-*"):
            old.unlink(missing_ok=True)
        part = cache / f".{_name(stamp)}"
        part.write_bytes(marshal.dumps(made))
        part.replace(cache / _name(stamp))
    except OSError:
        return
