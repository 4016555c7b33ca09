"""What was measured before in this session tells what a bare number is: `the bottle's on one sixty-five`, long after
its first pressure was read.
"""

from __future__ import annotations

from worklog_tui.extract.context import FIGURES_BACK, Context, Figure
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.talk.carry import said_just_before, scale_of
from worklog_tui.extract.tokens import Token
from worklog_tui.rulebook.quantities import Bare

NEAR, SIZE = 0.8, 0.4
"How much of the other the smaller of two values must be to be near it, and to be of its size."
OF_IT, ALIKE, SAID_SO = 1.1, 0.7, 1.25
"What speaks for a quantity: the thing was measured so, in that size; a near value of anything; one that is read off."
TOLD_ONCE = frozenset({"duration", "thread", "volume", "mass"})
"Quantities that are told once."


def figures_after(scene: Scene, drafts: list[Draft], context: Context, upto: int) -> tuple[Figure, ...]:
    """The figures told so far, newest first, one of a thing and quantity."""
    kept: dict[tuple[str, str], Figure] = {}
    new = [_figure(d, scene) for d in reversed(drafts) if d.kind == "reading" and d.main < upto]
    if not new:
        return context.figures
    for figure in (*(f for f in new if f is not None), *context.figures):
        kept.setdefault((figure.quantity, figure.name), figure)
    return tuple(kept.values())[:FIGURES_BACK]


def _figure(draft: Draft, scene: Scene) -> Figure | None:
    """What is kept of a reading; nothing of those that are told once."""
    f, amount = draft.fields, scene.tokens[draft.main].amount
    value = f["value"][0] if isinstance(f["value"], tuple) else f["value"]
    if isinstance(value, str) or not value or f["quantity"] in TOLD_ONCE:
        return None
    name = draft.thing.name if draft.thing is not None and draft.thing.name else str(f["subject"]).lower()
    thou = f["unit"] == "in" and (value < THOUSANDTHS or (amount is not None and scale_of(amount) != 1.0))
    return Figure(f["quantity"], f["unit"], value * 1000 if thou else value, 0.001 if thou else 1.0, name)


THOUSANDTHS = 0.2
"Inches below which a figure is told in thousandths."


def told_of(name: str, made: Draft, scene: Scene) -> tuple[float, Bare | None]:
    """How much the figures told before speak for a quantity at a number, and how they take a bare one."""
    if name not in scene.once(("quantities told",), lambda: {figure.quantity for figure in scene.context.figures}):
        return 0.0, None
    own = made.thing.name if made.thing is not None else ""
    return scene.once(("told of", name, made.main, own), lambda: _told_of(name, made, own, scene))


def _told_of(name: str, made: Draft, own: str, scene: Scene) -> tuple[float, Bare | None]:
    if _told_otherwise(name, made.main, scene):
        return 0.0, None
    things = scene.once(("named around", made.main), lambda: _named(made.main, scene))
    best: tuple[float, Bare | None] = (0.0, None)
    for figure in scene.context.figures:
        if figure.quantity != name:
            continue
        value = _in_its_scale(scene.tokens[made.main], figure)
        ratio = _alike(value, figure.value)
        score = OF_IT if ratio >= SIZE and (figure.name == own or figure.name in things) else 0.0
        if not score and ratio >= NEAR and _distinct(name, value, made, scene):
            score = SAID_SO if scene.tokens[made.main - 1].sense("reads") and made.main else ALIKE
        if score > best[0]:
            number = scene.tokens[made.main].value or 0.0
            best = score, Bare(figure.unit, number, number, figure.scale if value == number else 1.0)
    return best


def _in_its_scale(token: Token, figure: Figure) -> float:
    """The number in the scale of a figure, thou where that was told in thou; 0 where its unit is another one."""
    if token.amount is not None:
        return token.amount.low / figure.scale if token.amount.unit == figure.unit else 0.0
    value = token.value or 0.0
    return value / figure.scale if figure.scale != 1.0 and value < THOUSANDTHS else value


def _distinct(name: str, value: float, made: Draft, scene: Scene) -> bool:
    """Whether a bare number is so great that hardly anything else was told in such figures."""
    return name in GREAT and value >= HUNDRED and scene.tokens[made.main].amount is None


GREAT, HUNDRED = frozenset({"pressure", "speed", "compression", "voltage", "temperature"}), 100.0


def _told_otherwise(name: str, i: int, scene: Scene) -> bool:
    """Whether the words near a number, or a test that was just announced, say that it is another quantity."""
    suggested, topic = scene.suggested(i), scene.context.topic
    if name in suggested:
        return False
    said = scene.topic_before(i)
    if suggested or said is not None:
        return said != name
    if topic is not None and topic.quantity != name and topic.age <= RUNNING:
        return not topic.value or _alike(scene.tokens[i].value or 0.0, topic.value / topic.scale) >= SIZE
    last = said_just_before(scene)
    return (last is not None and last.quantity != name) or _amount_before(i, scene, name)


def _amount_before(i: int, scene: Scene, name: str) -> bool:
    """Whether an amount of something else stands before the number, and no thing between."""
    for k in range(i - 1, max(-1, i - 1 - BACK), -1):
        token = scene.tokens[k]
        if token.thing is not None and token.thing.quantities:
            return False
        if token.amount is not None:
            return name not in token.amount.quantities
    return False


RUNNING = 2
"Notes for which a test that runs takes the numbers of its size."
BACK = 14


def _alike(first: float, second: float) -> float:
    """How much of the greater one the smaller one is."""
    return min(first, second) / max(first, second) if first > 0 and second > 0 else 0.0


def _named(i: int, scene: Scene) -> frozenset[str]:
    """The names of the things around a number."""
    near = scene.tokens[max(0, i - 16) : i + 6]
    return frozenset(t.thing.name or t.thing.words.lower() for t in near if t.thing is not None)
