"""The command line: one function a command, heavy imports only where they are used."""

from worklog_tui.cli.running import main

__all__ = ["main"]
