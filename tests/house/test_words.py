"""What the project's files never hold: a path of one machine, the address of a package registry."""

from __future__ import annotations

import re
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
KINDS = {
    ".py",
    ".toml",
    ".md",
    ".txt",
    ".json",
    ".cfg",
    ".ini",
    ".yml",
    ".yaml",
    ".sh",
    ".css",
    ".tcss",
    ".html",
    ".sql",
    "",
}
# Built from parts, so that this file does not hold what it looks for.
MACHINE_PATH = re.compile(
    r"(?<![\w.~/])/(?:" + "|".join(["work", "home", "root", "Users", "tmp"]) + r")/[\w.-]+|\b[A-Z]:\\" + r"Users\\"
)
REGISTRY = re.compile(
    r"https?://[\w.-]*(?:"
    + "|".join(["pypi" + r"\.org", "python" + "hosted", "arti" + "factory", "npm" + "js", "nexus"])
    + r")|--index"
    + r"-url|--extra-index"
    + r"-url"
)


def kept_files() -> list[Path]:
    """Text files that git knows, or would take in."""
    told = subprocess.run(
        ["git", "ls-files", "-co", "--exclude-standard", "-z"], cwd=ROOT, capture_output=True, text=True, check=False
    )
    if told.returncode:
        return [path for path in ROOT.rglob("*") if path.is_file() and ".venv" not in path.parts]
    return [ROOT / name for name in told.stdout.split("\0") if name and (ROOT / name).is_file()]


def found_in(text: str) -> list[str]:
    """Each line that holds one of them, with its number."""
    rows = enumerate(text.splitlines(), start=1)
    return [
        f"{number}: {row.strip()[:100]}" for number, row in rows if MACHINE_PATH.search(row) or REGISTRY.search(row)
    ]


def test_no_path_of_a_machine_and_no_registry() -> None:
    found = []
    for file in kept_files():
        if file.suffix in KINDS:
            text = file.read_text(encoding="utf-8", errors="replace")
            found += [f"{file.relative_to(ROOT)}:{line}" for line in found_in(text)]
    assert not found, "\n".join(found)


@pytest.mark.parametrize(
    "line", ["open('/" + "home/ann/x')", "see /" + "work/main", "C:\\" + "Users\\ann", "https://" + "pypi.org/simple"]
)
def test_the_check_can_fail(line: str) -> None:
    assert found_in(line)


@pytest.mark.parametrize(
    "line", ["a/" + "work/b", "in/out", "https://www.w3.org/TR/webvtt1/", "the work/home balance", "~/notes"]
)
def test_the_check_lets_other_words_through(line: str) -> None:
    assert not found_in(line)
