"""A paste is shown before it is kept: what it is, what is in it, which lines tell nothing. One key says yes."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial
from typing import TYPE_CHECKING, ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.widgets import Static

from worklog_tui.screens.background import hand_back
from worklog_tui.screens.one_answer import OneAnswer
from worklog_tui.widgets.counted import counted
from worklog_tui.widgets.key_line import KeyLine
from worklog_tui.widgets.literal import literal
from worklog_tui.widgets.pasted_lines import PastedLines

if TYPE_CHECKING:
    from worklog_tui.bench.filming import FilmOf
    from worklog_tui.bench.trying import TriedOut
    from worklog_tui.notes.lines import ReadSession
    from worklog_tui.screens.errands import Errands, Pasted

FILM, FILM_AND_NEW = "film ", "film and new "
"What the answer begins with when it is a film, alone or with what it tells anew; the session follows."
OF_VIEWERS = "k keeps them as viewers' comments, without their names."
SHOWN = 3
"So many complaints are told; the rest are counted."


class PasteQuestion(OneAnswer[str]):
    """Shows what a paste is and asks whether to keep it.

    The answer is `notes`, `comments`, `film` or `film and new` with a session, or nothing.
    """

    DEFAULT_CSS = """
    PasteQuestion {
        align: center bottom;
        & > Vertical {
            width: 100%; height: auto; max-height: 100%; background: $surface; padding: 0 1;
            border-top: solid $foreground 30%;
        }
        & .asks { text-style: bold; height: auto; }
        & .told { height: auto; }
        & .odd { color: $text-muted; height: auto; }
        & PastedLines { height: auto; max-height: 60vh; min-height: 2; margin: 1 0; }
    }
    """
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("k,y", "keep", "keep it", id="paste.keep", tooltip="Keep what the paste is taken for"),
        Binding("p", "places", "only the film places", id="paste.places", tooltip="Keep nothing new of the captions"),
        Binding("o", "own", "as notes of their own", id="paste.own", tooltip="Keep it as notes all the same"),
        Binding(
            "v", "answer('comments')", "viewers wrote it", id="paste.viewers",
            tooltip="Keep it as viewers' comments, without their names",
        ),
        Binding("w", "without", "what tells nothing", id="paste.without", tooltip="Show only lines that tell nothing"),
        Binding("space", "leave_out", "not this line", id="paste.out", tooltip="Leave this line out, or take it in"),
        Binding("l", "leave_silent", "only what tells", id="paste.only", tooltip="Leave out all that tells nothing"),
        Binding("escape,x", "answer('')", "leave it", id="paste.leave", tooltip="Keep nothing of the paste"),
    ]  # fmt: skip

    def __init__(self, errands: Errands, machine: str, pasted: Pasted) -> None:
        super().__init__()
        self._errands, self._machine, self.pasted = errands, machine, pasted
        self.read = pasted.read
        self._open = True
        self.film: FilmOf | None = None
        "The session that it is the film of."
        self._compared = pasted.read.track != "captions"

    def compose(self) -> ComposeResult:
        with Vertical():
            yield Static(literal(f"{shape_of(self.pasted)}: keep?"), classes="asks", markup=False)
            yield Static(literal("Reading it …"), classes="told", markup=False)
            yield Static(literal("\n".join(odd(self.read))), classes="odd", markup=False)
            yield PastedLines(self._rows())
            yield KeyLine(wraps=True)

    def _rows(self) -> list[tuple[str, str]]:
        """What is listed, with its time: the comments of viewers, or the lines."""
        if self.pasted.from_viewers:
            return [("", words) for words in self.pasted.comments]
        return [(line.said_at, line.words) for line in self.read.lines]

    def on_mount(self) -> None:
        self.query_one(".odd").display = bool(self.read.complaints) and not self.pasted.from_viewers
        self.query_one(PastedLines).focus()
        if self.pasted.from_viewers:
            self.query_one(".told", Static).update(literal(OF_VIEWERS))
            return
        self.run_worker(self._try_out, thread=True, exit_on_error=False)

    def on_unmount(self) -> None:
        self._open = False

    @property
    def out(self) -> frozenset[int]:
        """The lines that are left out, from 0."""
        return frozenset(self._lines.out)

    @property
    def _lines(self) -> PastedLines:
        return self.query_one(PastedLines)

    def action_leave_out(self) -> None:
        """The line pointed at is left out, or taken in again."""
        self._lines.leave_out()

    def action_leave_silent(self) -> None:
        """All lines that tell nothing are left out, or taken in again."""
        self._lines.leave_silent()

    def action_answer(self, answer: str) -> None:
        self.dismiss(answer)

    def action_keep(self) -> None:
        """As notes, or as the film of notes that are there; not before it is known which."""
        if len(self.out) == len(self._rows()):
            self.dismiss("")
        elif self.pasted.from_viewers:
            self.dismiss("comments")
        elif self._compared and self.film is not None and self.film.fresh:
            self.dismiss(f"{FILM_AND_NEW}{self.film.session}")
        elif self._compared:
            self.dismiss(f"{FILM}{self.film.session}" if self.film else "notes")

    def action_places(self) -> None:
        """Only the places in the film, though it tells something new."""
        if self.film is not None:
            self.dismiss(f"{FILM}{self.film.session}")

    def action_own(self) -> None:
        """As notes, though it is the film of others."""
        self.dismiss("notes")

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """Each key only where it is a question: of comments, of the captions of a film that is known, of lines."""
        viewers = self.pasted.from_viewers
        if action == "places":
            return self.film is not None and bool(self.film.fresh)
        if action == "own":
            return self.film is not None or viewers
        return not (viewers and (action in ("without", "leave_silent") or parameters == ("comments",)))

    def action_without(self) -> None:
        """All lines, or only those that tell nothing."""
        self.query_one(PastedLines).only_silent()

    def _try_out(self) -> None:
        """In a worker thread; ends when the question is answered."""
        if not self._compared:
            hand_back(self, partial(self._show_film, self._errands.film_of(self._machine, self.read)))
        for found in self._errands.try_out(self._machine, self.read):
            if not self._open:
                return
            hand_back(self, partial(self._show, found))

    def _show_film(self, film: FilmOf | None) -> None:
        self.film, self._compared = film, True
        if film is not None and self._open:
            asks = f"{shape_of(self.pasted)}: the film of session {film.number}?"
            self.query_one(".asks", Static).update(literal(asks))
            self.query_one(".told", Static).update(literal(told_of_film(film)))
            self.refresh_bindings()

    def _show(self, found: TriedOut) -> None:
        if self._open:
            said = told(self.pasted, found) if self.film is None else told_of_film(self.film)
            self.query_one(".told", Static).update(literal(said))
            self.query_one(PastedLines).tell(found.done, found.facts, found.unsure)


def shape_of(pasted: Pasted) -> str:
    """What a paste is, in words: `213 lines, captions with times`."""
    count = len(pasted.read.lines)
    if pasted.from_viewers:
        return counted(len(pasted.comments), "comment") + ", written by viewers"
    return f"{counted(count, 'line')}, {_kind(pasted.read)}"


def _kind(read: ReadSession) -> str:
    if not any(line.said_at for line in read.lines):
        return "no times"
    return "captions with times" if read.track == "captions" else "lines with times"


def told(pasted: Pasted, found: TriedOut) -> str:
    """What it would become: notes, facts, and lines that tell nothing."""
    notes, rows = len(pasted.read.lines), pasted.rows
    said = []
    if not any(line.said_at for line in pasted.read.lines):
        one_each = f"Each line becomes a note: {notes}" if notes >= rows else ""
        said.append(one_each or f"{rows} lines of running text are put together to {counted(notes, 'note')}")
    if found.done < notes:
        said.append(f"{found.done} of {notes} read so far: {counted(found.count, 'fact')}")
    else:
        silent = notes - len({*found.facts, *found.unsure})
        asked = f", {found.asked} to be asked about" if found.asked else ""
        tell = "tells" if silent == 1 else "tell"
        said.append(
            f"{counted(found.count, 'fact')} in it{asked}; {counted(silent, 'line')} {tell} nothing for the log"
        )
    return ". ".join(said) + "."


def told_of_film(film: FilmOf) -> str:
    """What keeping the captions of a film does."""
    said = (
        f"They tell {film.told} of the {counted(film.notes, 'note')} of session {film.number}. k gives those notes "
        "their place in the film, and nothing is kept twice."
    )
    if not film.fresh:
        return said
    new = "1 line tells what no note tells: it is" if len(film.fresh) == 1 else (
        f"{len(film.fresh)} lines tell what no note tells: they are"
    )  # fmt: skip
    return f"{said} {new} kept too."


def lines_of(read: ReadSession, places: Sequence[int]) -> str:
    """Some captions as text that reads as captions again."""
    from worklog_tui.model import clock

    said = [(read.lines[place].at, read.lines[place].words) for place in places]
    return "\n".join(f"[{clock(at)}] {words}" for at, words in said if at is not None)


def odd(read: ReadSession) -> list[str]:
    """What was odd about the lines; they are kept all the same."""
    more = [f"and {len(read.complaints) - SHOWN} more like that"] if len(read.complaints) > SHOWN else []
    return [*read.complaints[:SHOWN], *more]
