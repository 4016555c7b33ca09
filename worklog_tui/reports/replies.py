"""Draft replies to viewers, from the templates of `replies.toml`: plain sentences to be read before they go out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from pathlib import Path
from string import Template

from worklog_tui.rulebook.word_files import WordFile, word_files

FILE = "replies.toml"
KINDS = {"question": ("answered", "known", "perhaps", "open"), "suggestion": ("answered", "known", "speaks", "open")}
_FIELDS = frozenset({"about", "where", "said", "cause", "count"})


@dataclass(frozen=True, slots=True)
class Replies:
    """The templates, by kind of comment and by what the log has to say to it."""

    templates: dict[tuple[str, str], Template] = field(default_factory=dict)

    def to(self, kind: str, case: str, **said: str) -> str:
        """A reply on one line; empty when there is no template."""
        template = self.templates.get((kind, case))
        return " ".join(template.safe_substitute(said).split()) if template else ""


def load_replies(folders: Sequence[Path]) -> Replies:
    """The shipped templates, and the person's own in their place; a GrammarMistake says what to mend."""
    found: dict[tuple[str, str], Template] = {}
    for file in word_files(folders, FILE):
        for kind, rows in file.table.items():
            if not isinstance(rows, dict):
                cure = 'write [question], and under it open = "the reply"'
                raise file.mistake(f"{kind} is no table of replies", cure, kind)
            for case, text in rows.items():
                found[kind, case] = _template(file, kind, case, text)
    return Replies(found)


def _template(file: WordFile, kind: str, case: str, text: object) -> Template:
    if case not in KINDS.get(kind, ()):
        cure = "; ".join(f"under [{name}] stand {', '.join(cases)}" for name, cases in KINDS.items())
        raise file.mistake(f"nothing uses [{kind}] {case}", cure, case)
    made = Template(str(text))
    if not made.is_valid() or not set(made.get_identifiers()) <= _FIELDS:
        fields = ", ".join(f"${name}" for name in sorted(_FIELDS))
        says, line = f"[{kind}] {case} has a $ that means nothing", str(text).partition("\n")[0]
        raise file.mistake(says, f"use {fields}, and $$ for a dollar sign", line)
    return made
