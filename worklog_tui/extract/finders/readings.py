"""Readings: a number with what it measures, of what, and how it is meant."""

from __future__ import annotations

from worklog_tui.extract.finders.quantity import bare_reading, quantity_of
from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.subjects import earlier, nearest, remembered, which_near, with_which
from worklog_tui.extract.tokens import Thing, Token


def draft(match: Match, scene: Scene) -> Draft | None:
    """The reading of a match; None when nothing tells what the number measures."""
    gives = match.rule.gives
    at = match.slots.get(str(gives["value"]).strip("<>"))
    if at is None:
        return None
    made = Draft("reading", at, at, match.rule, {}, confidence=match.rule.confidence, first_used=match.first, last_used=match.last - 1)
    token = scene.tokens[at]
    _subject(made, match, scene)
    read = _amount(made, token, scene, str(gives.get("quantity", "")))
    if read is None:
        return None
    quantity, value, unit = read
    made.fields = {
        "quantity": quantity, "value": value, "unit": unit, "role": gives.get("role", ""),
        "subject": _words(made, match, scene, quantity), "bound": token.amount.bound if token.amount else "",
        "rough": bool(token.amount and token.amount.rough), "condition": gives.get("condition", ""),
    }  # fmt: skip
    return made


def _subject(made: Draft, match: Match, scene: Scene) -> None:
    said = str(made.rule.gives.get("subject", ""))
    if said.startswith("<"):
        made.thing_at = match.slots.get(said.strip("<>"))
    elif said:
        made.thing = Thing(said, said, "quality")
        return
    else:
        made.thing_at = nearest(scene, made.main, _measurable)
    if made.thing_at is None:
        made.filled.add("subject")
        k = earlier(scene, made.main, _measurable)
        made.thing = scene.tokens[k].thing if k is not None else remembered(scene, _measurable)
        return
    made.thing = scene.tokens[made.thing_at].thing


def _measurable(thing: Thing) -> bool:
    return thing.kind != "tool"


def _amount(made: Draft, token: Token, scene: Scene, told: str) -> tuple[str, float | tuple[float, float] | str, str] | None:
    """(quantity, value, unit) of a thread, an amount or a bare number."""
    if token.thread is not None:
        return "thread", token.thread.designation, ""
    if token.amount is not None:
        amount = token.amount
        quantity = told or quantity_of(amount.quantities, made, scene)
        value = amount.low if amount.low == amount.high else (amount.low, amount.high)
        return (quantity, value, amount.unit) if quantity else None
    if token.value is None:
        return None
    return bare_reading(token, made, scene, told)


def _words(made: Draft, match: Match, scene: Scene, quantity: str) -> str:
    """The subject in the speaker's words, with which one it is."""
    which_at = match.slots.get("which")
    which = scene.tokens[which_at].which or scene.tokens[which_at].low if which_at is not None else which_near(scene, made.main)
    topic = scene.context.topic
    if quantity == "compression" and which.isdigit() and (made.thing is None or made.thing.per != "cylinder" or "subject" in made.filled):
        return f"cylinder {which}"
    if made.thing is None:
        words = topic.words if topic and topic.quantity == quantity else ""
        return with_which(words, which) if words else (f"cylinder {which}" if which.isdigit() else which)
    if made.thing.which and not ("subject" in made.filled and which):
        return made.thing.words
    return with_which(made.thing.words, which)
