"""The terminal as Textual drives it, with pastes taken out whole before its key parser sees them.

Follows the inner workings of Textual's driver for Linux and macOS; its version is pinned for that.
"""

from __future__ import annotations

import os
import selectors
import time
from codecs import getincrementaldecoder

from textual import events
from textual._parser import ParseError
from textual._xterm_parser import XTermParser
from textual.drivers.linux_driver import LinuxDriver

from worklog_tui.screens.incoming import Incoming, Piece

MOST = 65536
"Bytes of one reading."


class Terminal(LinuxDriver):
    """Textual's driver, reading by way of `Incoming`."""

    def run_input_thread(self) -> None:
        """Wait for input, and hand on keys and pastes."""
        parser, incoming = XTermParser(self._debug), Incoming()
        decode = getincrementaldecoder("utf-8")(errors="replace").decode
        with selectors.DefaultSelector() as selector:
            selector.register(self.fileno, selectors.EVENT_READ)
            try:
                while not self.exit_event.is_set():
                    ready = selector.select(0.02 if incoming.collecting else 0.1)
                    text = decode(os.read(self.fileno, MOST)) if ready else ""
                    now = time.monotonic()
                    self._take(parser, incoming.feed(text, now) if text else incoming.tick(now))
                    if ready and not text:
                        time.sleep(0.02)  # the input has ended, or a sign came in part
                    for event in parser.tick():
                        self.process_message(event)
                self._take(parser, incoming.finish())
            finally:
                _close(parser)

    def _take(self, parser: XTermParser, pieces: list[Piece]) -> None:
        for piece in pieces:
            if piece.pasted:
                self.process_message(events.Paste(piece.text))
            else:
                for event in parser.feed(piece.text):
                    self.process_message(event)


def _close(parser: XTermParser) -> None:
    try:
        for _ in parser.feed(""):
            pass
    except (EOFError, ParseError):
        return
