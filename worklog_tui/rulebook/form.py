"""The form in which what is made of the grammars is kept: plain values, so that they are read back fast."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, NamedTuple

if TYPE_CHECKING:
    from worklog_tui.rulebook import texts
    from worklog_tui.rulebook.files import Files
    from worklog_tui.rulebook.misheard import Kept
    from worklog_tui.rulebook.patterns import Slots
    from worklog_tui.rulebook.shorthand import Kept as Shorthand
    from worklog_tui.rulebook.signs import Packed as PackedSigns
    from worklog_tui.rulebook.skeletons import Kept as Skeletons
    from worklog_tui.rulebook.steps import Joined
    from worklog_tui.rulebook.vocabulary import Packed


class Made(NamedTuple):
    """All of it."""

    files: Files
    rules: tuple[tuple[Any, ...], ...]
    "The fields of each rule, without what it says and its examples, which only its file holds."
    says: texts.Packed
    "What each rule says."
    patterns: texts.Packed
    slots: tuple[Slots, ...]
    "The pattern of each rule."
    steps: Joined
    "The steps of all rules."
    named: frozenset[str]
    "The classes that rules name."
    table: Packed
    signs: PackedSigns
    "The sets of classes that a token can have."
    misheard: Kept
    shorthand: Shorthand
    "Shorthand of typed lines and what it is in whole words."
    skeletons: Skeletons
    "Which words are left without their vowels, and of which they are."
