"""Small whole numbers that count things (`two bolts`), and those that are read off a gauge all the same."""

from __future__ import annotations

from worklog_tui.extract.finders.carry import amount_ahead, carried, stands_free
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.subjects import which_at
from worklog_tui.extract.tokens import Token


def only_a_count(token: Token, name: str, made: Draft, scene: Scene) -> bool:
    """A small whole number counts things, unless the quantity has such values and, spelled out, its thing was said and
    it is the one that is being measured.
    """
    assert token.value is not None
    if token.value != int(token.value) or token.value > 12 or which_at(scene, made.main)[1] == made.main + 1:
        return False
    if (ahead := amount_ahead(scene, made.main)) is not None and name in ahead.quantities:
        return False
    if _told_against(token, name, made, scene):
        return False
    topic = scene.topic_before(made.main) or (scene.context.topic.quantity if scene.context.topic else "")
    read = not made.rule.gives.get("bare") and topic == name != "turns" and stands_free(scene.tokens, made.main)
    if token.value == 0 and read:
        return False
    if name not in SMALL:
        return True
    if read and scene.topic_before(made.main) == name and scene.tokens[made.main - 1].sense("reads", "book"):
        return False  # `the timing light says four before`
    if not token.low.isalpha():
        return token.value <= 3 and name in ("pressure", "voltage") and "subject" in made.filled
    told = not made.rule.gives.get("bare") and stands_free(scene.tokens, made.main)
    if (read or told) and carried(scene, made.main, name) is not None:
        return False
    return "subject" in made.filled or (topic != name and carried(scene, made.main, name) is None)


def _told_against(token: Token, name: str, made: Draft, scene: Scene) -> bool:
    """`Six thou. Should be one to two`, `nine seconds, and the book gives four`, `left should be thirty, it's eleven`:
    a small number that is set beside one that was told.
    """
    if carried(scene, made.main, name) is None or not stands_free(scene.tokens, made.main):
        return False
    before = scene.tokens[max(0, made.main - 4) : made.main]
    asked = any(t.sense("book") for t in before)
    is_so = any(t.sense("copula") or t.low in ("its", "shes", "hes", "theyre") for t in before[-1:])
    return asked or token.high is not None or (is_so and any("book" in t.classes for t in scene.tokens[: made.main]))


SMALL = frozenset({"gap", "voltage", "turns", "angle", "pressure", "length"})
