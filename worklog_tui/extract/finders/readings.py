"""Readings: a number with what it measures, of what, and how it is meant."""

from __future__ import annotations

from worklog_tui.extract.finders.quantity import bare_reading, degrees, quantity_of, suits, support
from worklog_tui.extract.finders.switching import switch_point
from worklog_tui.extract.finders.times import DAYS, of_running, of_work
from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.subjects import Fits, earlier, remembered, which_at, with_which
from worklog_tui.extract.tokens import Thing, Token


def draft(match: Match, scene: Scene) -> Draft | None:
    """The reading of a match; None when nothing tells what the number measures."""
    gives = match.rule.gives
    at = match.slots.get(str(gives["value"]).strip("<>"))
    if at is None:
        return None
    made = Draft(
        "reading",
        at,
        at,
        match.rule,
        {},
        confidence=match.rule.confidence,
        first_used=match.first,
        last_used=match.last - 1,
    )
    token = scene.tokens[at]
    _subject(made, match, scene)
    read = _amount(made, token, scene, str(gives.get("quantity", "")))
    if read is None or (read[0] != "gap" and _only_a_word(match, scene)):
        return None
    quantity, value, unit = read
    made.fields = {
        "quantity": quantity, "value": value, "unit": unit, "role": gives.get("role", ""),
        "subject": _words(made, match, scene, quantity), "bound": token.amount.bound if token.amount else "",
        "rough": bool(token.amount and token.amount.rough), "condition": gives.get("condition", ""),
    }  # fmt: skip
    return made


def _only_a_word(match: Match, scene: Scene) -> bool:
    """`in` and `ex` are valves only where clearances are measured."""
    at = match.slots.get("which")
    return at is not None and scene.tokens[at].low in ("in", "ex")


def _subject(made: Draft, match: Match, scene: Scene) -> None:
    """The thing that the number is of: as the rule says, else the nearest one that it can be of, else what is talked
    of.
    """
    said = str(made.rule.gives.get("subject", ""))
    if said and not said.startswith("<"):
        made.thing = Thing(said, said, "quality")
        return
    wanted = _wanted(made, scene)

    def meant(thing: Thing) -> bool:
        if thing.kind == "fastener" and not HELD & set(wanted):
            return False
        return (_measurable(thing) or thing.kind == "fastener") and any(suits(thing, q, scene.book.quantities.get(q)) for q in wanted)

    made.thing_at = match.slots.get(said.strip("<>")) if said else None
    named = scene.tokens[made.thing_at].thing if made.thing_at is not None else None
    if named is not None and not (_measurable(named) or meant(named)):
        made.thing_at = None
    if made.thing_at is None:
        made.thing_at = next(
            (k for fits in (meant, _measurable) if (k := _of(scene, made.main, fits)) is not None), None
        )
    if made.thing_at is not None:
        made.thing = scene.tokens[made.thing_at].thing
    if made.thing is None or _only_names_the_test(made.thing, scene):
        _from_talk(made, scene, meant)


SUITED_LIFE = 2
"Notes for which a thing that the number suits comes before a nearer one that it does not."


def _from_talk(made: Draft, scene: Scene, meant: Fits) -> None:
    """The subject from earlier words: of the sentence first, then of the last notes, the newest that suits."""

    def part(thing: Thing) -> bool:
        return (_measurable(thing) or meant(thing)) and not _only_names_the_test(thing, scene)

    def fitting(thing: Thing) -> bool:
        return meant(thing) and part(thing)

    k = earlier(scene, made.main, fitting)
    found = scene.tokens[k].thing if k is not None else remembered(scene, fitting, SUITED_LIFE)
    if found is None and made.thing is None:
        k = earlier(scene, made.main, part)
        found = scene.tokens[k].thing if k is not None else remembered(scene, part)
    if found is not None and (made.thing is None or meant(found)):
        made.thing, made.thing_at = found, None
    if made.thing_at is None:
        made.filled.add("subject")


def _only_names_the_test(thing: Thing, scene: Scene) -> bool:
    """`gap`, `volts`: a word for the quantity alone, not for what it is of."""
    return thing.kind == "quality" and " " not in thing.name and thing.name in scene.book.topics


def _wanted(made: Draft, scene: Scene) -> tuple[str, ...]:
    """The quantities that the number may be, from its unit or from the running test."""
    amount = scene.tokens[made.main].amount
    if amount:
        return amount.quantities
    topic = scene.topic_before(made.main) or (scene.context.topic.quantity if scene.context.topic else "")
    return (topic,) if topic else ()


def _of(scene: Scene, i: int, fits: Fits) -> int | None:
    """The nearest thing before the number in its clause; one after it only where a word joins them or they stand
    together.
    """
    span = scene.clause(i)
    if _describes_next(scene, i):
        return i + 1
    before = [k for k in scene.things(span) if k < i and fits(scene.tokens[k].thing)]  # type: ignore[arg-type]
    if before:
        return before[-1]
    for k in range(i + 1, min(i + 4, span.stop)):
        token = scene.tokens[k]
        if token.thing is not None:
            joined = all(t.sense("article", "all") for t in scene.tokens[i + 1 : k]) or any(
                t.low in JOINING for t in scene.tokens[i + 1 : k]
            )
            return k if joined and fits(token.thing) else None
        if token.kind in ("comma", "amount", "number"):
            return None
    return None


HELD = frozenset({"torque", "thread"})
"Quantities of fasteners."
ADJECTIVES = (" volt", " amp", " inch", " foot", " litre", " gallon", " watt", " millimeter", " millimetre", " mil", "-inch", "-volt", "-amp")


def _describes_next(scene: Scene, i: int) -> bool:
    """`a forty-one inch belt`, `the six volt coil`: the unit in the singular right before a part is a part of its name."""
    if i + 1 >= len(scene.tokens) or scene.tokens[i].kind != "amount":
        return False
    thing, amount = scene.tokens[i + 1].thing, scene.tokens[i].amount
    if thing is None or amount is None or thing.kind in ("quality", "fluid", "tool", "unknown"):
        return False
    return scene.said(i, i).lower().endswith(ADJECTIVES) and amount.low > 1


JOINING = frozenset("on of in for at across to from through between".split())


def _measurable(thing: Thing) -> bool:
    return thing.kind not in ("tool", "unknown", "fastener") and thing.system != "instruments and gauges"


def _amount(
    made: Draft, token: Token, scene: Scene, told: str
) -> tuple[str, float | tuple[float, float] | str, str] | None:
    """(quantity, value, unit) of a thread, an amount or a bare number."""
    if token.thread is not None:
        return "thread", token.thread.designation, ""
    if token.amount is not None:
        amount = token.amount
        quantity = told or quantity_of(amount.quantities, made, scene)
        days = DAYS.get(amount.unit, 1)
        value = amount.low * days if amount.low == amount.high else (amount.low * days, amount.high * days)
        if quantity in ("duration", "age") and not of_work(made, scene):
            made.confidence = 0.45
        if len(amount.quantities) > 2 and quantity and "subject" in made.filled and not support(quantity, made, scene):
            made.confidence = 0.45  # pounds of money, as likely as not
        if quantity == "leakage" and not support(quantity, made, scene):
            made.confidence = 0.45  # a share of anything
        unit = degrees(amount.low, scene) if (quantity, amount.unit) == ("temperature", "deg") else amount.unit
        return (quantity, value, "day" if amount.unit in DAYS else unit) if quantity else None
    if token.kind == "ratio" and token.value is not None:
        return "ratio", token.value, ""
    if token.value is None:
        return None
    return bare_reading(token, made, scene, told)


def _of_the_book(scene: Scene, i: int) -> bool:
    """What the book says is of all of them, not of the one that was measured last."""
    return any(t.sense("book") for t in scene.tokens[scene.clause(i).start : i])


ENDS_OF_ENGINE = frozenset("left right left-hand right-hand lh rh front rear back nearside offside".split())


def _words(made: Draft, match: Match, scene: Scene, quantity: str) -> str:
    """The subject in the speaker's words, with which one it is."""
    said = match.slots.get("which")
    which, k = (
        (scene.tokens[said].which or scene.tokens[said].low, said) if said is not None else which_at(scene, made.main)
    )
    thing, topic = made.thing, scene.context.topic
    filled = "subject" in made.filled
    if filled and not which and topic and topic.quantity == quantity and not _of_the_book(scene, made.main):
        which = scene.context.which
    newer = bool(which) and (made.thing_at is None or k > made.thing_at)
    if quantity == "compression" and which.isdigit() and (newer or thing is None or thing.per != "cylinder"):
        return f"cylinder {which}"
    if quantity == "compression" and which in ENDS_OF_ENGINE and (thing is None or _only_names_the_test(thing, scene)):
        return f"{which} cylinder"
    if quantity == "compression" and not which:
        return (
            "cylinder 1"
            if scene.machine.cylinders == 1
            else thing.words
            if thing and thing.per == "cylinder"
            else "compression"
        )
    if quantity == "pressure" and (switching := switch_point(scene, made.main)):
        made.thing, made.thing_at = None, None
        return switching
    if of_running(made, scene, quantity):
        made.thing, made.thing_at = scene.engine(), None
        made.filled.add("subject")
        return made.thing.words
    if (
        filled
        and topic
        and topic.quantity == quantity
        and topic.words
        and (thing is None or not suits(thing, quantity, None))
    ):
        return with_which(topic.words, which)
    if thing is None:
        return f"cylinder {which}" if which.isdigit() else which
    if thing.which and newer and thing.words.endswith(" " + thing.which):
        return with_which(thing.words.removesuffix(" " + thing.which), which)
    if thing.which and not newer:
        return thing.words
    return with_which(thing.words, which)
