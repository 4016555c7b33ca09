"""One idea a file, small parts, plain names, a sentence for everything public."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
MODULES = sorted((ROOT / "worklog_tui").rglob("*.py"))
LONGEST_MODULE, LONGEST_FUNCTION = 250, 40
NO_NAMES = {"utils", "util", "helpers", "helper", "manager", "handler", "common", "misc"}
TEXTUAL_HOOKS = {"compose", "render", "render_line", "get_content_height", "get_content_width"}
TEXTUAL_PREFIXES = ("action_", "on_", "watch_", "validate_", "compute_")

Named = ast.FunctionDef | ast.AsyncFunctionDef | ast.ClassDef


def place(file: Path, node: Named | None = None) -> str:
    """Where something stands, to be clicked on."""
    where = file.relative_to(ROOT) if file.is_relative_to(ROOT) else file
    return f"{where}:{node.lineno} {node.name}" if node else f"{where}"


def functions(tree: ast.Module) -> Iterator[ast.FunctionDef | ast.AsyncFunctionDef]:
    """Every function and method, nested ones too."""
    yield from (node for node in ast.walk(tree) if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef))


def public(body: list[ast.stmt]) -> Iterator[Named]:
    """Public classes and functions of a module, and the public methods of those classes; overloads once."""
    for node in body:
        if isinstance(node, Named) and not node.name.startswith("_"):
            yield node
            if isinstance(node, ast.ClassDef):
                yield from public(node.body)


def told_elsewhere(node: Named) -> bool:
    """Whether a name has its sentence elsewhere: at its getter, its base, its key binding, or in Textual's guide."""
    if node.name in TEXTUAL_HOOKS or node.name.startswith(TEXTUAL_PREFIXES):
        return True
    marks = {ast.unparse(mark).split("(")[0] for mark in node.decorator_list}
    return any(mark == "override" or mark == "overload" or mark.endswith((".setter", ".override")) for mark in marks)


def parsed(file: Path) -> ast.Module:
    """The module's tree."""
    return ast.parse(file.read_text(encoding="utf-8"))


def too_long(file: Path) -> list[str]:
    """Functions over the limit, the lines of their docstring not counted."""
    found = []
    for node in functions(parsed(file)):
        sentence = ast.get_docstring(node, clean=False)
        lines = (node.end_lineno or node.lineno) - node.lineno + 1 - (sentence.count("\n") + 1 if sentence else 0)
        if lines > LONGEST_FUNCTION:
            found.append(f"{place(file, node)}: {lines} lines")
    return found


def silent(file: Path) -> list[str]:
    """The module, classes and functions without a docstring."""
    tree = parsed(file)
    found = [] if ast.get_docstring(tree) else [f"{place(file)}: no docstring"]
    nodes = [node for node in public(tree.body) if not told_elsewhere(node)]
    told = {node.name for node in nodes if ast.get_docstring(node)}  # one may tell it for all its namesakes
    return found + [f"{place(file, node)}: no docstring" for node in nodes if node.name not in told]


@pytest.mark.parametrize("file", MODULES, ids=place)
def test_modules_and_functions_are_short(file: Path) -> None:
    lines = file.read_text(encoding="utf-8").count("\n")
    assert lines <= LONGEST_MODULE, f"{place(file)} has {lines} lines; one idea a file, {LONGEST_MODULE} at most"
    found = too_long(file)
    assert not found, f"{LONGEST_FUNCTION} lines a function at most:\n" + "\n".join(found)


@pytest.mark.parametrize("file", MODULES, ids=place)
def test_everything_public_says_what_it_is(file: Path) -> None:
    found = silent(file)
    assert not found, "\n".join(found)


@pytest.mark.parametrize("file", MODULES, ids=place)
def test_names_say_what_a_module_holds(file: Path) -> None:
    parts = set(file.relative_to(ROOT).with_suffix("").parts)
    assert not parts & NO_NAMES, f"{place(file)}: name it after what it holds"


def test_the_checks_can_fail(tmp_path: Path) -> None:
    file = tmp_path / "a.py"
    file.write_text("def long():\n" + "    x = 1\n" * 40 + "class A:\n    '''A.'''\n    def b(self): ...\n")
    assert [line.split(":", 1)[1] for line in too_long(file)] == ["1 long: 41 lines"]
    assert len(silent(file)) == 3
