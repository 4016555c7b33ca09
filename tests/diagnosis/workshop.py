"""Invented logs for the tests: a few words build a history."""

from __future__ import annotations

from worklog_tui.model import (
    Fact,
    Finding,
    FollowUp,
    History,
    Machine,
    Note,
    OpenItem,
    Reading,
    Session,
    SessionRecord,
    Span,
    Suspect,
    Work,
)  # fmt: skip

PUMP = Machine("Ditch pump", "single-cylinder petrol water pump", "petrol", "magneto", 1)
"An invented machine that most tests use."


class Log:
    """Notes and facts of an invented session, one fact a note."""

    def __init__(self, machine: Machine = PUMP) -> None:
        self.machine = machine
        self.sessions: list[tuple[list[Note], list[Fact]]] = [([], [])]

    def session(self) -> Log:
        """Begins another session."""
        self.sessions.append(([], []))
        return self

    def note(self, words: str) -> Span:
        """Keeps a note and gives the span of its words."""
        notes = self.sessions[-1][0]
        n, m = len(self.sessions), len(notes)
        uid = f"{n}/{m}"
        notes.append(Note(uid, str(n), words, at=m * 60, said_at=f"{m}:00", arrival=m))
        return Span(uid, 0, len(words))

    def _keep(self, fact: Fact) -> Log:
        self.sessions[-1][1].append(fact)
        return self

    def found(self, part: str, condition: str, verdict: str = "bad", name: str = "", state: str = "") -> Log:
        words = f"{part}: {condition}"
        return self._keep(Finding(main=self.note(words), part=part, condition=condition, verdict=verdict,
                                  name=name or part, state=state, quote=words))  # fmt: skip

    def did(self, action: str, part: str, name: str = "") -> Log:
        words = f"{action} {part}"
        return self._keep(Work(main=self.note(words), action=action, part=part, name=name or part, quote=words))

    def suspected(self, cause: str, standing: str = "suspected") -> Log:
        return self._keep(Suspect(main=self.note(cause), cause=cause, standing=standing, quote=cause))

    def read(self, quantity: str, value: float, unit: str, subject: str, role: str = "measured",
             doubtful: bool = False, condition: str = "") -> Log:  # fmt: skip
        words = f"{subject} {value:g} {unit}"
        return self._keep(
            Reading(
                main=self.note(words), quantity=quantity, value=value, unit=unit, subject=subject, name=subject,
                role=role, doubtful=doubtful, condition=condition, quote=words,
            )
        )  # fmt: skip

    def later(self, topic: str, reason: str, words: str = "", name: str = "") -> Log:
        said = words or topic
        return self._keep(FollowUp(main=self.note(said), topic=topic, reason=reason, quote=said, name=name))

    def chat(self, count: int = 1) -> Log:
        for _ in range(count):
            self.note("the kettle is on")
        return self

    def history(self) -> History:
        records = [SessionRecord(Session(str(n), "m"), tuple(notes), tuple(facts))
                   for n, (notes, facts) in enumerate(self.sessions, 1)]  # fmt: skip
        return History(self.machine, tuple(records))

    def items(self) -> list[OpenItem]:
        """Every follow-up as an item that is still open."""
        history = self.history()
        return [
            OpenItem((f.key,), f.topic, f.name, f.reason, "open", history.place(f.main.note), quote=f.quote)
            for f in history.facts()
            if isinstance(f, FollowUp)
        ]
