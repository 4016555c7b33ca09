"""No bare text reaches the screen: what is not written in the source itself goes through `literal`.

Textual reads markup in the texts of most widgets; a note that says `[/]` would stop the program, another could plant a
link.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2] / "worklog_tui"
DRAWN = [*(ROOT / "screens").rglob("*.py"), *(ROOT / "widgets").rglob("*.py"), *ROOT.glob("app.py")]

FIRST = {
    "Button", "Checkbox", "Collapsible", "Label", "Link", "Option", "RadioButton", "Selection", "Static", "TabPane",
    "Tree", "add_column", "add_leaf", "add_option", "notify", "set_label", "update",
}  # fmt: skip
EVERY = {"OptionList", "RadioSet", "add_columns", "add_options", "add_row"}
KEYWORDS = {"content", "description", "label", "message", "prompt", "title", "tooltip"}
ATTRIBUTES = {"border_subtitle", "border_title", "tooltip"}


def called(call: ast.Call) -> str:
    """The last name of what is called: `self.query_one(...).update` gives `update`."""
    return call.func.attr if isinstance(call.func, ast.Attribute) else getattr(call.func, "id", "")


class Harmless:
    """What may be drawn in one module: constants, literal(...), and names and functions that hold Content."""

    def __init__(self, tree: ast.Module) -> None:
        """Learn which names of the module hold Content."""
        self.makers = {"literal"} | {
            node.name
            for node in ast.walk(tree)
            if isinstance(node, ast.FunctionDef)
            and node.returns is not None
            and ast.unparse(node.returns).startswith("Content")
        }
        self.names = {
            node.arg
            for node in ast.walk(tree)
            if isinstance(node, ast.arg) and node.annotation and ast.unparse(node.annotation) == "Content"
        }
        for node in ast.walk(tree):
            if isinstance(node, ast.Assign) and isinstance(node.targets[0], ast.Name) and self(node.value):
                self.names.add(node.targets[0].id)

    def __call__(self, node: ast.expr) -> bool:
        """Whether the expression is safe to draw."""
        if isinstance(node, ast.Constant):
            return True
        if isinstance(node, ast.JoinedStr):
            return all(isinstance(part, ast.Constant) for part in node.values)
        if isinstance(node, ast.Call):
            inside = ast.unparse(node.func)
            return called(node) in self.makers or (inside.startswith("Content") and all(map(self, node.args)))
        if isinstance(node, ast.IfExp):
            return self(node.body) and self(node.orelse)
        if isinstance(node, ast.BinOp):
            return self(node.left) and self(node.right)
        if isinstance(node, ast.Tuple | ast.List):
            return all(map(self, node.elts))
        return isinstance(node, ast.Name) and node.id in self.names


def bare_places(source: str) -> Iterator[str]:
    """Line and expression of each text that is drawn without `literal`."""
    tree = ast.parse(source)
    harmless = Harmless(tree)
    for node in ast.walk(tree):
        drawn: list[ast.expr] = []
        if isinstance(node, ast.Call) and called(node) in FIRST | EVERY:
            drawn = list(node.args if called(node) in EVERY else node.args[:1])
            drawn += [keyword.value for keyword in node.keywords if keyword.arg in KEYWORDS]
        elif isinstance(node, ast.Assign) and any(getattr(target, "attr", "") in ATTRIBUTES for target in node.targets):
            drawn = [node.value]
        elif (
            isinstance(node, ast.FunctionDef)
            and node.name == "render"
            and node.returns
            and ast.unparse(node.returns) == "str"
        ):
            yield f"{node.lineno}: render gives str, which is read as markup"
        yield from (f"{part.lineno}: {ast.unparse(part)}" for part in drawn if not harmless(part))


@pytest.mark.parametrize("file", DRAWN, ids=lambda file: str(file.relative_to(ROOT)))
def test_only_literal_text_is_drawn(file: Path) -> None:
    found = [f"{file.relative_to(ROOT.parent)}:{place}" for place in bare_places(file.read_text(encoding="utf-8"))]
    assert not found, "use worklog_tui.widgets.literal.literal(...) for:\n" + "\n".join(found)


@pytest.mark.parametrize(
    "source",
    [
        "Static(note.words)",
        "Label(f'{name}')",
        "self.query_one('#a', Static).update(words)",
        "self.notify('kept ' + words)",
        "self.notify('kept', title=words)",
        "table.add_row('1', words)",
        "self.border_title = name",
        "OptionList('a', words)",
        "Static(words if words else 'none')",
        "Static(Content.from_markup(words))",
        "class A:\n    def render(self) -> str: return ''",
    ],
)
def test_bare_text_is_found(source: str) -> None:
    assert list(bare_places(source))


@pytest.mark.parametrize(
    "source",
    [
        "Static('Open items')",
        "Static(literal(words))",
        "self.notify(literal(words), title='kept')",
        "line = literal(words)\nStatic(line)",
        "def head() -> Content: ...\nStatic(head())",
        "def draw(line: Content): Static(line)",
        "Static(Content.assemble(literal(a), ' ', literal(b)))",
        "table.add_row('1', literal(words))",
        "self.border_title = 'note'",
    ],
)
def test_harmless_text_is_let_through(source: str) -> None:
    assert not list(bare_places(source))
