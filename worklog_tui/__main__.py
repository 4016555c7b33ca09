"""Lets `python -m worklog_tui` do what `worklog-tui` does."""

from worklog_tui.cli import main

raise SystemExit(main())
